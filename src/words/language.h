#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

namespace fretsheaf::words {

// The languages of the words that the tool adds itself. A lesson's own text may be in any language.
enum class Language : std::uint8_t { en, de, es, fr, it, nl, pt };

inline constexpr std::array languages = {Language::en, Language::de, Language::es, Language::fr,
                                         Language::it, Language::nl, Language::pt};

// The language's ISO 639-1 code, as a lesson file writes it and as a PDF or a web page names it ("en").
std::string_view language_code(Language language);

// The language of a code; nullopt where it is none of ours. Exact: codes are lower case.
std::optional<Language> parse_language(std::string_view code);

}  // namespace fretsheaf::words
