#include "transposition/pictures.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "fretboard/chord_shapes.h"
#include "transposition/intervals.h"

namespace fretsheaf::transposition {

namespace {

using Frets = std::pair<int, int>;

std::optional<Frets> used_frets(const lesson::Music& music) {
  std::optional<Frets> used;
  for (const lesson::Bar& bar : music.bars) {
    for (const lesson::Event& event : bar.events) {
      for (const lesson::Note& note : event.notes) {
        if (note.dead) continue;
        const int fret = note.place.fret;
        used = used ? Frets{std::min(used->first, fret), std::max(used->second, fret)} : Frets{fret, fret};
      }
    }
  }
  return used;
}

// A part of the neck, as wide as it was where there is room.
Frets on_neck(Frets frets, const fretboard::Neck& neck) {
  const Frets inside{std::max(frets.first, 0), std::min(frets.second, neck.last_fret())};
  if (inside.first < inside.second) return inside;
  return inside.first == 0 ? Frets{0, 1} : Frets{neck.last_fret() - 1, neck.last_fret()};
}

bool covers(Frets frets, Frets used) {
  return frets.first <= used.first && used.second <= frets.second;
}

Frets moved_with_notes(Frets frets, Frets before, Frets now) {
  const int by = now.first - before.first;
  return {std::min(frets.first + by, now.first), std::max(frets.second + by, now.second)};
}

// A scale lies on the neck again an octave on.
Frets moved_along(Frets frets, const PictureMove& move) {
  for (const int by : intervals_to(move.frets)) {
    if (frets.first + by >= 0 && frets.second + by <= move.neck.last_fret()) {
      return {frets.first + by, frets.second + by};
    }
  }
  return {frets.first + move.frets, frets.second + move.frets};
}

void move_neck_picture(lesson::NeckPicture& picture, const lesson::Music& now, const PictureMove& move) {
  if (!picture.frets) return;
  if (!move.same_strings) {
    picture.frets.reset();
    return;
  }
  if (move.hides_frets) {
    if (move.frets != 0) picture.frets.reset();
    return;
  }
  // A picture of the whole neck stays one.
  if (picture.frets->first == 0 && picture.frets->second >= move.neck.last_fret()) {
    picture.frets->second = move.neck.last_fret();
    return;
  }
  const auto before = used_frets(move.before);
  const auto after = used_frets(now);
  const bool over_notes =
      before && after && (picture.of == lesson::NeckPicture::Of::notes || covers(*picture.frets, *before));
  const Frets moved =
      over_notes ? moved_with_notes(*picture.frets, *before, *after) : moved_along(*picture.frets, move);
  picture.frets = on_neck(moved, move.neck);
}

void move_shape(lesson::Shape& shape, const PictureMove& move) {
  if (!shape.frets || (move.same_strings && move.frets == 0)) return;
  const fretboard::ShapeFrets frets = *shape.frets;
  shape.frets.reset();
  if (!move.same_strings) return;
  // A chord lies on the neck again an octave on.
  for (const int by : intervals_to(move.frets)) {
    shape.frets = fretboard::moved_shape(frets, by, move.neck);
    if (shape.frets) return;
  }
}

}  // namespace

std::vector<theory::Chord> move_pictures(lesson::Example& example, const PictureMove& move) {
  if (example.neck) move_neck_picture(*example.neck, example.music, move);
  std::vector<theory::Chord> afresh;
  for (lesson::Shape& shape : example.shapes) {
    const bool given = shape.frets.has_value();
    move_shape(shape, move);
    if (!given || shape.frets) continue;
    if (const auto chord = theory::resolve(shape.chord, example.key)) afresh.push_back(*chord);
  }
  return afresh;
}

}  // namespace fretsheaf::transposition
