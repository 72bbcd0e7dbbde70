#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "platform/machine.h"
#include "preview/counter.h"
#include "preview/course_list.h"
#include "preview/documents.h"
#include "preview/noted_system.h"
#include "preview/shelf.h"
#include "preview/showing.h"

namespace fretsheaf::preview {

// Where lessons are worked on: by one thread alone. What was made is kept until a file changes that it was made from,
// and of each choice the last good picture is kept beyond that.
class Desk {
 public:
  // `path` is of a lesson file or a folder of them. Pages go to the shelf. A list of many lessons takes a while: where
  // `stopping` says so, it is left.
  Desk(const std::string& path, platform::Machine& machine, Shelf& shelf, std::function<bool()> stopping = {});

  Response answer(const Question& question);

  // Takes note of files that have changed, paths from the root without links; true where it changes a page or the list.
  bool changed(const std::vector<std::string>& paths);
  void all_changed();

  // Where changes are to be watched for, as far as is known by now: folders, their paths without links.
  std::vector<std::string> folders();

  std::uint64_t version() const { return version_; }

 private:
  // A choice of a lesson that somebody looked at.
  struct Kept {
    std::shared_ptr<const std::string> document;  // nullptr where it has to be made (again)
    std::shared_ptr<const Picture> picture;       // the last good one, or one of another choice while there is none
    std::uint64_t used = 0;
  };
  struct Listed {
    ListEntry entry;
    bool is_current = false;
  };
  using Key = std::pair<std::string, Choice>;

  Response lessons();
  Response lesson(const Question& question);
  Response file(const Question& question);
  ListEntry entry_of(const ListedLesson& lesson);
  Choice settled(const Question& question) const;
  std::shared_ptr<const Picture> last_good(const std::string& lesson, const Kept& own) const;
  void let_go_of_the_oldest();
  void note_paths();
  void start_anew();
  void changed_lesson(const std::string& name);

  platform::Machine& machine_;
  NotedSystem noted_;
  std::unique_ptr<sheaf::Workshop> workshop_;
  CourseList course_;
  Shelf& shelf_;
  std::function<bool()> stopping_;
  std::map<Key, Kept> kept_;
  std::map<std::string, Listed> list_;               // by lesson name
  std::map<std::string, std::string> lesson_paths_;  // without links, to the lesson's name
  std::set<std::string> paths_;                      // all that pages were made from, from the root without links
  std::uint64_t version_ = 1;
  std::uint64_t uses_ = 0;
};

}  // namespace fretsheaf::preview
