#include "layout/qr_code.h"

#include <qrencode.h>

#include <algorithm>
#include <memory>
#include <string_view>
#include <utility>
#include <vector>

#include "platform/loaded_library.h"

namespace fretsheaf::layout {
namespace {

constexpr double least_module = 0.5 * 72 / 25.4;  // half a millimetre

// Few handouts have a code, so the library is not linked. Throws std::runtime_error where it is not installed.
struct QrLibrary {
  decltype(&QRcode_encodeString8bit) encode = nullptr;
  decltype(&QRcode_free) free = nullptr;
};

QrLibrary load() {
  platform::LoadedLibrary library("libqrencode.so.4");
  QrLibrary qr;
  library.find("QRcode_encodeString8bit", qr.encode);
  library.find("QRcode_free", qr.free);
  library.require_all("QR codes need Debian's package libqrencode4");
  return qr;
}

const QrLibrary& qr_library() {
  static const QrLibrary qr = load();
  return qr;
}

struct Free {
  void operator()(QRcode* code) const { qr_library().free(code); }
};

// Characters beyond ASCII as an address has them (RFC 3986, section 2.1).
std::string encoded(const std::string& uri) {
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string out;
  for (const char c : uri) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte > 0x20 && byte < 0x7f) {
      out += c;
    } else {
      ((out += '%') += hex[byte >> 4]) += hex[byte & 15];
    }
  }
  return out;
}

// The outline of the dark modules, corner by corner, dark on the right hand.
class Outline {
 public:
  Outline(const QRcode& code) : code_(code), size_(code.width), seen_(static_cast<std::size_t>(size_ * size_), false) {}

  std::vector<sheet::Segment> trace(double module) {
    for (int y = 0; y < size_; ++y) {
      for (int x = 0; x < size_; ++x) {
        // Every loop has an edge that runs rightward along the top of a dark module.
        if (dark(x, y) && !dark(x, y - 1) && !seen_[at(x, y)]) loop(x, y, module);
      }
    }
    return std::move(segments_);
  }

 private:
  std::size_t at(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(size_) + static_cast<std::size_t>(x);
  }
  bool dark(int x, int y) const {
    return x >= 0 && y >= 0 && x < size_ && y < size_ && (code_.data[at(x, y)] & 1) != 0;
  }

  // From the corner (x, y) rightward until it is there again. At each corner it turns right where nothing is dark
  // ahead on the right, left where both are, so that modules that touch at a corner alone are loops of their own.
  void loop(int x, int y, double module) {
    const int from_x = x;
    const int from_y = y;
    int dx = 1;
    int dy = 0;
    corner(x, y, module, sheet::Segment::Kind::move);
    do {
      if (dx == 1) seen_[at(x, y)] = true;
      x += dx;
      y += dy;
      const bool right = dark(ahead_x(x, dx, dy, true), ahead_y(y, dx, dy, true));
      const bool left = dark(ahead_x(x, dx, dy, false), ahead_y(y, dx, dy, false));
      if (right && !left) continue;
      if (!right) {
        std::swap(dx, dy);
        dx = -dx;
      } else {
        std::swap(dx, dy);
        dy = -dy;
      }
      const bool back = x == from_x && y == from_y && dx == 1;
      if (!back) corner(x, y, module, sheet::Segment::Kind::line);
    } while (x != from_x || y != from_y || dx != 1);
    segments_.push_back({sheet::Segment::Kind::close, {}, {}, {}});
  }

  // The module that lies ahead of a corner, right or left of the way.
  static int ahead_x(int x, int dx, int dy, bool right) {
    if (dx != 0) return dx > 0 ? x : x - 1;
    const bool to_east = (dy < 0) == right;
    return to_east ? x : x - 1;
  }
  static int ahead_y(int y, int dx, int dy, bool right) {
    if (dy != 0) return dy > 0 ? y : y - 1;
    const bool to_south = (dx > 0) == right;
    return to_south ? y : y - 1;
  }

  void corner(int x, int y, double module, sheet::Segment::Kind kind) {
    segments_.push_back({kind, {x * module, y * module}, {}, {}});
  }

  const QRcode& code_;
  int size_;
  std::vector<bool> seen_;  // modules along whose top a loop has gone
  std::vector<sheet::Segment> segments_;
};

}  // namespace

std::optional<QrCode> qr_code(const std::string& uri, double least_side) {
  const std::unique_ptr<QRcode, Free> code(qr_library().encode(encoded(uri).c_str(), 0, QR_ECLEVEL_L));
  if (!code) return std::nullopt;
  QrCode out;
  out.module = std::max(least_side / code->width, least_module);
  out.side = out.module * code->width;
  out.path.part = sheet::Part::qr_code;
  out.path.fill = sheet::Color{};
  out.path.segments = Outline(*code).trace(out.module);
  return out;
}

}  // namespace fretsheaf::layout
