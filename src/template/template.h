#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

// The look as data: what `templates/*.toml` holds, read and checked. Lengths are points unless named otherwise.
namespace fretsheaf::templates {

enum class Role {
#define FRETSHEAF_ROLE(name, ...) name,
#include "template/roles.def"
#undef FRETSHEAF_ROLE
};
// As many as there are lines in roles.def.
inline constexpr std::array all_roles = {
#define FRETSHEAF_ROLE(name, ...) Role::name,
#include "template/roles.def"
#undef FRETSHEAF_ROLE
};
inline constexpr int role_count = static_cast<int>(all_roles.size());

struct TypeStyle {
  std::vector<std::string> fonts;  // names in `fonts/` or paths, tried in order for each character
  double size = 10;
  double tracking = 0;   // points added after each glyph
  bool tabular = false;  // all figures equally wide
};

struct Rgb {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
};

struct Measures {
#define FRETSHEAF_MEASURE(group, name, value, least, most) double name = value;
#include "template/measures.def"
#undef FRETSHEAF_MEASURE
};

// What stands at the head of the first page (the student's line follows it all), and the facts there.
enum class HeadPart : std::uint8_t { top_line, title, subtitle, facts };
enum class FactName : std::uint8_t { key, meter, tuning, capo };

enum class Paper : std::uint8_t { a4, letter };

using TypeStyles = std::array<TypeStyle, role_count>;
TypeStyles music_stand_type();

// As it stands here, the music-stand: a template's file changes what it names and leaves the rest.
struct Template {
  std::string name = "music-stand";
  Measures measures;
  TypeStyles type = music_stand_type();
  Rgb accent{0x09, 0x54, 0x61};
  double least_type = 8;    // no text is set smaller
  Paper paper = Paper::a4;  // where a lesson names none
  bool two_sided = false;
  bool cautions = true;           // the usual ones of practising, at the foot of the first page
  bool one_thing_a_line = false;  // nothing beside anything else: facts, headings, short blocks, footers
  std::vector<HeadPart> head{HeadPart::top_line, HeadPart::title, HeadPart::subtitle, HeadPart::facts};
  std::vector<FactName> facts{FactName::key, FactName::meter, FactName::tuning, FactName::capo};
  bool labels_beside = false;  // facts' labels stand before their values, not above them
  // Patterns: holes such as {copyright} are filled, and parts joined by " · " left out where they come to nothing.
  std::string top_line = "{series}  ·  {number}  ·  {level}";
  std::array<std::string, 2> later_pages{"{title}", "{series}  ·  {number}"};        // left, right
  std::array<std::string, 3> footer{"{teacher} · {copyright}", "{link}", "{page}"};  // left, centre, right

  const TypeStyle& style(Role role) const { return type[static_cast<std::size_t>(role)]; }
};

}  // namespace fretsheaf::templates
