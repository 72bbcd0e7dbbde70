#include "spoken/marks.h"

#include <algorithm>
#include <array>
#include <utility>

#include "spoken/chords.h"

namespace fretsheaf::spoken {
namespace {

using lesson::SpanKind;
using Order = Mark::Order;

// The signs' Italian words, which all languages use.
std::string_view loudness(std::string_view sign) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 9> names = {{{"ppp", "pianississimo"},
                                                                                   {"pp", "pianissimo"},
                                                                                   {"p", "piano"},
                                                                                   {"mp", "mezzo piano"},
                                                                                   {"mf", "mezzo forte"},
                                                                                   {"f", "forte"},
                                                                                   {"ff", "fortissimo"},
                                                                                   {"fff", "fortississimo"},
                                                                                   {"sfz", "sforzato"}}};
  for (const auto& [letters, name] : names) {
    if (letters == sign) return name;
  }
  return sign;
}

Sentence pattern_of(SpanKind kind) {
  switch (kind) {
    case SpanKind::crescendo:
      return Sentence::louder;
    case SpanKind::diminuendo:
      return Sentence::softer;
    case SpanKind::palm_mute:
      return Sentence::palm_mute;
    case SpanKind::let_ring:
      return Sentence::let_ring;
    case SpanKind::tremolo:
      break;
  }
  return Sentence::tremolo;
}

class Collector {
 public:
  Collector(const score::Example& example, const Places& places, const Phrases& phrases)
      : example_(example), places_(places), phrases_(phrases), marks_(example.bars.size()) {}

  std::vector<std::vector<Mark>> collect() {
    for (std::size_t bar = 0; bar < example_.bars.size(); ++bar) add_words(bar);
    add_loudness(example_.dynamics);
    add_spans(example_.spans);
    // What `%` bars repeat stands where it would be without even spacing.
    if (!places_.in_order()) {
      add_loudness(example_.repeated_dynamics);
      add_spans(example_.repeated_spans);
    }
    for (std::vector<Mark>& bar : marks_) {
      std::stable_sort(bar.begin(), bar.end(),
                       [](const Mark& a, const Mark& b) { return a.at != b.at ? a.at < b.at : a.order < b.order; });
    }
    return std::move(marks_);
  }

 private:
  void add(std::size_t bar, theory::Rational at, Order order, std::string said) {
    marks_[bar].push_back({at, order, std::move(said)});
  }

  std::string quoted(const std::string& text) const {
    return phrases_(Sentence::quoted, {{"text", phrases_.plain(text)}});
  }

  std::string sung(const lesson::Word& word) const {
    const std::string text = quoted(word.goes_on ? word.text + "-" : word.text);
    if (word.row == 0) return phrases_(Sentence::sung, {{"text", text}});
    return phrases_(Sentence::verse, {{"n", std::to_string(word.row + 1)}, {"text", text}});
  }

  void add_words(std::size_t bar) {
    const score::Bar& own = example_.bars[bar];
    for (const lesson::Word& word : own.sections) {
      add(bar, word.at, Order::section, phrases_(Sentence::section, {{"name", quoted(word.text)}}));
    }
    for (const lesson::Word& word : own.roads) {
      if (is_goal(word.text) || word.text == "fine") add(bar, word.at, Order::road, road_said(word.text));
    }
    for (const score::ChordMark& mark : own.chords) add(bar, mark.at, Order::chord, chord_said(mark, phrases_));
    for (const lesson::Word& word : own.lyrics) add(bar, word.at, Order::lyric, sung(word));
    for (const lesson::Word& word : own.texts) {
      add(bar, word.at, Order::text, phrases_(Sentence::words, {{"text", quoted(word.text)}}));
    }
  }

  void add_loudness(const std::vector<lesson::Dynamic>& dynamics) {
    for (const lesson::Dynamic& dynamic : dynamics) {
      add(static_cast<std::size_t>(dynamic.moment.bar), dynamic.moment.at, Order::loudness,
          std::string(loudness(dynamic.text)));
    }
  }

  void add_spans(const std::vector<lesson::Span>& spans) {
    for (const lesson::Span& span : spans) {
      const auto bar = static_cast<std::size_t>(span.first.bar);
      const std::string_view what = phrases_[pattern_of(span.kind)];
      const bool at_once = span.first.bar == span.last.bar && span.first.at == span.last.at;
      add(bar, span.first.at, Order::span,
          at_once ? std::string(what)
                  : phrases_(places_.in_order() ? Sentence::until_note : Sentence::until,
                             {{"what", what}, {"where", places_.from(bar, span.last)}}));
    }
  }

  const score::Example& example_;
  const Places& places_;
  const Phrases& phrases_;
  std::vector<std::vector<Mark>> marks_;
};

}  // namespace

std::vector<std::vector<Mark>> marks_of(const score::Example& example, const Places& places, const Phrases& phrases) {
  return Collector(example, places, phrases).collect();
}

bool is_goal(std::string_view road) {
  return road == "segno" || road == "coda";
}

std::string road_said(std::string_view road) {
  if (road.starts_with("D.S.")) return "dal segno" + std::string(road.substr(4));
  if (road.starts_with("D.C.")) return "da capo" + std::string(road.substr(4));
  return std::string(road);
}

}  // namespace fretsheaf::spoken
