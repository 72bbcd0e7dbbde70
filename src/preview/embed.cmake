# Builds the page's files into the room, so that a run reads none.
set(table "")
foreach(file preview.html preview.css music.css preview.js music.js picture.js words.js)
  set(path ${CMAKE_CURRENT_LIST_DIR}/page/${file})
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${path})
  file(READ ${path} bytes HEX)
  string(REGEX REPLACE "(..)" "\\\\x\\1" bytes "${bytes}")
  # A literal may be no longer than 65,536 characters (C++20, annex B); pieces that stand in a row are joined.
  string(REGEX REPLACE "(................................................................................)" "\\1\"\n    \""
         bytes "${bytes}")
  string(APPEND table "    {\"${file}\",\n    \"${bytes}\"},\n")
endforeach()
file(CONFIGURE OUTPUT preview_embedded/preview/embedded_page.h @ONLY CONTENT
"#pragma once
#include <array>
#include <string_view>
#include <utility>
namespace fretsheaf::preview {
inline constexpr std::array<std::pair<std::string_view, std::string_view>, 7> embedded_page = {{
${table}}};
}  // namespace fretsheaf::preview
")
target_include_directories(preview PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/preview_embedded)
