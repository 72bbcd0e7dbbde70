#include "transposition/wanted_keys.h"

#include <array>
#include <cstdlib>

#include "source/nearest.h"
#include "theory/keys.h"

namespace fretsheaf::transposition {

namespace {

std::string quoted(std::string_view text) {
  return "'" + std::string(text) + "'";
}

// What is wrong with a text that is no key, and the key that was probably meant.
std::string no_key(std::string_view text, const theory::Key& own) {
  const auto gap = std::min(text.find(' '), text.size());
  const auto tonic = theory::parse_note_name(text.substr(0, gap));
  const std::string sample = "write a tonic and a mode, such as \"" + own.to_string() + "\"";
  if (!tonic) {
    const std::array<std::string_view, 1> all = {"all"};
    const std::string near = source::nearest(text, all);
    return quoted(text) + " is no key; " + (near.empty() ? sample : "did you mean 'all'?");
  }
  const std::string_view mode = text.substr(std::min(gap + 1, text.size()));
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
