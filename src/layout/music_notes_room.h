#pragma once

#include <vector>

#include "layout/music_notes.h"

namespace fretsheaf::layout {

// The room that is left on the notes staff of a line: ties, slurs and slides find their places in it one after another,
// each in the way of those that follow. Bar lines and staff lines are in nobody's way.
class NotesRoom {
 public:
  // `more`: ink that reaches over several columns.
  NotesRoom(const Context& context, const LinePlan& line, const NoteStems& stems, const Layer& more);

  bool free(const sheet::Path& path) const;
  void add(sheet::Path path);

  struct Stretch {
    double left = 0;
    double right = 0;
    double width() const { return right - left; }
  };
  // The longest part of a stretch between two heights in which nothing stands.
  Stretch free_part(Stretch whole, double top, double bottom) const;
  // Of those parts the last, which ends at the stretch's end.
  Stretch free_end(Stretch whole, double top, double bottom) const;

  Layer take() { return std::move(layer_); }

 private:
  std::vector<Stretch> free_parts(Stretch whole, double top, double bottom) const;

  double gap_;
  std::vector<sheet::Box> obstacles_;
  Layer layer_;
};

}  // namespace fretsheaf::layout
