#pragma once

#include "exchange/losses.h"
#include "exchange/taken.h"
#include "theory/interval.h"

namespace fretsheaf::exchange {

// Reads what a <note> says of its own head, and of the whole symbol. What has no sign in a lesson is a loss.
class NoteTaker {
 public:
  NoteTaker(Losses& losses, int measure, theory::Interval transposed)
      : losses_(losses), measure_(measure), transposed_(transposed) {}

  Head head(const Xml& note);
  // What belongs to all heads: fermata, stroke, tremolo, syllables.
  void add_event_signs(const Xml& note, Symbol& symbol);

 private:
  void read_pitch(const Xml& note, Head& head);
  void read_play(const Xml& play, Head& head);
  void read_notations(const Xml& notations, Head& head);
  void read_technical(const Xml& technical, Head& head);
  void read_technical_sign(const Xml& sign, Head& head);
  void read_articulations(const Xml& articulations, Head& head);
  void read_ornaments(const Xml& ornaments, Head& head);
  void read_bend(const Xml& bend, Head& head);
  void read_harmonic(const Xml& harmonic, Head& head);
  void read_lyric(const Xml& lyric, Symbol& symbol);
  void left_out(const Xml& element);

  Losses& losses_;
  int measure_;
  theory::Interval transposed_;
};

}  // namespace fretsheaf::exchange
