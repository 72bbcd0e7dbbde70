#include "support/golden.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <string>

#include "house/files.h"
#include "house/golden_names.h"

namespace fs = std::filesystem;
using Names = std::set<std::string>;

TEST_CASE("every golden file is claimed by a test, and every claim has its file") {
  Names claimed;
  for (const std::string& path : files_below("tests", {".cpp"})) {
    // What stands here is examples of claims.
    if (path.starts_with("tests/house/")) continue;
    claimed.merge(golden_names(text_of(path)));
  }
  Names found;
  for (const std::string& path : files_below("tests/golden", {""})) found.insert(path.substr(13));
  found.erase("README.md");
  CHECK(found == claimed);
}

TEST_CASE("no golden file is too large to be read") {
  for (const std::string& path : files_below("tests/golden", {""})) {
    CAPTURE(path);
    CHECK(fs::file_size(project_path(path)) <= golden_size_cap);
  }
}

TEST_CASE("claims are found however they are set out") {
  CHECK(golden_names("check_golden(\"a.txt\", dump);\n  check_golden(\n      \"b.txt\", x);") ==
        Names{"a.txt", "b.txt"});
  CHECK(golden_names("for (const GoldenName n : {GoldenName(\"a.txt\"), GoldenName{\"b.txt\"}}) check_golden(n, x);") ==
        Names{"a.txt", "b.txt"});
  CHECK(golden_names("void check_golden(GoldenName name, std::string_view text);").empty());
}

TEST_CASE("a difference names its line, and both sides of it") {
  CHECK(golden_difference("a\nb\n", "a\nb\n").empty());
  CHECK(golden_difference("a\nb\nc\n", "a\nx\nc\n") == "line 2:\n  expected \"b\"\n  found    \"x\"");
  CHECK(golden_difference("a\n", "a\nb\n") == "line 2:\n  expected the end\n  found    \"b\"");
  CHECK(golden_difference("a\n\n", "a\n") == "line 2:\n  expected \"\"\n  found    the end");
  CHECK(golden_difference("a\n", "a") == "only in the line end at the end of the file");
  CHECK_FALSE(golden_difference("", "a").empty());
}
