#include "sheaf/print.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::sheaf;

TEST_CASE("a print is the hash's published one, in its canonical form") {
  // What xxhsum -H2 prints for an empty file; a standing value of the algorithm's specification (from memory).
  CHECK(print_of("").hex() == "99aa06d3014798d86001c324468d497f");
  CHECK(print_of("low tide") == print_of("low tide"));
  CHECK(print_of("low tide") != print_of("low tidf"));
}

TEST_CASE("a print is read back from its digits, and nothing else is one") {
  const Print print = print_of("eelgrass");
  CHECK(parse_print(print.hex()) == print);
  for (const char* wrong : {"", "12", "99aa06d3014798d86001c324468d497", "99aa06d3014798d86001c324468d497g",
                            "99aa06d3014798d86001c324468d497ff"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_print(wrong));
  }
}

TEST_CASE("where one part ends and the next begins counts") {
  const auto of = [](std::initializer_list<std::string_view> parts) {
    PrintOf all;
    for (const auto part : parts) all.add(part);
    return all.print();
  };
  CHECK(of({"low", "tide"}) == of({"low", "tide"}));
  CHECK(of({"low", "tide"}) != of({"lowt", "ide"}));
  CHECK(of({"low", "tide"}) != of({"tide", "low"}));
  CHECK(of({"low", ""}) != of({"low"}));
}
