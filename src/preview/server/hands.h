#pragma once

#include <httplib.h>

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <vector>

namespace fretsheaf::preview {

// The threads that answer. The library's own pool keeps any number of connections waiting; of these, those beyond
// `most_waiting` are turned away on the spot.
class Hands final : public httplib::TaskQueue {
 public:
  explicit Hands(std::size_t count);
  ~Hands() override = default;

  void enqueue(std::function<void()> work) override;
  void shutdown() override;

  // Whether connections wait for a thread.
  bool busy() const;
  // Whether the work that runs in this thread is to close its connection and do nothing else.
  static bool turning_away();

 private:
  void work();

  mutable std::mutex mutex_;
  std::condition_variable come_;
  std::deque<std::function<void()>> waiting_;
  bool ended_ = false;
  std::vector<std::thread> threads_;
};

}  // namespace fretsheaf::preview
