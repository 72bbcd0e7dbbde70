#include "preview/front.h"

#include "preview/page_files.h"

namespace fretsheaf::preview {

namespace {

constexpr std::size_t longest_value = 1000;  // of a name or a key: what is asked for is kept

std::string value(const Request& request, const char* name) {
  const auto found = request.query.find(name);
  return found == request.query.end() ? "" : found->second.substr(0, longest_value);
}

}  // namespace

std::optional<Question> question_of(std::string_view what, const Request& request) {
  using About = Question::About;
  Question question;
  if (what == "lessons.json") {
    question.about = About::lessons;
  } else if (what == "lesson.json") {
    question.about = About::lesson;
  } else if (what == "handout.pdf") {
    question.about = About::pdf;
  } else if (what == "handout.musicxml") {
    question.about = About::musicxml;
  } else {
    return std::nullopt;
  }
  question.lesson = value(request, "lesson");
  question.choice = {value(request, "key"), value(request, "look"), value(request, "copy") == "answers"};
  return question;
}

Response Front::answer(const Request& request) {
  const Gate::Pass pass = gate_.pass(request);
  if (pass.refusal) return *pass.refusal;
  const std::string_view what = pass.what;
  if (std::optional<Response> file = page_file(what)) return *std::move(file);
  if (const auto question = question_of(what, request)) return counter_.ask(*question);
  if (what == "news" && request.method == "GET") {
    Response response;
    response.type = "text/event-stream";
    response.stream = news_.open();
    return response;
  }
  constexpr std::string_view pages = "pages/";
  constexpr std::string_view ending = ".svg";
  if (what.starts_with(pages) && what.ends_with(ending)) {
    const std::string name(what.substr(pages.size(), what.size() - pages.size() - ending.size()));
    if (auto page = shelf_.take(name)) {
      Response response;
      response.type = "image/svg+xml";
      response.body = std::move(page);
      return response;
    }
  }
  return plain(404, "There is nothing here.\n");
}

}  // namespace fretsheaf::preview
