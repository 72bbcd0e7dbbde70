#include "spoken/heard.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>

namespace fretsheaf::spoken::test {
namespace {

using Texts = std::vector<std::string>;

Texts split(const std::string& text, const std::string& by) {
  Texts parts;
  std::size_t at = 0;
  for (std::size_t end = 0; (end = text.find(by, at)) != std::string::npos; at = end + by.size()) {
    parts.push_back(text.substr(at, end - at));
  }
  parts.push_back(text.substr(at));
  return parts;
}

// A number at the text's start, taken off it.
std::optional<int> take_number(std::string& text) {
  int number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc()) return std::nullopt;
  text.erase(0, static_cast<std::size_t>(end - text.data()));
  return number;
}

std::optional<Rational> take_fraction(std::string& text) {
  std::string rest = text;
  const auto numerator = take_number(rest);
  if (!numerator || !rest.starts_with("/")) return std::nullopt;
  rest.erase(0, 1);
  const auto denominator = take_number(rest);
  if (!denominator || *denominator == 0) return std::nullopt;
  text = rest;
  return Rational(*numerator, *denominator);
}

std::optional<Rational> named(const std::vector<std::pair<std::string, Rational>>& names, const std::string& text) {
  for (const auto& [name, value] : names) {
    if (name == text) return value;
  }
  return std::nullopt;
}

class Listener {
 public:
  Listener(const Lexicon& lexicon, std::string& lost) : lexicon_(lexicon), lost_(lost) {}

  std::vector<std::vector<Heard>> hear(const std::string& words) {
    for (const std::string& paragraph : split(without_quotes(words), "\n\n")) {
      if (paragraph.starts_with(lexicon_.tuning)) hear_tuning(paragraph);
      if (paragraph.starts_with(lexicon_.example)) begin_example();
      hear_meter(paragraph);
      if (is_bar(paragraph)) hear_bar(paragraph);
    }
    for (std::vector<Heard>& example : examples_) std::sort(example.begin(), example.end());
    return examples_;
  }

 private:
  // What others say, in quotes, is no word about the music. Signs that would part a sentence are joined.
  std::string without_quotes(std::string text) const {
    for (std::size_t begin = 0; (begin = text.find(lexicon_.quote_begin, begin)) != std::string::npos;) {
      const std::size_t end = text.find(lexicon_.quote_end, begin + lexicon_.quote_begin.size());
      if (end == std::string::npos) break;
      text.erase(begin, end + lexicon_.quote_end.size() - begin);
    }
    for (const auto& [from, to] : lexicon_.joints) {
      for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos;) text.replace(at, from.size(), to);
    }
    return text;
  }

  bool is_bar(const std::string& paragraph) const {
    return !examples_.empty() && (paragraph.starts_with(lexicon_.bar) || paragraph.starts_with(lexicon_.pickup));
  }

  void lose(const std::string& words) { lost_ += words + "\n"; }

  // The bottom line's letter comes first.
  void hear_tuning(std::string text) {
    text.erase(0, lexicon_.tuning.size());
    while (!text.empty() && (text.back() == '.' || text.back() == '\n')) text.pop_back();
    Texts letters;
    for (const std::string& word : split(text, " ")) {
      if (word == lexicon_.flat || word == lexicon_.sharp) {
        letters.back() += " " + word;
      } else {
        letters.push_back(word);
      }
    }
    std::reverse(letters.begin(), letters.end());
    letters_ = letters;
  }

  void hear_meter(const std::string& paragraph) {
    for (std::string item : split(split(paragraph, "\n").front(), ", ")) {
      if (!item.ends_with(lexicon_.a_bar)) continue;
      item.resize(item.size() - lexicon_.a_bar.size());
      if (const auto beats = length(item)) beats_a_bar_ = *beats;
    }
  }

  void begin_example() {
    examples_.emplace_back();
    bars_.clear();
    count_ = 0;
  }

  void hear_bar(const std::string& paragraph) {
    bar_.clear();
    each_.reset();
    bool freely = false;
    int number = 0;
    for (const std::string& line : split(paragraph, "\n")) {
      for (std::string sentence : split(line, ". ")) {
        if (sentence.ends_with('.')) sentence.pop_back();
        freely = freely || sentence.ends_with(lexicon_.freely);
        hear_sentence(sentence, number);
      }
    }
    if (freely) return;
    bars_[number] = bar_;
    for (Heard& heard : bar_) {
      heard.bar = count_;
      examples_.back().push_back(heard);
    }
    ++count_;
  }

  void hear_sentence(std::string sentence, int& number) {
    if (sentence.starts_with(lexicon_.bar)) {
      sentence.erase(0, lexicon_.bar.size());
      number = take_number(sentence).value_or(-1);
    } else if (sentence.starts_with(lexicon_.each_lasts)) {
      each_ = length(sentence.substr(lexicon_.each_lasts.size()));
      if (!each_) lose(sentence);
    } else if (sentence.starts_with(lexicon_.as_bar)) {
      repeat(sentence.substr(lexicon_.as_bar.size()));
    } else if (sentence.starts_with(lexicon_.rest_of_bar)) {
      bar_.push_back({0, {0}, -1, 0, beats_a_bar_, false});
    } else if (sentence.starts_with(lexicon_.beat)) {
      const auto colon = sentence.find(": ");
      if (colon != std::string::npos) hear_onset(sentence.substr(0, colon), sentence.substr(colon + 2));
    }
  }

