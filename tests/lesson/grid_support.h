#pragma once

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "fretboard/instrument.h"
#include "lesson/grid.h"
#include "source/diagnostic.h"
#include "source/text.h"
#include "theory/key.h"
#include "theory/meter.h"

namespace fretsheaf::lesson::grid_test {

inline fretboard::Neck neck_of(std::string_view instrument, int capo = 0) {
  const fretboard::Instrument& found = *fretboard::find_instrument(instrument);
  return {found.tuning, found.frets, capo, found.short_fifth_string};
}

// What a grid is read against in a test.
struct Setting {
  std::string instrument = "bass";
  std::string meter = "4/4";
  std::string key = "D dorian";
  int capo = 0;
  bool vary = false;
};

struct Reading {
  Music music;
  std::vector<std::string> said;  // "LINE:COLUMN: error: message; help", in order
};

// Reads a whole text as a grid, so that its first line is line 1.
inline Reading read(const std::string& grid, const Setting& setting = {}) {
  const source::Text text("grid", grid);
  const std::uint32_t begin = grid.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  const fretboard::Neck neck = neck_of(setting.instrument, setting.capo);
  const GridContext context{neck, *theory::parse_key(setting.key), *theory::parse_meter(setting.meter), setting.vary};
  source::Diagnostics diagnostics;
  Reading reading;
  reading.music = read_grid(text, {begin, static_cast<std::uint32_t>(grid.size()), 0}, context, diagnostics);
  for (const source::Diagnostic& d : diagnostics.sorted()) {
    const source::Position at = text.position(d.range.begin);
    reading.said.push_back(std::to_string(at.line) + ":" + std::to_string(at.column) +
                           (d.severity == source::Severity::error ? ": error: " : ": warning: ") + d.message +
                           (d.help.empty() ? "" : "; " + d.help));
  }
  return reading;
}

// A grid and all that is said about it.
struct Case {
  std::string grid;
  std::vector<std::string> said;
  Setting setting{};
};

inline std::string with_crlf(const std::string& text) {
  std::string result;
  for (const char c : text) result += c == '\n' ? std::string("\r\n") : std::string(1, c);
  return result;
}

// Line ends and a byte-order mark change no place.
inline void check(const std::vector<Case>& cases) {
  for (const Case& one : cases) {
    INFO(one.grid);
    CHECK(read(one.grid, one.setting).said == one.said);
    CHECK(read(with_crlf(one.grid), one.setting).said == one.said);
    CHECK(read("\xEF\xBB\xBF" + one.grid, one.setting).said == one.said);
  }
}

// "A3 D5h7(g4)…": the notes of an event, for comparing a whole bar at a glance.
inline std::string note_text(const Note& note) {
  const auto approach = [](Approach a) {
    return std::string(a == Approach::hammer_on    ? "h"
                       : a == Approach::pull_off   ? "p"
                       : a == Approach::slide_up   ? "/"
                       : a == Approach::slide_down ? "\\"
                                                   : "");
  };
  std::string text = std::to_string(note.place.string) + ":";
  for (const GraceNote& grace : note.graces) {
    text += "{" + approach(grace.approach) + std::to_string(grace.place.fret) + "}";
  }
  text += approach(note.approach);
  if (note.approach_from_nowhere) text += "?";
  const std::string fret = note.dead ? "x" : std::to_string(note.place.fret);
  text += note.ghost ? "(" + fret + ")" : note.harmonic ? "<" + fret + ">" : fret;
  if (note.held) text += "=";
  if (note.accent) text += ">";
  if (note.staccato) text += ".";
  if (note.tenuto) text += "_";
  if (note.vibrato) text += "~";
  if (note.bend) text += "^" + note.bend->tones.to_string() + (note.bend->release ? "v" : "");
  if (note.slide_off != SlideOff::none) text += note.slide_off == SlideOff::up ? "/" : "\\";
  if (note.finger) text += " f" + note.finger->value;
  if (note.hand) text += " H" + note.hand->value;
  if (note.spell) text += " s" + note.spell->value.to_string();
  return text;
}

inline std::string event_text(const Event& event) {
  std::string text = event.at.to_string() + "+" + event.length.to_string();
  if (event.kind == EventKind::rest) text += " rest";
  if (event.kind == EventKind::held) text += " held";
  if (event.strum) {
    const char* strums[] = {" *", " x", " >", " (*)"};
    text += strums[static_cast<int>(*event.strum)];
  }
  for (const Note& note : event.notes) text += " " + note_text(note);
  if (event.stroke) text += event.stroke->value == Stroke::down ? " down" : " up";
  for (const auto& word : event.hand) text += " H" + word.value;
  if (event.fermata) text += " fermata";
  if (!event.written_out) text += " !";
  return text;
}

inline std::string bar_text(const Bar& bar) {
  std::string text;
  for (const Event& event : bar.events) text += (text.empty() ? "" : ", ") + event_text(event);
  return text;
}

inline std::string sign_text(BarSign sign) {
  const char* signs[] = {"|", "||", "|:", ":|", ":|:", "|]"};
  return signs[static_cast<int>(sign)];
}

inline std::string words_text(const std::vector<Word>& words) {
  std::string text;
  for (const Word& word : words) {
    text += " " + word.at.to_string() + ":" + word.text + (word.goes_on ? "-" : "") + "/" + std::to_string(word.row);
  }
  return text;
}

inline std::string moment_text(const Moment& moment) {
  return std::to_string(moment.bar) + "@" + moment.at.to_string();
}

// All that a model of music says but source ranges.
inline std::string music_text(const Music& music) {
  std::string text =
      sign_text(music.left) + (music.has_strings ? " strings" : "") + (music.has_finger_row ? " fingers" : "") + "\n";
  for (const Bar& bar : music.bars) {
    text += std::to_string(bar.number) + " " + bar.meter.to_string() + (bar.meter_written ? "! " : " ") +
            bar.begin.to_string() + "-" + bar.end.to_string() + (bar.same_as_previous ? " % " : " ") + bar_text(bar) +
            " " + sign_text(bar.right);
    if (bar.plays) text += " x" + std::to_string(bar.plays->value);
    for (const ChordMark& chord : bar.chords) text += " " + chord.at.to_string() + "=" + theory::to_string(chord.chord);
    text += words_text(bar.texts) + words_text(bar.lyrics) + words_text(bar.sections) + words_text(bar.roads) + "\n";
  }
  for (const Dynamic& dynamic : music.dynamics) text += dynamic.text + " " + moment_text(dynamic.moment) + "\n";
  for (const Span& span : music.spans) {
    text += std::to_string(static_cast<int>(span.kind)) + " " + moment_text(span.first) + " " + moment_text(span.last) +
            "\n";
  }
  for (const Dynamic& dynamic : music.repeated_dynamics)
    text += "again " + dynamic.text + " " + moment_text(dynamic.moment) + "\n";
  for (const Span& span : music.repeated_spans) {
    text += "again " + std::to_string(static_cast<int>(span.kind)) + " " + moment_text(span.first) + " " +
            moment_text(span.last) + "\n";
  }
  for (const Ending& ending : music.endings) {
    text += ending.label + std::to_string(ending.first_bar) + "-" + std::to_string(ending.last_bar) + "\n";
  }
  return text;
}

// A sound grid, and its music as `music_text` says it. Warnings may be said.
struct SoundCase {
  std::string grid;
  std::string music;
  Setting setting{};
};

inline void check_music(const std::vector<SoundCase>& cases) {
  for (const SoundCase& one : cases) {
    INFO(one.grid);
    const Reading reading = read(one.grid, one.setting);
    for (const std::string& said : reading.said) CHECK(said.find(": error: ") == std::string::npos);
    CHECK(music_text(reading.music) == one.music);
    CHECK(music_text(read(with_crlf(one.grid), one.setting).music) == one.music);
  }
}

}  // namespace fretsheaf::lesson::grid_test
