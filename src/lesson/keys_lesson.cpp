#include "lesson/keys_lesson.h"

#include <algorithm>
#include <charconv>

#include "lesson/keys_example.h"
#include "lesson/limits.h"
#include "lesson/plain_signs.h"
#include "lesson/toml_syntax.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

constexpr Choices<Paper, 2> papers = {{{"a4", Paper::a4}, {"letter", Paper::letter}}};
constexpr Choices<NoteNames, 3> note_name_styles = {
    {{"letters", NoteNames::letters}, {"letters-h", NoteNames::letters_h}, {"syllables", NoteNames::syllables}}};
constexpr Choices<bool, 2> hands = {{{"right", false}, {"left", true}}};
constexpr std::array<std::string_view, 7> languages = {"en", "de", "es", "fr", "it", "nl", "pt"};

void read_title(LessonKeys& into, const Field& field) {
  auto title = read_line(field);
  if (title && title->value.find_first_not_of(" \t") == std::string::npos) {
    field.error(Code::missing_key, "the title is empty", "write title = " + std::string(field.sample));
    title.reset();
  }
  into.title.set(std::move(title));
}

void read_language(LessonKeys& into, const Field& field) {
  into.language.set({});
  const auto index = read_name(field, languages);
  if (index) into.language.set({{std::string(languages[index->value]), index->range}});
}

void read_template(LessonKeys& into, const Field& field) {
  auto name = read_line(field);
  if (name && name->value.empty()) {
    field.error(Code::unsound_value, "'template' names no template", "write template = " + std::string(field.sample));
    name.reset();
  }
  into.template_name.set(std::move(name));
}

// A scheme is written in small letters here; in capitals it is the same one (RFC 3986, section 3.1).
std::string with_small_scheme(std::string link) {
  const auto end = static_cast<std::ptrdiff_t>(std::min(link.find(':'), link.size()));
  std::transform(link.begin(), link.begin() + end, link.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return link;
}

bool is_link(std::string_view text) {
  const bool web = text.starts_with("https://") || text.starts_with("http://");
  const auto rest = text.substr(std::min(text.find(':') + 1, text.size()));
  const bool mail = text.starts_with("mailto:") && rest.find('@') != std::string_view::npos;
  const auto is_unsound = [](char c) {
    return static_cast<unsigned char>(c) <= 0x20 || c == '"' || c == '<' || c == '>' || c == 0x7F;
  };
  return (mail || (web && rest.size() > 2 && rest[2] != '/')) && std::none_of(text.begin(), text.end(), is_unsound);
}

void read_link(LessonKeys& into, const Field& field) {
  auto link = read_line(field);
  if (link && is_link(with_small_scheme(link->value))) link->value = with_small_scheme(std::move(link->value));
  if (link && !link->value.empty() && !is_link(link->value)) {
    const bool mail = link->value.find('@') != std::string::npos;
    const std::string whole = (mail ? "mailto:" : "https://") + link->value;
    const bool bare = link->value.find(':') == std::string::npos && is_link(whole);
    field.error(Code::unsound_value, shown(link->value) + " is not a link that can be printed",
                bare ? "write \"" + whole + "\"" : "a link begins with https://, http:// or mailto: and has no spaces");
    link.reset();
  }
  if (link && link->value.size() > limits::link) {
    field.error(Code::out_of_range,
                "this link has " + std::to_string(link->value.size()) + " characters, and its QR code has room for " +
                    std::to_string(limits::link),
                "write a shorter link that leads there");
    link.reset();
  }
  into.link.set(std::move(link));
}

void read_logo(LessonKeys& into, const Field& field) {
  auto logo = read_line(field);
  if (logo && !logo->value.empty()) {
    std::string lower = logo->value;
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return c >= 'A' && c <= 'Z' ? c + 32 : c; });
    if (!lower.ends_with(".png") && !lower.ends_with(".svg")) {
      field.error(Code::unsound_value, shown(logo->value) + " is neither a PNG nor an SVG file",
                  "name a file that ends in .png or .svg");
      logo.reset();
    }
  }
  into.logo.set(std::move(logo));
}

std::optional<theory::Rational> parse_ratio(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return {};
  int first = 0;
  int second = 0;
  const char* const middle = text.data() + colon;
  const char* const end = text.data() + text.size();
  const auto a = std::from_chars(text.data(), middle, first);
  const auto b = std::from_chars(middle + 1, end, second);
  if (a.ec != std::errc() || b.ec != std::errc() || a.ptr != middle || b.ptr != end) return {};
  constexpr int most = 12;
  if (second < 1 || first <= second || first > most) return {};
  return theory::Rational(first, second);
}

