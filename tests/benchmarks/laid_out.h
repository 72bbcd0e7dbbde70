#pragma once

#include <string>

#include "platform/disk_system.h"
#include "sheet/sheet.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::benchmarks {

// A lesson on its way to the page, with what the way needs.
struct Bench {
  platform::DiskSystem system;
  typeface::FontSet fonts{system};
  templates::Template look;
  std::vector<std::vector<typeface::FontId>> by_role;

  Bench();
  // The whole way from the lesson's text to its sheet. A lesson with errors ends the program.
  sheet::Sheet lay_out(const std::string& name, const std::string& text);
  // The same in another key ("E dorian").
  sheet::Sheet lay_out_in(const std::string& key, const std::string& name, const std::string& text);
  // The recording of its sheet, for bare drawing.
  std::string recording(const std::string& name, const std::string& text);
  std::string recording(const sheet::Sheet& sheet);
};

}  // namespace fretsheaf::benchmarks
