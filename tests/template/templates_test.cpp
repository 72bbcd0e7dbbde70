#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

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

std::vector<std::string> template_files() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(fretsheaf::test::project_folder() + "/templates")) {
    if (entry.path().extension() == ".toml") names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

templates::Template read(const std::string& name) {
  const std::string bytes = slurp(name);
  REQUIRE_FALSE(bytes.empty());
  source::Diagnostics diagnostics;
  templates::Template look = templates::parse_template(source::Text(name, bytes), 0, diagnostics);
  CHECK(diagnostics.list().empty());
  return look;
}

}  // namespace

TEST_CASE("every template says every key, so that a copy shows all that can be changed") {
  for (const std::string& name : template_files()) {
    INFO(name);
    const std::string bytes = "\n" + slurp(name);
    read(name);
    for (const std::string_view key : templates::top_keys) {
      INFO(key);
      CHECK(sets(bytes, key));
    }
    for (const templates::MeasureEntry& entry : templates::measure_entries()) {
      INFO(entry.key);
      CHECK(sets(bytes, entry.key));
    }
    for (const std::string_view role : templates::role_keys()) {
      INFO(role);
      CHECK(sets(bytes, role));
    }
  }
}

TEST_CASE("music-stand.toml says what a template without it has") {
  const templates::Template look = read("music-stand.toml");
  const templates::Template plain;
  for (const templates::MeasureEntry& entry : templates::measure_entries()) {
    INFO(entry.key);
    CHECK(look.measures.*entry.value == plain.measures.*entry.value);
    CHECK(plain.measures.*entry.value >= entry.least);
    CHECK(plain.measures.*entry.value <= entry.most);
  }
  for (std::size_t role = 0; role < templates::role_count; ++role) {
    INFO(templates::role_keys()[role]);
    CHECK(look.type[role].fonts == plain.type[role].fonts);
    CHECK(look.type[role].size == plain.type[role].size);
    CHECK(look.type[role].tracking == plain.type[role].tracking);
    CHECK(look.type[role].tabular == plain.type[role].tabular);
  }
  CHECK(look.footer == plain.footer);
  CHECK(look.later_pages == plain.later_pages);
  CHECK(look.top_line == plain.top_line);
  CHECK(look.head == plain.head);
  CHECK(look.facts == plain.facts);
  CHECK(look.labels_beside == plain.labels_beside);
  CHECK(look.cautions == plain.cautions);
  CHECK(look.one_thing_a_line == plain.one_thing_a_line);
  CHECK(look.paper == plain.paper);
  CHECK(look.two_sided == plain.two_sided);
  CHECK(look.least_type == plain.least_type);
}

TEST_CASE("no text of the music-stand is under 8 points, and tab digits are 10") {
  const templates::Template look;
  for (const templates::TypeStyle& style : look.type) CHECK(style.size >= 8);
  CHECK(look.style(templates::Role::digit).size >= 10);
}

TEST_CASE("compact is smaller than the music-stand throughout, and nothing in it under 7.5 points") {
  const templates::Template look = read("compact.toml");
  const templates::Template plain;
  for (std::size_t role = 0; role < templates::role_count; ++role) {
    INFO(templates::role_keys()[role]);
    CHECK(look.type[role].size >= 7.5);
    CHECK(look.type[role].size <= plain.type[role].size);
  }
  CHECK(look.least_type == 7.5);
  CHECK(look.measures.space < plain.measures.space);
  CHECK(look.measures.tab_gap < plain.measures.tab_gap);
}

// RNIB Clear Print and UKAAF G003 (3.1): large print is 16 points at least, and 18 is better.
TEST_CASE("large print has text of 18 points, tab digits of 16 and nothing smaller") {
  const templates::Template look = read("large-print.toml");
  for (const templates::Role role : templates::all_roles) {
    INFO(templates::role_keys()[static_cast<std::size_t>(role)]);
    CHECK(look.style(role).size >= (role == templates::Role::digit ? 16 : 18));
  }
  CHECK(look.least_type >= 16);  // also for a tied digit, which is set smaller where a line begins
  CHECK(look.one_thing_a_line);
  // Two figures one above the other on neighbouring strings stay apart: capitals and figures are 0.73 of the size.
  CHECK(look.measures.tab_gap > 0.73 * look.style(templates::Role::digit).size + 1);
}

TEST_CASE("figures of a tab fit between its lines in every template") {
  for (const std::string& name : template_files()) {
    INFO(name);
    const templates::Template look = read(name);
    for (const templates::Role role : {templates::Role::digit, templates::Role::string_letter}) {
      CHECK(0.73 * look.style(role).size < look.measures.tab_gap);
    }
    // A time signature's figures are 2.9 spaces each, one above and one below the middle line (the house's
    // measure).
    CHECK(look.style(templates::Role::time_signature).size / look.measures.space == Approx(2.9).margin(0.01));
  }
}

// WCAG 2.2, 1.4.3: 4.5 to 1 for text, 7 to 1 for the better level (1.4.6). A copier sees only how dark a colour is.
TEST_CASE("every template prints well in black and white") {
  for (const std::string& name : template_files()) {
    INFO(name);
    const templates::Template look = read(name);
    CHECK(templates::contrast_with_white(look.accent) >= 7);
    // The one coloured text is large enough for a one-bit printer (common practice: nothing under 9 points).
    CHECK(look.style(templates::Role::example_label).size >= 9);
  }
}

TEST_CASE("a template is known by the name of its file") {
  CHECK(template_files() == std::vector<std::string>{"compact.toml", "large-print.toml", "music-stand.toml"});
}

TEST_CASE("the README of the templates explains every key with the music-stand's value") {
  const std::string readme = slurp("README.md");
  const auto explained = [&](std::string_view key) {
    return readme.find("| `" + std::string(key) + "` | ") != std::string::npos;
  };
  for (const std::string_view key : templates::top_keys) {
    INFO(key);
    CHECK(explained(key));
  }
  const templates::Template plain;
  for (const templates::MeasureEntry& entry : templates::measure_entries()) {
    INFO(entry.key);
    CHECK(explained(entry.key));
    const std::string row = " | " + templates::plain_number(plain.measures.*entry.value) + " | " +
                            templates::plain_number(entry.least) + " | " + templates::plain_number(entry.most) + " |\n";
    bool found = false;  // `meta` is a role as well
    for (std::size_t at = 0; (at = readme.find("\n| `" + std::string(entry.key) + "` | ", at)) != std::string::npos;) {
      const std::size_t end = readme.find('\n', ++at);
      found = found || readme.substr(at, end + 1 - at).ends_with(row);
    }
    CHECK(found);
  }
  for (std::size_t role = 0; role < templates::role_count; ++role) {
    INFO(templates::role_keys()[role]);
    CHECK(explained(templates::role_keys()[role]));
  }
  for (const std::string& name : template_files()) {
    CHECK(explained(name.substr(0, name.size() - std::string(".toml").size())));
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