void read_swing_ratio(LessonKeys& into, const Field& field) {
  into.swing_ratio.set({});
  const auto text = read_text(field);
  if (!text) return;
  if (const auto ratio = parse_ratio(text->value)) {
    into.swing_ratio.set({{*ratio, text->range}});
  } else {
    field.error(Code::unsound_value, shown(text->value) + " is not a swing ratio",
                "write the long part, a colon and the short part, whole numbers up to 12, as in \"2:1\" or \"3:2\"");
  }
}

void read_instrument(LessonKeys& into, const Field& field) {
  into.instrument.set({});
  const auto names = fretboard::instrument_names();
  const auto index = read_name(field, names);
  if (index) into.instrument.set({{fretboard::find_instrument(names[index->value]), index->range}});
}

std::optional<theory::Pitch> read_open_string(const Field& item) {
  const auto text = read_text(item);
  if (!text) return {};
  const auto pitch = theory::parse_pitch(text->value);
  if (!pitch) {
    const auto known = [](std::string_view name) { return theory::parse_pitch(name).has_value(); };
    item.error(
        Code::unsound_value, shown(text->value) + " is not a pitch",
        plain_signs_help(text->value, known).value_or("write a note and its octave, as in \"E1\"; middle C is C4"));
    return {};
  }
  if (pitch->midi() >= limits::lowest_string && pitch->midi() <= limits::highest_string) return pitch;
  item.error(Code::out_of_range, "no string is tuned to " + shown(text->value), "write a pitch from C0 to G6");
  return {};
}

void read_tuning(LessonKeys& into, const Field& field) {
  into.tuning.set({});
  if (field.value.kind != TomlValue::Kind::list || field.value.header) return wrong_type(field, "a list of pitches");
  const auto count = field.value.items.size();
  if (count < 1 || count > limits::strings) {
    return field.error(Code::out_of_range, "'tuning' has " + std::to_string(count) + " strings",
                       "write from 1 to 12 pitches, the bottom line of the tab first");
  }
  std::vector<theory::Pitch> tuning;
  for (const TomlValue& item : field.value.items) {
    if (const auto pitch = read_open_string(field.with(item))) tuning.push_back(*pitch);
  }
  if (tuning.size() == count) into.tuning.set({{std::move(tuning), field.value.range}});
}

// Whether a text names keys, a comma between two; a lesson's mode may be left out of a further key.
bool are_keys(std::string_view text) {
  while (true) {
    const std::size_t end = std::min(text.find(','), text.size());
    std::string_view key = text.substr(0, end);
    key.remove_prefix(std::min(key.find_first_not_of(' '), key.size()));
    key = key.substr(0, key.find_last_not_of(' ') + 1);
    if (!theory::parse_key(key, theory::Mode::major)) return false;
    if (end == text.size()) return true;
    text.remove_prefix(end + 1);
  }
}

// `also-in = "all"` is what `["all"]` is.
void read_also_in(LessonKeys& into, const Field& field) {
  if (field.value.kind == TomlValue::Kind::text && field.value.text == "all") {
    into.also_in.set({{{{field.value.text, field.value.range}}, field.value.range}});
  } else if (field.value.kind == TomlValue::Kind::text) {
    into.also_in.set({});
    if (are_keys(field.value.text)) return wrong_type(field, "a list of keys, or \"all\"", ",");
    field.error(Code::unknown_value, "'also-in' cannot be " + shown(field.value.text),
                "write also-in = \"all\" for every key, or a list: also-in = " + std::string(field.sample));
  } else {
    into.also_in.set(read_texts(field));
  }
}

void read_examples(LessonKeys& into, const Field& field) {
  into.examples_written = true;
  using Kind = TomlValue::Kind;
  const auto is_table = [](const TomlValue& item) { return item.kind == Kind::table; };
  if (field.value.kind == Kind::table && field.value.header) {
    field.error(Code::wrong_type, example_heading.message, example_heading.help);
  } else if (field.value.kind != Kind::list ||
             !std::all_of(field.value.items.begin(), field.value.items.end(), is_table)) {
    field.error(Code::wrong_type, "'example' is not a key with a value",
                "write [[example]] on a line of its own, and the keys of the example under it");
  } else if (field.value.items.size() > limits::examples) {
    field.with(field.value.items[limits::examples])
        .error(Code::out_of_range,
               "this is example " + std::to_string(limits::examples + 1) + ", and a lesson has at most " +
                   std::to_string(limits::examples),
               "split it into several lessons");
  } else {
    into.examples = &field.value;
  }
}

template <auto member>
void line(LessonKeys& into, const Field& field) {
  (into.*member).set(read_line(field));
}
template <auto member>
void truth(LessonKeys& into, const Field& field) {
  (into.*member).set(read_truth(field));
}
template <auto member, int least, int most>
void whole(LessonKeys& into, const Field& field) {
  (into.*member).set(read_whole(field, least, most));
}
template <auto read>
void music(LessonKeys& into, const Field& field) {
  read(into.music, field);
}

