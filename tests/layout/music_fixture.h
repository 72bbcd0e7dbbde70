#pragma once

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "layout/layout.h"
#include "layout/music.h"
#include "lesson/reader.h"
#include "platform/disk_system.h"
#include "score/build.h"
#include "support/project.h"
#include "template/reader.h"
#include "typeface/fonts.h"

namespace fretsheaf::test {

// A lesson file's text, set with the packaged fonts and a template of the project.
class Music {
 public:
  explicit Music(const std::string& template_name = "music-stand") {
    auto read = templates::read_template(template_name, system);
    REQUIRE(read.look);
    look = *read.look;
    for (const templates::TypeStyle& style : look.type) {
      std::vector<typeface::FontId> ids;
      for (const std::string& name : style.fonts) {
        const auto opened = fonts.open(name);
        REQUIRE(std::holds_alternative<typeface::FontId>(opened));
        ids.push_back(std::get<typeface::FontId>(opened));
      }
      by_role.push_back(std::move(ids));
    }
  }

  score::Score score_of(const std::string& text) {
    // Among the demo lessons, where the files lie that these name.
    const std::string name = project_folder() + "/demo-lessons/tide.lesson.toml";
    lesson::ReadLesson read = lesson::read_lesson(name, text, system);
    for (const auto& one : read.diagnostics.list()) {
      if (one.severity == source::Severity::error) {
        UNSCOPED_INFO(source::render(one, read.files));
      }
    }
    REQUIRE(!read.diagnostics.has_errors());
    REQUIRE(read.lesson);
    return score::build_score(*read.lesson, diagnostics);
  }

  sheet::Sheet pages(const std::string& text) {
    return layout::lay_out(score_of(text), {}, look, fonts, by_role, diagnostics);
  }

  // The lines of the first example, as the music engraver gives them.
  std::vector<layout::MusicLine> lines(const std::string& text, double width = 488) {
    const score::Score score = score_of(text);
    layout::Type type(fonts, look, by_role);
    return layout::engrave(score.examples.front(), score, width, type, diagnostics);
  }

  platform::DiskSystem system;
  typeface::FontSet fonts{system};
  templates::Template look;
  std::vector<std::vector<typeface::FontId>> by_role;
  source::Diagnostics diagnostics;
};

// A bass lesson in D dorian with one example: its keys and its grid.
inline std::string bass_lesson(const std::string& keys, const std::string& grid) {
  return "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n[[example]]\n" + keys + "\ntab = '''\n" +
         grid + "'''\n";
}

}  // namespace fretsheaf::test
