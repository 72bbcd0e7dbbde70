#include "transposition/strings.h"

#include <algorithm>

namespace fretsheaf::transposition {

namespace {

// Whether the strings of `less` are those of `more` from the one after `above` on.
bool lies_in(const fretboard::Neck& less, const fretboard::Neck& more, int above) {
  for (int string = 1; string <= less.strings(); ++string) {
    const bool alike = less.open_pitch(string).midi() == more.open_pitch(string + above).midi() &&
                       less.is_short(string) == more.is_short(string + above);
    if (!alike) return false;
  }
  return true;
}

}  // namespace

StringsThere strings_there(const fretboard::Neck& from, const fretboard::Neck& to) {
  const bool grows = from.strings() <= to.strings();
  const fretboard::Neck& less = grows ? from : to;
  const fretboard::Neck& more = grows ? to : from;
  StringsThere there(static_cast<std::size_t>(from.strings()));
  for (int above = 0; above <= more.strings() - less.strings(); ++above) {
    if (!lies_in(less, more, above)) continue;
    for (int string = 1; string <= less.strings(); ++string) {
      if (grows) {
        there[static_cast<std::size_t>(string) - 1] = string + above;
      } else {
        there[static_cast<std::size_t>(string + above) - 1] = string;
      }
    }
    break;
  }
  return there;
}

}  // namespace fretsheaf::transposition
