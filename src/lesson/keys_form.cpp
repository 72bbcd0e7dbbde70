#include <charconv>
#include <tuple>

#include "lesson/keys_example.h"
#include "lesson/limits.h"
#include "lesson/plain_signs.h"
#include "lesson/toml_string.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

struct FormKeys {
  Setting<std::string> bars;
  std::vector<FormBar> chart;
  Setting<std::pair<int, int>> here;
  Setting<bool> write_out;
};

// The chords of one bar, a comma between two.
std::optional<FormBar> read_bar(const Field& field, const TextPlaces& places, std::size_t begin,
                                std::string_view word) {
  FormBar bar;
  bar.range = places.range(begin, begin + word.size());
  for (std::size_t at = 0; at <= word.size();) {
    const auto comma = std::min(word.find(',', at), word.size());
    const auto name = word.substr(at, comma - at);
    const auto chord = theory::parse_chord(name);
    if (!chord) {
      field.diagnostics.error(
          Code::unsound_value, places.range(begin + at, begin + std::max(comma, at + 1)),
          name.empty() ? "a chord is missing beside this ','" : shown(name) + " is not a chord",
          chord_signs_help(name).value_or(
              "write chords as in \"Dm7,G7 | i7\": a space between bars, a ',' in a bar, a '|' where a "
              "line of the chart ends"));
      return {};
    }
    if (bar.chords.size() == limits::form_chords) {
      field.diagnostics.error(
          Code::out_of_range, places.range(begin + at, begin + comma),
          "this is chord " + std::to_string(limits::form_chords + 1) + " of one bar of the form",
          "write at most " + std::to_string(limits::form_chords) + " in a bar; a space begins the next");
      return {};
    }
    bar.chords.push_back(*chord);
    at = comma + 1;
  }
  return bar;
}

constexpr std::string_view sign_marks = "|:";

// Reads the bars of a form and the signs between them.
class ChartReader {
 public:
  explicit ChartReader(const Field& field, std::string_view text)
      : field_(field), places_(field.files[field.value.range.file], field.value.range), text_(text) {}

  // nullopt after an error.
  std::optional<std::vector<FormBar>> read() {
    const std::string between = std::string(" \t\n") + std::string(sign_marks);
    for (std::size_t at = skip(0); at < text_.size(); at = skip(at)) {
      const bool sign = sign_marks.find(text_[at]) != std::string_view::npos;
      const auto end =
          std::min(sign ? text_.find_first_not_of(sign_marks, at) : text_.find_first_of(between, at), text_.size());
      if (sign) {
        read_sign(at, end);
      } else {
        read_word(at, end);
      }
      at = end;
    }
    if (open_) error(*open_, *open_ + 2, "this repeat is not closed", "write :| after its last bar");
    if (!sound_) return std::nullopt;
    return std::move(chart_);
  }

 private:
  std::size_t skip(std::size_t at) const { return std::min(text_.find_first_not_of(" \t\n", at), text_.size()); }

  void error(std::size_t begin, std::size_t end, const std::string& message, const std::string& help) {
    field_.diagnostics.error(Code::unsound_value, places_.range(begin, end), message, help);
    sound_ = false;
  }

  void read_sign(std::size_t begin, std::size_t end) {
    const std::string_view sign = text_.substr(begin, end - begin);
    begins_line_ = true;
    if (sign == "|" || sign == "||") return;
    const bool closes = sign == ":|" || sign == ":|:";
    const bool opens = sign == "|:" || sign == ":|:";
    if (!closes && !opens) {
      open_.reset();
      return error(begin, end, shown(sign) + " is no sign between the bars of a form",
                   "write |, or |: and :| around what is repeated");
    }
    if (closes && chart_.empty()) {
      return error(begin, end, "there is no bar before this ':|' to repeat", "write it after the last bar of a repeat");
    }
    if (closes && begins_repeat_) {
      error(begin, end, "there is no bar inside the repeat that ends here", "write its chords before this sign");
    }
    if (opens && !closes && open_) {
      return error(begin, end, "this repeat begins inside another one", "write :|: where one ends and the next begins");
    }
    if (closes) chart_.back().repeat_end = true;
    open_.reset();
    if (opens) open_ = end - 2;
    begins_repeat_ = opens;
  }

