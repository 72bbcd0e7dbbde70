#include "laid_out.h"

#include <cstdio>
#include <cstdlib>

#include "layout/layout.h"
#include "lesson/reader.h"
#include "recorded_sheet.h"
#include "score/build.h"
#include "sheaf/fonts_of.h"
#include "spoken/spoken.h"
#include "template/reader.h"
#include "transposition/move.h"
#include "typeface/known_fonts.h"

namespace fretsheaf::benchmarks {

namespace {

void stop_at_errors(const source::Files& files, const source::Diagnostics& diagnostics) {
  if (!diagnostics.has_errors()) return;
  for (const source::Diagnostic& diagnostic : diagnostics.sorted()) {
    std::fputs(source::render(diagnostic, files).c_str(), stderr);
  }
  std::exit(1);
}

}  // namespace

Bench::Bench() {
  templates::ReadTemplate read = templates::read_template("music-stand", system);
  stop_at_errors(read.files, read.diagnostics);
  look = *read.look;
  if (const auto missing = sheaf::open_fonts(look, fonts, by_role)) {
    std::fputs(missing->c_str(), stderr);
    std::exit(1);
  }
}

sheet::Sheet Bench::lay_out(const std::string& name, const std::string& text) {
  return lay_out_in("", name, text);
}

sheet::Sheet Bench::lay_out_in(const std::string& key, const std::string& name, const std::string& text) {
  lesson::ReadLesson read = lesson::read_lesson(name, text, system);
  stop_at_errors(read.files, read.diagnostics);
  transposition::Destination to;
  if (!key.empty()) to.key = theory::parse_key(key);
  const std::optional<transposition::Moved> moved = transposition::move(*read.lesson, to, read.diagnostics);
  stop_at_errors(read.files, read.diagnostics);
  const score::Score score = score::build_score(moved->lesson, read.diagnostics);
  sheet::Sheet sheet = layout::lay_out(score, spoken::alternatives(score), look, fonts, by_role, read.diagnostics);
  stop_at_errors(read.files, read.diagnostics);
  return sheet;
}

std::string Bench::recording(const std::string& name, const std::string& text) {
  return recording(lay_out(name, text));
}

std::string Bench::recording(const sheet::Sheet& sheet) {
  std::vector<std::string> paths;
  for (const std::string& font : fonts.names()) paths.push_back(system.font_path(typeface::known_font(font)->file));
  return record(sheet, paths);
}

}  // namespace fretsheaf::benchmarks
