#include <string>

#include "words/sentences.h"
#include "words/words.h"

namespace fretsheaf::words {
namespace {

std::string_view english_ending(int n) {
  if (n % 100 >= 11 && n % 100 <= 13) return "th";
  switch (n % 10) {
    case 1:
      return "st";
    case 2:
      return "nd";
    case 3:
      return "rd";
    default:
      return "th";
  }
}

// The hole {nth}, which only the patterns of English and French have (the others write their endings themselves).
std::string nth(Language language, int n) {
  const std::string number = std::to_string(n);
  if (language == Language::fr) return number + (n == 1 ? "re" : "e");  // of a corde, which is feminine
  return number + std::string(english_ending(n));
}

}  // namespace

// Unicode CLDR, plural rules for cardinals: in French and Portuguese nought is singular too.
bool is_one(Language language, int n) {
  const bool nought_is_one = language == Language::fr || language == Language::pt;
  return n == 1 || (n == 0 && nought_is_one);
}

std::string counted(Language language, Counted what, int n) {
  const bool one = is_one(language, n);
  switch (what) {
    case Counted::once_through:
      return fill_number(language, one ? Word::once_through_one : Word::once_through_other, n);
    case Counted::write_bars:
      return fill_number(language, one ? Word::write_bars_one : Word::write_bars_other, n);
    case Counted::passes:
      return fill_number(language, one ? Word::passes_one : Word::passes_other, n);
  }
  return {};
}

std::string key_name(Language language, std::string_view tonic, Word mode) {
  std::string lower(tonic);
  if (!lower.empty() && lower[0] >= 'A' && lower[0] <= 'Z') lower[0] = static_cast<char>(lower[0] - 'A' + 'a');
  return fill(language, mode, {{"tonic", tonic}, {"lower", lower}});
}

std::string fret_name(Language language, int fret) {
  if (fret == 0) return std::string(sentence(language, Sentence::open_string));
  return fill(sentence(language, Sentence::fret), {{"n", std::to_string(fret)}, {"nth", nth(language, fret)}});
}

std::string string_by_letter(Language language, std::string_view letter) {
  return fill(language, Word::string_letter, {{"letter", letter}});
}

std::string string_by_number(Language language, int string) {
  return fill(language, Word::string_number, {{"n", std::to_string(string)}, {"nth", nth(language, string)}});
}

std::string place_name(Language language, std::string_view string, int fret) {
  return fill(language, Word::place, {{"string", string}, {"fret", fret_name(language, fret)}});
}

std::string place_by_letter(Language language, std::string_view letter, int fret) {
  return place_name(language, string_by_letter(language, letter), fret);
}

std::string place_by_number(Language language, int string, int fret) {
  return place_name(language, string_by_number(language, string), fret);
}

}  // namespace fretsheaf::words
