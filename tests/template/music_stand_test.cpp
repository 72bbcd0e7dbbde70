#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <string>

#include "source/text.h"
#include "support/project.h"
#include "template/check.h"
#include "template/parse.h"

using namespace fretsheaf;

namespace {

std::string slurp(const std::string& name) {
  std::ifstream file(fretsheaf::test::project_folder() + "/templates/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// Whether a line of the file sets this key.
bool sets(const std::string& text, std::string_view key) {
  const std::string line = "\n" + std::string(key);
  for (std::size_t at = 0; (at = text.find(line, at)) != std::string::npos; ++at) {
    const std::size_t after = text.find_first_not_of(' ', at + line.size());
    if (after != std::string::npos && text[after] == '=') return true;
  }
  return false;
}

}  // namespace

TEST_CASE("music-stand.toml says every key, and says what a template without it has") {
  const std::string bytes = slurp("music-stand.toml");
  REQUIRE_FALSE(bytes.empty());
  source::Diagnostics diagnostics;
  const templates::Template read = templates::parse_template(source::Text("music-stand.toml", bytes), 0, diagnostics);
  CHECK_FALSE(diagnostics.has_errors());
  const templates::Template plain;
  for (const templates::MeasureEntry& entry : templates::measure_entries()) {
    INFO(entry.key);
    CHECK(sets(bytes, entry.key));
    CHECK(read.measures.*entry.value == plain.measures.*entry.value);
    CHECK(plain.measures.*entry.value >= entry.least);
    CHECK(plain.measures.*entry.value <= entry.most);
  }
  for (std::size_t role = 0; role < templates::role_count; ++role) {
    INFO(templates::role_keys()[role]);
    CHECK(sets(bytes, templates::role_keys()[role]));
    CHECK(read.type[role].fonts == plain.type[role].fonts);
    CHECK(read.type[role].size == plain.type[role].size);
    CHECK(read.type[role].tracking == plain.type[role].tracking);
    CHECK(read.type[role].tabular == plain.type[role].tabular);
  }
  CHECK(read.footer == plain.footer);
  CHECK(read.least_type == plain.least_type);
}

TEST_CASE("no text of the music-stand is under 8 points, and tab digits are 10") {
  const templates::Template look;
  for (const templates::TypeStyle& style : look.type) CHECK(style.size >= 8);
  CHECK(look.style(templates::Role::digit).size >= 10);
}

TEST_CASE("the README of the templates explains every key") {
  const std::string readme = slurp("README.md");
  for (const templates::MeasureEntry& entry : templates::measure_entries()) {
    INFO(entry.key);
    CHECK(readme.find("`" + std::string(entry.key) + "`") != std::string::npos);
  }
  for (const std::string_view role : templates::role_keys()) {
    INFO(role);
    CHECK(readme.find("`" + std::string(role) + "`") != std::string::npos);
  }
}

TEST_CASE("contrast with white is that of WCAG 2.2") {
  // Published pairs: black 21, white 1, #767676 4.54, #777777 4.48, #949494 3.03 (WCAG 2.2 and its understanding
  // pages).
  CHECK(templates::contrast_with_white({0, 0, 0}) == Approx(21));
  CHECK(templates::contrast_with_white({255, 255, 255}) == Approx(1));
  CHECK(templates::contrast_with_white({0x76, 0x76, 0x76}) == Approx(4.54).margin(0.005));
  CHECK(templates::contrast_with_white({0x77, 0x77, 0x77}) == Approx(4.48).margin(0.005));
  CHECK(templates::contrast_with_white({0x94, 0x94, 0x94}) == Approx(3.03).margin(0.005));
  // The look's own accent: 8.6 to 1.
  CHECK(templates::contrast_with_white(templates::Template().accent) == Approx(8.6).margin(0.05));
}
