#include "exchange/adopt_form.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace fretsheaf::exchange {

namespace {

bool sounds(const Symbol& symbol) {
  return !symbol.heads.empty();
}

bool is_plain_slash(const Head& head, const TakenMeasure& measure) {
  const bool slash = head.slash || (!head.pitch && measure.slashes);
  return slash && !head.cross && !head.parentheses && !head.accent && !head.tie_start && !head.tie_stop;
}

class FormTaker {
 public:
  FormTaker(const AdoptContext& context, TakenPart& part, Section& section)
      : context_(context), part_(part), section_(section) {}

  std::optional<TakenForm> run() {
    set_meters();
    int first = section_.first;
    int last = section_.last;
    while (first < last && has_beats(first)) ++first;
    while (last > first && has_beats(last - 1)) --last;
    const int bars = last - first;
    if (bars == 0 || bars == section_.last - section_.first || !is_form(first, last)) return std::nullopt;
    TakenForm form;
    std::string chord = "N.C.";
    for (int i = section_.first; i < section_.last; ++i) {
      FormCell own = cell(i, chord, i < first || i >= last);
      if (i < first) {
        form.before.push_back(std::move(own));
      } else if (i >= last) {
        form.after.push_back(std::move(own));
      }
    }
    lose_signs(first, last);
    move_name(first);
    section_ = {first, last, section_.key, meter(first), true, first - section_.first};
    return form;
  }

 private:
  TakenMeasure& measure(int index) { return part_.measures[static_cast<std::size_t>(index)]; }
  const theory::Meter& meter(int index) const { return meters_[static_cast<std::size_t>(index - section_.first)]; }

  void set_meters() {
    theory::Meter meter = section_.meter;
    for (int i = section_.first; i < section_.last; ++i) {
      if (measure(i).meter) meter = *measure(i).meter;
      meters_.push_back(meter);
    }
  }

  // Whether the measure is a slash on every beat, and nothing else that sounds.
  bool has_beats(int index) {
    const std::vector<Rational> beats = meter(index).beats();
    std::size_t next = 0;
    for (const Symbol& symbol : measure(index).symbols) {
      if (!sounds(symbol)) continue;
      if (next == beats.size() || symbol.at != beats[next] || symbol.heads.size() != 1) return false;
      const Rational end = next + 1 < beats.size() ? beats[next + 1] : meter(index).bar();
      if (symbol.length != end - symbol.at || !is_plain_slash(symbol.heads.front(), measure(index))) return false;
      ++next;
    }
    return next == beats.size();
  }

  // Whether what lies between the slashes is notes, under chords, and the slashes keep the meters beside them.
  bool is_form(int first, int last) {
    bool notes = false;
    bool chords = false;
    for (int i = section_.first; i < section_.last; ++i) {
      const bool inside = i >= first && i < last;
      for (const Symbol& symbol : measure(i).symbols) {
        if (!inside || !sounds(symbol)) continue;
        for (const Head& head : symbol.heads) {
          if (!head.pitch && !(head.string && head.fret)) return false;
        }
        notes = true;
      }
      chords = chords || !measure(i).harmonies.empty();
      if (!inside && !(meter(i) == meter(i < first ? first : last - 1))) return false;
    }
    // Nothing stands before a pickup.
    const bool full = first == section_.first || measure(first).length == meter(first).bar();
    return notes && chords && full;
  }

  // A bar's chords, at equal distances; `before` is the one in force, and then the bar's last.
  FormCell cell(int index, std::string& before, bool slashes) {
    std::vector<Harmony> chords = measure(index).harmonies;
    std::stable_sort(chords.begin(), chords.end(), [](const Harmony& a, const Harmony& b) { return a.at < b.at; });
    std::string text;
    bool even = true;
    const auto count = static_cast<std::int64_t>(chords.size());
    for (std::int64_t n = 0; n < count; ++n) {
      const Harmony& own = chords[static_cast<std::size_t>(n)];
      even = even && own.at == meter(index).bar() * Rational(n, count);
      before = theory::to_string(own.chord);
      text += (n == 0 ? "" : ",") + before;
    }
    if (slashes && !even) {
      context_.losses.lose(source::Code::adopt_changed, measure(index).element, index,
                           "its chords stand at equal distances in the form's chart",
                           "a form's bar shares its time out evenly");
    }
    return {text.empty() ? before : text, measure(index).left.repeat, measure(index).right.repeat};
  }

