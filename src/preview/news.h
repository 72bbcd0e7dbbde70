#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <list>
#include <memory>
#include <mutex>

#include "preview/request.h"

namespace fretsheaf::preview {

// Tells open pages that something has changed, over streams of server-sent events (the HTML standard, "Server-sent
// events"). A stream keeps one of the server's threads, so there are four at the most: the oldest is ended for a fifth,
// and told so, that its page does not come back at once. Called by any thread.
class News {
 public:
  static constexpr std::size_t most_streams = 4;

  // How long a stream is silent before it says that it still lives, which shows whether anybody listens.
  explicit News(std::chrono::milliseconds silence = std::chrono::seconds(15)) : silence_(silence) {}

  Next open();
  void tell(std::uint64_t version);
  void close();  // ends all streams, and every later one at once
  std::size_t streams() const;

 private:
  struct Stream {
    std::uint64_t told = 0;
    bool ended = false;
    bool replaced = false;
  };
  std::optional<std::string> next(Stream& stream);

  mutable std::mutex mutex_;
  std::condition_variable told_;
  std::chrono::milliseconds silence_;
  std::uint64_t version_ = 1;
  bool closed_ = false;
  std::list<std::weak_ptr<Stream>> streams_;  // the oldest first
};

}  // namespace fretsheaf::preview
