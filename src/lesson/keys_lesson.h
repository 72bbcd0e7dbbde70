#pragma once

#include <string>
#include <vector>

#include "lesson/keys_music.h"
#include "lesson/keys_value.h"

namespace fretsheaf::lesson {

// What a lesson file, and the [defaults] of a sheaf.toml under it, say above the examples.
struct LessonKeys {
  MusicKeys music;
  Setting<std::string> title;
  Setting<std::string> subtitle;
  Setting<std::string> teacher;
  Setting<std::string> series;
  Setting<std::string> level;
  Setting<std::string> copyright;
  Setting<std::string> intro;
  Setting<std::string> language;
  Setting<std::string> template_name;
  Setting<std::string> link;
  Setting<std::string> logo;
  Setting<std::string> logo_alt;
  Setting<std::vector<Prose>> practice;
  Setting<std::vector<Prose>> also_in;  // as written, "all" too; their mode is checked when the lesson's key is known
  Setting<theory::Rational> swing_ratio;
  Setting<const fretboard::Instrument*> instrument;
  Setting<std::vector<theory::Pitch>> tuning;
  Setting<int> number;
  Setting<int> frets;
  Setting<int> capo;
  Setting<int> practice_log;
  Setting<Paper> paper;
  Setting<NoteNames> note_names;
  Setting<bool> left_handed;
  Setting<bool> name_line;
  bool examples_written = false;
  const TomlValue* examples = nullptr;  // the list of `[[example]]`
};

// Reads the top of a lesson file; its values replace those that are there. `table` must outlive `into`.
void read_lesson_keys(const TomlValue& table, LessonKeys& into, const source::Files& files,
                      source::Diagnostics& diagnostics);
// The same for [defaults], which have neither title nor examples.
void read_default_keys(const TomlValue& table, LessonKeys& into, const source::Files& files,
                       source::Diagnostics& diagnostics);

bool is_lesson_key(std::string_view name);
// All of them, in the order of the format's description.
std::vector<std::string_view> lesson_key_names();

}  // namespace fretsheaf::lesson
