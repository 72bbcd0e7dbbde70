#include "lesson/keys_example.h"

#include <algorithm>
#include <array>

#include "lesson/keys_lesson.h"
#include "lesson/limits.h"
#include "lesson/toml_string.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

constexpr Choices<BuildUp, 3> build_ups = {
    {{"bars", BuildUp::bars}, {"pairs", BuildUp::pairs}, {"add-one", BuildUp::add_one}}};
constexpr Choices<bool Hidden::*, 4> hideable = {
    {{"frets", &Hidden::frets}, {"rhythm", &Hidden::rhythm}, {"labels", &Hidden::labels}, {"chords", &Hidden::chords}}};

// What stands under the tab is hidden as a whole: one kind of it cannot be. Reports the first that is named alone.
bool names_one_label(const Field& field) {
  constexpr std::array<std::string_view, 7> labels = {"notes",   "degrees", "chord-degrees", "key-degrees",
                                                      "fingers", "counts",  "degree"};
  for (const TomlValue& item : field.value.items) {
    if (item.kind != TomlValue::Kind::text || std::find(labels.begin(), labels.end(), item.text) == labels.end()) {
      continue;
    }
    field.with(item).error(Code::unknown_value, "'hide' cannot be '" + item.text + "'",
                           "write \"labels\": all rows under the tab are hidden together");
    return true;
  }
  return false;
}

void read_hide(ExampleKeys& into, const Field& field) {
  into.hide.set({});
  if (names_one_label(field)) return;
  const auto parts = read_choices(field, hideable);
  if (!parts) return;
  Hidden hidden;
  for (const auto part : parts->value) hidden.*part = true;
  into.hide.set({{hidden, parts->range}});
}

void read_tab(ExampleKeys& into, const Field& field) {
  into.tab.set({});
  if (field.value.kind != TomlValue::Kind::text) return wrong_type(field, "a grid between ''' and '''");
  const Range range = field.value.range;
  const auto string = find_toml_string(field.files[range.file].bytes(), range.begin);
  if (!string || string->quotes != Quotes::literal_lines) {
    const auto width = string ? quote_marks(string->quotes).size() : 1;
    field.diagnostics.error(Code::grid_quotes,
                            {range.begin, static_cast<std::uint32_t>(range.begin + width), range.file},
                            "a tab grid is written between ''' and '''", "write tab = ''' and close with '''");
    return;
  }
  into.grid = {static_cast<std::uint32_t>(string->body_begin), static_cast<std::uint32_t>(string->body_end),
               range.file};
  into.tab.set({{field.value.text, range}});
}

template <auto read>
void music(ExampleKeys& into, const Field& field) {
  read(into.music, field);
}
template <auto member, auto read>
void setting(ExampleKeys& into, const Field& field) {
  (into.*member).set(read(field));
}
template <auto member, int least, int most>
void whole(ExampleKeys& into, const Field& field) {
  (into.*member).set(read_whole(field, least, most));
}

constexpr Rule<ExampleKeys> rules[] = {
    {"title", "\"The pulse\"", setting<&ExampleKeys::title, read_line>},
    {"intro", "\"Some words.\"", setting<&ExampleKeys::intro, read_text>},
    {"tempo", "92", setting<&ExampleKeys::tempo, read_tempo>},
    {"key", "\"D dorian\"", music<read_key>},
    {"meter", "\"4/4\"", music<read_meter>},
    {"feel", "\"swing\"", music<read_feel>},
    {"staves", "[\"slash\", \"tab\"]", music<read_staves>},
    {"labels", "[\"chord-degrees\"]", music<read_labels>},
    {"bars-per-line", "4", music<read_bars_per_line>},
    {"practice", "[\"One note.\", \"Another note.\"]", setting<&ExampleKeys::practice, read_texts>},
    {"build-up", "\"pairs\"",
     [](ExampleKeys& into, const Field& field) { into.build_up.set(read_choice(field, build_ups)); }},
    {"form", "{ bars = \"i7 IV7 | i7 v7\", here = \"1-2\" }", setting<&ExampleKeys::form, read_form>},
    {"neck", "{ of = \"notes\", labels = \"degrees\" }", setting<&ExampleKeys::neck, read_neck>},
    {"shapes", "[\"Am7\", \"Dm7 x535\"]", setting<&ExampleKeys::shapes, read_shapes>},
    {"vary", "1", whole<&ExampleKeys::vary, 1, static_cast<int>(limits::examples)>},
    {"blank-bars", "4", whole<&ExampleKeys::blank_bars, 1, limits::blank_bars>},
    {"hide", "[\"frets\"]", read_hide},
    {"tab", "''' … '''", read_tab},
};

std::string above_the_examples(std::string_view key) {
  if (!is_lesson_key(key) || key == "example") return {};
  return "it belongs to the lesson: write it above the first [[example]]";
}

}  // namespace

ExampleKeys read_example_keys(const TomlValue& table, const source::Files& files, source::Diagnostics& diagnostics) {
  ExampleKeys keys;
  keys.range = table.range;
  read_table<ExampleKeys>(table, rules, keys, {files, diagnostics, "an example", above_the_examples});
  return keys;
}

std::vector<std::string_view> example_key_names() {
  std::vector<std::string_view> names;
  for (const Rule<ExampleKeys>& rule : rules) names.push_back(rule.name);
  return names;
}

bool is_example_key(std::string_view name) {
  return std::any_of(std::begin(rules), std::end(rules), [&](const auto& rule) { return rule.name == name; });
}

}  // namespace fretsheaf::lesson
