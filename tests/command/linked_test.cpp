// What every run loads before it begins: the libraries that the program is linked with.
#include <catch2/catch.hpp>
#include <string>

#include "platform/loaded_library.h"
#include "support/project.h"
#include "support/running.h"

using namespace fretsheaf;

TEST_CASE("the program is linked with no library that it loads only where a run needs it") {
  std::string linked;
  // By GNU binutils, which the compiler needs.
  REQUIRE(test::shell("readelf --dynamic --wide '" + test::program() + "' | grep NEEDED", "/", &linked) == 0);
  CAPTURE(linked);
  CHECK(linked.find("[libcairo.so.2]") != std::string::npos);
  for (const std::string late : platform::late_libraries) {
    CAPTURE(late);
    CHECK(linked.find("[" + late + "]") == std::string::npos);
  }
  CHECK(linked.find("xml") == std::string::npos);
  CHECK(linked.find("toml") == std::string::npos);
#ifndef __SANITIZE_ADDRESS__  // which comes with its own
  CHECK(linked.find("stdc++") == std::string::npos);
#endif
}
