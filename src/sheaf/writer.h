#pragma once

#include <condition_variable>
#include <deque>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "platform/machine.h"
#include "sheaf/record.h"

namespace fretsheaf::sheaf {

// Writes files while whoever made them goes on making: a disk takes longer to say that a file is safe than a page takes
// to draw. The thread that it does so by touches nothing but files. On a system that does not span processes it writes
// at once.
class Writer {
 public:
  struct Written {
    FileMark mark;  // without a tail
    std::optional<platform::FileError> error;
  };

  explicit Writer(platform::Machine& system) : system_(system) {}
  ~Writer();
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;

  // Waits where too much is unwritten already.
  void write(std::string path, std::string bytes);

  // What came of all since the last call, in their order, when the last is written.
  std::vector<Written> finish();

 private:
  struct File {
    std::string path;
    std::string bytes;
  };

  Written write_now(const File& file);
  void go_on();

  platform::Machine& system_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<File> waiting_;  // the first is being written
  std::vector<Written> written_;
  bool ends_ = false;
  std::thread thread_;
};

}  // namespace fretsheaf::sheaf
