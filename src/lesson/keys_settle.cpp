#include "lesson/keys_settle.h"

#include <algorithm>

#include "lesson/keys_inside.h"
#include "lesson/keys_paths.h"
#include "lesson/limits.h"
#include "theory/keys.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

void check_required(const LessonKeys& keys, source::Diagnostics& diagnostics) {
  const auto missing = [&](bool written, const std::string& name, const std::string& help) {
    if (!written) diagnostics.error(Code::missing_key, {}, "this lesson has no '" + name + "'", help);
  };
  missing(keys.title.written, "title", "write title = \"Low tide vamp\" at its top");
  missing(keys.music.key.written, "key", "write key = \"D dorian\" at its top: a tonic, then its mode");
  missing(keys.instrument.written, "instrument", "write instrument = \"bass\" at its top");
  if (!keys.examples_written) {
    diagnostics.warning(Code::missing_key, {}, "this lesson has no example",
                        "write [[example]], and its music under it");
  }
}

// The keys of `also-in`. Their modes can only be compared where the lesson's key is sound.
class AlsoIn {
 public:
  AlsoIn(const LessonKeys& keys, const source::Files& files, source::Diagnostics& diagnostics)
      : own_(keys.music.key), files_(files), diagnostics_(diagnostics) {}

  std::vector<Located<theory::Key>> read(const std::vector<Prose>& written) {
    const bool all = std::any_of(written.begin(), written.end(), [](const Prose& key) { return key.value == "all"; });
    if (all && written.size() > 1) {
      diagnostics_.error(Code::conflicting_keys, joined(written.front().range, written.back().range),
                         "\"all\" stands for every key and has others beside it", "write also-in = \"all\"");
    } else if (all) {
      add_all(written.front().range);
    } else {
      for (const Prose& key : written) add(key);
    }
    return std::move(keys_);
  }

 private:
  // In the file that lessons share, and the key in this lesson's own: for others the word may be right.
  bool is_shared(const Prose& written) const {
    return own_ && written.range.file != 0 && written.range.file != own_.range().file;
  }

  bool has(const theory::Key& key) const {
    return std::any_of(keys_.begin(), keys_.end(), [&](const auto& earlier) { return earlier.value == key; });
  }

  void add_all(Range range) {
    if (!own_) return;
    for (const theory::Key& key : theory::all_keys(own_->mode)) {
      if (key.tonic.pitch_class() != own_->tonic.pitch_class()) keys_.push_back({key, range});
    }
  }

  void add(const Prose& written) {
    TomlValue value;
    value.text = written.value;
    value.range = written.range;
    const Field field{files_, diagnostics_, "also-in", "[\"E dorian\"]", value, true};
    const auto key = read_key_name(field, written.value, own_ ? own_->mode : theory::Mode::major);
    if (!key) return;
    if (own_ && key->mode != own_->mode) {
      field.error(Code::other_mode, shown(written.value) + " has another mode than the lesson's " + own_->to_string(),
                  is_shared(written) ? "write an 'also-in' in the lesson's own file, which goes before this one"
                                     : "write \"" + theory::Key{key->tonic, own_->mode}.to_string() + "\"");
    } else if (has(*key)) {
      field.error(Code::duplicate_value, "'" + key->to_string() + "' stands twice in 'also-in'", "keep one of them");
    } else if (own_ && *key == *own_) {
      if (is_shared(written)) return;
      diagnostics_.warning(Code::duplicate_value, written.range,
                           "this is the lesson's own key, which is made in any case", "take it out");
    } else {
      keys_.push_back({*key, written.range});
    }
  }

  const Setting<theory::Key>& own_;
  const source::Files& files_;
  source::Diagnostics& diagnostics_;
  std::vector<Located<theory::Key>> keys_;
};

