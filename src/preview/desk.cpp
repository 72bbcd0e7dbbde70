#include "preview/desk.h"

#include <algorithm>
#include <numeric>

namespace fretsheaf::preview {
namespace {

constexpr std::size_t most_kept = 24;
constexpr std::size_t most_bytes = 32'000'000;  // of all that is kept, but for what was asked for last

std::string folder_of(const std::string& path) {
  const auto slash = path.rfind('/');
  return slash == std::string::npos || slash == 0 ? "/" : path.substr(0, slash);
}

// Where a path's entry lies: the folder without links, the last part as it is named there.
std::string entry_path(const std::string& path, const platform::Machine& machine) {
  const auto slash = path.rfind('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
  const std::string whole = machine.absolute(folder);
  return (whole == "/" ? "" : whole) + "/" + path.substr(slash == std::string::npos ? 0 : slash + 1);
}

Response json(std::shared_ptr<const std::string> document) {
  Response response;
  response.type = "application/json";
  response.body = std::move(document);
  return response;
}

bool is_lesson_name(std::string_view path) {
  return path.ends_with(".lesson.toml");
}

}  // namespace

Desk::Desk(const std::string& path, platform::Machine& machine, Shelf& shelf, std::function<bool()> stopping)
    : machine_(machine), noted_(machine), course_(path, machine), shelf_(shelf), stopping_(std::move(stopping)) {
  start_anew();
  for (const ListedLesson& lesson : course_.lessons()) noted_.paths().insert(lesson.path);
}

// Templates and fonts are read once a workshop.
void Desk::start_anew() {
  workshop_ = std::make_unique<sheaf::Workshop>(noted_);
}

Response Desk::answer(const Question& question) {
  switch (question.about) {
    case Question::About::lessons:
      return lessons();
    case Question::About::lesson:
      return lesson(question);
    case Question::About::pdf:
    case Question::About::musicxml:
      return file(question);
  }
  return plain(404, "There is nothing here.\n");
}

ListEntry Desk::entry_of(const ListedLesson& lesson) {
  ListEntry entry;
  entry.name = lesson.name;
  std::vector<Problem> problems;
  add_problems(workshop_->check(lesson.path), problems);
  for (const Problem& problem : problems) ++(problem.is_error ? entry.errors : entry.warnings);
  if (entry.errors > 0) return entry;
  sheaf::Request request;
  request.lesson = lesson.path;
  request.formats = {sheaf::Format::svg};
  const sheaf::Plan plan = workshop_->plan(request);
  if (plan.jobs.empty()) return entry;
  if (const auto score = workshop_->score(plan.jobs.front(), score::Copy::student)) entry.title = score->title;
  return entry;
}

Response Desk::lessons() {
  std::vector<ListEntry> entries;
  for (const ListedLesson& lesson : course_.lessons()) {
    if (stopping_ && stopping_()) return plain(503, "The preview has ended.\n");
    Listed& listed = list_[lesson.name];
    if (!listed.is_current) listed = {entry_of(lesson), true};
    entries.push_back(listed.entry);
  }
  note_paths();
  const std::string folder = course_.is_folder() ? course_.title() : "";
  return json(std::make_shared<const std::string>(list_document(folder, entries)));
}

// The last good picture of this choice, else of the lesson in whatever choice was looked at last.
std::shared_ptr<const Picture> Desk::last_good(const std::string& lesson, const Kept& own) const {
  if (own.picture) return own.picture;
  const Kept* latest = nullptr;
  for (const auto& [key, kept] : kept_) {
    if (key.first == lesson && kept.picture && (latest == nullptr || kept.used > latest->used)) latest = &kept;
  }
  return latest == nullptr ? nullptr : latest->picture;
}

// A choice that the lesson does not offer is its own, and is not made for itself.
Choice Desk::settled(const Question& question) const {
  Choice choice = question.choice;
  for (const auto& [key, kept] : kept_) {
    if (key.first != question.lesson || !kept.document || !kept.picture || kept.picture->keys.empty()) continue;
    const Picture& now = *kept.picture;
    const bool offered =
        std::any_of(now.keys.begin(), now.keys.end(), [&](const KeyChoice& one) { return one.key == choice.key; });
    if (!offered || choice.key == now.keys.front().key) choice.key.clear();
    const bool has_look = std::find(now.looks.begin(), now.looks.end(), choice.look) != now.looks.end();
    if (!has_look || choice.look == now.looks.front()) choice.look.clear();
    choice.answers = choice.answers && now.exercise;
    break;
  }
  return choice;
}

Response Desk::lesson(const Question& question) {
  const ListedLesson* lesson = course_.find(question.lesson);
  if (lesson == nullptr) return plain(404, "There is no such lesson here.\n");
  const Choice choice = settled(question);
  Kept& kept = kept_[{question.lesson, choice}];
  kept.used = ++uses_;
  if (!kept.document) {
    Showing showing = show(*workshop_, noted_, lesson->path, choice);
    note_paths();
    const bool is_fresh = showing.picture.has_value();
    if (is_fresh) kept.picture = std::make_shared<const Picture>(std::move(*showing.picture));
    kept.picture = last_good(question.lesson, kept);
    if (kept.picture != nullptr) {
      for (const ShownPage& page : kept.picture->pages) shelf_.put(page.name, page.svg);
    }
    kept.document = std::make_shared<const std::string>(
        lesson_document(question.lesson, lesson->path.substr(lesson->path.rfind('/') + 1), course_.is_folder(), choice,
                        showing.problems, kept.picture.get(), is_fresh));
  }
  Response response = json(kept.document);
  let_go_of_the_oldest();
  return response;
}

void Desk::let_go_of_the_oldest() {
  const auto bytes = [](std::size_t sum, const auto& entry) {
    const Kept& kept = entry.second;
    if (kept.document) sum += kept.document->size();
    if (!kept.picture) return sum;
    for (const ShownPage& page : kept.picture->pages) sum += page.svg->size();
    return sum;
  };
  while (kept_.size() > 1 && (kept_.size() > most_kept ||
                              std::accumulate(kept_.begin(), kept_.end(), std::size_t{0}, bytes) > most_bytes)) {
    kept_.erase(std::min_element(kept_.begin(), kept_.end(),
                                 [](const auto& a, const auto& b) { return a.second.used < b.second.used; }));
  }
}

Response Desk::file(const Question& question) {
  const ListedLesson* lesson = course_.find(question.lesson);
  if (lesson == nullptr) return plain(404, "There is no such lesson here.\n");
  const bool pdf = question.about == Question::About::pdf;
  Download made =
      download(*workshop_, noted_, lesson->path, question.choice, pdf ? sheaf::Format::pdf : sheaf::Format::musicxml);
  if (!made.refusal.empty()) return plain(409, made.refusal + "\n");
  Response response;
  response.type = pdf ? "application/pdf" : "application/vnd.recordare.musicxml+xml";
  response.save_as = std::move(made.name);
  response.body = std::make_shared<const std::string>(std::move(made.bytes));
  return response;
}

void Desk::note_paths() {
  for (const std::string& path : noted_.paths()) {
    paths_.insert(entry_path(path, machine_));
    paths_.insert(machine_.absolute(path));
  }
  noted_.paths().clear();
  for (const ListedLesson& lesson : course_.lessons()) {
    lesson_paths_[entry_path(lesson.path, machine_)] = lesson.name;
    lesson_paths_[machine_.absolute(lesson.path)] = lesson.name;
  }
}

void Desk::changed_lesson(const std::string& name) {
  list_[name].is_current = false;
  for (auto& [key, kept] : kept_) {
    if (key.first == name) kept.document.reset();
  }
}

void Desk::all_changed() {
  ++version_;
  start_anew();
  course_.look_again();
  lesson_paths_.clear();  // one that is gone is no lesson until it is back
  list_.clear();
  for (auto& entry : kept_) entry.second.document.reset();
}

bool Desk::changed(const std::vector<std::string>& paths) {
  note_paths();
  bool any = false;
  bool all = false;
  for (const std::string& path : paths) {
    const auto lesson = lesson_paths_.find(path);
    if (lesson != lesson_paths_.end() && machine_.exists(path)) {
      changed_lesson(lesson->second);
      any = true;
    } else if (paths_.contains(path)) {
      all = true;
    } else if (course_.is_folder()) {
      // A lesson or a folder of lessons that came or went.
      const auto& folders = course_.folders();
      const bool inside = std::find(folders.begin(), folders.end(), folder_of(path)) != folders.end();
      const auto status = machine_.status(path);
      const bool folder = status ? status->kind == platform::FileStatus::Kind::folder
                                 : std::find(folders.begin(), folders.end(), path) != folders.end();
      all = all || (inside && (folder || is_lesson_name(path)));
    }
  }
  if (all) {
    all_changed();
  } else if (any) {
    ++version_;
  }
  return any || all;
}

std::vector<std::string> Desk::folders() {
  note_paths();
  std::set<std::string> found(course_.folders().begin(), course_.folders().end());
  for (const std::string& path : paths_) found.insert(folder_of(path));
  return {found.begin(), found.end()};
}

}  // namespace fretsheaf::preview
