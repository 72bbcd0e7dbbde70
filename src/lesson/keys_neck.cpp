#include <algorithm>
#include <charconv>

#include "lesson/keys_example.h"
#include "lesson/lookalikes.h"
#include "lesson/plain_signs.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

struct NeckKeys {
  Setting<NeckPicture::Of> of;
  std::optional<Located<theory::ChordToken>> chord;
  Setting<NeckPicture::Labels> labels;
  Setting<std::pair<int, int>> frets;
};

constexpr Choices<NeckPicture::Labels, 4> label_names = {{{"degrees", NeckPicture::Labels::degrees},
                                                          {"notes", NeckPicture::Labels::notes},
                                                          {"fingers", NeckPicture::Labels::fingers},
                                                          {"none", NeckPicture::Labels::none}}};

void read_of(NeckKeys& into, const Field& field) {
  constexpr std::array<std::string_view, 3> words = {"notes", "key", "chord"};
  using Of = NeckPicture::Of;
  into.of.set({});
  const auto text = read_text(field);
  if (!text) return;
  const std::string_view of = text->value;
  if (of == "notes" || of == "key") {
    into.of.set({{of == "key" ? Of::key : Of::notes, text->range}});
  } else if (of == "chord" || of.starts_with("chord ")) {
    const auto begin = std::min(of.find_first_not_of(' ', words[2].size()), of.size());
    const auto chord = theory::parse_chord(of.substr(begin));
    if (!chord || std::holds_alternative<theory::NoChord>(*chord)) {
      return field.error(
          Code::unsound_value, shown(of) + " does not name a chord",
          chord_signs_help(of.substr(begin), "\"chord ").value_or("write it as in \"chord i7\" or \"chord Am7\""));
    }
    into.of.set({{Of::chord, text->range}});
    into.chord = {*chord, field.place(begin, of.size())};
  } else {
    field.error(Code::unknown_value, "'of' cannot be " + shown(of),
                suggestion(of, words, "it can be notes, key or a chord, as in \"chord i7\""));
  }
}

void read_frets(NeckKeys& into, const Field& field) {
  into.frets.set({});
  const auto text = read_text(field);
  if (!text) return;
  int first = 0;
  int last = 0;
  const char* const end = text->value.data() + text->value.size();
  const auto a = std::from_chars(text->value.data(), end, first);
  const bool dash = a.ec == std::errc() && a.ptr != end && *a.ptr == '-';
  const auto b =
      dash ? std::from_chars(a.ptr + 1, end, last) : std::from_chars_result{end, std::errc::invalid_argument};
  if (b.ec == std::errc() && b.ptr == end && first >= 0 && last > first) {
    into.frets.set({{{first, last}, text->range}});
  } else {
    field.error(Code::unsound_value, shown(text->value) + " does not name frets",
                "write the first and the last, as in \"0-7\"");
  }
}

constexpr Rule<NeckKeys> rules[] = {
    {"of", "\"notes\"", read_of},
    {"labels", "\"degrees\"",
     [](NeckKeys& into, const Field& field) { into.labels.set(read_choice(field, label_names)); }},
    {"frets", "\"0-7\"", read_frets},
};

// One number or x a string: "x535", or "x-10-12-11".
std::optional<std::vector<std::optional<int>>> parse_frets(std::string_view text) {
  std::vector<std::optional<int>> frets;
  const bool dashed = text.find('-') != std::string_view::npos;
  for (std::size_t at = 0; at <= text.size();) {
    const auto end = dashed ? std::min(text.find('-', at), text.size()) : std::min(at + 1, text.size());
    const auto part = text.substr(at, end - at);
    int fret = 0;
    const auto read = std::from_chars(part.data(), part.data() + part.size(), fret);
    if (part == "x") {
      frets.emplace_back();
    } else if (!part.empty() && part.front() != '-' && read.ec == std::errc() &&
               read.ptr == part.data() + part.size()) {
      frets.emplace_back(fret);
    } else {
      return {};
    }
    at = dashed ? end + 1 : end;
    if (!dashed && at == text.size()) break;
  }
  return frets;
}

// With the figures that some letters look like.
std::string with_figures(std::string_view text) {
  std::string figures(text);
  for (char& c : figures) {
    const char figure = figure_like(static_cast<unsigned char>(c));
    c = figure != 0 ? figure : c == 'X' ? 'x' : c;
  }
  return figures;
}

std::optional<Shape> read_shape(const Field& field) {
  const auto text = read_text(field);
  if (!text) return {};
  const std::string_view words = text->value;
  const auto gap = std::min(words.find(' '), words.size());
  const auto chord = theory::parse_chord(words.substr(0, gap));
  if (!chord || std::holds_alternative<theory::NoChord>(*chord)) {
    field.diagnostics.error(Code::unsound_value, field.place(0, std::max<std::size_t>(gap, 1)),
                            shown(words.substr(0, gap)) + " is not a chord",
                            chord_signs_help(words.substr(0, gap))
                                .value_or("write a chord and, if you like, its frets, as in \"Dm7 x535\""));
    return {};
  }
  Shape shape{*chord, {}, text->range};
  if (gap == words.size()) return shape;
  const auto begin = std::min(words.find_first_not_of(' ', gap), words.size() - 1);
  shape.frets = parse_frets(words.substr(begin));
  if (shape.frets &&
      std::any_of(shape.frets->begin(), shape.frets->end(), [](const auto& fret) { return fret.has_value(); }))
    return shape;
  const std::string figures = with_figures(words.substr(begin));
  const bool letters = figures != words.substr(begin) && parse_frets(figures);
  field.diagnostics.error(
      Code::unsound_value, field.place(begin, words.size()),
      shown(words.substr(begin)) + " does not say the frets of a shape",
      letters ? "write figures and a small x, no other letters: \"" + figures + "\""
              : "write one sign a string, the tab's bottom line first, x where it is not played: \"x535\", "
                "and with dashes from fret 10 up: \"x-10-12-11\"");
  return {};
}

}  // namespace

std::optional<Located<NeckPicture>> read_neck(const Field& field) {
  if (field.value.kind != TomlValue::Kind::table) {
    wrong_type(field, "a table");
    return {};
  }
  NeckKeys keys;
  read_table<NeckKeys>(field.value, rules, keys, {field.files, field.diagnostics, "'neck'", nullptr});
  if (keys.of.wrong() || keys.labels.wrong() || keys.frets.wrong()) return {};
  NeckPicture neck;
  neck.of = keys.of.value_or(neck.of);
  neck.chord = keys.chord;
  neck.labels = keys.labels.value_or(neck.labels);
  if (keys.frets) neck.frets = *keys.frets;
  neck.frets_range = keys.frets.range();
  neck.range = field.value.range;
  return Located<NeckPicture>{std::move(neck), field.value.range};
}

std::optional<Located<std::vector<Shape>>> read_shapes(const Field& field) {
  if (field.value.kind != TomlValue::Kind::list || field.value.header) {
    wrong_type(field, "a list of chords", ",");
    return {};
  }
  if (too_many(field)) return {};
  Located<std::vector<Shape>> shapes{{}, field.value.range};
  bool sound = true;
  for (const TomlValue& item : field.value.items) {
    auto shape = read_shape(field.with(item));
    sound = sound && shape;
    if (shape) shapes.value.push_back(std::move(*shape));
  }
  if (!sound) return {};
  return shapes;
}

}  // namespace fretsheaf::lesson
