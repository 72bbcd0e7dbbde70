#pragma once

#include <optional>
#include <string>

#include "exchange/losses.h"
#include "exchange/taken.h"
#include "fretboard/instrument.h"
#include "fretboard/neck.h"

namespace fretsheaf::exchange {

struct ChosenNeck {
  const fretboard::Instrument* instrument = nullptr;
  fretboard::Neck neck;
};

// The instrument that a part is for, by what is wished, its names, its tuning or, where it has none of these, its clef;
// and its neck with the part's own tuning, capo and highest fret.
std::optional<ChosenNeck> choose_neck(const TakenPart& part, const std::string& wished, Losses& losses);

}  // namespace fretsheaf::exchange
