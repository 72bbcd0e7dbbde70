#include "sheaf/workshop.h"

#include <map>
#include <utility>

#include "exchange/musicxml.h"
#include "layout/layout.h"
#include "lesson/not_drawn.h"
#include "lesson/reader.h"
#include "render/render.h"
#include "score/build.h"
#include "sheaf/fonts_of.h"
#include "source/nearest.h"
#include "template/reader.h"
#include "theory/key.h"
#include "typeface/fonts.h"

namespace fretsheaf::sheaf {

namespace {

using source::Code;

// A template that was read, and its fonts by role.
struct Look {
  templates::Template look;
  std::vector<std::vector<typeface::FontId>> fonts;
};

Made refused(Made::Status status, std::string why) {
  Made made;
  made.status = status;
  made.refusal = std::move(why);
  return made;
}

std::string folder_of(const std::string& path) {
  const auto slash = path.rfind('/');
  return slash == std::string::npos ? std::string() : path.substr(0, slash + 1);
}

bool is_path(const std::string& template_name) {
  return template_name.find('/') != std::string::npos || template_name.ends_with(".toml");
}

std::string unknown_template(const std::string& name, const platform::System& system) {
  std::string message = "there is no template '" + name + "'";
  const std::vector<std::string> names = templates::template_names(system);
  const std::vector<std::string_view> views(names.begin(), names.end());
  const std::string near = source::nearest(name, views);
  if (!near.empty()) message += "; did you mean '" + near + "'?";
  return message;
}

// What `--key` asks of this lesson: nothing where it names the lesson's own key, else why it cannot be had.
std::optional<std::string> refuse_key(const std::string& wanted, const theory::Key& own) {
  const std::optional<theory::Key> key = theory::parse_key(wanted, own.mode);
  if (!key) return "'" + wanted + "' is no key; write a tonic and a mode, such as \"" + own.to_string() + "\"";
  if (key->mode != own.mode) {
    return "this lesson is in " + own.to_string() + ": another key keeps its mode, and '" + wanted + "' does not";
  }
  if (!(*key == own)) {
    return "a lesson cannot be moved to another key yet; this one is in " + own.to_string();
  }
  return std::nullopt;
}

// What all of a job's outputs have after STEM: the key, then what the command line chose in the lesson's place.
std::string name_of(const Job& job, const lesson::Lesson& lesson, const templates::Template& look) {
  std::string name = "." + lesson.key.slug();
  if (job.template_name) name += "." + look.name;
  return name;
}

}  // namespace

struct Workshop::Impl {
  explicit Impl(platform::System& machine) : system(machine), fonts(machine) {}

  platform::System& system;
  typeface::FontSet fonts;
  std::map<std::string, Look> looks;  // by the template's name or path

