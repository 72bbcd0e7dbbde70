#pragma once

#include "exchange/losses.h"
#include "exchange/taken.h"

namespace fretsheaf::exchange {

// Reads a <direction>, or a <sound> that stands alone, at a place of its measure.
class DirectionTaker {
 public:
  DirectionTaker(Losses& losses, TakenPart& part, TakenMeasure& measure, int index)
      : losses_(losses), part_(part), measure_(measure), index_(index) {}

  void direction(const Xml& element, Rational at);
  // `words`: what is printed beside it says it already.
  void sound(const Xml& element, Rational at, bool printed);
  void dynamics(const Xml& dynamics, Rational at);

 private:
  void type(const Xml& element, Rational at, const Xml* sound);
  void words(const Xml& element, Rational at, const Xml* sound);
  void wedge(const Xml& element, Rational at);
  void metronome(const Xml& element);
  void swing(const Xml& element);
  void set_tempo(const Xml& element, theory::Tempo tempo);
  void add(Mark::Kind kind, Rational at, std::string text, const Xml& element, std::string number = {});

  Losses& losses_;
  TakenPart& part_;
  TakenMeasure& measure_;
  int index_;
  bool road_ = false;  // the direction that is being read has a sign of the way
};

}  // namespace fretsheaf::exchange
