#include "platform/loaded_library.h"

#include <catch2/catch.hpp>
#include <cmath>

using fretsheaf::platform::LoadedLibrary;

TEST_CASE("functions of a library that is there can be called") {
  LoadedLibrary library("libm.so.6");
  double (*root)(double) = nullptr;
  library.find("cbrt", root);
  CHECK(library.has_all());
  REQUIRE(root != nullptr);
  CHECK(root(27.0) == Approx(3.0));
}

TEST_CASE("a library that lacks one function does not have all, whatever is found after it") {
  LoadedLibrary library("libm.so.6");
  double (*none)(double) = &std::cbrt;
  double (*root)(double) = nullptr;
  library.find("cbrt_of_a_fret", none);
  library.find("cbrt", root);
  CHECK(none == nullptr);
  CHECK(root != nullptr);
  CHECK_FALSE(library.has_all());
}

TEST_CASE("a library that is not there has nothing") {
  LoadedLibrary library("libeelgrass.so.1");
  CHECK_FALSE(library.has_all());
  double (*root)(double) = &std::cbrt;
  library.find("cbrt", root);
  CHECK(root == nullptr);
  CHECK_FALSE(library.has_all());
  CHECK_THROWS_WITH(library.require_all("seagrass needs Debian's package libeelgrass1"),
                    "libeelgrass.so.1 cannot be loaded: seagrass needs Debian's package libeelgrass1");
}
