#pragma once

#include <map>
#include <string>
#include <vector>

namespace fretsheaf::test {

// A lesson that is written to be read once, by what it is to show.
struct WrittenCase {
  std::string code;                          // "bar-cut-off"; empty where the heading has no colon
  std::string what;                          // in words
  std::string key;                           // to make it in, as on the command line; empty is its own
  std::map<std::string, std::string> files;  // the lesson, a.lesson.toml, and what lies beside it
};

// The cases of a text file in tests/. `== CODE: what` begins one. Its lines are the grid of a lesson in D dorian for
// the bass; lines that begin with `top` and `in` go above its example and into it, `to` names a key to make it in, and
// `-- NAME` begins another file. A case whose first line has no bar line is a whole lesson. `⟨41⟩` is the byte 41.
std::vector<WrittenCase> written_cases(const std::string& name);

}  // namespace fretsheaf::test
