#include "exchange/notations.h"

#include <map>
#include <optional>

#include "exchange/loudness.h"

namespace fretsheaf::exchange {

namespace {

using lesson::Approach;

// The groups inside <notations>, made when the first thing goes into them, so that no empty one is written.
class Notations {
 public:
  explicit Notations(Element note) : note_(note) {}

  Element all() { return made(all_, note_, "notations"); }
  Element technical() { return made(technical_, all(), "technical"); }
  Element articulations() { return made(articulations_, all(), "articulations"); }
  Element ornaments() { return made(ornaments_, all(), "ornaments"); }

 private:
  static Element made(std::optional<Element>& group, Element parent, const char* name) {
    if (!group) group = parent.add(name);
    return *group;
  }

  Element note_;
  std::optional<Element> all_;
  std::optional<Element> technical_;
  std::optional<Element> articulations_;
  std::optional<Element> ornaments_;
};

// A tab says nothing of rhythm that the staff above it says already.
void write_tuplet(Notations& notations, const Part& part, const Tone& tone, bool shown) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  if (!event.tuplet) return;
  const score::Tuplet& tuplet = bar.tuplets[*event.tuplet];
  if (tone.event == tuplet.first) {
    Element element = notations.all().add("tuplet").set("type", "start");
    element.set("bracket", shown && tuplet.bracket ? "yes" : "no");
    if (!shown) element.set("show-number", "none");
  }
  if (tone.event == tuplet.last) notations.all().add("tuplet").set("type", "stop");
}

const Joins* joins_at(const Part& part, const Tone& tone) {
  const auto found = part.joins.find(tone);
  return found == part.joins.end() ? nullptr : &found->second;
}

bool is_slide(const Join& join) {
  return join.kind == Approach::slide_up || join.kind == Approach::slide_down;
}

void write_slides(Notations& notations, const Joins* joins) {
  if (joins == nullptr) return;
  const auto slide = [&](const Join& join, const char* type) {
    notations.all().add("slide").set("type", type).set("number", std::to_string(join.number)).set("line-type", "solid");
  };
  if (joins->from && is_slide(*joins->from)) slide(*joins->from, "stop");
  if (joins->to && is_slide(*joins->to)) slide(*joins->to, "start");
}

// Hammered and pulled notes stand under a slur, pair by pair.
void write_slurs(Notations& notations, const Joins* joins) {
  if (joins == nullptr) return;
  const auto slur = [&](const Join& join, const char* type) {
    notations.all().add("slur").set("type", type).set("number", std::to_string(join.number));
  };
  if (joins->from && !is_slide(*joins->from)) slur(*joins->from, "stop");
  if (joins->to && !is_slide(*joins->to)) slur(*joins->to, "start");
}

void write_pulls(Notations& notations, const Joins* joins) {
  if (joins == nullptr) return;
  const auto pull = [&](const Join& join, const char* type) {
    const bool hammer = join.kind == Approach::hammer_on;
    Element element =
        notations.technical().add(hammer ? "hammer-on" : "pull-off", type[2] == 'a' ? (hammer ? "H" : "P") : "");
    element.set("type", type).set("number", std::to_string(join.number));
  };
  if (joins->from && !is_slide(*joins->from)) pull(*joins->from, "stop");
  if (joins->to && !is_slide(*joins->to)) pull(*joins->to, "start");
}

void write_place(Notations& notations, const fretboard::Place& place, StaffKind kind) {
  if (kind != StaffKind::tab) return;
  notations.technical().add("string", place.string);
  notations.technical().add("fret", place.fret);
}

void write_bend(Notations& notations, const lesson::Bend& bend) {
  const theory::Rational semitones = bend.tones * theory::Rational(2);
  notations.technical().add("bend").add("bend-alter", decimal_text(semitones));
  if (!bend.release) return;
  // It counts the steps back (MusicXML 4.0, bend-alter).
  Element back = notations.technical().add("bend");
  back.add("bend-alter", decimal_text(-semitones));
  back.add("release");
}

void write_technical(Notations& notations, const score::Note& own) {
  if (own.head == score::HeadKind::harmonic) {
    Element harmonic = notations.technical().add("harmonic");
    harmonic.add("natural");
    harmonic.add("sounding-pitch");
  }
  if (!own.finger.empty()) notations.technical().add("fingering", own.finger);
  if (own.hand == "T") {
    notations.technical().add("other-technical", "thumb slap");
  } else if (own.hand == "P") {
    notations.technical().add("other-technical", "pop");
  } else if (!own.hand.empty()) {
    notations.technical().add("pluck", own.hand);
  }
  if (own.bend) write_bend(notations, *own.bend);
}

void write_articulations(Notations& notations, const score::Note& own) {
  if (own.accent) notations.articulations().add("accent");
  if (own.staccato) notations.articulations().add("staccato");
  if (own.tenuto) notations.articulations().add("tenuto");
  if (own.slide_off == lesson::SlideOff::up) notations.articulations().add("doit");
  if (own.slide_off == lesson::SlideOff::down) notations.articulations().add("falloff");
  if (own.approach_from_nowhere && own.approach == Approach::slide_up) notations.articulations().add("scoop");
  if (own.approach_from_nowhere && own.approach == Approach::slide_down) notations.articulations().add("plop");
}

void write_event_signs(Notations& notations, const Part& part, const Tone& tone) {
  const score::Event& event = part.example.bars[tone.bar].events[tone.event];
  if (event.stroke) notations.technical().add(*event.stroke == lesson::Stroke::down ? "down-bow" : "up-bow");
  if (part.cover.tremolo.contains({tone.bar, tone.event})) {
    notations.ornaments().add("tremolo", "3").set("type", "single");
  }
  if (event.fermata) notations.all().add("fermata").set("type", "upright");
}

void write_ties(Notations& notations, bool from, bool to) {
  if (from) notations.all().add("tied").set("type", "stop");
  if (to) notations.all().add("tied").set("type", "start");
}

}  // namespace

