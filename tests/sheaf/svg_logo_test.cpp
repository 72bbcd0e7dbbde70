#include "sheaf/svg_logo.h"

#include <catch2/catch.hpp>
#include <string>

#include "sheaf/referring.h"

namespace fretsheaf::sheaf {
namespace {

using test::referring;

std::string problem(const std::string& inside) {
  return svg_problem("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">" + inside + "</svg>")
      .value_or("none");
}

std::string chain(int levels) {
  std::string inside;
  for (int level = 0; level < levels; ++level) {
    inside += "<g id=\"a" + std::to_string(level) + "\"><use href=\"#a" + std::to_string(level + 1) + "\"/></g>";
  }
  return inside;
}

const std::string too_often = "has its parts drawn more than 10000 times by reference";

}  // namespace

TEST_CASE("a logo may have its parts drawn some thousand times by reference, and no more") {
  CHECK(problem(referring(3)) == "none");
  CHECK(problem(referring(4)) == too_often);
  CHECK(problem(referring(9)) == too_often);
}

TEST_CASE("whatever refers to a part has it drawn") {
  for (const std::string reference : {"<path mask=\"url(#)\"/>", "<path style=\"fill:url('#')\"/>",
                                      "<path clip-path='url( \"#\" )'/>", "<use xlink:href=\" #\"/>"}) {
    INFO(reference);
    CHECK(problem(referring(3, reference)) == "none");
    CHECK(problem(referring(4, reference)) == too_often);
  }
}

TEST_CASE("a style sheet may have each of the parts refer") {
  const std::string masks = "<mask id=\"m\"><path/><path/></mask><mask id=\"n\"><path/><path/></mask>";
  const auto styled = [&](const std::string& css, int parts) {
    std::string inside = "<style>" + css + "</style>" + masks + "<linearGradient id=\"g\"/>";
    for (int i = 0; i < parts; ++i) inside += "<path class=\"b\"/>";
    return problem(inside);
  };
  CHECK(styled(".b{fill:url(#g);stroke:#fff}", 20000) == "none");
  CHECK(styled(".b{mask:url(#m)}", 1000) == "none");
  CHECK(styled("#m {fill:#000} #n {fill:url(#g)}", 20000) == "none");
  CHECK(styled(".b{mask:url(#m)}.c{mask:url(#n)}", 2000) == too_often);
}

TEST_CASE("parts that refer to each other in a ring, or one after another without end, keep nobody waiting") {
  CHECK(problem("<g id=\"a\"><use href=\"#b\"/></g><g id=\"b\"><use href=\"#a\"/></g>") == "none");
  CHECK(problem(chain(50)) == "none");
  std::string itself = "<g id=\"a\" style=\"";
  for (int i = 0; i < 20000; ++i) itself += "url(#a)";
  CHECK(problem(itself + "\"/>") == too_often);
}

TEST_CASE("a logo may have a gradient in each of its parts") {
  std::string inside = "<linearGradient id=\"g\"><stop/><stop/></linearGradient>";
  for (int i = 0; i < 20000; ++i) inside += "<path fill=\"url(#g)\"/>";
  CHECK(problem(inside) == "none");
  CHECK(problem(chain(100000)) == too_often);
}

}  // namespace fretsheaf::sheaf
