#include "sheaf/workshop.h"

#include <algorithm>
#include <exception>
#include <map>
#include <utility>
#include <variant>

#include "layout/layout.h"
#include "lesson/hidden.h"
#include "lesson/reader.h"
#include "render/render.h"
#include "score/build.h"
#include "sheaf/documents.h"
#include "sheaf/jobs.h"
#include "sheaf/logo.h"
#include "sheaf/looks.h"
#include "sheaf/unreadable.h"
#include "spoken/spoken.h"
#include "transposition/rewrite.h"
#include "transposition/wanted_keys.h"
#include "typeface/fonts.h"

namespace fretsheaf::sheaf {

namespace {

using source::Code;

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

// A lesson that was read, and what has been said of it.
struct Kept {
  source::Files files;
  lesson::Lesson lesson;
  std::vector<source::Diagnostic> said;
  std::vector<Format> formats;  // of its sheaf.toml, else PDF
  Inputs inputs;                // where they are traced
  std::string root;             // the folder that its paths stay inside
  std::optional<score::Logo> logo;
};

bool same(const source::Diagnostic& a, const source::Diagnostic& b) {
  return a.code == b.code && a.range == b.range && a.message == b.message;
}

// Takes out what was said before, and keeps the rest in mind: a lesson in twelve keys is warned of once.
source::Diagnostics news(Kept& kept, const source::Diagnostics& all) {
  source::Diagnostics fresh;
  for (const source::Diagnostic& one : all.list()) {
    const bool old = std::any_of(kept.said.begin(), kept.said.end(),
                                 [&](const source::Diagnostic& said) { return same(said, one); });
    if (old) continue;
    kept.said.push_back(one);
    if (one.severity == source::Severity::error) {
      fresh.error(one.code, one.range, one.message, one.help);
    } else {
      fresh.warning(one.code, one.range, one.message, one.help);
    }
  }
  return fresh;
}

std::vector<Format> formats_of(const lesson::SheafOutput& output) {
  std::vector<Format> formats;
  for (const auto& name : output.formats) formats.push_back(parse_format(name.value).value_or(Format::pdf));
  if (formats.empty()) formats.push_back(Format::pdf);
  return formats;
}

// A lesson's handouts in its own key and in those of its `also-in`.
std::vector<std::string> own_suffixes(const lesson::Lesson& lesson) {
  std::vector<std::string> suffixes = {"." + lesson.key.slug()};
  for (const auto& key : lesson.also_in) {
    std::string suffix = "." + key.value.slug();
    if (std::find(suffixes.begin(), suffixes.end(), suffix) == suffixes.end()) suffixes.push_back(std::move(suffix));
  }
  return suffixes;
}

// What a request for answers, or for documents, does not get from this lesson.
void warn_of_answers(const Request& request, const lesson::Lesson& lesson, source::Diagnostics& diagnostics) {
  if (request.answers && !lesson::hides_anything(lesson)) {
    diagnostics.warning(Code::answers_none, {}, "this lesson hides nothing, so it has no answer key",
                        "write hide = [\"frets\"] in an example, or leave out --answers");
  }
  if (request.answers || std::none_of(request.formats.begin(), request.formats.end(), is_document)) return;
  for (const lesson::Example& example : lesson.examples) {
    if (example.blank_bars || !lesson::any(lesson::hidden_in(lesson, example))) continue;
    diagnostics.warning(Code::hidden_from_score, example.hide_range,
                        "MusicXML would give away what 'hide' hides, so this example is not in it",
                        "--answers puts it into the answer key's");
  }
}

// The key that `--key` names, or why it cannot be had; `several` is said where it names more than one.
std::variant<theory::Key, std::string> one_key(const std::string& text, const theory::Key& own, const char* several) {
  const auto keys = transposition::wanted_keys(text, own);
  const auto* why = std::get_if<std::string>(&keys);
  if (why != nullptr) return "--key " + text + ": " + *why;
  if (std::get<0>(keys).size() != 1) return "--key " + text + ": " + several;
  return std::get<0>(keys).front();
}

// What needs memory, or a library that is loaded late, throws where there is none: the status says so of this lesson,
// and all others can be made.
template <typename Work>
void or_say_why(const std::string& name, Made& made, Work work) {
  try {
    work();
  } catch (const std::exception& lack) {
    made.status = Made::Status::unreadable;
    made.refusal = name + ": " + lack.what();
  }
}

}  // namespace

struct Workshop::Impl {
  Impl(platform::System& machine, Trace trace)
      : traced(machine),
        is_traced(trace == Trace::on),
        system(is_traced ? static_cast<platform::System&>(traced) : machine),
        fonts(system),
        looks(system, is_traced ? &traced : nullptr, fonts) {}

  Inputs take_inputs() { return is_traced ? traced.take() : Inputs{}; }

  TracedSystem traced;
  bool is_traced;
  platform::System& system;
  typeface::FontSet fonts;
  Looks looks;
  std::map<std::string, Kept> lessons;  // by path

