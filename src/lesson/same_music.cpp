#include "lesson/same_music.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <vector>

namespace fretsheaf::lesson {
namespace {

template <typename T>
bool same(const Located<T>& a, const Located<T>& b) {
  return a.value == b.value;
}

template <typename T>
bool same(const std::optional<Located<T>>& a, const std::optional<Located<T>>& b) {
  return a.has_value() == b.has_value() && (!a || a->value == b->value);
}

bool same(const Moment& a, const Moment& b) {
  return a.bar == b.bar && a.at == b.at;
}

template <typename T, typename Same>
bool all_same(const std::vector<T>& a, const std::vector<T>& b, Same is_same) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), is_same);
}

bool same(const std::optional<Bend>& a, const std::optional<Bend>& b) {
  return a.has_value() == b.has_value() && (!a || (a->tones == b->tones && a->release == b->release));
}

bool same(const GraceNote& a, const GraceNote& b) {
  return a.place == b.place && a.approach == b.approach;
}

bool same(const Event& a, const Event& b) {
  const auto plain = [](const Event& e) { return std::tie(e.kind, e.at, e.length, e.strum, e.fermata, e.written_out); };
  return plain(a) == plain(b) && same(a.stroke, b.stroke) && all_same(a.notes, b.notes, same_note) &&
         all_same(a.hand, b.hand, [](const auto& x, const auto& y) { return same(x, y); });
}

bool same_words(const std::vector<Word>& a, const std::vector<Word>& b) {
  return all_same(a, b, [](const Word& x, const Word& y) {
    return x.at == y.at && x.text == y.text && x.row == y.row && x.goes_on == y.goes_on;
  });
}

bool same(const Bar& a, const Bar& b) {
  const auto plain = [](const Bar& bar) {
    return std::tie(bar.number, bar.meter, bar.begin, bar.end, bar.right, bar.same_as_previous);
  };
  return plain(a) == plain(b) && a.meter_written.has_value() == b.meter_written.has_value() && same(a.plays, b.plays) &&
         all_same(a.events, b.events, [](const Event& x, const Event& y) { return same(x, y); }) &&
         all_same(a.chords, b.chords,
                  [](const ChordMark& x, const ChordMark& y) { return x.at == y.at && x.chord == y.chord; }) &&
         same_words(a.texts, b.texts) && same_words(a.lyrics, b.lyrics) && same_words(a.sections, b.sections) &&
         same_words(a.roads, b.roads);
}

bool same_dynamics(const std::vector<Dynamic>& a, const std::vector<Dynamic>& b) {
  return all_same(a, b,
                  [](const Dynamic& x, const Dynamic& y) { return same(x.moment, y.moment) && x.text == y.text; });
}

bool same_spans(const std::vector<Span>& a, const std::vector<Span>& b) {
  return all_same(a, b, [](const Span& x, const Span& y) {
    return x.kind == y.kind && same(x.first, y.first) && same(x.last, y.last);
  });
}

}  // namespace

bool same_note(const Note& a, const Note& b) {
  const auto plain = [](const Note& n) {
    return std::tie(n.place, n.dead, n.ghost, n.harmonic, n.held, n.approach, n.approach_from_nowhere, n.accent,
                    n.staccato, n.tenuto, n.vibrato, n.slide_off);
  };
  const auto grace = [](const GraceNote& x, const GraceNote& y) { return same(x, y); };
  return plain(a) == plain(b) && same(a.bend, b.bend) && same(a.finger, b.finger) && same(a.hand, b.hand) &&
         same(a.spell, b.spell) && all_same(a.graces, b.graces, grace);
}

bool same_music(const Music& a, const Music& b) {
  const auto plain = [](const Music& m) { return std::tie(m.left, m.has_strings, m.has_finger_row); };
  return plain(a) == plain(b) && all_same(a.bars, b.bars, [](const Bar& x, const Bar& y) { return same(x, y); }) &&
         same_dynamics(a.dynamics, b.dynamics) && same_spans(a.spans, b.spans) &&
         same_dynamics(a.repeated_dynamics, b.repeated_dynamics) && same_spans(a.repeated_spans, b.repeated_spans) &&
         all_same(a.endings, b.endings, [](const Ending& x, const Ending& y) {
           return x.label == y.label && x.first_bar == y.first_bar && x.last_bar == y.last_bar;
         });
}

}  // namespace fretsheaf::lesson