fretboard::Neck settle_neck(const LessonKeys& keys, source::Diagnostics& diagnostics) {
  fretboard::Neck neck;
  const fretboard::Instrument* const instrument = keys.instrument.value_or(nullptr);
  if (instrument != nullptr) {
    neck.tuning = instrument->tuning;
    neck.frets = instrument->frets;
    neck.short_fifth_string = instrument->short_fifth_string;
  }
  if (keys.tuning) neck.tuning = *keys.tuning;
  // Where the frets are not known, no fret is too high.
  neck.frets = keys.frets.value_or(instrument == nullptr || keys.frets.wrong() ? limits::frets : neck.frets);
  neck.capo = keys.capo.value_or(0);
  if (neck.capo >= neck.frets) {
    diagnostics.error(Code::out_of_range, keys.capo.range(),
                      "a capo at fret " + std::to_string(neck.capo) + " leaves nothing of a neck with " +
                          std::to_string(neck.frets) + " frets",
                      "write a capo from 0 to " + std::to_string(neck.frets - 1));
    neck.capo = 0;
  }
  if (neck.short_fifth_string && neck.strings() != 5) {
    diagnostics.error(Code::out_of_range, keys.tuning.range(),
                      "'tuning' has " + std::to_string(neck.strings()) + " strings, and the banjo five",
                      "the first is the short one, as in [\"G4\", \"D3\", \"G3\", \"B3\", \"D4\"]");
  }
  return neck;
}

// A file that a lesson names: its path from where the lesson's own path is from. Outside the folder of the lessons,
// behind a symbolic link too, it is an error.
std::string settle_path(const Located<std::string>& written, std::string_view what, const platform::System& system,
                        ReadLesson& read) {
  const bool absolute = written.value.starts_with('/');
  const std::string folder = folder_of(read.files[written.range.file].name());
  std::string path = normal_path(absolute ? written.value : folder + written.value);
  if (absolute || !stays_inside(path, read.root, system)) {
    read.diagnostics.error(Code::outside_folder, written.range,
                           shown(written.value) + " lies outside the folder of these lessons",
                           "put the " + std::string(what) + " beside the lesson file and write its name alone");
    return {};
  }
  return path;
}

void settle_template(const LessonKeys& keys, const platform::System& system, ReadLesson& read, Lesson& lesson) {
  lesson.template_name = keys.template_name ? *keys.template_name.value : Located<std::string>{"music-stand", {}};
  const std::string& name = lesson.template_name.value;
  const bool is_path = name.find('/') != std::string::npos || name.ends_with(".toml");
  if (is_path) lesson.template_path = settle_path(lesson.template_name, "template", system, read);
}

void settle_logo(const LessonKeys& keys, const platform::System& system, ReadLesson& read, Lesson& lesson) {
  source::Diagnostics& diagnostics = read.diagnostics;
  lesson.logo_alt = keys.logo_alt.value_or({});
  if (!keys.logo || keys.logo->empty()) {
    if (lesson.logo_alt.empty() || keys.logo.wrong()) return;
    diagnostics.error(Code::conflicting_keys, keys.logo_alt.range(),
                      "'logo-alt' describes a logo, and there is no 'logo'",
                      "write logo = \"lantern.svg\", or take 'logo-alt' out");
    return;
  }
  const Range range = keys.logo.range();
  const std::string path = settle_path(*keys.logo.value, "logo", system, read);
  if (!path.empty() && !system.exists(path)) {
    diagnostics.error(Code::missing_file, range, "there is no file " + shown(*keys.logo),
                      "it is looked for in the folder of the file that names it");
  }
  if (lesson.logo_alt.empty() && !keys.logo_alt.wrong()) {
    diagnostics.warning(Code::missing_key, range, "the logo has no 'logo-alt'",
                        "say in a few words what it shows, for those who cannot see it");
  }
  lesson.logo = keys.logo.value;
  lesson.logo_path = path;
}

std::optional<Prose> words_or_none(const Setting<std::string>& setting) {
  if (!setting || setting->find_first_not_of(" \t\n") == std::string::npos) return {};
  return setting.value;
}