void write_notations(Element note, const Part& part, const Tone& tone, StaffKind kind, bool first) {
  const score::Event& event = part.example.bars[tone.bar].events[tone.event];
  const score::Note& own = event.notes[tone.note];
  Notations notations(note);
  write_ties(notations, own.tie_from, own.tie_to);
  if (part.cover.let_ring.contains({tone.bar, tone.event}) && !own.tie_to) {
    notations.all().add("tied").set("type", "let-ring");
  }
  if (first) write_tuplet(notations, part, tone, kind != StaffKind::tab);
  const Joins* joins = joins_at(part, tone);
  write_slurs(notations, joins);
  write_slides(notations, joins);
  write_place(notations, own.place, kind);
  write_pulls(notations, joins);
  write_technical(notations, own);
  if (own.vibrato && !own.tie_from) {
    const std::string number = std::to_string(own.place.string);
    notations.ornaments().add("wavy-line").set("type", "start").set("number", number);
    notations.ornaments().add("wavy-line").set("type", "stop").set("number", number);
  }
  write_articulations(notations, own);
  if (first) write_event_signs(notations, part, tone);
}

void write_grace_notations(Element note, const Part& part, const Tone& tone, StaffKind kind) {
  Notations notations(note);
  const Joins* joins = joins_at(part, tone);
  write_slurs(notations, joins);
  write_slides(notations, joins);
  const score::Note& main = part.example.bars[tone.bar].events[tone.event].notes[tone.note];
  write_place(notations, main.graces[tone.grace].place, kind);
  write_pulls(notations, joins);
}

void write_rest_notations(Element note, const Part& part, const Tone& tone, StaffKind kind) {
  Notations notations(note);
  write_tuplet(notations, part, tone, kind != StaffKind::tab);
  if (part.example.bars[tone.bar].events[tone.event].fermata) {
    notations.all().add("fermata").set("type", "upright");
  }
}

void write_strum_notations(Element note, const Part& part, const Tone& tone) {
  const score::Event& event = part.example.bars[tone.bar].events[tone.event];
  Notations notations(note);
  write_ties(notations, event.tie_from, event.tie_to);
  if (part.cover.let_ring.contains({tone.bar, tone.event}) && !event.tie_to) {
    notations.all().add("tied").set("type", "let-ring");
  }
  write_tuplet(notations, part, tone, true);
  if (event.strum == lesson::Strum::accented && event.struck) notations.articulations().add("accent");
  write_event_signs(notations, part, tone);
}

void write_lyrics(Element note, const Part& part, const Tone& tone) {
  const score::Bar& bar = part.example.bars[tone.bar];
  const score::Event& event = bar.events[tone.event];
  std::map<int, Element> verses;
  for (std::size_t i = 0; i < bar.lyrics.size(); ++i) {
    const lesson::Word& word = bar.lyrics[i];
    if (word.at < event.at || word.at >= event.at + event.length) continue;
    const auto known = verses.find(word.row);
    Element lyric =
        known != verses.end() ? known->second : note.add("lyric").set("number", std::to_string(word.row + 1));
    // Syllables on counts that a note is held over share it.
    if (known != verses.end()) lyric.add("elision", " ");
    lyric.add("syllabic", part.syllables[static_cast<std::size_t>(tone.bar)][i]);
    lyric.add("text", word.text);
    verses.emplace(word.row, lyric);
  }
}

}  // namespace fretsheaf::exchange
