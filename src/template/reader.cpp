#include "template/reader.h"

#include <utility>

#include "source/utf8.h"
#include "template/parse.h"

namespace fretsheaf::templates {
namespace {

using source::Code;

constexpr std::size_t max_template_bytes = std::size_t{256} * 1024;
constexpr std::string_view ending = ".toml";

bool is_path(std::string_view name) {
  return name.find('/') != std::string_view::npos || name.ends_with(ending);
}

std::string path_of(const std::string& name, const platform::System& system) {
  if (is_path(name)) return name;
  return system.data_path("templates") + "/" + name + std::string(ending);
}

// The file's name without folder and ending.
std::string stem(std::string_view path) {
  if (const auto slash = path.rfind('/'); slash != std::string_view::npos) path.remove_prefix(slash + 1);
  if (path.ends_with(ending)) path.remove_suffix(ending.size());
  return std::string(path);
}

// Fonts given by path are meant from the template's own folder.
void resolve_font_paths(Template& look, const std::string& path) {
  const auto slash = path.rfind('/');
  if (slash == std::string::npos) return;
  for (TypeStyle& style : look.type) {
    for (std::string& font : style.fonts) {
      const bool is_relative_path = font.front() != '/' && font.find_first_of("/.") != std::string::npos;
      if (is_relative_path) font.insert(0, path, 0, slash + 1);
    }
  }
}

ReadTemplate unreadable(const std::string& path, std::string message, std::string help) {
  ReadTemplate read;
  const source::FileId file = read.files.add(source::Text(path, {}));
  read.diagnostics.error(Code::template_unreadable, {0, 0, file}, std::move(message), std::move(help));
  return read;
}

// Why bytes cannot be text at all; empty where they can.
std::string not_text(std::string_view bytes) {
  if (bytes.find('\0') != std::string_view::npos) return "this is not a text file: it holds a NUL byte";
  if (!source::is_valid_utf8(bytes)) return "this is not a text file in UTF-8";
  return {};
}

}  // namespace

ReadTemplate read_template(const std::string& name, const platform::System& system) {
  const std::string path = path_of(name, system);
  platform::FileResult<std::string> bytes = system.read(path, max_template_bytes);
  if (const auto* error = std::get_if<platform::FileError>(&bytes)) {
    if (error->kind == platform::FileError::Kind::missing) {
      ReadTemplate read;
      read.missing = true;
      return read;
    }
    return unreadable(path, error->what, "a template is a TOML file of at most 256 KiB");
  }
  if (std::string why = not_text(std::get<std::string>(bytes)); !why.empty()) {
    return unreadable(path, std::move(why), "save the template as plain text in UTF-8");
  }
  ReadTemplate read;
  const source::FileId file = read.files.add(source::Text(path, std::get<std::string>(std::move(bytes))));
  Template look = parse_template(read.files[file], file, read.diagnostics);
  if (read.diagnostics.has_errors()) return read;
  look.name = stem(path);
  resolve_font_paths(look, path);
  read.look = std::move(look);
  return read;
}

std::vector<std::string> template_names(const platform::System& system) {
  std::vector<std::string> names;
  for (const std::string& entry : system.list(system.data_path("templates"))) {
    if (entry.ends_with(ending)) names.push_back(stem(entry));
  }
  return names;
}

}  // namespace fretsheaf::templates
