#include "preview/news.h"

#include <algorithm>

namespace fretsheaf::preview {

Next News::open() {
  const std::lock_guard lock(mutex_);
  streams_.remove_if([](const std::weak_ptr<Stream>& stream) { return stream.expired(); });
  while (streams_.size() >= most_streams) {
    if (const auto oldest = streams_.front().lock()) oldest->replaced = true;
    streams_.pop_front();
  }
  auto stream = std::make_shared<Stream>();
  streams_.push_back(stream);
  told_.notify_all();
  return [this, stream] { return next(*stream); };
}

std::optional<std::string> News::next(Stream& stream) {
  std::unique_lock lock(mutex_);
  told_.wait_for(lock, silence_, [&] { return closed_ || stream.ended || stream.replaced || stream.told != version_; });
  if (closed_ || stream.ended) return std::nullopt;
  if (stream.replaced) {
    stream.ended = true;
    return "event: replaced\ndata: 0\n\n";
  }
  if (stream.told == version_) return ": still here\n\n";
  stream.told = version_;
  return "event: version\ndata: " + std::to_string(version_) + "\n\n";
}

void News::tell(std::uint64_t version) {
  const std::lock_guard lock(mutex_);
  version_ = version;
  told_.notify_all();
}

void News::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  told_.notify_all();
}

std::size_t News::streams() const {
  const std::lock_guard lock(mutex_);
  return static_cast<std::size_t>(
      std::count_if(streams_.begin(), streams_.end(), [](const auto& stream) { return !stream.expired(); }));
}

}  // namespace fretsheaf::preview
