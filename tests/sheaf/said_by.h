#pragma once

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <memory>
#include <string>

namespace fretsheaf::test {

// What a command prints on its standard output.
inline std::string said_by(const std::string& command) {
  struct Close {
    void operator()(std::FILE* pipe) const { ::pclose(pipe); }
  };
  const std::unique_ptr<std::FILE, Close> pipe(::popen((command + " 2>/dev/null").c_str(), "r"));
  REQUIRE(pipe != nullptr);
  std::string said;
  std::array<char, 4096> part{};
  while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe.get())) said.append(part.data(), got);
  return said;
}

}  // namespace fretsheaf::test
