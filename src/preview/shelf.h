#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace fretsheaf::preview {

// Finished pages by name, for the server's threads to hand out. It keeps none alive: a page is there as long as a
// picture has it.
class Shelf {
 public:
  void put(const std::string& name, const std::shared_ptr<const std::string>& page);
  std::shared_ptr<const std::string> take(const std::string& name) const;  // nullptr where there is none

 private:
  mutable std::mutex mutex_;
  std::map<std::string, std::weak_ptr<const std::string>> pages_;
};

}  // namespace fretsheaf::preview