// The example's own value, else the lesson's.
template <typename T>
const Setting<T>& nearer(const Setting<T>& own, const Setting<T>& above) {
  return own.written ? own : above;
}

void check_shape(const Shape& shape, const fretboard::Neck& neck, source::Diagnostics& diagnostics) {
  const auto strings = static_cast<int>(shape.frets->size());
  if (strings != neck.strings()) {
    diagnostics.error(Code::unsound_value, shape.range,
                      "this shape has " + std::to_string(strings) + " frets, and there are " +
                          std::to_string(neck.strings()) + " strings",
                      "write one sign a string, x where it is not played");
  }
  int string = strings;
  for (const auto& written : *shape.frets) {
    const int fret = written.value_or(0);
    if (fret > neck.last_fret()) {
      return diagnostics.error(
          Code::out_of_range, shape.range,
          "fret " + std::to_string(fret) + " is beyond the last one, " + std::to_string(neck.last_fret()),
          "frets from 10 up stand between dashes: \"x-10-12-11\"");
    }
    if (strings == neck.strings() && !neck.has({string, fret})) {
      return diagnostics.error(Code::out_of_range, shape.range, "the short string has no fret " + std::to_string(fret),
                               "its frets are the neck's: write 0 for the open string, or 6 and up");
    }
    --string;
  }
}

void check_on_neck(const Example& example, const LessonKeys& above, const fretboard::Neck& neck,
                   source::Diagnostics& diagnostics) {
  if (example.neck && example.neck->frets && example.neck->frets->second > neck.last_fret()) {
    diagnostics.error(Code::out_of_range, example.neck->range,
                      "'frets' goes to " + std::to_string(example.neck->frets->second) + ", and the last one is " +
                          std::to_string(neck.last_fret()),
                      "write frets = \"0-" + std::to_string(neck.last_fret()) + "\" or fewer");
  }
  if (!knows_strings(above)) return;
  for (const Shape& shape : example.shapes) {
    if (shape.frets) check_shape(shape, neck, diagnostics);
  }
}

void check_parts(const ExampleKeys& keys, source::Diagnostics& diagnostics) {
  const auto conflict = [&](Range range, const std::string& message, const std::string& help) {
    diagnostics.error(Code::conflicting_keys, range, message, help);
  };
  if (!keys.blank_bars.written) {
    if (keys.tab.written) return;
    diagnostics.error(Code::missing_key, keys.range, "this example has no 'tab'",
                      "write its music after tab = between ''' and ''', or blank-bars = 4 for empty staves");
    return;
  }
  if (keys.tab) conflict(keys.blank_bars.range(), "blank bars have no music, and there is a 'tab'", "keep one of them");
  if (keys.vary) conflict(keys.vary.range(), "blank bars have no notes to vary", "keep one of 'vary' and 'blank-bars'");
  if (keys.hide) conflict(keys.hide.range(), "blank bars have nothing to hide", "take 'hide' out");
  if (keys.build_up) conflict(keys.build_up.range(), "blank bars have nothing to build up", "take 'build-up' out");
  const bool of_notes = keys.neck && keys.neck->of == NeckPicture::Of::notes;
  if (of_notes)
    conflict(keys.neck.range(), "blank bars have no notes for a picture of the neck",
             "write of = \"key\" or of = \"chord i7\"");
}

}  // namespace

bool knows_strings(const LessonKeys& keys) {
  return !keys.tuning.wrong() && (keys.tuning || keys.instrument);
}

