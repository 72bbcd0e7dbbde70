#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lesson/grid_form.h"
#include "lesson/grid_phrases.h"
#include "lesson/plain_signs.h"
#include "source/nearest.h"
#include "theory/chord.h"

namespace fretsheaf::lesson {

using source::Code;

std::optional<Rational> moment_of(const BarDraft& draft, const Bar& bar, int count) {
  if (count == CountRef::bar_start) return bar.begin;
  if (count == CountRef::last_event) {
    return bar.events.empty() ? bar.begin : bar.events.back().at;
  }
  const Count& named = draft.counts[static_cast<std::size_t>(count)];
  if (named.bad) return std::nullopt;
  return named.at;
}

namespace {

constexpr std::array<std::string_view, 39> kinds = {
    "",      "m",    "5",    "6",    "m6",    "6/9",  "7",     "maj7", "m7",   "mMaj7",   "dim", "dim7", "m7b5",
    "aug",   "aug7", "sus2", "sus4", "7sus4", "add9", "madd9", "9",    "maj9", "m9",      "11",  "m11",  "13",
    "maj13", "m13",  "7b5",  "7#5",  "7b9",   "7#9",  "7#11",  "7b13", "m7b9", "maj7#11", "°",   "°7",   "ø"};

// How other chord charts write some kinds, and what they are here.
struct OtherKind {
  std::string_view written;
  std::string_view kind;
};
constexpr std::array<OtherKind, 22> other_kinds = {{
    {"min", "m"},      {"mi", "m"},      {"-", "m"},    {"min7", "m7"},   {"mi7", "m7"},    {"-7", "m7"},
    {"M", ""},         {"maj", ""},      {"Maj", ""},   {"M7", "maj7"},   {"Maj7", "maj7"}, {"ma7", "maj7"},
    {"Δ", "maj7"},     {"Δ7", "maj7"},   {"o", "dim"},  {"o7", "dim7"},   {"m7-5", "m7b5"}, {"sus", "sus4"},
    {"7sus", "7sus4"}, {"add2", "add9"}, {"dom7", "7"}, {"mM7", "mMaj7"},
}};

// Minor and major in German, French, Italian, Spanish and Portuguese (common practice).
constexpr std::array<std::string_view, 5> minor_words = {"moll", "mineur", "minore", "menor", "minor"};
constexpr std::array<std::string_view, 5> major_words = {"majeur", "maggiore", "mayor", "maior", "major"};
constexpr std::string_view german_major = "dur";

// The rest of `written` after a word that it begins with, in any case, with a hyphen before it or not ("-Moll7");
// nullopt where it begins with another.
std::optional<std::string> after_word(const std::string& written, std::string_view word) {
  const std::size_t begin = written.starts_with('-') ? 1 : 0;
  if (written.size() < begin + word.size()) return std::nullopt;
  for (std::size_t i = 0; i < word.size(); ++i) {
    const char c = written[begin + i];
    if ((c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c) != word[i]) return std::nullopt;
  }
  return written.substr(begin + word.size());
}

// A kind that is said in words: "moll7" is "m7"; nullopt where it is not. A seventh after a word for major is a major
// one, but for the German word: a Dur-Septakkord is a dominant.
std::optional<std::string> kind_in_words(const std::string& written) {
  for (const std::string_view word : minor_words) {
    if (const auto rest = after_word(written, word)) return "m" + *rest;
  }
  for (const std::string_view word : major_words) {
    if (const auto rest = after_word(written, word)) return (rest->starts_with('7') ? "maj" : "") + *rest;
  }
  return after_word(written, german_major);
}

std::string likely_kind(const std::string& written) {
  for (const OtherKind& other : other_kinds) {
    if (other.written == written) return std::string(other.kind);
  }
  if (const auto kind = kind_in_words(written); kind && theory::parse_chord("C" + *kind)) return *kind;
  return source::nearest(written, kinds);
}

// "Amin7" -> "Am7": the kind nearest to what follows the root. Empty where nothing is near.
std::string nearest_chord(const std::string& written) {
  const bool letter = written[0] >= 'A' && written[0] <= 'G';
  std::size_t root = letter ? 1 : std::min(written.find_first_not_of("b#"), written.size());
  if (letter && root < written.size() && (written[root] == 'b' || written[root] == '#')) ++root;
  if (!letter) root = std::min(written.find_first_not_of("ivIV", root), written.size());
  const std::string rest = written.substr(root);
  // A note name in lower case is no chord.
  if (rest.empty() || root == 0) return {};
  // A bass stays as it is.
  const std::size_t slash = std::min(rest.rfind('/'), rest.size());
  const std::string chord = written.substr(0, root) + likely_kind(rest.substr(0, slash)) + rest.substr(slash);
  return chord != written && theory::parse_chord(chord) ? chord : std::string();
}

// What to write instead of a chord with the signs of print; empty where it has none, or is none with letters for them.
std::string sign_help(const std::string& written) {
  const std::string plain = with_plain_signs(written);
  if (plain == written) return {};
  const std::string chord = theory::parse_chord(plain) ? plain : nearest_chord(plain);
  return std::string(plain_signs_rule) + (chord.empty() ? "" : ": write " + tick(chord));
}

// What to write instead of a numeral or a chord whose letters have the wrong case; empty where it is not that.
std::string case_help(const std::string& written) {
  std::string capital = written;
  const std::size_t root = std::min(written.find_first_not_of("b#"), written.size());
  const std::size_t end = std::min(written.find_first_not_of("ivIV", root), written.size());
  if (root == end) {
    if (written[0] < 'a' || written[0] > 'g') return {};
    capital[0] = static_cast<char>(written[0] - 'a' + 'A');
    return theory::parse_chord(capital) ? "a chord's letter is a capital: write " + tick(capital) : std::string();
  }
  std::string small = written;
  for (std::size_t i = root; i < end; ++i) {
    capital[i] = static_cast<char>(written[i] & ~0x20);
    small[i] = static_cast<char>(written[i] | 0x20);
  }
  if (capital == written || !theory::parse_chord(capital)) return {};
  if (small == written) return "small letters make it minor: write " + tick(capital);
  const std::string or_small = theory::parse_chord(small) ? ", or " + tick(small) + " for minor" : std::string();
  return "a numeral has one case: write " + tick(capital) + (or_small.empty() ? "" : " for major") + or_small;
}

class WordSetter {
 public:
  WordSetter(const GridInput& input, const GridDraft& draft, Music& music)
      : input_(input), draft_(draft), music_(music) {}

