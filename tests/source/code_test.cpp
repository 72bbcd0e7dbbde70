#include "source/code.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

using namespace fretsheaf::source;

namespace {

const std::vector<Code> codes = {
#define FRETSHEAF_CODE(name) Code::name,
#include "source/codes.def"
#undef FRETSHEAF_CODE
};

const std::vector<std::string> names = {
#define FRETSHEAF_CODE(name) #name,
#include "source/codes.def"
#undef FRETSHEAF_CODE
};

}  // namespace

TEST_CASE("a code's name is its enumerator's with dashes") {
  CHECK(code_name(Code::bar_too_long) == "bar-too-long");
  CHECK(code_name(Code::toml_syntax) == "toml-syntax");
  for (std::size_t i = 0; i < codes.size(); ++i) {
    std::string expected = names[i];
    std::replace(expected.begin(), expected.end(), '_', '-');
    CHECK(code_name(codes[i]) == expected);
  }
}

TEST_CASE("codes stand in alphabetical order, each once") {
  for (std::size_t i = 1; i < names.size(); ++i) {
    CAPTURE(names[i - 1], names[i]);
    CHECK(names[i - 1] < names[i]);
  }
}

TEST_CASE("codes are lower-case words") {
  for (const std::string& name : names) {
    CAPTURE(name);
    CHECK(name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos);
  }
}
