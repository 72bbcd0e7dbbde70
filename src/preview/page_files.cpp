#include "preview/page_files.h"

#include "preview/embedded_page.h"

namespace fretsheaf::preview {
namespace {

const char* type_of(std::string_view name) {
  if (name.ends_with(".html")) return "text/html; charset=utf-8";
  if (name.ends_with(".css")) return "text/css; charset=utf-8";
  return "text/javascript; charset=utf-8";
}

}  // namespace

std::optional<Response> page_file(std::string_view name) {
  if (name.empty()) name = "preview.html";
  for (const auto& [known, bytes] : embedded_page) {
    if (known != name) continue;
    Response response;
    response.type = type_of(name);
    response.body = std::make_shared<const std::string>(bytes);
    return response;
  }
  return std::nullopt;
}

}  // namespace fretsheaf::preview