  void run() {
    for (std::size_t i = 0; i < draft_.bars.size(); ++i) {
      for (const PlacedWord& word : draft_.bars[i].words) set_word(draft_.bars[i], music_.bars[i], word);
      std::stable_sort(music_.bars[i].chords.begin(), music_.bars[i].chords.end(),
                       [](const ChordMark& a, const ChordMark& b) { return a.at < b.at; });
    }
  }

 private:
  void set_word(const BarDraft& draft, Bar& bar, const PlacedWord& word) {
    if (word.kind == RowKind::meter || word.kind == RowKind::ending || word.kind == RowKind::road) return;
    const auto at = moment_of(draft, bar, word.count);
    if (!at) return;
    if (*at < bar.begin) return report_before_start(draft, word);
    if (word.kind == RowKind::chord) return set_chord(bar, word, *at);
    std::vector<Word>& words = word.kind == RowKind::text    ? bar.texts
                               : word.kind == RowKind::lyric ? bar.lyrics
                                                             : bar.sections;
    words.push_back({*at, word.text, word.row, word.goes_on, word.range});
  }

  void report_before_start(const BarDraft& draft, const PlacedWord& word) {
    const std::string count = tick(draft.counts[static_cast<std::size_t>(word.count)].text);
    input_.diagnostics.error(Code::word_before_start, word.range,
                             tick(word.text) + " stands at " + count + ", before this bar's first note",
                             "the bar begins late, at its first note or rest: move the word there, or write a rest, " +
                                 tick("(" + draft.counts[static_cast<std::size_t>(word.count)].text + ")"));
  }

  void set_chord(Bar& bar, const PlacedWord& word, Rational at) {
    const auto chord = theory::parse_chord(word.text);
    if (!chord) return report_chord(word);
    if (word.quoted) {
      input_.diagnostics.error(Code::chord_unknown, word.range, "a chord stands in quotes",
                               "write " + tick(word.text) + " without them");
      return;
    }
    const auto same =
        std::find_if(bar.chords.begin(), bar.chords.end(), [&](const ChordMark& c) { return c.at == at; });
    if (same != bar.chords.end()) {
      input_.diagnostics.error(Code::word_twice, word.range, tick(word.text) + " is the second chord at one count",
                               "write a count for each chord");
      return;
    }
    bar.chords.push_back({at, *chord, word.range});
  }

  void report_chord(const PlacedWord& word) {
    std::string help = sign_help(word.text);
    if (help.empty()) help = case_help(word.text);
    const std::string guess = nearest_chord(word.text);
    input_.diagnostics.error(Code::chord_unknown, word.range, tick(word.text) + " is no chord",
                             !help.empty()   ? help
                             : guess.empty() ? "write a symbol, `Am7` or `Bb/D`, or a Roman numeral, `IV7`"
                                             : "did you mean " + tick(guess) + "?");
  }

  const GridInput& input_;
  const GridDraft& draft_;
  Music& music_;
};

}  // namespace

void set_words(const GridInput& input, const GridDraft& draft, Music& music) {
  WordSetter(input, draft, music).run();
}

}  // namespace fretsheaf::lesson