// In the order of the format's description; [defaults] have all between the first and the last.
constexpr Rule<LessonKeys> rules[] = {
    {"title", "\"Low tide vamp\"", read_title},
    {"subtitle", "\"A groove in four bars\"", line<&LessonKeys::subtitle>},
    {"teacher", "\"Eelgrass Strings\"", line<&LessonKeys::teacher>},
    {"series", "\"Tuesday bass class\"", line<&LessonKeys::series>},
    {"number", "7", whole<&LessonKeys::number, 0, 9999>},
    {"level", "\"early intermediate\"", line<&LessonKeys::level>},
    {"key", "\"D dorian\"", music<read_key>},
    {"also-in", "[\"E dorian\", \"A dorian\"]", read_also_in},
    {"meter", "\"4/4\"", music<read_meter>},
    {"feel", "\"swing\"", music<read_feel>},
    {"swing-ratio", "\"2:1\"", read_swing_ratio},
    {"instrument", "\"bass\"", read_instrument},
    {"tuning", "[\"E1\", \"A1\", \"D2\", \"G2\"]", read_tuning},
    {"frets", "24", whole<&LessonKeys::frets, 1, limits::frets>},
    {"capo", "2", whole<&LessonKeys::capo, 0, 35>},
    {"staves", "[\"slash\", \"tab\"]", music<read_staves>},
    {"labels", "[\"chord-degrees\"]", music<read_labels>},
    {"bars-per-line", "4", music<read_bars_per_line>},
    {"template", "\"music-stand\"", read_template},
    {"paper", "\"a4\"", [](LessonKeys& into, const Field& field) { into.paper.set(read_choice(field, papers)); }},
    {"language", "\"en\"", read_language},
    {"note-names", "\"letters\"",
     [](LessonKeys& into, const Field& field) { into.note_names.set(read_choice(field, note_name_styles)); }},
    {"link", "\"https://example.org/tide\"", read_link},
    {"logo", "\"lantern.svg\"", read_logo},
    {"logo-alt", "\"A lantern\"", line<&LessonKeys::logo_alt>},
    {"handed", "\"left\"",
     [](LessonKeys& into, const Field& field) { into.left_handed.set(read_choice(field, hands)); }},
    {"name-line", "true", truth<&LessonKeys::name_line>},
    {"copyright", "\"© 2026 Eelgrass Strings\"", line<&LessonKeys::copyright>},
    {"intro", "\"\"\"Some words.\"\"\"",
     [](LessonKeys& into, const Field& field) { into.intro.set(read_text(field)); }},
    {"practice", "[\"One note.\", \"Another note.\"]",
     [](LessonKeys& into, const Field& field) { into.practice.set(read_texts(field)); }},
    {"practice-log", "6", whole<&LessonKeys::practice_log, 0, limits::log_rows>},
    {"example", "", read_examples},
};

std::string in_an_example(std::string_view key) {
  if (!is_example_key(key)) return {};
  return "it belongs to an example: write it under an [[example]]";
}

std::string without_heading(std::string_view key) {
  if (!is_example_key(key)) return {};
  return "here an example begins: write [[example]] on a line of its own above it";
}

std::string not_a_default(std::string_view key) {
  if (key == "title" || is_example_key(key)) return "it belongs in the lesson's own file";
  return {};
}

}  // namespace

void read_lesson_keys(const TomlValue& table, LessonKeys& into, const source::Files& files,
                      source::Diagnostics& diagnostics) {
  TableContext context{files, diagnostics, "a lesson", in_an_example};
  if (find(table, "example") == nullptr) {
    // Keys of an example without its heading: one slip, and there is an example.
    const auto forgotten = [](const TomlEntry& entry) {
      return is_example_key(entry.key) && !is_lesson_key(entry.key);
    };
    into.examples_written = std::any_of(table.entries.begin(), table.entries.end(), forgotten);
    context.elsewhere = without_heading;
    context.elsewhere_once = true;
  }
  read_table<LessonKeys>(table, rules, into, context);
}

void read_default_keys(const TomlValue& table, LessonKeys& into, const source::Files& files,
                       source::Diagnostics& diagnostics) {
  const std::span<const Rule<LessonKeys>> all = rules;
  read_table<LessonKeys>(table, all.subspan(1, all.size() - 2), into,
                         {files, diagnostics, "[defaults]", not_a_default});
}

std::vector<std::string_view> lesson_key_names() {
  std::vector<std::string_view> names;
  for (const Rule<LessonKeys>& rule : rules) names.push_back(rule.name);
  return names;
}

bool is_lesson_key(std::string_view name) {
  return std::any_of(std::begin(rules), std::end(rules), [&](const auto& rule) { return rule.name == name; });
}

}  // namespace fretsheaf::lesson
