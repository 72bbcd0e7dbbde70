#include "lesson/not_drawn.h"

#include <algorithm>
#include <optional>
#include <string_view>
#include <vector>

namespace fretsheaf::lesson {
namespace {

using Places = std::vector<Range>;

Places only_if(bool present, Range range) {
  return present ? Places{range} : Places{};
}

// What `find` finds in each example: an optional place.
template <typename Find>
Places each_example(const Lesson& lesson, Find find) {
  Places places;
  for (const Example& example : lesson.examples) {
    if (const std::optional<Range> place = find(example)) places.push_back(*place);
  }
  return places;
}

// The first of an example's bars in which `find` finds a place.
template <typename Find>
Places each_bar(const Lesson& lesson, Find find) {
  return each_example(lesson, [&](const Example& example) -> std::optional<Range> {
    for (const Bar& bar : example.music.bars) {
      if (const std::optional<Range> place = find(bar)) return place;
    }
    return {};
  });
}

template <typename Has>
Places each_event(const Lesson& lesson, Has has) {
  return each_bar(lesson, [&](const Bar& bar) -> std::optional<Range> {
    const auto found = std::find_if(bar.events.begin(), bar.events.end(), has);
    if (found == bar.events.end()) return {};
    return found->range;
  });
}

template <typename Has>
Places each_note(const Lesson& lesson, Has has) {
  return each_bar(lesson, [&](const Bar& bar) -> std::optional<Range> {
    for (const Event& event : bar.events) {
      const auto found = std::find_if(event.notes.begin(), event.notes.end(), has);
      if (found != event.notes.end()) return found->range;
    }
    return {};
  });
}

Places words(const Lesson& lesson, std::vector<Word> Bar::*row) {
  return each_bar(lesson, [&](const Bar& bar) -> std::optional<Range> {
    if ((bar.*row).empty()) return {};
    return (bar.*row).front().range;
  });
}

Places spans(const Lesson& lesson, SpanKind kind) {
  return each_example(lesson, [&](const Example& example) -> std::optional<Range> {
    for (const Span& span : example.music.spans) {
      if (span.kind == kind) return span.range;
    }
    return {};
  });
}

template <typename T>
std::optional<Range> range_of(const std::optional<T>& value) {
  if (!value) return {};
  return value->range;
}

std::optional<Range> range_if(bool present, Range range) {
  if (!present) return {};
  return range;
}

struct Feature {
  std::string_view name;  // with its verb
  Places (*find)(const Lesson&);
};

// One row a feature. A row goes when its feature is drawn.
const Feature features[] = {
    {"a language other than English is", [](const Lesson& l) { return only_if(l.language != "en", l.language_range); }},
    {"note names other than letters are",
     [](const Lesson& l) { return only_if(l.note_names != NoteNames::letters, l.note_names_range); }},
    {"a logo is", [](const Lesson& l) { return l.logo ? Places{l.logo->range} : Places{}; }},
    {"the QR code of a link is", [](const Lesson& l) { return l.link ? Places{l.link->range} : Places{}; }},
    {"what 'handed' mirrors is", [](const Lesson& l) { return only_if(l.left_handed, l.handed_range); }},
    {"a practice log is", [](const Lesson& l) { return only_if(l.practice_log > 0, l.practice_log_range); }},

    {"an example with 'vary' is",
     [](const Lesson& l) { return each_example(l, [](const Example& e) { return range_of(e.vary); }); }},
    {"what 'hide' asks for is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) {
         return range_if(e.hide.frets || e.hide.rhythm || e.hide.labels || e.hide.chords, e.hide_range);
       });
     }},
    {"a form is", [](const Lesson& l) { return each_example(l, [](const Example& e) { return range_of(e.form); }); }},
    {"a picture of the neck is",
     [](const Lesson& l) { return each_example(l, [](const Example& e) { return range_of(e.neck); }); }},
    {"chord boxes are",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) {
         return range_if(!e.shapes.empty(), e.shapes.empty() ? Range{} : e.shapes.front().range);
       });
     }},
    {"a build-up is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) { return range_if(e.build_up != BuildUp::none, e.build_up_range); });
     }},
    {"a pair of tempos is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) { return range_if(e.tempo && e.tempo->pair, e.tempo_range); });
     }},
    {"the notes staff is",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) {
         return range_if(std::find(e.staves.begin(), e.staves.end(), Staff::notes) != e.staves.end(), e.staves_range);
       });
     }},

    {"grace notes are", [](const Lesson& l) { return each_note(l, [](const Note& n) { return !n.graces.empty(); }); }},
    {"bends are", [](const Lesson& l) { return each_note(l, [](const Note& n) { return n.bend.has_value(); }); }},
    {"vibrato is", [](const Lesson& l) { return each_note(l, [](const Note& n) { return n.vibrato; }); }},
    {"slides off a note are",
     [](const Lesson& l) { return each_note(l, [](const Note& n) { return n.slide_off != SlideOff::none; }); }},
    {"slides from nowhere are",
     [](const Lesson& l) { return each_note(l, [](const Note& n) { return n.approach_from_nowhere; }); }},
    {"plucking-hand letters are",
     [](const Lesson& l) { return each_note(l, [](const Note& n) { return n.hand.has_value(); }); }},
    {"strokes are", [](const Lesson& l) { return each_event(l, [](const Event& e) { return e.stroke.has_value(); }); }},
    {"fermatas are", [](const Lesson& l) { return each_event(l, [](const Event& e) { return e.fermata; }); }},
    {"palm mutes are", [](const Lesson& l) { return spans(l, SpanKind::palm_mute); }},
    {"let-ring spans are", [](const Lesson& l) { return spans(l, SpanKind::let_ring); }},
    {"tremolo picking is", [](const Lesson& l) { return spans(l, SpanKind::tremolo); }},

    {"a text row is", [](const Lesson& l) { return words(l, &Bar::texts); }},
    {"lyrics are", [](const Lesson& l) { return words(l, &Bar::lyrics); }},
    {"section names are", [](const Lesson& l) { return words(l, &Bar::sections); }},
    {"road signs are", [](const Lesson& l) { return words(l, &Bar::roads); }},
    {"the number of times of a repeat is",
     [](const Lesson& l) { return each_bar(l, [](const Bar& b) { return range_of(b.plays); }); }},
    {"bar-repeat signs are",
     [](const Lesson& l) { return each_bar(l, [](const Bar& b) { return range_if(b.same_as_previous, b.range); }); }},
    {"endings are",
     [](const Lesson& l) {
       return each_example(l, [](const Example& e) {
         return range_if(!e.music.endings.empty(), e.music.endings.empty() ? Range{} : e.music.endings.front().range);
       });
     }},
};

}  // namespace

void warn_not_drawn(const Lesson& lesson, source::Diagnostics& diagnostics) {
  for (const Feature& feature : features) {
    for (const Range& range : feature.find(lesson)) {
      diagnostics.warning(source::Code::not_drawn, range, std::string(feature.name) + " read but not drawn yet");
    }
  }
}

}  // namespace fretsheaf::lesson
