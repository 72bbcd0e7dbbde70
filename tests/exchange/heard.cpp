#include "exchange/heard.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

namespace fretsheaf::exchange::test {

namespace {

struct Heard {
  int measure = 0;
  Rational at;
  Rational length;
  std::string what;  // "s3 f5 = 50", "s3 dead", "strum"
  int order = 0;     // of grace notes before their note: by string, then as they are played
};

std::string text_of(std::vector<Heard> all) {
  std::stable_sort(all.begin(), all.end(), [](const Heard& a, const Heard& b) {
    const auto key = [](const Heard& h) { return std::tuple(h.measure, h.at, h.length > Rational(0)); };
    if (key(a) != key(b)) return key(a) < key(b);
    return std::tie(a.order, a.what) < std::tie(b.order, b.what);
  });
  std::string text;
  for (const Heard& one : all) {
    text += "[" + std::to_string(one.measure) + "] " + one.at.to_string() + " for " + one.length.to_string() + ": " +
            one.what + "\n";
  }
  return text;
}

std::string place_text(int string, int fret, int midi) {
  return "string " + std::to_string(string) + " fret " + std::to_string(fret) + " = " + std::to_string(midi);
}

// A string touched at a fraction of its length sounds the lowest partial that has a node there: frets divide the string
// by the twelfth root of two, and a finger covers a twentieth of a partial's wave (physics; equal temperament).
int harmonic_semitones(int fret) {
  const double touched = 1 - std::pow(2.0, -fret / 12.0);
  for (int partial = 2; partial <= 6; ++partial) {
    const double waves = touched * partial;
    if (std::abs(waves - std::round(waves)) < 0.05) return static_cast<int>(std::lround(12 * std::log2(partial)));
  }
  return -1000;
}

// The contract: pitch = tuning + capo + fret, on a banjo's short string tuning + capo + fret − 5.
class Model {
 public:
  explicit Model(const lesson::Lesson& lesson) : neck_(lesson.neck) {
    int first_bar = 0;
    for (const lesson::Example& example : lesson.examples) {
      sounding_.clear();
      const Slashes slashes = slashes_around(example);
      for (std::size_t i = 0; i < slashes.before; ++i) add_beats(example.music.bars.front().meter, first_bar++);
      for (const lesson::Bar& bar : example.music.bars) {
        for (const lesson::Event& event : bar.events) add(event, first_bar, event.at - bar.begin);
        ++first_bar;
      }
      for (std::size_t i = 0; i < slashes.after; ++i) add_beats(example.music.bars.back().meter, first_bar++);
    }
  }

  std::vector<Heard> heard() const { return heard_; }

 private:
  static constexpr int all_strings = 0;  // of a strum

  int open_string(int string) const {
    return neck_.tuning[neck_.tuning.size() - static_cast<std::size_t>(string)].midi() + neck_.capo;
  }

  int pitch(fretboard::Place place) const {
    const bool short_string = neck_.short_fifth_string && place.string == static_cast<int>(neck_.tuning.size());
    return open_string(place.string) + place.fret - (short_string && place.fret > 0 ? 5 : 0);
  }

  std::string what(const lesson::Note& note) const {
    const int string = note.place.string;
    if (note.dead) return "string " + std::to_string(string) + " dead";
    if (note.harmonic) {
      const bool short_string = neck_.short_fifth_string && string == static_cast<int>(neck_.tuning.size());
      const int fret = note.place.fret - (short_string ? 5 : 0);
      return place_text(string, note.place.fret, open_string(string) + harmonic_semitones(fret)) + " harmonic";
    }
    return place_text(string, note.place.fret, pitch(note.place));
  }

  // The contract: slashes under the chords, one on each beat.
  void add_beats(const theory::Meter& meter, int measure) {
    const std::vector<Rational> beats = meter.beats();
    for (std::size_t i = 0; i < beats.size(); ++i) {
      const Rational end = i + 1 < beats.size() ? beats[i + 1] : meter.bar();
      heard_.push_back({measure, beats[i], end - beats[i], "strum", 0});
    }
  }

