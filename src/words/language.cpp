#include "words/language.h"

namespace fretsheaf::words {

std::string_view language_code(Language language) {
  switch (language) {
    case Language::en:
      return "en";
    case Language::de:
      return "de";
    case Language::es:
      return "es";
    case Language::fr:
      return "fr";
    case Language::it:
      return "it";
    case Language::nl:
      return "nl";
    case Language::pt:
      return "pt";
  }
  return {};
}

std::optional<Language> parse_language(std::string_view code) {
  for (const Language language : languages) {
    if (language_code(language) == code) return language;
  }
  return std::nullopt;
}

}  // namespace fretsheaf::words
