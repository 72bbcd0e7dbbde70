#include "preview/counter.h"

#include <utility>

namespace fretsheaf::preview {

Response Counter::ask(const Question& question) {
  std::unique_lock lock(mutex_);
  if (closed_) return plain(503, "The preview has ended.\n");
  Asked asked{&question, std::nullopt};
  // It is taken out again before it is answered, and it is waited for here.
  // cppcheck-suppress danglingLifetime
  waiting_.push_back(&asked);
  bell_.ring();
  answered_.wait(lock, [&] { return asked.answer.has_value(); });
  return std::move(*asked.answer);
}

void Counter::serve(const std::function<Response(const Question&)>& answer) {
  while (true) {
    Asked* asked = nullptr;
    {
      const std::lock_guard lock(mutex_);
      if (waiting_.empty()) return;
      asked = waiting_.front();
      waiting_.pop_front();
    }
    Response response = answer(*asked->question);
    const std::lock_guard lock(mutex_);
    asked->answer = std::move(response);
    answered_.notify_all();
  }
}

void Counter::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  for (Asked* asked : waiting_) asked->answer = plain(503, "The preview has ended.\n");
  waiting_.clear();
  answered_.notify_all();
}

}  // namespace fretsheaf::preview
