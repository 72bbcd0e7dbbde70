#pragma once

#include <optional>
#include <string>
#include <string_view>

// Paths as lesson files write them, by their letters alone: `/` parts them, and nothing on a disk is asked.
namespace fretsheaf::lesson {

// What comes before the file's name: "a/b.toml" → "a/", "/b.toml" → "/", "b.toml" → "".
std::string folder_of(std::string_view path);

// The folder above, of a folder as `folder_of` writes it: "a/b/" → "a/", "" → "../", "../" → "../../"; nullopt for "/".
std::optional<std::string> folder_above(std::string_view folder);

// Without "." and ".." as far as they can be taken away: "a/../b" → "b", "../a" stays.
std::string normal_path(std::string_view path);

// Whether the path lies in the folder, or under it. Both are taken from one place, or are absolute.
bool is_inside(std::string_view path, std::string_view folder);

}  // namespace fretsheaf::lesson
