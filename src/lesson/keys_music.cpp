#include "lesson/keys_music.h"

#include <array>
#include <cstdlib>
#include <string>
#include <utility>

#include "lesson/limits.h"
#include "lesson/plain_signs.h"
#include "source/nearest.h"
#include "theory/keys.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

constexpr Choices<theory::Feel, 4> feels = {{{"straight", theory::Feel::straight},
                                             {"swing", theory::Feel::swing},
                                             {"shuffle", theory::Feel::shuffle},
                                             {"swing-16", theory::Feel::swing_16}}};
constexpr Choices<Staff, 3> staff_names = {{{"slash", Staff::slash}, {"notes", Staff::notes}, {"tab", Staff::tab}}};
constexpr Choices<Label, 5> label_names = {{{"notes", Label::notes},
                                            {"chord-degrees", Label::chord_degrees},
                                            {"key-degrees", Label::key_degrees},
                                            {"fingers", Label::fingers},
                                            {"counts", Label::counts}}};

// The mode that a word of another notation names: `Dm`, `D min`, `D maj`; and by the names that the church modes give
// to major and minor.
std::string_view other_mode_name(std::string_view word) {
  if (word == "m" || word == "min" || word == "mi" || word == "-" || word == "aeolian") return "minor";
  if (word == "M" || word == "maj" || word == "ma" || word == "ionian") return "major";
  return {};
}

// The note that a word begins with, in any case, and the mode in the rest of it; false where the rest is none.
bool take_tonic(std::string_view word, std::string& note, std::string& mode) {
  for (std::size_t length = std::min<std::size_t>(word.size(), 3); length > 0; --length) {
    std::string name(word.substr(0, length));
    if (name.front() >= 'a' && name.front() <= 'g') name.front() = static_cast<char>(name.front() - 'a' + 'A');
    const auto rest = word.substr(length);
    if (!theory::parse_note_name(name) || (!rest.empty() && other_mode_name(rest).empty())) continue;
    note = name;
    if (!rest.empty()) mode = other_mode_name(rest);
    return true;
  }
  return false;
}

// A key in another order or notation, as it is written here: "D dorian" of "dorian in d", "D minor" of "Dm". Empty
// where none can be told.
std::string meant_key(std::string_view text) {
  std::string note;
  std::string mode;
  for (std::size_t at = text.find_first_not_of(' '); at != std::string_view::npos;
       at = text.find_first_not_of(' ', at)) {
    const auto word = text.substr(at, text.find(' ', at) - at);
    at += word.size();
    if (note.empty() && take_tonic(word, note, mode)) continue;
    if (mode.empty()) mode = other_mode_name(word);
    if (mode.empty()) mode = source::nearest(word, theory::mode_names());
  }
  return note.empty() || mode.empty() ? std::string() : note + " " + mode;
}

// With accidentals as they are written here: "Eb major" of "E flat major" and of "E♭ major".
std::string with_plain_accidentals(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> ways = {
      {{" flat", "b"}, {"-flat", "b"}, {" sharp", "#"}, {"-sharp", "#"}}};
  std::string plain = with_plain_signs(text);
  for (const auto& [way, sign] : ways) {
    if (const auto at = plain.find(way); at != std::string::npos) plain.replace(at, way.size(), sign);
  }
  return plain;
}

void not_a_key(const Field& field, std::string_view text, std::optional<theory::Mode> default_mode) {
  if (const std::string plain = with_plain_accidentals(text); plain != text) {
    const auto key = theory::parse_key(plain, default_mode);
    const std::string meant = key ? key->to_string() : meant_key(plain);
    if (!meant.empty()) {
      field.error(Code::unsound_value, shown(text) + " is not a key", "write \"" + meant + "\"");
      return;
    }
  }
  const auto gap = std::min(text.find(' '), text.size());
  const auto tonic = theory::parse_note_name(text.substr(0, gap));
  const auto modes = theory::mode_names();
  if (!tonic) {
    const std::string meant = meant_key(text);
    field.error(Code::unsound_value, shown(text) + " is not a key",
                meant.empty() ? "write a tonic and a mode, as in \"D dorian\"" : "write \"" + meant + "\"");
  } else if (gap == text.size()) {
    const std::string name = tonic->to_string();
    field.error(Code::unsound_value, shown(text) + " does not say its mode",
                "write \"" + name + " major\" or \"" + name + " minor\"; the modes are " + one_of(modes));
  } else {
    const auto mode = text.substr(gap + 1);
    field.diagnostics.error(Code::unknown_value, field.place(gap + 1, text.size()), shown(mode) + " is not a mode",
                            other_mode_name(mode).empty() ? suggestion(mode, modes, "the modes are " + one_of(modes))
                                                          : "write \"" + meant_key(text) + "\"");
  }
}

}  // namespace

std::optional<theory::Key> read_key_name(const Field& field, std::string_view text,
                                         std::optional<theory::Mode> default_mode) {
  const auto key = theory::parse_key(text, default_mode);
  if (!key) {
    not_a_key(field, text, default_mode);
    return {};
  }
  if (theory::has_signature(*key)) return key;
  const int signs = key->signature();
  field.error(Code::too_many_signs,
              shown(text) + " would have " + std::to_string(std::abs(signs)) + (signs > 0 ? " sharps" : " flats") +
                  ", and a signature has at most seven",
              "write \"" + theory::enharmonic_key(*key).to_string() + "\", which sounds the same");
  return {};
}

void read_key(MusicKeys& into, const Field& field) {
  into.key.set({});
  const auto text = read_text(field);
  if (!text) return;
  if (const auto key = read_key_name(field, text->value)) into.key.set({{*key, text->range}});
}

void read_meter(MusicKeys& into, const Field& field) {
  into.meter.set({});
  const auto text = read_text(field);
  if (!text) return;
  if (auto meter = theory::parse_meter(text->value)) {
    into.meter.set({{std::move(*meter), text->range}});
  } else {
    field.error(Code::unsound_value, shown(text->value) + " is not a meter",
                "write 1 to 64 counts over 1, 2, 4, 8, 16, 32 or 64, as in \"4/4\" or \"2+2+3/8\"");
  }
}

void read_feel(MusicKeys& into, const Field& field) {
  into.feel.set(read_choice(field, feels));
}

void read_staves(MusicKeys& into, const Field& field) {
  auto staves = read_choices(field, staff_names);
  if (staves && staves->value.empty()) {
    field.error(Code::out_of_range, "'staves' is empty", "name at least one of slash, notes and tab");
    staves.reset();
  }
  into.staves.set(std::move(staves));
}

void read_labels(MusicKeys& into, const Field& field) {
  into.labels.set(read_choices(field, label_names));
}

void read_bars_per_line(MusicKeys& into, const Field& field) {
  into.bars_per_line.set({});
  if (field.value.kind == TomlValue::Kind::text && field.value.text == "auto") {
    into.bars_per_line.set({{std::nullopt, field.value.range}});
  } else if (field.value.kind != TomlValue::Kind::whole) {
    wrong_type(field, "a whole number without quotes, or \"auto\"");
  } else if (const auto bars = read_whole(field, 1, limits::bars_per_line)) {
    into.bars_per_line.set({{bars->value, bars->range}});
  }
}

}  // namespace fretsheaf::lesson
