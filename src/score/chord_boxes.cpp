#include "score/chord_boxes.h"

#include <string>
#include <utility>

#include "fretboard/chord_shapes.h"
#include "score/harmony.h"
#include "theory/chord.h"

namespace fretsheaf::score {
namespace {

using source::Code;

class BoxMaker {
 public:
  BoxMaker(const lesson::Lesson& lesson, const lesson::Example& example, source::Diagnostics& diagnostics)
      : neck_(lesson.neck),
        scale_length_(lesson.instrument != nullptr ? lesson.instrument->scale_length : 0),
        key_(example.key),
        diagnostics_(diagnostics) {}

  std::optional<ChordBox> box(const lesson::Shape& shape) {
    ChordBox box;
    box.chord = theory::resolve(shape.chord, key_).value();  // no shape is of N.C.: its reader refuses it
    if (neck_.capo > 0) box.fingered = fingered(box.chord, key_, neck_.capo);
    std::optional<fretboard::ChordShape> found = shape.frets ? given(shape) : worked_out(box.chord, shape);
    if (!found) return std::nullopt;
    for (std::size_t i = 0; i < found->frets.size(); ++i) {
      const fretboard::Place place{neck_.strings() - static_cast<int>(i), found->frets[i].value_or(0)};
      box.roots.push_back(found->frets[i] && neck_.midi(place) % 12 == box.chord.root.pitch_class());
    }
    box.shape = std::move(*found);
    return box;
  }

 private:
  std::optional<fretboard::ChordShape> given(const lesson::Shape& shape) {
    if (auto fingered = fretboard::fingered_shape(*shape.frets, neck_, scale_length_)) return fingered;
    diagnostics_.warning(Code::out_of_reach, shape.range, "four fingers cannot stop this shape; its box has no fingers",
                         "leave the frets out, and a shape is worked out");
    return fretboard::ChordShape{*shape.frets, std::vector<int>(shape.frets->size(), 0), {}};
  }

  std::optional<fretboard::ChordShape> worked_out(const theory::Chord& chord, const lesson::Shape& shape) {
    auto shapes = fretboard::chord_shapes(chord, neck_, scale_length_);
    if (!shapes.empty()) return std::move(shapes.front());
    diagnostics_.error(Code::out_of_reach, shape.range,
                       "no hand can hold all of " + theory::to_string(chord) + " on these strings",
                       "write frets after it for the tones that matter, or take it out");
    return std::nullopt;
  }

  const fretboard::Neck& neck_;
  double scale_length_;
  const theory::Key& key_;
  source::Diagnostics& diagnostics_;
};

}  // namespace

std::vector<ChordBox> chord_boxes(const lesson::Lesson& lesson, const lesson::Example& example,
                                  source::Diagnostics& diagnostics) {
  BoxMaker maker(lesson, example, diagnostics);
  std::vector<ChordBox> boxes;
  for (const lesson::Shape& shape : example.shapes) {
    if (std::optional<ChordBox> box = maker.box(shape)) boxes.push_back(std::move(*box));
  }
  return boxes;
}

}  // namespace fretsheaf::score
