#pragma once

#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "support/dice.h"
#include "support/random_grid.h"
#include "support/random_music.h"
#include "theory/meter.h"

namespace fretsheaf::test {

// A whole lesson file that is valid, from a seed: over the seeds all instruments, many meters, keys, staves, labels and
// every token and row of the grid.
class RandomLesson {
 public:
  explicit RandomLesson(unsigned seed) : dice_(seed * 2654435761U + 1), seed_(seed) {}

  std::string write() {
    const auto instruments = fretboard::instruments();
    instrument_ = &instruments[seed_ % instruments.size()];
    std::string text = heading();
    const int examples = dice_.between(1, 3);
    for (int i = 0; i < examples; ++i) text += example(i + 1);
    return text;
  }

 private:
  std::string pick(const std::vector<std::string>& choices) { return dice_.pick(choices); }

  static std::string line(const std::string& key, const std::string& value) { return key + " = " + value + "\n"; }
  static std::string quoted(const std::string& text) { return "\"" + text + "\""; }

  std::string key() {
    return quoted(pick({"C major", "D dorian", "A minor", "Eb major", "F# minor", "G mixolydian", "Bb major",
                        "E phrygian", "F lydian", "B locrian", "Db major", "C# minor"}));
  }

  std::string staves() {
    return pick({"[\"slash\", \"tab\"]", "[\"slash\", \"tab\"]", "[\"notes\", \"tab\"]",
                 "[\"slash\", \"notes\", \"tab\"]", "[\"tab\"]"});
  }

  std::string labels() {
    std::string list;
    for (const char* name : {"notes", "chord-degrees", "key-degrees", "fingers", "counts"}) {
      if (dice_.chance(35)) list += (list.empty() ? "" : ", ") + quoted(name);
    }
    return "[" + list + "]";
  }

  std::string heading() {
    capo_ = dice_.chance(15) ? dice_.between(1, 3) : 0;
    std::string text = "# seed " + std::to_string(seed_) + "\n";
    text +=
        line("title", quoted(pick({"Low water", "The slipway", "Sandbar study", "Net loft groove", "Kelp and rope"})));
    if (dice_.chance(50)) text += line("subtitle", quoted("Study " + std::to_string(seed_) + " of the music shed"));
    text += line("teacher", quoted("Eelgrass Strings"));
    if (dice_.chance(50))
      text += line("series", quoted("Thursday class")) + line("number", std::to_string(dice_.between(1, 40)));
    text += line("key", key());
    text += line("instrument", quoted(std::string(instrument_->name)));
    text += line("meter", quoted(meter_ = meter()));
    if (capo_ > 0) text += line("capo", std::to_string(capo_));
    if (dice_.chance(40)) text += line("feel", quoted(pick({"straight", "swing", "shuffle", "swing-16"})));
    if (dice_.chance(70)) text += line("staves", staves());
    if (dice_.chance(70)) text += line("labels", labels());
    if (dice_.chance(40)) text += line("bars-per-line", pick({"2", "3", "4", "\"auto\""}));
    if (dice_.chance(30)) text += line("paper", "\"letter\"");
    if (dice_.chance(30)) text += line("name-line", "true");
    if (dice_.chance(60)) text += line("intro", quoted("Listen first, then play *slowly*: every note has its place."));
    if (dice_.chance(60)) text += line("practice", "[\"Warm up first.\", \"Stop where anything hurts.\"]");
    return text;
  }

  std::string meter() {
    return pick({"4/4", "4/4", "4/4", "3/4", "2/4", "5/4", "2/2", "6/8", "9/8", "12/8", "2+2+3/8", "3+2/8", "3/8"});
  }

  std::string example(int number) {
    std::string text = "\n[[example]]\n" + line("title", quoted("Turn " + std::to_string(number)));
    if (dice_.chance(50)) text += line("intro", quoted("Say the counts aloud before you play."));
    if (dice_.chance(70)) {
      text += line("tempo", pick({"92", "[80, 100]", "{ from = 60, to = 108, step = 12, passes = 4 }",
                                  "{ from = 50, to = 90, rungs = 5 }"}));
    }
    if (dice_.chance(40)) text += line("practice", "[\"Land on each change together.\"]");
    if (dice_.chance(15)) text += line("key", key());
    std::string own = meter_;
    if (number > 1 && dice_.chance(25)) text += line("meter", quoted(own = meter()));
    MusicWish wish;
    wish.neck = {instrument_->tuning, instrument_->frets, capo_, instrument_->short_fifth_string};
    wish.meter = *theory::parse_meter(own);
    wish.bars = dice_.between(1, 12);
    wish.strings = !dice_.chance(15);
    wish.play = !wish.strings && dice_.chance(50);
    const lesson::Music music = random_music(dice_, wish);
    return text + "tab = '''\n" + write_grid(music, wish.neck, dice_.between(2, 4), dice_.chance(75)) + "'''\n";
  }

  Dice dice_;
  unsigned seed_;
  const fretboard::Instrument* instrument_ = nullptr;
  std::string meter_;
  int capo_ = 0;
};

inline std::string random_lesson(unsigned seed) {
  return RandomLesson(seed).write();
}

}  // namespace fretsheaf::test
