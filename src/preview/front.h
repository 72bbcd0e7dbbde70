#pragma once

#include <optional>
#include <string_view>

#include "preview/counter.h"
#include "preview/gate.h"
#include "preview/news.h"
#include "preview/shelf.h"

namespace fretsheaf::preview {

// What a path asks of the one that works: "lessons.json", "lesson.json?lesson=NAME&key=…", "handout.pdf?…",
// "handout.musicxml?…"; nullopt for any other.
std::optional<Question> question_of(std::string_view what, const Request& request);

// Answers requests: from the page's own files, from the shelf, or by asking at the counter. Called by many threads.
class Front {
 public:
  Front(const Gate& gate, Counter& counter, const Shelf& shelf, News& news)
      : gate_(gate), counter_(counter), shelf_(shelf), news_(news) {}

  Response answer(const Request& request);

 private:
  const Gate& gate_;
  Counter& counter_;
  const Shelf& shelf_;
  News& news_;
};

}  // namespace fretsheaf::preview
