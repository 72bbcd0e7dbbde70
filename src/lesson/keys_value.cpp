#include "lesson/keys_value.h"

#include <algorithm>

#include "lesson/limits.h"
#include "lesson/toml_string.h"
#include "source/nearest.h"
#include "source/utf8.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

std::string_view kind_words(const TomlValue& value) {
  switch (value.kind) {
    case TomlValue::Kind::text:
      return "a text";
    case TomlValue::Kind::whole:
      return "a whole number";
    case TomlValue::Kind::decimal:
      return "a number with a decimal point";
    case TomlValue::Kind::truth:
      return value.truth ? "true" : "false";
    case TomlValue::Kind::date:
      return "a date or a time";
    case TomlValue::Kind::list:
      return "a list";
    case TomlValue::Kind::table:
      break;
  }
  return "a table";
}

std::string quoted(std::string_view name) {
  return "'" + std::string(name) + "'";
}

// A value as it is written, where it is short enough to be said back.
std::optional<std::string> as_written(const Field& field, const TomlValue& value) {
  constexpr std::size_t most = 80;
  const Range range = value.range;
  if (range.end - range.begin > most) return {};
  std::string bytes = field.files[range.file].bytes().substr(range.begin, range.end - range.begin);
  if (bytes.find('\n') != std::string::npos) return {};
  return bytes;
}

// `"notes", "counts"` of "notes, counts": the words between the separators.
std::string quoted_words(std::string_view text, std::string_view separators) {
  std::string list;
  for (std::size_t at = text.find_first_not_of(separators); at != std::string_view::npos;
       at = text.find_first_not_of(separators, at)) {
    std::string_view word = text.substr(at, text.find_first_of(separators, at) - at);
    at += word.size();
    word = word.substr(0, word.find_last_not_of(' ') + 1);
    word.remove_prefix(std::min(word.find_first_not_of(' '), word.size()));
    list += (list.empty() ? "\"" : ", \"") + std::string(word) + "\"";
  }
  return list;
}

// `separators` are what may stand between the items where they are written as one text.
std::optional<std::string> as_list(const Field& field, std::string_view separators) {
  const std::string& text = field.value.text;
  const auto written = as_written(field, field.value);
  if (!written || text.empty()) return {};
  const bool plain = !separators.empty() && text.find_first_of("\"\\") == std::string::npos;
  return "[" + (plain ? quoted_words(text, separators) : *written) + "]";
}

bool is_figures(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

// The value in the form that the key wants, where that can be told from what is written.
std::optional<std::string> in_form(const Field& field, std::optional<std::string_view> separators) {
  const TomlValue& value = field.value;
  const bool wants_list = field.sample.starts_with('[') && !field.item;
  if (value.kind == TomlValue::Kind::text && wants_list) {
    return separators ? as_list(field, *separators) : std::nullopt;
  }
  if (value.kind == TomlValue::Kind::text && is_figures(field.sample) && is_figures(value.text)) {
    return as_written(field, value) ? std::optional(value.text) : std::nullopt;
  }
  const bool one_text = value.kind == TomlValue::Kind::list && value.items.size() == 1 &&
                        value.items.front().kind == TomlValue::Kind::text;
  if (one_text && field.sample.starts_with('"')) return as_written(field, value.items.front());
  return {};
}

}  // namespace

Range Field::place(std::size_t begin, std::size_t end) const {
  return place_in_text(files[value.range.file], value.range, begin, end);
}

std::string one_of(std::span<const std::string_view> names, std::string_view last) {
  std::string result;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) result += i + 1 == names.size() ? " " + std::string(last) + " " : ", ";
    result += names[i];
  }
  return result;
}

std::string suggestion(std::string_view word, std::span<const std::string_view> known, std::string otherwise) {
  const std::string near = source::nearest(word, known);
  return near.empty() ? std::move(otherwise) : "did you mean " + quoted(near) + "?";
}

void wrong_type(const Field& field, std::string_view wanted, std::optional<std::string_view> separators) {
  const std::string subject = field.item ? "every item of " + quoted(field.name) : quoted(field.name);
  field.error(
      Code::wrong_type, subject + " must be " + std::string(wanted) + ", not " + std::string(kind_words(field.value)),
      "write " + std::string(field.name) + " = " + in_form(field, separators).value_or(std::string(field.sample)));
}

namespace {

// Reports a text of too many characters, where it goes beyond the last.
bool too_long(const Field& field, const std::string& text, std::size_t most) {
  if (text.size() <= most) return false;
  std::size_t end = 0;
  for (std::size_t count = 0; end < text.size() && count < most; ++count) {
    end += source::decode_utf8(std::string_view(text).substr(end)).length;
  }
  if (end == text.size()) return false;
  const std::size_t length = source::decode_utf8(std::string_view(text).substr(end)).length;
  field.diagnostics.error(Code::out_of_range, field.place(end, end + length),
                          quoted(field.name) + " has more than " + std::to_string(most) + " characters",
                          "shorten it, or write a part of it elsewhere");
  return true;
}

}  // namespace

std::optional<Located<std::string>> read_text(const Field& field) {
  if (field.value.kind != TomlValue::Kind::text) {
    wrong_type(field, "a text in quotes");
    return {};
  }
  if (too_long(field, field.value.text, limits::text)) return {};
  return Located<std::string>{field.value.text, field.value.range};
}

