#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

// What goes between the browser and the room, in no server's terms: so it can be asked and answered without one.
namespace fretsheaf::preview {

struct Request {
  std::string method;                        // "GET"
  std::string path;                          // "/TOKEN/page.css", its percent signs decoded, without the query
  std::map<std::string, std::string> query;  // decoded; of a name that comes twice the first
  std::vector<std::string> hosts;            // every Host line
  std::vector<std::string> origins;          // every Origin line
};

// What a stream sends next, waited for; nullopt ends it.
using Next = std::function<std::optional<std::string>()>;

struct Response {
  int status = 200;
  std::string type = "text/plain; charset=utf-8";
  std::shared_ptr<const std::string> body;  // may be nullptr
  std::string save_as;                      // a file's name where the browser is to save it, else ""
  Next stream;                              // in place of a body
};

Response plain(int status, std::string text);

// The lines that every answer carries: nothing from outside, no script but the page's own, no frame around it, no
// address handed on, nothing kept.
const std::vector<std::pair<std::string, std::string>>& guarding_headers();

}  // namespace fretsheaf::preview
