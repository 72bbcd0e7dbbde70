#include "lesson/keys_sheaf.h"

#include "lesson/keys_inside.h"
#include "lesson/keys_paths.h"
#include "lesson/toml_guard.h"

namespace fretsheaf::lesson {
namespace {

struct SheafKeys {
  const TomlValue* defaults = nullptr;
  const TomlValue* output = nullptr;
};

void read_section(const TomlValue*& into, const Field& field) {
  if (field.value.kind == TomlValue::Kind::table) {
    into = &field.value;
  } else {
    const std::string name(field.name);
    field.error(source::Code::wrong_type, "'" + name + "' is not a key with a value",
                "write [" + name + "] on a line of its own, and its keys under it");
  }
}

constexpr Rule<SheafKeys> sections[] = {
    {"defaults", "", [](SheafKeys& into, const Field& field) { read_section(into.defaults, field); }},
    {"output", "", [](SheafKeys& into, const Field& field) { read_section(into.output, field); }},
};

constexpr std::array<std::string_view, 4> formats = {"pdf", "svg", "musicxml", "mxl"};

constexpr Rule<SheafOutput> output_rules[] = {
    {"folder", "\"handouts\"", [](SheafOutput& into, const Field& field) { into.folder = read_line(field); }},
    {"as", "[\"pdf\", \"musicxml\"]",
     [](SheafOutput& into, const Field& field) {
       const auto names = read_names(field, formats);
       if (!names) return;
       for (std::size_t i = 0; i < names->value.size(); ++i) {
         into.formats.push_back({std::string(formats[names->value[i]]), field.value.items[i].range});
       }
     }},
};

std::string under_defaults(std::string_view key) {
  if (!is_lesson_key(key) || key == "title" || key == "example") return {};
  return "write it under [defaults]";
}

// A file from strangers writes nowhere but in its own folder, and below it.
void keep_inside(const std::string& home, const platform::System& system, ReadLesson& read) {
  std::optional<Located<std::string>>& folder = read.output.folder;
  if (!folder) return;
  const bool absolute = folder->value.starts_with('/');
  const std::string path = normal_path(home + folder->value);
  if (!absolute && (path == normal_path(home) || stays_inside(path, home, system))) return;
  read.diagnostics.error(source::Code::outside_folder, folder->range,
                         shown(folder->value) + " lies outside the folder of this sheaf.toml",
                         "write folder = \"handouts\", a folder beside it; --to has handouts made anywhere else");
  folder.reset();
}

}  // namespace

std::optional<std::string> find_sheaf(const std::string& lesson_path, const platform::System& system) {
  // From a relative path on, `..` never comes to an end: so many folders are as deep as any are.
  constexpr int highest = 64;
  std::optional<std::string> folder = folder_of(lesson_path);
  for (int i = 0; folder && i < highest; ++i) {
    std::string path = *folder + "sheaf.toml";
    if (system.exists(path)) return path;
    folder = folder_above(*folder);
  }
  return {};
}

TomlValue read_sheaf(const std::string& path, const platform::System& system, LessonKeys& keys, ReadLesson& read) {
  auto bytes = system.read(path, limits::bytes);
  const auto* failed = std::get_if<platform::FileError>(&bytes);
  SoundBytes sound = check_bytes(failed == nullptr ? std::get<std::string>(std::move(bytes)) : std::string(),
                                 limits::bytes, static_cast<source::FileId>(read.files.size()));
  const source::FileId file = read.files.add({path, std::move(sound.shown)});
  if (failed != nullptr)
    read.diagnostics.error(source::Code::unreadable_file, {0, 0, file}, "this file " + failed->what);
  for (const auto& wrong : sound.diagnostics.list()) {
    read.diagnostics.error(wrong.code, wrong.range, wrong.message, wrong.help);
  }
  if (failed != nullptr || sound.diagnostics.has_errors()) return {};

  std::optional<TomlValue> tree = read_toml(read.files[file], file, read.diagnostics);
  if (!tree) return {};
  SheafKeys found;
  read_table<SheafKeys>(*tree, sections, found, {read.files, read.diagnostics, "a sheaf.toml", under_defaults});
  if (found.defaults != nullptr) read_default_keys(*found.defaults, keys, read.files, read.diagnostics);
  if (found.output != nullptr) {
    read_table<SheafOutput>(*found.output, output_rules, read.output,
                            {read.files, read.diagnostics, "[output]", nullptr});
    keep_inside(folder_of(path), system, read);
  }
  return std::move(*tree);
}

}  // namespace fretsheaf::lesson
