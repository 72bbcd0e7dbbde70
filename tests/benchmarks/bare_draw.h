#pragma once

#include <cstddef>
#include <memory>
#include <string>

namespace fretsheaf::benchmarks {

// Plays a recorded sheet: cairo drawing it as a PDF, with fonts opened by FreeType, and nothing else. Returns the size
// of the PDF in bytes. The recording is read with strtod as it is drawn.
std::size_t bare_draw(const std::string& recording);

// The same for one recording after another, with fonts that are opened once.
class BareDrawing {
 public:
  BareDrawing();
  ~BareDrawing();
  BareDrawing(const BareDrawing&) = delete;
  BareDrawing& operator=(const BareDrawing&) = delete;

  std::size_t draw(const std::string& recording);

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace fretsheaf::benchmarks
