#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "lesson/lesson.h"
#include "platform/system.h"
#include "sheaf/traced_system.h"
#include "sheaf/workshop.h"
#include "template/template.h"
#include "typeface/fonts.h"

namespace fretsheaf::sheaf {

// A template that was read, and its fonts by role.
struct Look {
  templates::Template look;
  std::vector<std::vector<typeface::FontId>> fonts;
  Inputs inputs;  // where they are traced
};

// The templates of a run, each read once, with the fonts that they name.
class Looks {
 public:
  // All must live longer. `traced` is the system where what is read is traced, else null.
  Looks(const platform::System& system, TracedSystem* traced, typeface::FontSet& fonts)
      : system_(system), traced_(traced), fonts_(fonts) {}

  // The look of a lesson's handouts: the template that is asked for, else the lesson's own. nullptr where it cannot be
  // had; then `made` has the status and why, what is wrong in the lesson in its first report. A template that a lesson
  // brings along names no font out of the folder `root`, in which the lesson's paths stay. REQUIRES: `made` has a
  // report.
  const Look* find(const std::optional<std::string>& asked, const lesson::Lesson& lesson, const std::string& root,
                   Made& made);

 private:
  std::optional<templates::Template> read(const std::string& name, bool is_asked, const lesson::Lesson& lesson,
                                          Made& made) const;
  const Look* open(const std::string& name, templates::Template read, Made& made);
  bool leads_out(const templates::Template& look, const lesson::Lesson& lesson, const std::string& root,
                 Made& made) const;
  Inputs inputs_of(const templates::Template& look);

  const platform::System& system_;
  TracedSystem* traced_;
  typeface::FontSet& fonts_;
  std::map<std::string, Look> looks_;  // by the template's name or path
  Inputs font_inputs_;                 // what was read for all of them
};

}  // namespace fretsheaf::sheaf