  void add(const lesson::Event& event, int measure, Rational at) {
    std::map<int, std::size_t> before;
    before.swap(sounding_);
    if (event.kind == lesson::EventKind::rest) return;
    const auto sound = [&](int string, bool held, const std::string& name) {
      const auto going_on = before.find(string);
      if (held && going_on != before.end()) {
        heard_[going_on->second].length += event.length;
        sounding_[string] = going_on->second;
        return;
      }
      sounding_[string] = heard_.size();
      heard_.push_back({measure, at, event.length, name, 0});
    };
    if (event.strum) sound(all_strings, event.kind == lesson::EventKind::held, "strum");
    for (const lesson::Note& note : event.notes) {
      int order = 100 * note.place.string;
      for (const lesson::GraceNote& grace : note.graces) {
        heard_.push_back({measure, at, Rational(0),
                          "grace " + place_text(grace.place.string, grace.place.fret, pitch(grace.place)), ++order});
      }
      sound(note.place.string, note.held, what(note));
    }
  }

  const fretboard::Neck& neck_;
  std::vector<Heard> heard_;
  std::map<int, std::size_t> sounding_;  // by string: where it is in `heard_`
};

std::string what(const WrittenNote& note, std::vector<std::string>& problems) {
  if (!note.midi) return "strum";
  if (!note.string || !note.fret) {
    problems.push_back("a pitch without string or fret in measure " + std::to_string(note.measure));
    return "?";
  }
  if (note.cross) return "string " + std::to_string(*note.string) + " dead";
  std::string text = place_text(*note.string, *note.fret, *note.midi);
  if (note.grace) return "grace " + text;
  if (note.harmonic && note.harmonic_pitch != "sounding-pitch") {
    problems.push_back("a harmonic whose sounding pitch is not said, in measure " + std::to_string(note.measure));
  }
  return note.harmonic ? text + " harmonic" : text;
}

}  // namespace

std::string heard_in(const lesson::Lesson& lesson) {
  return text_of(Model(lesson).heard());
}

std::string heard_on(const WrittenPart& part, const std::vector<int>& staff_of, std::vector<std::string>& problems) {
  std::vector<Heard> heard;
  for (int staff = 1; staff <= part.staves; ++staff) {
    int graces = 0;
    for (const WrittenNote& note : sounding(part, staff, problems)) {
      if (staff_of[static_cast<std::size_t>(note.measure)] != staff) continue;
      graces = note.grace ? graces + 1 : 0;
      const int order = note.grace ? 100 * note.string.value_or(0) + graces : 0;
      heard.push_back({note.measure, note.at, note.length, what(note, problems), order});
    }
  }
  return text_of(heard);
}

std::string pitches_on(const WrittenPart& part, int staff, std::vector<std::string>& problems) {
  std::vector<Heard> heard;
  for (const WrittenNote& note : sounding(part, staff, problems)) {
    if (!note.midi) continue;
    heard.push_back({note.measure, note.at, note.length, note.cross ? "dead" : std::to_string(*note.midi), 0});
  }
  return text_of(heard);
}

Slashes slashes_around(const lesson::Example& example) {
  if (!example.form || !example.form->write_out || example.music.bars.empty()) return {};
  return {static_cast<std::size_t>(example.form->here_first) - 1,
          example.form->chart.size() - static_cast<std::size_t>(example.form->here_last)};
}

std::string bars_in(const lesson::Lesson& lesson) {
  std::string text;
  const auto add = [&](std::size_t number, Rational length) {
    text += std::to_string(number) + ": " + length.to_string() + "\n";
  };
  for (const lesson::Example& example : lesson.examples) {
    const Slashes slashes = slashes_around(example);
    for (std::size_t i = 1; i <= slashes.before; ++i) add(i, example.music.bars.front().meter.bar());
    for (const lesson::Bar& bar : example.music.bars) {
      add(static_cast<std::size_t>(bar.number) + slashes.before, bar.end - bar.begin);
    }
    for (std::size_t i = slashes.after; i-- > 0;) {
      add(example.form->chart.size() - i, example.music.bars.back().meter.bar());
    }
  }
  return text;
}

std::string bars_in(const WrittenPart& part) {
  std::string text;
  for (const WrittenMeasure& measure : part.measures) text += measure.number + ": " + measure.length.to_string() + "\n";
  return text;
}

}  // namespace fretsheaf::exchange::test
