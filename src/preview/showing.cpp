#include "preview/showing.h"

#include <algorithm>

#include "lesson/hidden.h"
#include "score/printed.h"
#include "sheaf/print.h"
#include "template/reader.h"
#include "transposition/wanted_keys.h"

namespace fretsheaf::preview {
namespace {

using sheaf::Made;

// A plan with one job, of the choice as far as the lesson can have it.
sheaf::Plan plan_of(sheaf::Workshop& workshop, const std::string& lesson, Choice choice, sheaf::Format format) {
  while (true) {
    sheaf::Request request;
    request.lesson = lesson;
    if (!choice.key.empty()) request.keys = {choice.key};
    if (!choice.look.empty()) request.template_name = choice.look;
    request.formats = {format};
    request.answers = choice.answers;
    sheaf::Plan plan = workshop.plan(request);
    const lesson::Lesson* read = workshop.lesson(lesson);
    if (choice.answers && read != nullptr && !lesson::hides_anything(*read)) {
      choice.answers = false;
    } else if (!choice.key.empty() && (plan.made.status == Made::Status::request_wrong || plan.jobs.size() > 1)) {
      choice.key.clear();
    } else if (plan.made.status == Made::Status::request_wrong && !choice.look.empty()) {
      choice.look.clear();
    } else {
      return plan;
    }
  }
}

// A look may be a path where a teacher names it. Here it comes from a browser, which is to have no file read.
Choice without_path(Choice choice, const platform::System& system) {
  const std::vector<std::string> names = templates::template_names(system);
  if (std::find(names.begin(), names.end(), choice.look) == names.end()) choice.look.clear();
  return choice;
}

std::vector<KeyChoice> keys_of(const lesson::Lesson& lesson, const score::Naming& naming) {
  std::vector<KeyChoice> keys;
  const auto add = [&](const theory::Key& key, KeyChoice::Group group) {
    std::string name = key.to_string();
    const bool known = std::any_of(keys.begin(), keys.end(), [&](const KeyChoice& one) { return one.key == name; });
    if (!known) keys.push_back({std::move(name), score::printed(key, naming), group});
  };
  add(lesson.key, KeyChoice::Group::own);
  for (const auto& key : lesson.also_in) add(key.value, KeyChoice::Group::also_in);
  const auto all = transposition::wanted_keys("all", lesson.key);
  if (const auto* others = std::get_if<std::vector<theory::Key>>(&all)) {
    for (const theory::Key& key : *others) add(key, KeyChoice::Group::other);
  }
  return keys;
}

std::vector<std::string> looks_of(const lesson::Lesson& lesson, const platform::System& system) {
  std::vector<std::string> looks = {lesson.template_name.value};
  for (std::string& name : templates::template_names(system)) {
    if (name != looks.front()) looks.push_back(std::move(name));
  }
  return looks;
}

// The pages of the copy that was asked for: an answer key is made beside the student's.
std::vector<ShownPage> pages_of(Made& made) {
  std::vector<ShownPage> pages;
  if (made.svg_pages.empty()) return pages;
  const std::string& prefix = made.svg_pages.back().prefix;
  for (sheaf::Output& output : made.outputs) {
    if (!output.suffix.starts_with(prefix)) continue;
    std::string print = sheaf::print_of(output.bytes).hex();
    pages.push_back({std::move(print), std::make_shared<const std::string>(std::move(output.bytes))});
  }
  return pages;
}

Picture picture_of(sheaf::Workshop& workshop, const platform::System& system, const sheaf::Plan& plan,
                   const sheaf::Job& job, Made& made) {
  const lesson::Lesson& lesson = *workshop.lesson(job.lesson);
  const auto copy = job.answers ? score::Copy::answer_key : score::Copy::student;
  const std::optional<score::Score> score = workshop.score(job, copy);
  Picture picture;
  picture.choice = {job.to.key ? job.to.key->to_string() : lesson.key.to_string(),
                    job.template_name.value_or(lesson.template_name.value), job.answers};
  picture.exercise = lesson::hides_anything(lesson);
  picture.looks = looks_of(lesson, system);
  picture.pages = pages_of(made);
  if (score) {
    picture.title = score->title;
    picture.keys = keys_of(lesson, score->naming);
    picture.places = music_places(*score, plan.made.reports.front().files[0]);
  }
  return picture;
}

}  // namespace

Showing show(sheaf::Workshop& workshop, const platform::System& system, const std::string& lesson,
             const Choice& wanted) {
  Showing showing;
  const sheaf::Plan plan = plan_of(workshop, lesson, without_path(wanted, system), sheaf::Format::svg);
  add_problems(plan.made, showing.problems);
  if (plan.made.status != Made::Status::done || plan.jobs.empty()) return showing;
  const sheaf::Job& job = plan.jobs.front();
  Made made = workshop.make(job);
  add_problems(made, showing.problems);
  if (made.status == Made::Status::done) showing.picture = picture_of(workshop, system, plan, job, made);
  return showing;
}

Download download(sheaf::Workshop& workshop, const platform::System& system, const std::string& lesson,
                  const Choice& wanted, sheaf::Format format) {
  Download result;
  const sheaf::Plan plan = plan_of(workshop, lesson, without_path(wanted, system), format);
  if (plan.made.status == Made::Status::done && !plan.jobs.empty()) {
    Made made = workshop.make(plan.jobs.front());
    if (!made.outputs.empty()) {  // an answer key is made after the student's copy
      result.name = sheaf::stem(lesson) + made.outputs.back().suffix;
      result.bytes = std::move(made.outputs.back().bytes);
      return result;
    }
    if (made.status == Made::Status::done) {
      result.refusal = "The exercise hides all of its music. Choose the answer key.";
      return result;
    }
  }
  result.refusal = "The lesson has errors. Nothing is made until they are mended.";
  return result;
}

}  // namespace fretsheaf::preview
