#pragma once

#include <optional>
#include <string>

#include "platform/machine.h"
#include "sheaf/order.h"
#include "sheaf/record.h"

namespace fretsheaf::sheaf {

// The folder of the record, beside the handouts.
std::string record_folder(const std::string& root);

// The files of the record, in the folder `.fretsheaf` beside the handouts:
//   record                 all that whole runs know, sorted
//   journal                what a whole run adds while it goes on, a line a thing
//   share-I-of-N.record    what a share knows, and its journal while it goes on
//   only.journal           what runs of single jobs add
// A run reads them all; what was killed has left a journal, and nothing of it is lost.
class Store {
 public:
  Store(const std::string& root, const Order& order, platform::Machine& system);

  // All that is known.
  Record load() const;

  // Adds lines to this run's journal.
  std::optional<platform::FileError> append(const std::string& lines, bool synced);

  // Makes this run's journal one sorted file: a whole run `all` that is known, taking the place of every other file; a
  // share what it knew before and has added; a run of a single job leaves its line in the journal.
  // Where nothing was added and nothing `forgotten`, all stays as it is.
  std::optional<platform::FileError> finish(const Record& all, bool forgotten);

  std::string folder() const { return folder_; }

 private:
  std::string path(const std::string& name) const { return folder_ + "/" + name; }
  std::string text(const std::string& name) const;
  std::vector<std::string> names() const;  // in the order in which they count
  // Nobody has one while a whole run has the folder's: a share takes that first.
  void remove_share_locks();

  std::string folder_;
  std::string record_;   // this run's; "" where it has none
  std::string journal_;  // this run's
  bool is_whole_;
  bool appended_ = false;
  platform::Machine& system_;
};

}  // namespace fretsheaf::sheaf
