#pragma once

#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "exchange/adopt_section.h"

namespace fretsheaf::exchange {

// The name that the document gives a note, by bar, event and string.
using WantedNames = std::map<std::tuple<int, int, int>, theory::NoteName>;

struct TakenMusic {
  lesson::Music music;
  std::optional<std::string> name;  // of the example
  WantedNames names;
};

// All of a section as an example's music.
TakenMusic music_of(const AdoptContext& context, Section& section, const std::optional<theory::Tempo>& tempo);

}  // namespace fretsheaf::exchange