  // The lesson, read, and its logo; without one the status says why.
  Made read(const std::string& path, Kept*& kept);
  void add_pdf(const sheet::Sheet& sheet, const std::string& suffix, Made& made);
  // One copy of a handout in all its formats. `suffix` is what its outputs are called by.
  void render(const Job& job, const score::Score& score, const std::string& suffix, const Look& look, const Kept& kept,
              source::Diagnostics& diagnostics, Made& made);
};

Made Workshop::Impl::read(const std::string& path, Kept*& kept) {
  const std::string name = shown_name(path);
  take_inputs();  // of a lesson before that came to nothing
  platform::FileResult<std::string> bytes = system.read(path, lesson::limits::bytes);
  if (const auto* error = std::get_if<platform::FileError>(&bytes)) {
    return refused(Made::Status::unreadable, unreadable(path, *error, system));
  }
  lesson::ReadLesson result = lesson::read_lesson(name, std::get<std::string>(std::move(bytes)), system);
  Made made;
  std::optional<score::Logo> logo;
  if (result.lesson) or_say_why(name, made, [&] { logo = read_logo(*result.lesson, system, result.diagnostics); });
  if (made.status != Made::Status::done) return made;
  if (result.lesson && !result.diagnostics.has_errors()) {
    kept = &(lessons[path] = Kept{result.files, std::move(*result.lesson), result.diagnostics.list(),
                                  formats_of(result.output), take_inputs(), result.root, std::move(logo)});
  } else {
    made.status = Made::Status::lesson_wrong;
  }
  made.reports.push_back({std::move(result.files), std::move(result.diagnostics)});
  return made;
}

void Workshop::Impl::add_pdf(const sheet::Sheet& sheet, const std::string& suffix, Made& made) {
  std::string bytes = render::pdf(sheet, fonts);
  if (bytes.empty()) {
    made.status = Made::Status::unreadable;
    made.refusal = "the PDF could not be drawn: there may be too little memory";
    return;
  }
  made.outputs.push_back({suffix + ".pdf", std::move(bytes)});
}

void Workshop::Impl::render(const Job& job, const score::Score& score, const std::string& suffix, const Look& look,
                            const Kept& kept, source::Diagnostics& diagnostics, Made& made) {
  std::optional<sheet::Sheet> sheet;
  for (const Format format : job.formats) {
    if (is_document(format)) {
      add_documents(score, format, job.split, suffix, made);
      continue;
    }
    if (!sheet) {
      sheet = layout::lay_out(score, spoken::alternatives(score), look.look, fonts, look.fonts, diagnostics,
                              kept.files[0].bytes());
    }
    if (sheet->pages.empty()) {
      diagnostics.error(Code::out_of_range, kept.lesson.title.range,
                        "this handout would have more than " + std::to_string(lesson::limits::pages) + " pages",
                        "divide the lesson into several");
    }
    if (diagnostics.has_errors()) return;
    if (format == Format::pdf) add_pdf(*sheet, suffix, made);
    if (made.status != Made::Status::done) return;
    if (format == Format::svg) {
      Made::SvgPages& set = made.svg_pages.emplace_back(Made::SvgPages{suffix + ".p", 0});
      for (std::string& page : render::svg(*sheet, fonts)) {
        ++set.pages;
        made.outputs.push_back({set.prefix + std::to_string(set.pages) + ".svg", std::move(page)});
      }
    }
  }
}

Workshop::Workshop(platform::System& system, Trace trace) : impl_(std::make_unique<Impl>(system, trace)) {}
Workshop::~Workshop() = default;

Plan Workshop::plan(const Request& request) {
  Plan plan;
  Kept* kept = nullptr;
  plan.made = impl_->read(request.lesson, kept);
  if (kept == nullptr) return plan;
  const Look* look = impl_->looks.find(request.template_name, kept->lesson, kept->root, plan.made);
  if (look == nullptr) return plan;
  kept->inputs.insert(look->inputs.begin(), look->inputs.end());
  plan.own_formats = kept->formats;
  plan.key = kept->lesson.key.to_string();
  plan.suffixes = own_suffixes(kept->lesson);
  Request asked = request;
  if (asked.formats.empty()) asked.formats = kept->formats;
  warn_of_answers(asked, kept->lesson, plan.made.reports.front().diagnostics);
  auto jobs = jobs_of(asked, kept->lesson, look->look.name);
  if (const auto* why = std::get_if<std::string>(&jobs)) {
    plan.made.status = Made::Status::request_wrong;
    plan.made.refusal = *why;
  } else {
    plan.jobs = std::get<std::vector<Job>>(std::move(jobs));
  }
  return plan;
}

Made Workshop::make(const Job& job) {
  Kept& kept = impl_->lessons.at(job.lesson);
  Made made;
  made.reports.push_back({kept.files, {}});
  const Look* look = impl_->looks.find(job.template_name, kept.lesson, kept.root, made);
  source::Diagnostics& diagnostics = made.reports.front().diagnostics;
  const std::optional<transposition::Moved> moved = transposition::move(kept.lesson, job.to, diagnostics);
  if (!moved) made.status = Made::Status::lesson_wrong;
  if (moved && look != nullptr) {
    const lesson::Lesson& lesson = moved->lesson;
    score::Score score = score::build_score(lesson, diagnostics);
    score.heading.logo = kept.logo;
    const auto render = [&](const score::Score& copy, const std::string& suffix) {
      or_say_why(shown_name(job.lesson), made,
                 [&] { impl_->render(job, copy, suffix, *look, kept, diagnostics, made); });
    };
    render(score, job.suffix);
    if (job.answers && lesson::hides_anything(lesson) && made.status == Made::Status::done &&
        !diagnostics.has_errors()) {
      score::Score key = score::build_score(lesson, diagnostics, score::Copy::answer_key);
      key.heading.logo = kept.logo;
      render(key, job.suffix + ".answers");
    }
    if (diagnostics.has_errors()) made.status = Made::Status::lesson_wrong;
    if (made.status != Made::Status::done) {
      made.outputs.clear();
      made.svg_pages.clear();
    }
  }
  diagnostics = news(kept, diagnostics);
  return made;
}

Inputs Workshop::inputs(const std::string& lesson) {
  const auto kept = impl_->lessons.find(lesson);
  if (kept == impl_->lessons.end()) return {};
  kept->second.inputs.merge(impl_->take_inputs());
  return kept->second.inputs;
}

void Workshop::forget(const std::string& lesson) {
  impl_->lessons.erase(lesson);
  impl_->take_inputs();
}

const lesson::Lesson* Workshop::lesson(const std::string& path) const {
  const auto kept = impl_->lessons.find(path);
  return kept == impl_->lessons.end() ? nullptr : &kept->second.lesson;
}

std::optional<score::Score> Workshop::score(const Job& job, score::Copy copy) {
  source::Diagnostics said_by_make;
  const std::optional<transposition::Moved> moved =
      transposition::move(impl_->lessons.at(job.lesson).lesson, job.to, said_by_make);
  if (!moved) return std::nullopt;
  return score::build_score(moved->lesson, said_by_make, copy);
}

Transposed Workshop::transpose(const std::string& path, const std::string& text) {
  Transposed result;
  Kept* kept = nullptr;
  result.made = impl_->read(path, kept);
  if (kept == nullptr) return result;
  result.from = kept->lesson.key;
  const auto key = one_key(text, kept->lesson.key, "a lesson file has one key: name it");
  if (const auto* why = std::get_if<std::string>(&key)) {
    result.made.status = Made::Status::request_wrong;
    result.made.refusal = *why;
    return result;
  }
  transposition::Destination to;
  to.key = std::get<theory::Key>(key);
  source::Diagnostics& diagnostics = result.made.reports.front().diagnostics;
  result.moved = transposition::move(kept->lesson, to, diagnostics);
  if (!result.moved) {
    result.made.status = Made::Status::lesson_wrong;
    return result;
  }
  result.text = transposition::rewritten(kept->files[0], kept->lesson, result.moved->lesson);
  return result;
}

Made Workshop::check(const std::string& path) {
  Kept* kept = nullptr;
  Made made = impl_->read(path, kept);
  if (kept == nullptr || impl_->looks.find({}, kept->lesson, kept->root, made) == nullptr) return made;
  source::Diagnostics& diagnostics = made.reports.front().diagnostics;
  score::build_score(kept->lesson, diagnostics);
  if (diagnostics.has_errors()) made.status = Made::Status::lesson_wrong;
  return made;
}

Made Workshop::say(const std::string& path, const std::string& key, Telling telling, bool answers) {
  Kept* kept = nullptr;
  Made made = impl_->read(path, kept);
  if (kept == nullptr || impl_->looks.find({}, kept->lesson, kept->root, made) == nullptr) return made;
  transposition::Destination to;
  if (!key.empty()) {
    const auto there = one_key(key, kept->lesson.key, "a lesson is said in one key: name it");
    if (const auto* why = std::get_if<std::string>(&there)) {
      made.status = Made::Status::request_wrong;
      made.refusal = *why;
      return made;
    }
    to.key = std::get<theory::Key>(there);
  }
  source::Diagnostics& diagnostics = made.reports.front().diagnostics;
  Request request;
  request.answers = answers;
  warn_of_answers(request, kept->lesson, diagnostics);
  if (const std::optional<transposition::Moved> moved = transposition::move(kept->lesson, to, diagnostics)) {
    const bool hidden = lesson::hides_anything(moved->lesson);
    const auto copy = answers && hidden ? score::Copy::answer_key : score::Copy::student;
    score::Score score = score::build_score(moved->lesson, diagnostics, copy);
    score.heading.logo = kept->logo;
    const spoken::Walk walk = spoken::walk_through(score);
    made.outputs.push_back({"", telling == Telling::html ? spoken::as_html(walk) : spoken::as_text(walk)});
  }
  if (diagnostics.has_errors()) {
    made.status = Made::Status::lesson_wrong;
    made.outputs.clear();
  }
  return made;
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
