#include "support/golden.h"

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "support/project.h"

namespace {

std::string_view first_line(std::string_view& rest) {
  const std::string_view line = rest.substr(0, rest.find('\n'));
  rest.remove_prefix(line.size() == rest.size() ? line.size() : line.size() + 1);
  return line;
}

}  // namespace

std::string golden_difference(std::string_view expected, std::string_view actual) {
  if (expected == actual) return {};
  const auto show = [](bool ended, std::string_view line) {
    return ended ? std::string("the end") : "\"" + std::string(line) + "\"";
  };
  for (int number = 1;; ++number) {
    const bool expected_ended = expected.empty();
    const bool actual_ended = actual.empty();
    const std::string_view wanted = first_line(expected);
    const std::string_view found = first_line(actual);
    if (wanted != found || expected_ended != actual_ended) {
      return "line " + std::to_string(number) + ":\n  expected " + show(expected_ended, wanted) + "\n  found    " +
             show(actual_ended, found);
    }
    if (expected_ended) return "only in the line end at the end of the file";
  }
}

bool updating_golden() {
  const char* flag = std::getenv("FRETSHEAF_UPDATE_GOLDEN");
  return flag != nullptr && std::string_view(flag) == "1";
}

void check_kept(const std::string& path, std::string_view text) {
  const std::filesystem::path place = fretsheaf::test::project_folder() + "/" + path;
  INFO("kept file " << path);
  CHECK(text.size() <= golden_size_cap);
  if (updating_golden()) {
    std::filesystem::create_directories(place.parent_path());
    std::ofstream(place, std::ios::binary) << text;
  }
  std::ifstream file(place, std::ios::binary);
  if (!file) {
    FAIL_CHECK("it is not there; tests/run --update-golden writes it");
    return;
  }
  const std::string expected(std::istreambuf_iterator<char>(file), {});
  const std::string difference = golden_difference(expected, text);
  if (!difference.empty()) FAIL_CHECK("differs in " << difference);
  CHECK(difference.empty());
}

void check_golden(GoldenName name, std::string_view text) {
  check_kept("tests/golden/" + std::string(name.text), text);
}
