#include "exchange/take_note.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "exchange/xml_text.h"

namespace fretsheaf::exchange {

using lesson::Approach;
using source::Code;

namespace {

template <std::size_t count>
bool among(std::string_view name, const std::array<std::string_view, count>& names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// Children of a note that are read elsewhere, or say how it looks.
constexpr std::array<std::string_view, 22> known_in_note = {
    "grace",    "cue",        "chord",     "pitch",         "unpitched",
    "rest",     "duration",   "tie",       "voice",         "type",
    "dot",      "accidental", "stem",      "notehead-text", "staff",
    "beam",     "lyric",      "notations", "level",         "time-modification",
    "footnote", "instrument",
};

}  // namespace

void NoteTaker::left_out(const Xml& element) {
  losses_.left_out(&element, measure_, "`" + element.name + "`");
}

Head NoteTaker::head(const Xml& note) {
  Head head;
  head.element = &note;
  read_pitch(note, head);
  for (const Xml& e : note.children) {
    const std::string_view name = e.name;
    if (name == "tie") {
      (attribute(e, "type") == "stop" ? head.tie_stop : head.tie_start) = true;
    } else if (name == "notehead") {
      const std::string shape = text_of(e);
      head.cross = shape == "x" || shape == "cross";
      head.slash = shape == "slash";
      head.parentheses = attribute(e, "parentheses") == "yes";
    } else if (name == "notations") {
      read_notations(e, head);
    } else if (name == "play") {
      read_play(e, head);
    } else if (!among(name, known_in_note)) {
      left_out(e);
    }
  }
  return head;
}

void NoteTaker::read_pitch(const Xml& note, Head& head) {
  const Xml* pitch = note.child("pitch");
  if (pitch == nullptr) return;
  const std::string step = text_of(*pitch, "step");
  const auto octave = whole(text_of(*pitch, "octave"));
  const auto alter = decimal(has(*pitch, "alter") ? text_of(*pitch, "alter") : "0");
  const auto name = step.size() == 1 ? theory::parse_note_name(step) : std::nullopt;
  const bool sound =
      name && octave && alter && *octave >= 0 && *octave <= 9 && *alter >= Rational(-3) && *alter <= Rational(3);
  if (!sound) {
    losses_.error(Code::adopt_time, pitch, measure_, "a pitch is not sound", "export the score anew");
    return;
  }
  theory::Pitch own{{name->letter, static_cast<int>(alter->floor())}, *octave};
  if (alter->denominator() != 1) {
    losses_.lose(Code::adopt_changed, pitch, measure_, "a pitch between two frets is taken at the lower one",
                 "frets have no quarter tones");
  }
  head.pitch = theory::transposed(own, transposed_);
}

void NoteTaker::read_play(const Xml& play, Head& head) {
  for (const Xml& e : play.children) {
    if (e.name == "mute" && text_of(e) == "palm") {
      head.palm_mute = true;
    } else if (e.name != "ipa" && text_of(e) != "off") {
      left_out(e);
    }
  }
}

void NoteTaker::read_notations(const Xml& notations, Head& head) {
  for (const Xml& e : notations.children) {
    const std::string_view name = e.name;
    const std::string type = attribute(e, "type");
    if (name == "tied") {
      if (type == "let-ring") head.let_ring = true;
      if (type == "stop" || type == "continue") head.tie_stop = true;
      if (type == "start" || type == "continue") head.tie_start = true;
    } else if (name == "slur") {
      if (type != "continue") head.slurs.push_back({type == "start", attribute(e, "number")});
    } else if (name == "slide" || name == "glissando") {
      head.joins.push_back({JoinKind::slide, type == "start", std::string(name) + attribute(e, "number")});
    } else if (name == "technical") {
      read_technical(e, head);
    } else if (name == "articulations") {
      read_articulations(e, head);
    } else if (name == "ornaments") {
      read_ornaments(e, head);
    } else if (name != "tuplet" && name != "fermata" && name != "accidental-mark" && name != "dynamics") {
      left_out(e);
    }
  }
}

void NoteTaker::read_technical(const Xml& technical, Head& head) {
  for (const Xml& e : technical.children) {
    const std::string_view name = e.name;
    if (name == "string" || name == "fret") {
      (name == "string" ? head.string : head.fret) = whole(text_of(e));
    } else if (name == "hammer-on" || name == "pull-off") {
      const JoinKind kind = name == "hammer-on" ? JoinKind::hammer_on : JoinKind::pull_off;
      head.joins.push_back({kind, attribute(e, "type") == "start", std::string(name) + attribute(e, "number")});
    } else {
      read_technical_sign(e, head);
    }
  }
}

void NoteTaker::read_technical_sign(const Xml& sign, Head& head) {
  const std::string_view name = sign.name;
  const std::string text = text_of(sign);
  if (name == "bend") return read_bend(sign, head);
  if (name == "harmonic") return read_harmonic(sign, head);
  if (name == "fingering" && text.size() == 1 && std::string_view("01234T").find(text) != std::string_view::npos) {
    head.finger = text;
  } else if (name == "pluck" && text.size() == 1 && std::string_view("pimaT").find(text) != std::string_view::npos) {
    head.hand = text;
  } else if (name == "other-technical" && (text == "thumb slap" || text == "pop")) {
    head.hand = text == "pop" ? "P" : "T";
  } else if (name != "up-bow" && name != "down-bow" && name != "open-string") {
    losses_.left_out(&sign, measure_,
                     "`" + std::string(name) + "`" + (text.empty() || text.size() > 20 ? "" : " " + text));
  }
}

// The first is how far, one that goes back a release.
void NoteTaker::read_bend(const Xml& bend, Head& head) {
  const auto semitones = decimal(text_of(bend, "bend-alter"));
  const bool released = has(bend, "release");
  if (has(bend, "pre-bend")) return left_out(bend);
  if (head.bend && released) {
    head.bend->release = true;
    return;
  }
  constexpr int most_tones = 6;
  const Rational tones = semitones ? simplest(*semitones * Rational(1, 2)) : Rational(0);
  if (head.bend || tones <= Rational(0) || tones > Rational(most_tones)) return left_out(bend);
  head.bend = lesson::Bend{tones, released};
}

void NoteTaker::read_harmonic(const Xml& harmonic, Head& head) {
  if (has(harmonic, "artificial")) {
    losses_.left_out(&harmonic, measure_, "an artificial harmonic's sign");
    return;
  }
  head.harmonic = true;
}

void NoteTaker::read_articulations(const Xml& articulations, Head& head) {
  for (const Xml& e : articulations.children) {
    const std::string_view name = e.name;
    if (name == "accent" || name == "strong-accent") head.accent = true;
    if (name == "staccato" || name == "staccatissimo" || name == "detached-legato") head.staccato = true;
    if (name == "tenuto" || name == "detached-legato") head.tenuto = true;
    if (name == "strong-accent" || name == "staccatissimo") {
      losses_.lose(Code::adopt_changed, &e, measure_,
                   "`" + std::string(name) + "` is taken as " + (name == "strong-accent" ? "an accent" : "staccato"),
                   "a lesson has no stronger sign");
    } else if (name == "doit" || name == "falloff") {
      head.slide_off = name == "doit" ? lesson::SlideOff::up : lesson::SlideOff::down;
    } else if (name == "scoop" || name == "plop") {
      head.from_nowhere = name == "scoop" ? Approach::slide_up : Approach::slide_down;
    } else if (name != "accent" && name != "staccato" && name != "detached-legato" && name != "tenuto") {
      left_out(e);
    }
  }
}

void NoteTaker::read_ornaments(const Xml& ornaments, Head& head) {
  const bool trilled = has(ornaments, "trill-mark");
  for (const Xml& e : ornaments.children) {
    const std::string_view name = e.name;
    if (name == "wavy-line" && !trilled) {
      head.vibrato = true;
    } else if (name != "wavy-line" && name != "tremolo") {
      left_out(e);
    }
  }
}

void NoteTaker::add_event_signs(const Xml& note, Symbol& symbol) {
  for (const Xml* n : note.all("notations")) {
    if (has(*n, "fermata")) symbol.fermata = true;
    if (const Xml* technical = n->child("technical")) {
      if (has(*technical, "down-bow")) symbol.stroke = lesson::Stroke::down;
      if (has(*technical, "up-bow")) symbol.stroke = lesson::Stroke::up;
    }
    const Xml* ornaments = n->child("ornaments");
    const Xml* tremolo = ornaments == nullptr ? nullptr : ornaments->child("tremolo");
    if (tremolo == nullptr) continue;
    const std::string type = attribute(*tremolo, "type");
    if ((type.empty() || type == "single" || type == "unmeasured") && whole(text_of(*tremolo)).value_or(3) != 1 &&
        whole(text_of(*tremolo)).value_or(3) != 2) {
      symbol.tremolo = true;
    } else {
      losses_.left_out(tremolo, measure_, "a measured tremolo");
    }
  }
  for (const Xml* e : note.all("lyric")) {
    read_lyric(*e, symbol);
  }
}

// Syllables that share a note are one.
void NoteTaker::read_lyric(const Xml& lyric, Symbol& symbol) {
  Syllable syllable{attribute(lyric, "number"), {}, false, &lyric};
  std::string syllabic;
  for (const Xml& e : lyric.children) {
    const std::string_view name = e.name;
    if (name == "syllabic") syllabic = text_of(e);
    if (name == "text") syllable.text += (syllable.text.empty() ? "" : " ") + text_of(e);
    if (name == "laughing" || name == "humming") left_out(e);
  }
  syllable.goes_on = syllabic == "begin" || syllabic == "middle";
  constexpr std::size_t most_verses = 20;
  if (symbol.lyrics.size() == most_verses)
    return losses_.left_out(&lyric, measure_, "a twenty-first syllable of one note");
  if (!syllable.text.empty()) symbol.lyrics.push_back(std::move(syllable));
}

}  // namespace fretsheaf::exchange