  // What else the slashes' measures have.
  void lose_signs(int first, int last) {
    for (int i = section_.first; i < section_.last; ++i) {
      if (i >= first && i < last) continue;
      TakenMeasure& own = measure(i);
      const bool named = i == section_.first && !own.marks.empty() && own.marks.front().kind == Mark::Kind::words;
      for (std::size_t m = named ? 1 : 0; m < own.marks.size(); ++m) {
        context_.losses.left_out(own.marks[m].element, i, "a sign or word over a form's slashes");
      }
      const bool sung = std::any_of(own.symbols.begin(), own.symbols.end(),
                                    [](const Symbol& symbol) { return !symbol.lyrics.empty() || symbol.fermata; });
      if (sung) context_.losses.left_out(own.element, i, "a syllable or fermata at a form's slashes");
      if (!own.left.ending.empty()) context_.losses.left_out(own.left.element, i, "an ending over a form's slashes");
    }
  }

  // The section's name stands over its first measure.
  void move_name(int first) {
    std::vector<Mark>& marks = measure(section_.first).marks;
    if (first == section_.first || marks.empty() || marks.front().kind != Mark::Kind::words) return;
    Mark name = marks.front();
    name.at = Rational(0);
    std::vector<Mark>& there = measure(first).marks;
    there.insert(there.begin(), std::move(name));
  }

  const AdoptContext& context_;
  TakenPart& part_;
  Section& section_;
  std::vector<theory::Meter> meters_;  // by measure of the section
};

// One cell a number: a pickup has none, and a late bar shares the one of the bar that it completes.
void add_music(const lesson::Music& music, std::string chord, std::vector<FormCell>& cells) {
  using lesson::BarSign;
  bool opens = music.left == BarSign::repeat_begin;
  int number = 0;
  for (const lesson::Bar& bar : music.bars) {
    if (bar.number > 0 && bar.number != number) cells.push_back({"", opens, false});
    number = bar.number;
    opens = lesson::begins_repeat(bar.right);
    if (number == 0) continue;
    std::string& chords = cells.back().chords;
    for (const lesson::ChordMark& mark : bar.chords) {
      chord = theory::to_string(mark.chord);
      chords += (chords.empty() ? "" : ",") + chord;
    }
    if (chords.empty()) chords = chord;
    const bool closes = lesson::ends_repeat(bar.right);
    cells.back().closes = cells.back().closes || closes;
  }
}

bool closes_later(const std::vector<FormCell>& cells, std::size_t index) {
  for (std::size_t i = index; i < cells.size() && (i == index || !cells[i].opens); ++i) {
    if (cells[i].closes) return true;
  }
  return false;
}

// As a form is written; a line of the chart every four bars.
std::string chart(const std::vector<FormCell>& cells) {
  constexpr std::size_t bars_a_line = 4;
  std::string text;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const bool opens = cells[i].opens && closes_later(cells, i);
    const bool line = i > 0 && i % bars_a_line == 0 && !cells[i - 1].closes;
    text += (i == 0 ? "" : " ") + std::string(opens ? "|: " : line ? "| " : "") + cells[i].chords;
    if (cells[i].closes) text += " :|";
  }
  return text;
}

}  // namespace

std::optional<TakenForm> take_form(const AdoptContext& context, TakenPart& part, Section& section) {
  return FormTaker(context, part, section).run();
}

lesson::Form form_around(const TakenForm& taken, const lesson::Music& music) {
  std::vector<FormCell> cells = taken.before;
  std::string chord = "N.C.";
  if (!cells.empty()) chord = cells.back().chords.substr(cells.back().chords.rfind(',') + 1);
  add_music(music, chord, cells);
  lesson::Form form;
  form.here_first = static_cast<int>(taken.before.size()) + 1;
  form.here_last = static_cast<int>(cells.size());
  form.write_out = true;
  cells.insert(cells.end(), taken.after.begin(), taken.after.end());
  form.bars.value = chart(cells);
  return form;
}

}  // namespace fretsheaf::exchange
