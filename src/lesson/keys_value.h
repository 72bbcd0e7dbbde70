#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lesson/lesson.h"
#include "lesson/limits.h"
#include "lesson/shown.h"
#include "lesson/toml_tree.h"
#include "source/diagnostic.h"
#include "source/text.h"

// The values of keys, read and checked one by one. Each reader reports what is wrong and then returns nothing.
namespace fretsheaf::lesson {

// What a file says for a key. `written` also where it says nothing sound, so that no later rule complains of a gap.
template <typename T>
struct Setting {
  bool written = false;
  std::optional<Located<T>> value;

  void set(std::optional<Located<T>> found) {
    written = true;
    value = std::move(found);
  }
  bool wrong() const { return written && !value; }
  explicit operator bool() const { return value.has_value(); }
  const T& operator*() const { return value->value; }
  const T* operator->() const { return &value->value; }
  T value_or(T other) const { return value ? value->value : std::move(other); }
  Range range() const { return value ? value->range : Range{}; }
};

// A key with its value, and what is needed to speak about it.
struct Field {
  const source::Files& files;
  source::Diagnostics& diagnostics;
  std::string_view name;    // "labels"
  std::string_view sample;  // a value that it may have: `["notes"]`
  const TomlValue& value;
  bool item = false;  // one item of the key's list

  Field with(const TomlValue& other) const { return {files, diagnostics, name, sample, other, true}; }
  void error(source::Code code, std::string message, std::string help = {}) const {
    diagnostics.error(code, value.range, std::move(message), std::move(help));
  }
  // The place of [begin, end) of a text value.
  Range place(std::size_t begin, std::size_t end) const;
};

// "a, b or c"; with another word before the last.
std::string one_of(std::span<const std::string_view> names, std::string_view last = "or");

// "did you mean 'swing'?", else `otherwise`.
std::string suggestion(std::string_view word, std::span<const std::string_view> known, std::string otherwise);

// The help has the value in the form that the key wants, where that can be told. A text for a list can become one where
// `separators` are said: what may stand between its items.
void wrong_type(const Field& field, std::string_view wanted, std::optional<std::string_view> separators = {});

// Reports a list of more items than any has.
bool too_many(const Field& field);

std::optional<Located<std::string>> read_text(const Field& field);
// A text of one line.
std::optional<Located<std::string>> read_line(const Field& field);
std::optional<Located<int>> read_whole(const Field& field, int least, int most);
std::optional<Located<bool>> read_truth(const Field& field);
// A list of texts, each with its own place.
std::optional<Located<std::vector<Prose>>> read_texts(const Field& field);

// The index of the text among the names.
std::optional<Located<std::size_t>> read_name(const Field& field, std::span<const std::string_view> names);
// The same for a list, in which no name may stand twice.
std::optional<Located<std::vector<std::size_t>>> read_names(const Field& field,
                                                            std::span<const std::string_view> names);

template <typename T, std::size_t count>
using Choices = std::array<std::pair<std::string_view, T>, count>;

template <typename T, std::size_t count>
std::array<std::string_view, count> names_of(const Choices<T, count>& choices) {
  std::array<std::string_view, count> names;
  for (std::size_t i = 0; i < count; ++i) names[i] = choices[i].first;
  return names;
}

template <typename T, std::size_t count>
std::optional<Located<T>> read_choice(const Field& field, const Choices<T, count>& choices) {
  const auto found = read_name(field, names_of(choices));
  if (!found) return {};
  return Located<T>{choices[found->value].second, found->range};
}

template <typename T, std::size_t count>
std::optional<Located<std::vector<T>>> read_choices(const Field& field, const Choices<T, count>& choices) {
  const auto found = read_names(field, names_of(choices));
  if (!found) return {};
  Located<std::vector<T>> result{{}, found->range};
  for (const std::size_t index : found->value) result.value.push_back(choices[index].second);
  return result;
}

// A key of a table: its name, a sample of what it may hold, and how its value is read into a T.
template <typename T>
struct Rule {
  std::string_view name;
  std::string_view sample;
  void (*read)(T& into, const Field& field);
};

struct TableContext {
  const source::Files& files;
  source::Diagnostics& diagnostics;
  std::string_view owner;                          // "a lesson", "'tempo'"
  std::string (*elsewhere)(std::string_view key);  // help for a key that belongs somewhere else, or empty
  bool elsewhere_once = false;                     // said of the first such key alone
};

// Reports a key without a rule and returns the one that it was most probably meant to be, or nothing.
std::string unknown_key(const TableContext& context, const TomlEntry& entry, std::span<const std::string_view> known);

template <typename T>
const Rule<T>* find_rule(std::span<const Rule<T>> rules, std::string_view name) {
  for (const Rule<T>& rule : rules) {
    if (rule.name == name) return &rule;
  }
  return nullptr;
}

// Reads every key of a table by its rule. A key without one is reported with the nearest that has, and is then read as
// that: its value may be wrong too, and nothing is missing that is only misspelt.
template <typename T>
void read_table(const TomlValue& table, std::span<const Rule<T>> rules, T& into, const TableContext& context) {
  std::vector<std::string_view> known;
  for (const Rule<T>& rule : rules) known.push_back(rule.name);
  std::size_t unknown = 0;
  bool said_elsewhere = false;
  for (const TomlEntry& entry : table.entries) {
    const Rule<T>* rule = find_rule(rules, entry.key);
    if (rule == nullptr && context.elsewhere_once && !context.elsewhere(entry.key).empty()) {
      if (std::exchange(said_elsewhere, true)) continue;
    }
    if (rule == nullptr && ++unknown <= limits::unknown_keys) {
      const std::string meant = unknown_key(context, entry, known);
      rule = find(table, meant) == nullptr ? find_rule(rules, meant) : nullptr;
    }
    if (rule != nullptr) {
      rule->read(into, {context.files, context.diagnostics, rule->name, rule->sample, entry.value});
    }
  }
}

}  // namespace fretsheaf::lesson
