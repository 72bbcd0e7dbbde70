#pragma once

#include <string>

// Scores in the shapes that other programs write, made by hand after the examples of the W3C's MusicXML 4.0
// documentation: as little as each needs.
namespace fretsheaf::exchange::test {

// A score of one part around its measures.
inline std::string score_of(const std::string& measures, const std::string& part_name = "Guitar") {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\" "
         "\"http://www.musicxml.org/dtds/partwise.dtd\">\n"
         "<score-partwise version=\"4.0\">\n"
         "<work><work-title>Gull song</work-title></work>\n"
         "<part-list><score-part id=\"P1\"><part-name>" +
         part_name +
         "</part-name></score-part></part-list>\n"
         "<part id=\"P1\">\n" +
         measures + "</part>\n</score-partwise>\n";
}

inline std::string measure(int number, const std::string& inside) {
  return "<measure number=\"" + std::to_string(number) + "\">\n" + inside + "</measure>\n";
}

// Four divisions a quarter, C major, 4/4, a treble clef read an octave lower.
inline const std::string plain_attributes =
    "<attributes><divisions>4</divisions><key><fifths>0</fifths><mode>major</mode></key>"
    "<time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef>"
    "<transpose><chromatic>0</chromatic><octave-change>-1</octave-change></transpose></attributes>\n";

// A note of so many divisions: "E4", or "" for a rest; `more` goes in after its voice, `first` before its pitch.
inline std::string note(const std::string& pitch, int duration, const std::string& more = {},
                        const std::string& first = {}, int voice = 1) {
  std::string text = "<note>" + first;
  if (pitch.empty()) {
    text += "<rest/>";
  } else {
    text += "<pitch><step>" + pitch.substr(0, 1) + "</step>";
    if (pitch[1] == '#' || pitch[1] == 'b')
      text += std::string("<alter>") + (pitch[1] == '#' ? "1" : "-1") + "</alter>";
    text += "<octave>" + pitch.substr(pitch.size() - 1) + "</octave></pitch>";
  }
  if (first.find("<grace") == std::string::npos) text += "<duration>" + std::to_string(duration) + "</duration>";
  return text + "<voice>" + std::to_string(voice) + "</voice>" + more + "</note>\n";
}

inline std::string notations(const std::string& inside) {
  return "<notations>" + inside + "</notations>";
}

inline std::string technical(const std::string& inside) {
  return notations("<technical>" + inside + "</technical>");
}

}  // namespace fretsheaf::exchange::test
