#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>

#include "platform/wake.h"
#include "preview/choice.h"
#include "preview/request.h"

namespace fretsheaf::preview {

// What only the thread that works on lessons can answer.
struct Question {
  enum class About { lessons, lesson, pdf, musicxml };
  About about = About::lessons;
  std::string lesson;  // as the list calls it
  Choice choice;
};

// Where the server's threads ask, and the one that works answers: no two threads may use the libraries that draw.
class Counter {
 public:
  // The bell is rung for every question.
  explicit Counter(const platform::Wake& bell) : bell_(bell) {}

  // Waits for the answer.
  Response ask(const Question& question);

  // Answers what has been asked so far, in order.
  void serve(const std::function<Response(const Question&)>& answer);

  // From now on nobody works: those who wait are told so.
  void close();

 private:
  struct Asked {
    const Question* question;
    std::optional<Response> answer;
  };

  const platform::Wake& bell_;
  std::mutex mutex_;
  std::condition_variable answered_;
  std::deque<Asked*> waiting_;  // each stands in its asker's own frame, which waits
  bool closed_ = false;
};

}  // namespace fretsheaf::preview
