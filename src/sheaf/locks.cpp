#include "sheaf/locks.h"

#include <optional>

namespace fretsheaf::sheaf {

namespace {

// Takes one lock; else what is wrong.
std::optional<std::string> take(const std::string& path, platform::Sharing sharing, const std::string& root,
                                const std::string& in_use, Locks& locks, platform::Machine& system) {
  auto taken = system.lock(path, sharing);
  if (auto* hold = std::get_if<std::unique_ptr<platform::Hold>>(&taken)) {
    locks.held.push_back(std::move(*hold));
    return std::nullopt;
  }
  if (const auto* error = std::get_if<platform::FileError>(&taken)) return path + ": " + error->what;
  return root + ": " + in_use + "; wait until it has ended, or stop it";
}

}  // namespace

std::variant<Locks, std::string> take_locks(const std::string& record_folder, const std::string& root,
                                            const Order& order, platform::Machine& system) {
  using platform::Sharing;
  Locks locks;
  const std::string all = record_folder + "/lock";
  if (order.is_whole()) {
    if (auto why = take(all, Sharing::alone, root, "another run is making handouts here", locks, system)) return *why;
    return locks;
  }
  if (auto why =
          take(all, Sharing::with_others, root, "a run of the whole course is making handouts here", locks, system)) {
    return *why;
  }
  if (order.share) {
    const std::string share = std::to_string(order.share->number) + "-of-" + std::to_string(order.share->of);
    const std::string words = "another run is making share " + std::to_string(order.share->number) + "/" +
                              std::to_string(order.share->of) + " here";
    if (auto why = take(record_folder + "/share-" + share + ".lock", Sharing::alone, root, words, locks, system)) {
      return *why;
    }
  }
  return locks;
}

}  // namespace fretsheaf::sheaf