std::optional<Located<std::string>> read_line(const Field& field) {
  const bool one_line = field.value.text.substr(0, limits::text).find('\n') == std::string::npos;
  if (field.value.kind == TomlValue::Kind::text && one_line && too_long(field, field.value.text, limits::line))
    return {};
  auto text = read_text(field);
  if (!text) return {};
  // A text between """ and """ ends in a line end where its closing quotes stand on a line of their own.
  while (text->value.ends_with('\n')) text->value.pop_back();
  const auto line_end = text->value.find('\n');
  // No font has a tab: between words it is a space.
  std::replace(text->value.begin(), text->value.end(), '\t', ' ');
  // Of a text whose quotes stand on lines of their own, the rest is the title.
  if (line_end == std::string::npos && too_long(field, text->value, limits::line)) return {};
  if (line_end == std::string::npos) return text;
  field.diagnostics.error(Code::unsound_value, field.place(line_end, line_end + 1),
                          quoted(field.name) + " has more than one line", "write it on one line");
  return {};
}

std::optional<Located<int>> read_whole(const Field& field, int least, int most) {
  if (field.value.kind != TomlValue::Kind::whole) {
    wrong_type(field, "a whole number without quotes");
    return {};
  }
  if (field.value.whole < least || field.value.whole > most) {
    field.error(Code::out_of_range, quoted(field.name) + " cannot be " + std::to_string(field.value.whole),
                "write a whole number from " + std::to_string(least) + " to " + std::to_string(most));
    return {};
  }
  return Located<int>{static_cast<int>(field.value.whole), field.value.range};
}

std::optional<Located<bool>> read_truth(const Field& field) {
  if (field.value.kind != TomlValue::Kind::truth) {
    wrong_type(field, "true or false, without quotes");
    return {};
  }
  return Located<bool>{field.value.truth, field.value.range};
}

bool too_many(const Field& field) {
  const auto& items = field.value.items;
  if (items.size() <= limits::items) return false;
  field.diagnostics.error(Code::out_of_range, items[limits::items].range,
                          quoted(field.name) + " has more than " + std::to_string(limits::items) + " items",
                          "write at most so many");
  return true;
}

std::optional<Located<std::vector<Prose>>> read_texts(const Field& field) {
  if (field.value.kind != TomlValue::Kind::list || field.value.header) {
    wrong_type(field, "a list of texts", "");
    return {};
  }
  if (too_many(field)) return {};
  Located<std::vector<Prose>> result{{}, field.value.range};
  bool sound = true;
  for (const TomlValue& item : field.value.items) {
    auto text = read_text(field.with(item));
    sound = sound && text;
    if (text) result.value.push_back(std::move(*text));
  }
  if (!sound) return {};
  return result;
}

namespace {

// "did you mean 'chord-degrees' or 'key-degrees'?" of "degrees", in the plural or not; empty where nothing has kinds.
std::string kinds_of(const std::string& word, std::span<const std::string_view> names) {
  std::string kinds;
  for (const std::string_view name : names) {
    if (!name.ends_with("-" + word) && !name.ends_with("-" + word + "s")) continue;
    kinds += (kinds.empty() ? "did you mean " : " or ") + quoted(name);
  }
  return kinds.empty() ? kinds : kinds + "?";
}

}  // namespace

std::optional<Located<std::size_t>> read_name(const Field& field, std::span<const std::string_view> names) {
  const auto text = read_text(field);
  if (!text) return {};
  const auto found = std::find(names.begin(), names.end(), text->value);
  if (found != names.end()) return Located<std::size_t>{static_cast<std::size_t>(found - names.begin()), text->range};
  const std::string kinds = kinds_of(text->value, names);
  field.error(Code::unknown_value, quoted(field.name) + " cannot be " + shown(text->value),
              kinds.empty() ? suggestion(text->value, names, "it can be " + one_of(names)) : kinds);
  return {};
}

std::optional<Located<std::vector<std::size_t>>> read_names(const Field& field,
                                                            std::span<const std::string_view> names) {
  if (field.value.kind != TomlValue::Kind::list || field.value.header) {
    wrong_type(field, "a list", ", ");
    return {};
  }
  if (too_many(field)) return {};
  Located<std::vector<std::size_t>> result{{}, field.value.range};
  bool sound = true;
  for (const TomlValue& item : field.value.items) {
    const auto index = read_name(field.with(item), names);
    sound = sound && index;
    if (!index) continue;
    if (std::find(result.value.begin(), result.value.end(), index->value) != result.value.end()) {
      field.with(item).error(Code::duplicate_value,
                             quoted(names[index->value]) + " stands twice in " + quoted(field.name),
                             "keep one of them");
      sound = false;
      continue;
    }
    result.value.push_back(index->value);
  }
  if (!sound) return {};
  return result;
}

std::string unknown_key(const TableContext& context, const TomlEntry& entry, std::span<const std::string_view> known) {
  const std::string elsewhere = context.elsewhere == nullptr ? std::string() : context.elsewhere(entry.key);
  std::string meant = elsewhere.empty() ? source::nearest(entry.key, known) : std::string();
  std::string help = elsewhere;
  if (help.empty())
    help = meant.empty() ? "its keys are " + one_of(known, "and") : "did you mean " + quoted(meant) + "?";
  context.diagnostics.error(Code::unknown_key, entry.key_range,
                            std::string(context.owner) + " has no key " + shown(entry.key), std::move(help));
  return meant;
}

}  // namespace fretsheaf::lesson
