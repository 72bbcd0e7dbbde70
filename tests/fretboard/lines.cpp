#include "fretboard/lines.h"

#include <sstream>

namespace fretsheaf::fretboard {

namespace {

std::vector<std::string> words(const std::string& text, char separator) {
  std::vector<std::string> result;
  std::istringstream stream(text);
  std::string word;
  while (std::getline(stream, word, separator)) {
    if (!word.empty()) result.push_back(word);
  }
  return result;
}

std::string text(Unplayable why) {
  switch (why) {
    case Unplayable::too_low:
      return "too low";
    case Unplayable::too_high:
      return "too high";
    case Unplayable::nowhere:
      return "nowhere";
    case Unplayable::no_harmonic:
      return "no harmonic";
    case Unplayable::no_free_string:
      return "no free string";
    case Unplayable::out_of_reach:
      return "out of reach";
    case Unplayable::joint_too_wide:
      return "joint too wide";
    case Unplayable::not_on_one_string:
      return "not on one string";
  }
  return "?";
}

}  // namespace

Played instrument(const char* name, int capo) {
  const Instrument& found = *find_instrument(name);
  return {{found.tuning, found.frets, capo, found.short_fifth_string}, found.scale_length};
}

Place at(const Neck& neck, const std::string& text) {
  const auto digit = text.find_first_of("0123456789", 1);
  return {string_of_label(neck, text.substr(0, digit)).value(), std::stoi(text.substr(digit))};
}

std::string text(const Neck& neck, Place place) {
  return string_labels(neck)[static_cast<std::size_t>(place.string) - 1] + std::to_string(place.fret);
}

Line shifted_line(const Neck& neck, const std::string& places, int up) {
  Line line;
  for (const std::string& event : words(places, ' ')) {
    EventToPlace& to = line.events.emplace_back();
    to.length = {1, 8};
    if (event == "r") continue;
    for (const std::string& note : words(event, '+')) {
      const Place original = at(neck, note);
      NoteToPlace& wanted = to.notes.emplace_back();
      wanted.midi = neck.midi(original) + up;
      wanted.original = original;
    }
  }
  return line;
}

Line free_line(const Neck&, const std::string& pitches) {
  Line line;
  for (const std::string& event : words(pitches, ' ')) {
    EventToPlace& to = line.events.emplace_back();
    to.length = {1, 8};
    if (event == "r") continue;
    for (const std::string& pitch : words(event, '+')) {
      to.notes.emplace_back().midi = theory::parse_pitch(pitch).value().midi();
    }
  }
  return line;
}

std::string text(const Neck& neck, const Fingering& fingering) {
  std::string result;
  for (const UnplayableNote& note : fingering.unplayable) {
    if (!result.empty()) result += ", ";
    result += std::to_string(note.note.event) + "." + std::to_string(note.note.note) + " " + text(note.why);
  }
  for (const std::vector<PlacedNote>& event : fingering.events) {
    if (!result.empty()) result += ' ';
    if (event.empty()) result += 'r';
    for (const PlacedNote& note : event) {
      if (&note != event.data()) result += '+';
      for (const Place grace : note.graces) result += "(" + text(neck, grace) + ")";
      result += text(neck, note.place);
    }
  }
  return result;
}

std::string describe(const Line& line, const Played& on) {
  std::ostringstream out;
  for (const std::string& label : string_labels(on.neck)) out << label << ' ';
  out << "frets " << on.neck.frets << " capo " << on.neck.capo << " tempo " << line.quarters_per_minute.to_string();
  for (const EventToPlace& event : line.events) {
    out << "\n  " << event.length.to_string() << ':';
    for (const NoteToPlace& note : event.notes) {
      out << ' ' << note.midi << " sound " << static_cast<int>(note.sound) << " joint " << static_cast<int>(note.joint);
      if (note.from) out << " from " << note.from->event << '.' << note.from->note;
      if (note.original) out << " was " << text(on.neck, *note.original);
      if (note.stopped) out << " stopped";
      for (const GraceToPlace& grace : note.graces)
        out << " grace " << grace.midi << " joint " << static_cast<int>(grace.joint);
      out << ';';
    }
  }
  return out.str();
}

}  // namespace fretsheaf::fretboard
