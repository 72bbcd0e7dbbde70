# Builds the lesson file's schema into the room, so that a run reads no file for it.
set(file ${CMAKE_CURRENT_LIST_DIR}/lesson.schema.json)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
file(READ ${file} text)
file(CONFIGURE OUTPUT lesson_embedded/lesson/embedded_schema.h @ONLY CONTENT
"#pragma once
#include <string_view>
namespace fretsheaf::lesson {
inline constexpr std::string_view embedded_schema = R\"json(${text})json\";
}  // namespace fretsheaf::lesson
")
target_include_directories(lesson PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/lesson_embedded)