  // The lesson, read; without one the status says why.
  Made read(const std::string& path, std::optional<lesson::Lesson>& lesson);
  const Look* look_for(const Job& job, const lesson::Lesson& lesson, Made& made);
  void render(const Job& job, const lesson::Lesson& lesson, const Look& look, Made& made);
};

Made Workshop::Impl::read(const std::string& path, std::optional<lesson::Lesson>& lesson) {
  const std::string name = path == "-" ? "standard input" : path;
  platform::FileResult<std::string> bytes = system.read(path, lesson::max_lesson_bytes);
  if (const auto* error = std::get_if<platform::FileError>(&bytes)) {
    return refused(Made::Status::unreadable, name + ": " + error->what);
  }
  lesson::ReadLesson result = lesson::read_lesson(name, std::get<std::string>(std::move(bytes)), system);
  lesson = std::move(result.lesson);
  Made made;
  if (!lesson) made.status = Made::Status::lesson_wrong;
  if (lesson) lesson::warn_not_drawn(*lesson, result.diagnostics);
  made.reports.push_back({std::move(result.files), std::move(result.diagnostics)});
  return made;
}

const Look* Workshop::Impl::look_for(const Job& job, const lesson::Lesson& lesson, Made& made) {
  std::string name = job.template_name.value_or(lesson.template_name.value);
  if (!job.template_name && is_path(name)) name = folder_of(job.lesson) + name;
  if (const auto known = looks.find(name); known != looks.end()) return &known->second;

  templates::ReadTemplate read = templates::read_template(name, system);
  if (read.missing && job.template_name) {
    made.status = Made::Status::request_wrong;
    made.refusal = unknown_template(name, system);
    return nullptr;
  }
  if (read.missing) {
    made.status = Made::Status::lesson_wrong;
    made.reports.front().diagnostics.error(Code::template_unknown, lesson.template_name.range,
                                           unknown_template(lesson.template_name.value, system));
    return nullptr;
  }
  if (!read.look) {
    made.status = Made::Status::lesson_wrong;
    made.reports.push_back({std::move(read.files), std::move(read.diagnostics)});
    return nullptr;
  }
  Look look{std::move(*read.look), {}};
  if (std::optional<std::string> missing = open_fonts(look.look, fonts, look.fonts)) {
    made.status = Made::Status::unreadable;
    made.refusal = *missing;
    return nullptr;
  }
  return &looks.emplace(name, std::move(look)).first->second;
}

void Workshop::Impl::render(const Job& job, const lesson::Lesson& lesson, const Look& look, Made& made) {
  source::Diagnostics& diagnostics = made.reports.front().diagnostics;
  const score::Score score = score::build_score(lesson, diagnostics);
  const std::string name = name_of(job, lesson, look.look);
  std::optional<sheet::Sheet> sheet;
  std::vector<Output> outputs;
  for (const Format format : job.formats) {
    if (format == Format::musicxml) {
      outputs.push_back({name + ".musicxml", exchange::musicxml(score)});
      continue;
    }
    if (!sheet)
      sheet = layout::lay_out(score, look.look, fonts, look.fonts, diagnostics, made.reports.front().files[0].bytes());
    if (diagnostics.has_errors()) break;
    if (format == Format::pdf) outputs.push_back({name + ".pdf", render::pdf(*sheet, fonts)});
    if (format == Format::svg) {
      made.svg_page_prefix = name + ".p";
      for (std::string& page : render::svg(*sheet, fonts)) {
        ++made.svg_pages;
        outputs.push_back({made.svg_page_prefix + std::to_string(made.svg_pages) + ".svg", std::move(page)});
      }
    }
  }
  if (diagnostics.has_errors()) {
    made.status = Made::Status::lesson_wrong;
    return;
  }
  made.outputs = std::move(outputs);
}

Workshop::Workshop(platform::System& system) : impl_(std::make_unique<Impl>(system)) {}
Workshop::~Workshop() = default;

Made Workshop::make(const Job& job) {
  std::optional<lesson::Lesson> lesson;
  Made made = impl_->read(job.lesson, lesson);
  if (!lesson) return made;
  if (job.key) {
    if (std::optional<std::string> why = refuse_key(*job.key, lesson->key)) {
      made.status = Made::Status::request_wrong;
      made.refusal = "--key " + *job.key + ": " + *why;
      return made;
    }
  }
  if (const Look* look = impl_->look_for(job, *lesson, made)) impl_->render(job, *lesson, *look, made);
  return made;
}

Made Workshop::check(const std::string& path) {
  std::optional<lesson::Lesson> lesson;
  Made made = impl_->read(path, lesson);
  if (!lesson) return made;
  const Job job{path, {}, {}, {}};
  if (impl_->look_for(job, *lesson, made) == nullptr) return made;
  score::build_score(*lesson, made.reports.front().diagnostics);
  if (made.reports.front().diagnostics.has_errors()) made.status = Made::Status::lesson_wrong;
  return made;
}

std::optional<Format> parse_format(std::string_view name) {
  if (name == "pdf") return Format::pdf;
  if (name == "svg") return Format::svg;
  if (name == "musicxml") return Format::musicxml;
  return std::nullopt;
}

std::string stem(const std::string& lesson) {
  if (lesson == "-") return "lesson";
  std::string name = lesson.substr(folder_of(lesson).size());
  constexpr std::string_view ending = ".lesson.toml";
  if (name.size() > ending.size() && name.ends_with(ending)) return name.substr(0, name.size() - ending.size());
  const auto dot = name.rfind('.');
  return dot == std::string::npos || dot == 0 ? name : name.substr(0, dot);
}

}  // namespace fretsheaf::sheaf
