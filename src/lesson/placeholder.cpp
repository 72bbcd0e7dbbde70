#include "lesson/placeholder.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "lesson/plain_signs.h"
#include "lesson/shown.h"
#include "source/nearest.h"
#include "theory/chord.h"
#include "theory/degree.h"

namespace fretsheaf::lesson {
namespace {

using Parsed = std::variant<std::string, Placeholder, PlaceholderProblem>;

constexpr std::array<std::string_view, 6> known_words = {"key", "degree", "chord", "note", "place", "tempo"};

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<int> whole_number(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || text.empty() || text.front() == '-') return {};
  return value;
}

// "3.2" or "2:3.2"
std::optional<StruckNote> parse_struck(std::string_view text) {
  StruckNote result;
  if (const auto colon = text.find(':'); colon != std::string_view::npos) {
    result.example = whole_number(text.substr(0, colon));
    if (!result.example) return {};
    text.remove_prefix(colon + 1);
  }
  const auto dot = text.find('.');
  if (dot == std::string_view::npos) return {};
  const auto bar = whole_number(text.substr(0, dot));
  const auto note = whole_number(text.substr(dot + 1));
  if (!bar || !note) return {};
  result.bar = *bar;
  result.note = *note;
  return result;
}

PlaceholderProblem wrong(std::string_view braces, std::string_view what, std::string_view help) {
  return {shown(braces) + " " + std::string(what), std::string(help)};
}

Parsed parse_key_word(std::string_view braces, std::string_view rest) {
  if (!rest.empty()) return wrong(braces, "has something after 'key'", "write {{key}}");
  return Placeholder(KeyPlaceholder{});
}

Parsed parse_degree_word(std::string_view braces, std::string_view rest) {
  if (const auto degree = theory::parse_degree(rest)) return Placeholder(DegreePlaceholder{*degree});
  const auto known = [](std::string_view name) { return theory::parse_degree(name).has_value(); };
  return wrong(braces, "does not name a degree",
               plain_signs_help(rest, known, "{{degree ", "}}").value_or("write one as in {{degree b3}}, from 1 to 7"));
}

Parsed parse_chord_word(std::string_view braces, std::string_view rest) {
  if (const auto chord = theory::parse_chord(rest)) return Placeholder(ChordPlaceholder{*chord});
  return wrong(braces, "does not name a chord",
               chord_signs_help(rest, "{{chord ", "}}")
                   .value_or("write a numeral or a symbol, as in {{chord V7}} or {{chord Am7}}"));
}

template <typename Kind>
Parsed parse_struck_word(std::string_view braces, std::string_view word, std::string_view rest) {
  const auto struck = parse_struck(rest);
  const std::string name(word);
  if (!struck) {
    return wrong(braces, "does not say which note",
                 "write the bar, a dot and the note's number: {{" + name + " 3.2}} is the 2nd note of bar 3, {{" +
                     name + " 2:3.2}} that of example 2");
  }
  if (struck->note < 1) return wrong(braces, "asks for note 0", "notes are counted from 1 in every bar");
  if (struck->example == 0) return wrong(braces, "asks for example 0", "examples are counted from 1");
  return Placeholder(Kind{*struck});
}

Parsed parse_tempo_word(std::string_view braces, std::string_view rest) {
  if (rest != "first" && rest != "last") {
    return wrong(braces, "does not say which tempo", "write {{tempo first}} or {{tempo last}}");
  }
  return Placeholder(TempoPlaceholder{rest == "last"});
}

// `braces` is the whole `{{…}}`.
Parsed parse_one(std::string_view braces) {
  const auto inner = trimmed(braces.substr(2, braces.size() - 4));
  const auto gap = std::min(inner.find_first_of(" \t"), inner.size());
  const auto word = inner.substr(0, gap);
  const auto rest = trimmed(inner.substr(gap));
  if (word == "key") return parse_key_word(braces, rest);
  if (word == "degree") return parse_degree_word(braces, rest);
  if (word == "chord") return parse_chord_word(braces, rest);
  if (word == "note") return parse_struck_word<NotePlaceholder>(braces, word, rest);
  if (word == "place") return parse_struck_word<PlacePlaceholder>(braces, word, rest);
  if (word == "tempo") return parse_tempo_word(braces, rest);
  const auto near = source::nearest(word, known_words);
  return wrong(braces, "is not known",
               near.empty()
                   ? "known are {{key}}, {{degree b3}}, {{chord V7}}, {{note 3.2}}, {{place 3.2}}, {{tempo first}} "
                     "and {{tempo last}}"
                   : "did you mean '" + near + "'?");
}

// The first `{{` from `from` on, so that what follows it is no third brace.
std::size_t find_open(std::string_view text, std::size_t from) {
  auto open = text.find("{{", from);
  if (open == std::string_view::npos) return open;
  while (open + 2 < text.size() && text[open + 2] == '{') ++open;
  return open;
}

// Where the braces close that are open before `from`: on their line, and before others open.
std::optional<std::size_t> find_close(std::string_view text, std::size_t from) {
  for (std::size_t at = from; at < text.size() && text[at] != '\n'; ++at) {
    const auto two = text.substr(at, 2);
    if (two == "}}") return at;
    if (two == "{{") break;
  }
  return {};
}

PlaceholderProblem unclosed() {
  return {"'{{' is not closed on its line", "write '}}' after it; where braces are meant as such, only one of them"};
}

}  // namespace

std::vector<TextPart> parse_placeholders(std::string_view text) {
  std::vector<TextPart> parts;
  std::size_t done = 0;
  const auto literal_up_to = [&](std::size_t end) {
    if (end > done) parts.push_back({done, end, std::string(text.substr(done, end - done))});
    done = end;
  };
  for (auto open = find_open(text, 0); open != std::string_view::npos; open = find_open(text, done)) {
    literal_up_to(open);
    const auto close = find_close(text, open + 2);
    if (!close) {
      done = open + 2;
      parts.push_back({open, done, unclosed()});
    } else {
      done = *close + 2;
      auto read = parse_one(text.substr(open, done - open));
      std::visit([&](auto& value) { parts.push_back({open, done, std::move(value)}); }, read);
    }
  }
  literal_up_to(text.size());
  return parts;
}

const Event* find_struck(const Music& music, int bar, int note) {
  for (const Bar& candidate : music.bars) {
    if (candidate.number != bar) continue;
    for (const Event& event : candidate.events) {
      if (event.kind == EventKind::struck && --note == 0) return &event;
    }
  }
  return nullptr;
}

const Note* naming_note(const Event& event, const fretboard::Neck& neck) {
  const auto sounding = [&](const Note& note) { return neck.sounding_midi(note.place, note.harmonic); };
  const Note* best = nullptr;
  for (const Note& note : event.notes) {
    if (note.held) continue;
    const bool lower = best == nullptr || (best->dead && !note.dead) ||
                       (best->dead && note.place.string > best->place.string) ||
                       (!best->dead && !note.dead && sounding(note) < sounding(*best));
    if (lower) best = &note;
  }
  return best;
}

const Example* example_meant(const Lesson& lesson, std::optional<int> named, std::optional<std::size_t> text_of) {
  const auto& examples = lesson.examples;
  if (named) {
    const auto index = static_cast<std::size_t>(*named) - 1;
    return *named >= 1 && index < examples.size() ? &examples[index] : nullptr;
  }
  if (text_of) return *text_of < examples.size() ? &examples[*text_of] : nullptr;
  return examples.size() == 1 ? &examples.front() : nullptr;
}

}  // namespace fretsheaf::lesson
