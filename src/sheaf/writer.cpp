#include "sheaf/writer.h"

#include <utility>

#include "sheaf/put_in_place.h"

namespace fretsheaf::sheaf {

namespace {

constexpr std::size_t most_waiting = 16;

}  // namespace

Writer::~Writer() {
  if (!thread_.joinable()) return;
  {
    const std::lock_guard lock(mutex_);
    ends_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Writer::write(std::string path, std::string bytes) {
  File file{std::move(path), std::move(bytes)};
  if (!system_.spans_processes()) {
    written_.push_back(write_now(file));
    return;
  }
  if (!thread_.joinable()) thread_ = std::thread([this] { go_on(); });
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return waiting_.size() < most_waiting; });
  waiting_.push_back(std::move(file));
  changed_.notify_all();
}

std::vector<Writer::Written> Writer::finish() {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return waiting_.empty(); });
  return std::exchange(written_, {});
}

Writer::Written Writer::write_now(const File& file) {
  Written written{{"", file.bytes.size(), 0, print_of(file.bytes)}, put_in_place(system_, file.path, file.bytes)};
  if (const auto status = system_.status(file.path)) written.mark.changed = status->changed;
  return written;
}

void Writer::go_on() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return ends_ || !waiting_.empty(); });
    if (waiting_.empty()) return;
    // Others only add behind it, which moves no element of a deque.
    const File& file = waiting_.front();
    lock.unlock();
    Written written = write_now(file);
    lock.lock();
    written_.push_back(std::move(written));
    waiting_.pop_front();
    changed_.notify_all();
  }
}

}  // namespace fretsheaf::sheaf