  void read_word(std::size_t begin, std::size_t end) {
    const std::string_view word = text_.substr(begin, end - begin);
    std::optional<FormBar> bar;
    if (word != "%") {
      bar = read_bar(field_, places_, begin, word);
      sound_ = sound_ && bar;
    } else if (chart_.empty()) {
      error(begin, end, "there is no bar before this '%' to repeat", "write the first bar's chord");
    } else {
      bar = FormBar{chart_.back().chords, false, false, false, true, places_.range(begin, end)};
    }
    // One that could not be read is a bar too.
    if (!bar && !sound_) chart_.emplace_back();
    if (bar) {
      bar->begins_line = begins_line_;
      bar->repeat_begin = begins_repeat_;
      chart_.push_back(std::move(*bar));
    }
    begins_line_ = begins_repeat_ = false;
  }

  const Field& field_;
  TextPlaces places_;
  std::string_view text_;
  std::vector<FormBar> chart_;
  bool sound_ = true;
  bool begins_line_ = true;
  bool begins_repeat_ = false;
  std::optional<std::size_t> open_;  // where a repeat begins that has no end so far
};

void read_bars(FormKeys& into, const Field& field) {
  into.bars.set({});
  const auto text = read_text(field);
  if (!text) return;
  auto chart = ChartReader(field, text->value).read();
  if (!chart) return;
  into.chart = std::move(*chart);
  if (into.chart.empty() || into.chart.size() > limits::bars) {
    return field.error(Code::out_of_range,
                       into.chart.empty() ? std::string("the form has no bars")
                                          : "the form has more than " + std::to_string(limits::bars) + " bars",
                       "write chords with a space between bars, as in \"i7 IV7 | i7 v7\"");
  }
  into.bars.set(text);
}

std::optional<std::pair<int, int>> parse_range(std::string_view text) {
  int first = 0;
  int last = 0;
  const char* const end = text.data() + text.size();
  const auto a = std::from_chars(text.data(), end, first);
  if (a.ec != std::errc() || first < 0) return {};
  if (a.ptr == end) return std::pair{first, first};
  if (*a.ptr != '-') return {};
  const auto b = std::from_chars(a.ptr + 1, end, last);
  if (b.ec != std::errc() || b.ptr != end || last < first) return {};
  return std::pair{first, last};
}

void read_here(FormKeys& into, const Field& field) {
  into.here.set({});
  const auto text = read_text(field);
  if (!text) return;
  const auto bars = parse_range(text->value);
  if (bars && bars->first >= 1) {
    into.here.set({{*bars, text->range}});
  } else {
    field.error(Code::unsound_value, shown(text->value) + " does not name bars of the form",
                "write the first and the last, counted from 1, as in \"1-4\"");
  }
}

constexpr Rule<FormKeys> rules[] = {
    {"bars", "\"i7 IV7 | i7 v7\"", read_bars},
    {"here", "\"1-4\"", read_here},
    {"write-out", "true", [](FormKeys& into, const Field& field) { into.write_out.set(read_truth(field)); }},
};

bool check(const FormKeys& keys, const Field& field) {
  if (!keys.bars.written) {
    field.error(Code::missing_key, "'form' has no 'bars'", "write form = " + std::string(field.sample));
  }
  if (!keys.bars || keys.here.wrong() || keys.write_out.wrong()) return false;
  const auto count = static_cast<int>(keys.chart.size());
  if (keys.here && keys.here->second > count) {
    field.diagnostics.error(Code::out_of_range, keys.here.range(),
                            "'here' goes to bar " + std::to_string(keys.here->second) + ", and the form has " +
                                std::to_string(count) + (count == 1 ? " bar" : " bars"),
                            "bars of the form are counted from 1");
    return false;
  }
  if (keys.write_out.value_or(false) && !keys.here) {
    field.error(Code::missing_key, "'form' is to be written out and does not say where this example stands in it",
                "write here = \"1-4\" with its bars");
    return false;
  }
  return true;
}

}  // namespace

std::optional<Located<Form>> read_form(const Field& field) {
  if (field.value.kind != TomlValue::Kind::table) {
    wrong_type(field, "a table");
    return {};
  }
  FormKeys keys;
  read_table<FormKeys>(field.value, rules, keys, {field.files, field.diagnostics, "'form'", nullptr});
  if (!check(keys, field)) return {};
  Form form;
  form.bars = *keys.bars.value;
  form.chart = std::move(keys.chart);
  if (keys.here) std::tie(form.here_first, form.here_last) = *keys.here;
  form.here_range = keys.here.range();
  form.write_out = keys.write_out.value_or(false);
  form.range = field.value.range;
  return Located<Form>{std::move(form), field.value.range};
}

}  // namespace fretsheaf::lesson
