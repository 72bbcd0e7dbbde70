// The tab grid alone: the first byte chooses the instrument and the meter.
#include <array>

#include "fretboard/instrument.h"
#include "fuzz/target.h"
#include "lesson/grid.h"
#include "source/utf8.h"

using namespace fretsheaf;

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  constexpr std::array meters = {"4/4", "3/4", "6/8", "2+2+3/8", "2/2", "12/8"};
  const std::string bytes(reinterpret_cast<const char*>(data + 1), size - 1);
  if (source::first_invalid_utf8(bytes)) return 0;  // no Text holds it
  const fretboard::Instrument& instrument = fretboard::instruments()[data[0] % fretboard::instruments().size()];
  const fretboard::Neck neck{instrument.tuning, instrument.frets, data[0] >= 128 ? 2 : 0,
                             instrument.short_fifth_string};
  const lesson::GridContext context{neck, *theory::parse_key("D dorian"),
                                    *theory::parse_meter(meters[data[0] / 10 % meters.size()]), data[0] % 16 == 15};
  const source::Text text("grid", bytes);
  source::Diagnostics diagnostics;
  lesson::read_grid(text, {0, static_cast<std::uint32_t>(bytes.size()), 0}, context, diagnostics);
  return 0;
}
