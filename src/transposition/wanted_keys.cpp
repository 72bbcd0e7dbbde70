#include "transposition/wanted_keys.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <utility>

#include "source/nearest.h"
#include "theory/keys.h"

namespace fretsheaf::transposition {

namespace {

std::string quoted(std::string_view text) {
  return "'" + std::string(text) + "'";
}

// "b-flat-major" as outputs are named, "F sharp", and the names of other languages: H and Fis, do and re.
std::optional<theory::NoteName> meant_tonic(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, char>, 15> letters = {{{"sol", 'G'},
                                                                          {"do", 'C'},
                                                                          {"re", 'D'},
                                                                          {"mi", 'E'},
                                                                          {"fa", 'F'},
                                                                          {"la", 'A'},
                                                                          {"si", 'B'},
                                                                          {"c", 'C'},
                                                                          {"d", 'D'},
                                                                          {"e", 'E'},
                                                                          {"f", 'F'},
                                                                          {"g", 'G'},
                                                                          {"a", 'A'},
                                                                          {"h", 'B'},
                                                                          {"b", 'B'}}};
  constexpr std::array<std::pair<std::string_view, std::string_view>, 10> signs = {{{"", ""},
                                                                                    {"flat", "b"},
                                                                                    {"sharp", "#"},
                                                                                    {"\u266D", "b"},
                                                                                    {"\u266F", "#"},
                                                                                    {"es", "b"},
                                                                                    {"is", "#"},
                                                                                    {"s", "b"},
                                                                                    {"b", "b"},
                                                                                    {"#", "#"}}};
  for (const auto& [name, letter] : letters) {
    if (!text.starts_with(name)) continue;
    std::string_view rest = text.substr(name.size());
    if (rest.starts_with(' ')) rest.remove_prefix(1);
    for (const auto& [word, sign] : signs) {
      if (rest == word) return theory::parse_note_name(letter + std::string(sign));
    }
  }
  return std::nullopt;
}

// The key that was probably meant; "" where that cannot be told.
std::string meant_key(std::string_view text, const theory::Key& own) {
  std::string words(text);
  for (char& c : words) {
    if (c == '-') c = ' ';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  const auto gap = words.rfind(' ');
  const std::string mode = gap == std::string::npos ? std::string() : words.substr(gap + 1);
  if (const auto tonic = meant_tonic(words)) return theory::Key{*tonic, own.mode}.to_string();
  // "Ebm", as the chord is written.
  constexpr std::array<std::pair<std::string_view, theory::Mode>, 3> short_modes = {
      {{"min", theory::Mode::minor}, {"maj", theory::Mode::major}, {"m", theory::Mode::minor}}};
  for (const auto& [end, short_mode] : short_modes) {
    if (!words.ends_with(end)) continue;
    std::string_view name = std::string_view(words).substr(0, words.size() - end.size());
    if (name.ends_with(' ')) name.remove_suffix(1);
    if (const auto tonic = meant_tonic(name)) return theory::Key{*tonic, short_mode}.to_string();
  }
  const auto tonic = meant_tonic(std::string_view(words).substr(0, std::min(gap, words.size())));
  const std::string near = source::nearest(mode, theory::mode_names());
  const auto meant = theory::parse_mode(near.empty() ? mode : near);
  return tonic && meant ? theory::Key{*tonic, *meant}.to_string() : std::string();
}

// What is wrong with a text that is no key, and the key that was probably meant.
std::string no_key(std::string_view text, const theory::Key& own) {
  const auto gap = std::min(text.find(' '), text.size());
  const auto tonic = theory::parse_note_name(text.substr(0, gap));
  const std::string sample = "write a tonic and a mode, such as \"" + own.to_string() + "\"";
  const std::string_view mode = text.substr(std::min(gap + 1, text.size()));
  const bool sign_as_word = mode.starts_with("flat") || mode.starts_with("sharp");
  const std::string meant = !tonic || sign_as_word ? meant_key(text, own) : "";
  if (!meant.empty()) return quoted(text) + " is no key; did you mean '" + meant + "'?";
  if (!tonic) {
    const std::array<std::string_view, 1> all = {"all"};
    const std::string near = source::nearest(text, all);
    return quoted(text) + " is no key; " + (near.empty() ? sample : "did you mean 'all'?");
  }
  const std::string near = source::nearest(mode, theory::mode_names());
  return quoted(mode) + " is no mode; " +
         (near.empty() ? sample : "did you mean '" + tonic->to_string() + " " + near + "'?");
}

std::string other_mode(const theory::Key& key, const theory::Key& own) {
  return "this lesson is in " + own.to_string() + ", and a move keeps the mode: in " +
         std::string(theory::mode_name(key.mode)) + " it would be another tune; write \"" +
         theory::Key{key.tonic, own.mode}.to_string() + "\"";
}

std::string too_many_signs(std::string_view text, const theory::Key& key) {
  const int signs = key.signature();
  return quoted(text) + " would have " + std::to_string(std::abs(signs)) + (signs > 0 ? " sharps" : " flats") +
         ", and a signature has at most seven; write \"" + theory::enharmonic_key(key).to_string() +
         "\", which sounds the same";
}

}  // namespace

std::variant<std::vector<theory::Key>, std::string> wanted_keys(std::string_view text, const theory::Key& own) {
  if (text == "all") return theory::all_keys(own.mode);
  const auto key = theory::parse_key(text, own.mode);
  if (!key) return no_key(text, own);
  if (key->mode != own.mode) return other_mode(*key, own);
  if (!theory::has_signature(*key)) return too_many_signs(text, *key);
  return std::vector{*key};
}

}  // namespace fretsheaf::transposition
