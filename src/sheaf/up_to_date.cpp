#include "sheaf/up_to_date.h"

#include <algorithm>

namespace fretsheaf::sheaf {

Standing standing(MadeEntry& entry, const Places& places, bool verify, const platform::Machine& system) {
  Standing all = Standing::current;
  for (FileMark& file : entry.files) {
    const std::string path = places.working(entry.handout + file.tail);
    const std::optional<platform::FileStatus> now = system.status(path);
    if (!now || now->kind != platform::FileStatus::Kind::file || now->size != file.size) return Standing::different;
    if (now->changed == file.changed && !verify) continue;
    const auto read = system.read(path, file.size);
    const auto* bytes = std::get_if<std::string>(&read);
    if (bytes == nullptr || print_of(*bytes) != file.print) return Standing::different;
    if (now->changed == file.changed) continue;
    file.changed = now->changed;
    all = Standing::current_with_new_times;
  }
  return all;
}

}  // namespace fretsheaf::sheaf
