#include "lesson/reader.h"

#include <utility>

#include "lesson/checks.h"
#include "lesson/grid.h"
#include "lesson/keys_paths.h"
#include "lesson/keys_settle.h"
#include "lesson/keys_sheaf.h"
#include "lesson/sheaf_of.h"
#include "lesson/toml_guard.h"

namespace fretsheaf::lesson {
namespace {

void take(source::Diagnostics& into, const source::Diagnostics& from) {
  for (const auto& one : from.list()) {
    if (one.severity == source::Severity::error) {
      into.error(one.code, one.range, one.message, one.help);
    } else {
      into.warning(one.code, one.range, one.message, one.help);
    }
  }
}

class Reader {
 public:
  explicit Reader(const platform::System& system) : system_(system) {}

  ReadLesson read(const std::string& path, std::string bytes) {
    read_.root = folder_of(path);
    SoundBytes sound = check_bytes(std::move(bytes), limits::bytes, 0);
    read_.files.add({path, std::move(sound.shown)});
    take(read_.diagnostics, sound.diagnostics);
    if (sound.diagnostics.has_errors()) return std::move(read_);
    if (is_sheaf_file(path)) {
      read_.diagnostics.error(source::Code::missing_key, {}, "this file says what lessons have in common, and is none",
                              "name a lesson; fretsheaf sheaf makes those of a whole folder");
      return std::move(read_);
    }
    const std::optional<TomlValue> tree = read_toml(read_.files[0], 0, read_.diagnostics);
    if (tree) read_tree(path, *tree);
    return std::move(read_);
  }

 private:
  void read_tree(const std::string& path, const TomlValue& tree) {
    TomlValue sheaf_tree;
    if (const auto sheaf = find_sheaf(path, system_)) {
      read_.root = folder_of(*sheaf);
      sheaf_tree = read_sheaf(*sheaf, system_, keys_, read_);
    }
    read_lesson_keys(tree, keys_, read_.files, read_.diagnostics);
    lesson_ = settle_lesson(keys_, system_, read_);
    read_examples();
    fill_varied(lesson_, sound_, read_.diagnostics);
    check_pictures(lesson_, sound_, read_.diagnostics);
    check_texts(keys_, lesson_, sound_, read_.files, read_.diagnostics);
    check_commonmark(keys_, lesson_, read_.files, read_.diagnostics);
    if (!read_.diagnostics.has_errors()) read_.lesson = std::move(lesson_);
  }

  void read_examples() {
    if (keys_.examples == nullptr) return;
    for (const TomlValue& table : keys_.examples->items) {
      const ExampleKeys keys = read_example_keys(table, read_.files, read_.diagnostics);
      lesson_.examples.push_back(settle_example(keys, keys_, lesson_, read_.diagnostics));
      sound_.push_back(read_music(keys, lesson_.examples.back()));
    }
  }

  // Whether there is music, or rightly none.
  bool read_music(const ExampleKeys& keys, Example& example) {
    if (keys.blank_bars.written) return !keys.blank_bars.wrong();
    const auto& meter = keys.music.meter.written ? keys.music.meter : keys_.music.meter;
    // Against a wrong meter or unknown strings every bar would be wrong too.
    if (!keys.tab || meter.wrong() || !knows_strings(keys_)) return false;
    source::Diagnostics of_grid;
    read_.grids.push_back({keys.grid, lesson_.neck, example.key, example.meter, keys.vary.written});
    const auto tuning = keys_.tuning ? std::optional(keys_.tuning.range()) : std::nullopt;
    const GridContext context{lesson_.neck, example.key, example.meter, keys.vary.written, tuning};
    example.music = read_grid(read_.files[0], keys.grid, context, of_grid);
    take(read_.diagnostics, of_grid);
    return !of_grid.has_errors();
  }

  const platform::System& system_;
  ReadLesson read_;
  LessonKeys keys_;
  Lesson lesson_;
  SoundMusic sound_;
};

}  // namespace

ReadLesson read_lesson(const std::string& path, std::string bytes, const platform::System& system) {
  return Reader(system).read(path, std::move(bytes));
}

}  // namespace fretsheaf::lesson
