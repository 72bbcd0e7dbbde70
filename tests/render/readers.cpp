#include "readers.h"

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <memory>

#include "support/temporary_folder.h"

namespace fretsheaf::render {
namespace {

struct PipeCloser {
  void operator()(std::FILE* pipe) const { ::pclose(pipe); }
};

}  // namespace

std::string reader(const std::string& program, const std::string& arguments, const std::string& pdf,
                   const std::string& after) {
  const TemporaryFolder folder;
  const std::string file = folder / "page.pdf";
  put(file, pdf);
  const std::string command = program + " " + arguments + " '" + file + "' " + after + " 2>&1";
  const std::unique_ptr<std::FILE, PipeCloser> pipe(::popen(command.c_str(), "r"));
  REQUIRE(pipe != nullptr);
  std::string said;
  std::array<char, 4096> part{};
  while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe.get())) said.append(part.data(), got);
  return said;
}

}  // namespace fretsheaf::render
