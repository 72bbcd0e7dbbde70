#pragma once

#include <string>

#include "spoken/bar_body.h"

namespace fretsheaf::spoken {

// A sentence of a bar's body while it is said.
class Sentences {
 public:
  Sentences(BarBody& body, const Phrases& phrases) : body_(body), phrases_(phrases) {}

  // On a line of its own, with a capital.
  void begin(std::string_view words);
  void end() { body_.text += '.'; }

  // After the next comma; the first after `next` after what that adds.
  void item(std::string_view words);
  void fret(int fret);
  // A pattern in which a {fret} stands, and what its other hole {how} holds.
  void fret(Sentence pattern, int fret, std::string_view how);
  // What comes now is set apart from what came before: by a colon, a semicolon.
  void next(Sentence separator);
  // What comes now, if anything does, is set apart by a semicolon.
  void set_apart() { apart_ = true; }

 private:
  BarBody& body_;
  const Phrases& phrases_;
  bool fresh_ = true;  // nothing yet since the last separator
  bool apart_ = false;
};

// A note that starts: its string, fret, and how it is played; not how long.
void say_note(const score::Note& note, bool fingers, Sentences& sentences, const Phrases& phrases);

// "plucked with the thumb", of the letters in a lesson; "" for none.
std::string_view hand_said(std::string_view letter, const Phrases& phrases);

}  // namespace fretsheaf::spoken
