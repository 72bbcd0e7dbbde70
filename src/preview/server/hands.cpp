#include "preview/server/hands.h"

namespace fretsheaf::preview {
namespace {

constexpr std::size_t most_waiting = 128;
thread_local bool turned_away = false;

}  // namespace

Hands::Hands(std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) threads_.emplace_back([this] { work(); });
}

void Hands::enqueue(std::function<void()> work) {
  {
    const std::lock_guard lock(mutex_);
    if (waiting_.size() < most_waiting) {
      waiting_.push_back(std::move(work));
      come_.notify_one();
      return;
    }
  }
  turned_away = true;
  work();
  turned_away = false;
}

void Hands::shutdown() {
  {
    const std::lock_guard lock(mutex_);
    ended_ = true;
    come_.notify_all();
  }
  for (std::thread& thread : threads_) thread.join();
}

bool Hands::busy() const {
  const std::lock_guard lock(mutex_);
  return !waiting_.empty();
}

bool Hands::turning_away() {
  return turned_away;
}

// What still waits when all ends is done too: it closes its connection.
void Hands::work() {
  while (true) {
    std::function<void()> next;
    {
      std::unique_lock lock(mutex_);
      come_.wait(lock, [&] { return ended_ || !waiting_.empty(); });
      if (waiting_.empty()) return;
      next = std::move(waiting_.front());
      waiting_.pop_front();
    }
    next();
  }
}

}  // namespace fretsheaf::preview