  // "1", "1, 2 frets lower"
  void repeat(std::string text) {
    const int number = take_number(text).value_or(-1);
    if (!bars_.contains(number)) return lose("as bar " + std::to_string(number));
    int by = 0;
    if (!text.empty()) {
      text.erase(0, 2);
      const int frets = take_number(text).value_or(0);
      const auto is = [&](const Texts& all) { return std::find(all.begin(), all.end(), text) != all.end(); };
      by = is(lexicon_.higher) ? frets : is(lexicon_.lower) ? -frets : 0;
      if (by == 0) lose(text);
    }
    bar_ = bars_[number];
    for (Heard& heard : bar_) {
      if (heard.string > 0 && heard.fret >= 0 && !heard.held) heard.fret += by;
    }
  }

  std::optional<Rational> place(std::string text) const {
    text.erase(0, lexicon_.beat.size());
    const auto number = take_number(text);
    if (!number) return std::nullopt;
    if (const auto after = named(lexicon_.after_beat, text)) return Rational(*number - 1) + *after;
    if (!text.starts_with(lexicon_.plus)) return std::nullopt;
    text.erase(0, lexicon_.plus.size());
    const auto fraction = take_fraction(text);
    return fraction && text.empty() ? std::optional(Rational(*number - 1) + *fraction) : std::nullopt;
  }

  std::optional<Rational> length(std::string text) const {
    if (const auto part = named(lexicon_.less_than_beat, text)) return part;
    std::string rest = text;
    if (const auto fraction = take_fraction(rest)) return rest == lexicon_.of_beat ? fraction : std::nullopt;
    const auto whole = take_number(rest);
    if (!whole) return std::nullopt;
    const std::string& noun = *whole == 1 ? lexicon_.beats_one : lexicon_.beats_other;
    if (!rest.starts_with(noun)) return std::nullopt;
    rest.erase(0, noun.size());
    if (const auto after = named(lexicon_.after_beats, rest)) return Rational(*whole) + *after;
    if (!rest.starts_with(lexicon_.and_part)) return std::nullopt;
    rest.erase(0, lexicon_.and_part.size());
    const auto fraction = take_fraction(rest);
    return fraction && rest.empty() ? std::optional(Rational(*whole) + *fraction) : std::nullopt;
  }

  std::optional<int> string(std::string text) const {
    if (!text.ends_with(lexicon_.string)) return std::nullopt;
    text.resize(text.size() - lexicon_.string.size());
    std::string rest = text;
    if (const auto number = take_number(rest)) return number;
    std::optional<int> found;
    for (std::size_t i = 0; i < letters_.size(); ++i) {
      if (letters_[i] != text) continue;
      if (found) return std::nullopt;
      found = static_cast<int>(i) + 1;
    }
    return found;
  }

  std::optional<int> fret(std::string text) const {
    if (text == lexicon_.open) return 0;
    if (text == lexicon_.dead) return -1;
    const auto number = take_number(text);
    for (const std::string& ordinal : lexicon_.ordinals) {
      if (number && text == ordinal + lexicon_.fret) return number;
    }
    return std::nullopt;
  }

  void hear_onset(const std::string& before, const std::string& after) {
    const std::optional<Rational> at = place(split(before, ", ").front());
    if (!at) return lose(before);
    const std::size_t first = bar_.size();
    std::vector<bool> timed;
    std::optional<Rational> common = each_;
    for (const std::string& part : split(after, "; ")) {
      const Texts items = split(part, ", ");
      std::optional<Heard> heard = note(items);
      if (!heard) heard = strum(items.front());
      if (!heard && items.front() == lexicon_.rest) heard = Heard{0, {}, -1, 0, {}, false};
      std::optional<Rational> own;
      for (const std::string& item : items) {
        if (const auto beats = length(item)) own = beats;
      }
      if (!heard) {
        if (own) common = own;
        continue;
      }
      heard->at = *at;
      if (own) heard->beats = *own;
      timed.push_back(own.has_value() || heard->held);
      bar_.push_back(*heard);
    }
    for (std::size_t i = first; i < bar_.size(); ++i) {
      if (timed[i - first]) continue;
      if (!common) lose("no length: " + after);
      bar_[i].beats = common.value_or(Rational(0));
    }
  }

  std::optional<Heard> note(const Texts& items) const {
    const auto string_number = string(items.front());
    if (!string_number) return std::nullopt;
    Heard heard;
    heard.string = *string_number;
    heard.held = std::find(items.begin(), items.end(), lexicon_.held) != items.end();
    if (heard.held) return heard;
    heard.fret = -2;
    for (const std::string& item : items) {
      if (const auto number = fret(item)) heard.fret = *number;
    }
    return heard;
  }

  std::optional<Heard> strum(const std::string& item) const {
    for (std::size_t i = 0; i < lexicon_.strums.size(); ++i) {
      if (lexicon_.strums[i] != item) continue;
      Heard heard;
      heard.fret = static_cast<int>(i);
      return heard;
    }
    return std::nullopt;
  }

  const Lexicon& lexicon_;
  std::string& lost_;
  Rational beats_a_bar_;
  Texts letters_;  // the top line's first
  std::vector<std::vector<Heard>> examples_;
  std::map<int, std::vector<Heard>> bars_;  // of this example, by number
  int count_ = 0;
  std::vector<Heard> bar_;
  std::optional<Rational> each_;
};

}  // namespace

std::vector<std::vector<Heard>> hear(const std::string& words, const Lexicon& lexicon, std::string& lost) {
  return Listener(lexicon, lost).hear(words);
}

std::string to_string(const Heard& heard) {
  return "bar " + std::to_string(heard.bar) + " at " + heard.at.to_string() + ": " + std::to_string(heard.string) +
         "/" + std::to_string(heard.fret) + (heard.held ? " held" : " for " + heard.beats.to_string());
}

}  // namespace fretsheaf::spoken::test
