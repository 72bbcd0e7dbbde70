#include <array>
#include <charconv>

#include "platform/toml_library.h"
#include "typeface/embedded.h"
#include "typeface/known_fonts.h"
#include "typeface/own_outlines.h"

// The two files of `fonts/`, read. They are built into the program and tested, so that what cannot be read in them is
// left out here without a word.
namespace fretsheaf::typeface {
namespace {

constexpr std::array own_sign_names = {"slash-filled",
                                       "slash-open",
                                       "dead",
                                       "diamond",
                                       "parenthesis-left",
                                       "parenthesis-right",
                                       "digit-parenthesis-left",
                                       "digit-parenthesis-right",
                                       "rhythm-clef",
                                       "stroke-down"};

std::vector<KnownFont> read_fonts() {
  std::vector<KnownFont> fonts;
  const toml::parse_result file = toml::parse(fonts_toml);
  if (!file) return fonts;
  for (const auto& [name, node] : file.table()) {
    const toml::table* entry = node.as_table();
    if (entry == nullptr) continue;
    fonts.push_back({std::string(name.str()), entry->at_path("file").value_or(std::string()),
                     entry->at_path("package").value_or(std::string())});
  }
  return fonts;
}

// Reads a number and what white space precedes it off the front.
double take_number(std::string_view& path) {
  path.remove_prefix(std::min(path.find_first_not_of(" \n"), path.size()));
  double number = 0;
  const auto read = std::from_chars(path.data(), path.data() + path.size(), number);
  path.remove_prefix(static_cast<std::size_t>(read.ptr - path.data()));
  return number;
}

std::vector<OutlineSegment> read_outline(std::string_view path) {
  std::vector<OutlineSegment> outline;
  const auto take_point = [&path](double& x, double& y) {
    x = take_number(path);
    y = -take_number(path);
  };
  for (std::size_t next = path.find_first_of("MLCZ"); next < path.size(); next = path.find_first_of("MLCZ")) {
    const char command = path[next];
    path.remove_prefix(next + 1);
    OutlineSegment& segment = outline.emplace_back();
    segment.kind = command == 'M'   ? OutlineSegment::Kind::move
                   : command == 'L' ? OutlineSegment::Kind::line
                   : command == 'C' ? OutlineSegment::Kind::curve
                                    : OutlineSegment::Kind::close;
    if (command == 'C') {
      take_point(segment.x1, segment.y1);
      take_point(segment.x2, segment.y2);
    }
    if (command != 'Z') take_point(segment.x, segment.y);
  }
  return outline;
}

std::array<std::vector<OutlineSegment>, own_sign_names.size()> read_outlines() {
  std::array<std::vector<OutlineSegment>, own_sign_names.size()> outlines;
  const toml::parse_result file = toml::parse(outlines_toml);
  if (!file) return outlines;
  for (std::size_t sign = 0; sign < outlines.size(); ++sign) {
    outlines[sign] = read_outline(file.table()[own_sign_names[sign]].value_or(std::string_view()));
  }
  return outlines;
}

}  // namespace

const std::vector<KnownFont>& known_fonts() {
  static const std::vector<KnownFont> fonts = read_fonts();
  return fonts;
}

const KnownFont* known_font(std::string_view name) {
  for (const KnownFont& font : known_fonts()) {
    if (font.name == name) return &font;
  }
  return nullptr;
}

std::span<const OutlineSegment> own_outline(OwnSign sign) {
  static const auto outlines = read_outlines();
  return outlines.at(static_cast<std::size_t>(sign));
}

}  // namespace fretsheaf::typeface