Lesson settle_lesson(const LessonKeys& keys, const platform::System& system, ReadLesson& read) {
  source::Diagnostics& diagnostics = read.diagnostics;
  check_required(keys, diagnostics);
  Lesson lesson;
  if (keys.title) lesson.title = *keys.title.value;
  lesson.subtitle = words_or_none(keys.subtitle);
  lesson.teacher = keys.teacher.value_or({});
  lesson.series = keys.series.value_or({});
  if (keys.number) lesson.number = *keys.number;
  lesson.level = keys.level.value_or({});
  lesson.key = keys.music.key.value_or({});
  lesson.key_range = keys.music.key.range();
  if (keys.also_in) lesson.also_in = AlsoIn(keys, read.files, diagnostics).read(*keys.also_in);
  lesson.meter = keys.music.meter.value_or({});
  lesson.feel = keys.music.feel.value_or(theory::Feel::straight);
  lesson.swing_ratio = keys.swing_ratio.value_or(lesson.swing_ratio);
  lesson.instrument = keys.instrument.value_or(nullptr);
  lesson.neck = settle_neck(keys, diagnostics);
  lesson.staves = keys.music.staves.value_or({Staff::slash, Staff::tab});
  lesson.labels = keys.music.labels.value_or({});
  settle_template(keys, system, read, lesson);
  if (keys.paper) lesson.paper = *keys.paper;
  lesson.language = keys.language.value_or("en");
  lesson.language_range = keys.language.range();
  lesson.note_names = keys.note_names.value_or(NoteNames::letters);
  lesson.note_names_range = keys.note_names.range();
  if (keys.link && !keys.link->empty()) lesson.link = keys.link.value;
  settle_logo(keys, system, read, lesson);
  lesson.left_handed = keys.left_handed.value_or(false);
  lesson.handed_range = keys.left_handed.range();
  lesson.name_line = keys.name_line.value_or(false);
  lesson.copyright = keys.copyright.value_or({});
  lesson.intro = words_or_none(keys.intro);
  lesson.practice = keys.practice.value_or({});
  lesson.practice_log = keys.practice_log.value_or(0);
  lesson.practice_log_range = keys.practice_log.range();
  return lesson;
}

Example settle_example(const ExampleKeys& keys, const LessonKeys& above, const Lesson& lesson,
                       source::Diagnostics& diagnostics) {
  check_parts(keys, diagnostics);
  Example example;
  example.range = keys.range;
  example.title = words_or_none(keys.title);
  example.intro = words_or_none(keys.intro);
  example.key = nearer(keys.music.key, above.music.key).value_or({});
  example.key_range = keys.music.key.range();
  example.grid = keys.tab ? keys.grid : Range{};
  example.meter = nearer(keys.music.meter, above.music.meter).value_or({});
  example.feel = nearer(keys.music.feel, above.music.feel).value_or(theory::Feel::straight);
  const auto& staves = nearer(keys.music.staves, above.music.staves);
  example.staves = staves.value_or(lesson.staves);
  example.staves_range = staves.range();
  const auto& labels = nearer(keys.music.labels, above.music.labels);
  example.labels = labels.value_or({});
  example.labels_range = labels.range();
  const auto& bars_per_line = nearer(keys.music.bars_per_line, above.music.bars_per_line);
  example.bars_per_line = bars_per_line.value_or(std::nullopt);
  example.bars_per_line_range = bars_per_line.range();
  if (keys.tempo) example.tempo = *keys.tempo;
  // Where the tempo is wrong, the example still counts as one that has it.
  example.tempo_range = keys.tempo.wrong() ? keys.range : keys.tempo.range();
  example.practice = keys.practice.value_or({});
  example.build_up = keys.build_up.value_or(BuildUp::none);
  example.build_up_range = keys.build_up.range();
  if (keys.form) example.form = *keys.form;
  if (keys.neck) example.neck = *keys.neck;
  example.shapes = keys.shapes.value_or({});
  example.vary = keys.vary.value;
  example.blank_bars = keys.blank_bars.value;
  example.hide = keys.hide.value_or({});
  example.hide_range = keys.hide.range();
  check_on_neck(example, above, lesson.neck, diagnostics);
  return example;
}

}  // namespace fretsheaf::lesson
