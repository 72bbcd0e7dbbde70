#pragma once

#include <optional>
#include <string>

#include "sheet/sheet.h"

namespace fretsheaf::layout {

// An address as a QR code that a phone reads from paper (ISO/IEC 18004), its dark modules one outline: no seams show
// between them. Error correction L: the fewer the modules, the larger each is.
struct QrCode {
  sheet::Path path;  // from (0, 0) rightward and down
  double side = 0;
  double module = 0;

  // The white that must be left on every side.
  double quiet_zone() const { return 4 * module; }
};

// `least_side` wide, or wider where its modules would be smaller than print and a camera at arm's length can tell
// apart. nullopt where the address is too long for any code.
std::optional<QrCode> qr_code(const std::string& uri, double least_side);

}  // namespace fretsheaf::layout
