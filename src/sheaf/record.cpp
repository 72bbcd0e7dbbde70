#include "sheaf/record.h"

#include <algorithm>
#include <charconv>
#include <set>

namespace fretsheaf::sheaf {

namespace {

constexpr std::string_view heading = "fretsheaf record 1\n";
constexpr std::size_t check_digits = 8;

// A line's print, short: it guards against a line cut in two.
std::string check_of(std::string_view line) {
  return print_of(line).hex().substr(0, check_digits);
}

class LineWriter {
 public:
  explicit LineWriter(std::string_view kind) : line_(kind) {}

  LineWriter& add(std::string_view field) {
    line_ += '\t';
    for (const char c : field) {
      if (c == '\t') {
        line_ += "\\t";
      } else if (c == '\n') {
        line_ += "\\n";
      } else if (c == '\\') {
        line_ += "\\\\";
      } else {
        line_ += c;
      }
    }
    return *this;
  }
  LineWriter& add(const Print& print) { return add(print.hex()); }
  LineWriter& number(std::int64_t value) { return add(std::to_string(value)); }
  std::string end() { return line_ + '\t' + check_of(line_) + '\n'; }

 private:
  std::string line_;
};

// Reads a line's fields one after another; what does not fit is remembered.
class LineReader {
 public:
  explicit LineReader(std::string_view line) : rest_(line) {}

  bool is_at_end() const { return ended_; }
  bool is_sound() const { return sound_; }

  std::string text() {
    const std::string_view field = raw();
    std::string text;
    text.reserve(field.size());
    for (std::size_t i = 0; i < field.size(); ++i) {
      if (field[i] != '\\' || i + 1 == field.size()) {
        text += field[i];
        continue;
      }
      ++i;
      text += field[i] == 't' ? '\t' : field[i] == 'n' ? '\n' : field[i];
    }
    return text;
  }
  Print print() { return sound(parse_print(raw())); }
  std::int64_t number() {
    const std::string_view field = raw();
    std::int64_t value = 0;
    const auto [stop, error] = std::from_chars(field.data(), field.data() + field.size(), value);
    if (error != std::errc() || stop != field.data() + field.size()) sound_ = false;
    return value;
  }
  Format format() { return sound(parse_format(raw())); }

 private:
  std::string_view raw() {
    if (ended_) sound_ = false;
    const auto tab = rest_.find('\t');
    const std::string_view field = rest_.substr(0, tab);
    ended_ = tab == std::string_view::npos;
    rest_.remove_prefix(ended_ ? rest_.size() : tab + 1);
    return field;
  }
  template <typename T>
  T sound(const std::optional<T>& value) {
    if (!value) sound_ = false;
    return value.value_or(T{});
  }

  std::string_view rest_;
  bool ended_ = false;
  bool sound_ = true;
};

void read_kit(LineReader& line, Record& into) {
  const Print print = line.print();
  Inputs kit;
  while (!line.is_at_end()) {
    std::string path = line.text();
    kit[std::move(path)] = line.print();
  }
  if (line.is_sound()) into.kits[print] = std::move(kit);
}

void read_lesson_entry(LineReader& line, Record& into) {
  LessonEntry entry;
  entry.lesson = line.text();
  entry.fingerprint = line.print();
  entry.kit = line.print();
  entry.key = line.text();
  for (std::int64_t formats = line.number(); formats > 0 && line.is_sound(); --formats) {
    entry.formats.push_back(line.format());
  }
  while (!line.is_at_end()) entry.suffixes.push_back(line.text());
  if (line.is_sound()) into.add(std::move(entry));
}

void read_made_entry(LineReader& line, Record& into) {
  MadeEntry entry;
  entry.handout = line.text();
  entry.format = line.format();
  entry.lesson = line.text();
  entry.fingerprint = line.print();
  while (!line.is_at_end()) {
    FileMark file;
    file.tail = line.text();
    file.size = static_cast<std::uint64_t>(line.number());
    file.changed = line.number();
    file.print = line.print();
    entry.files.push_back(std::move(file));
  }
  if (line.is_sound()) into.add(std::move(entry));
}

void read_line(std::string_view line, Record& into) {
  if (line.size() <= check_digits) return;
  const std::string_view checked = line.substr(0, line.size() - check_digits - 1);
  if (line[checked.size()] != '\t' || check_of(checked) != line.substr(checked.size() + 1)) return;
  LineReader reader(checked);
  const std::string kind = reader.text();
  if (kind == "kit") read_kit(reader, into);
  if (kind == "lesson") read_lesson_entry(reader, into);
  if (kind == "made") read_made_entry(reader, into);
}

}  // namespace

void Record::add(LessonEntry entry) {
  std::string name = entry.lesson;
  lessons.insert_or_assign(std::move(name), std::move(entry));
}

void Record::add(MadeEntry entry) {
  std::pair name{entry.handout, entry.format};
  made.insert_or_assign(std::move(name), std::move(entry));
}

Print kit_print(const Inputs& kit) {
  PrintOf all;
  for (const auto& [path, print] : kit) all.add(path).add(print);
  return all.print();
}

std::string line_of(const Print& print, const Inputs& kit) {
  LineWriter line("kit");
  line.add(print);
  for (const auto& [path, content] : kit) line.add(path).add(content);
  return line.end();
}

std::string line_of(const LessonEntry& entry) {
  LineWriter line("lesson");
  line.add(entry.lesson).add(entry.fingerprint).add(entry.kit).add(entry.key);
  line.number(static_cast<std::int64_t>(entry.formats.size()));
  for (const Format format : entry.formats) line.add(format_name(format));
  for (const std::string& suffix : entry.suffixes) line.add(suffix);
  return line.end();
}

std::string line_of(const MadeEntry& entry) {
  LineWriter line("made");
  line.add(entry.handout).add(format_name(entry.format)).add(entry.lesson).add(entry.fingerprint);
  for (const FileMark& file : entry.files) {
    line.add(file.tail).number(static_cast<std::int64_t>(file.size)).number(file.changed).add(file.print);
  }
  return line.end();
}

std::string text_of(const Record& record) {
  std::vector<std::string> lines;
  std::set<Print> used;
  for (const auto& [name, lesson] : record.lessons) {
    used.insert(lesson.kit);
    lines.push_back(line_of(lesson));
  }
  for (const auto& [print, kit] : record.kits) {
    if (used.contains(print)) lines.push_back(line_of(print, kit));
  }
  for (const auto& [name, made] : record.made) lines.push_back(line_of(made));
  std::sort(lines.begin(), lines.end());
  std::string text(heading);
  for (const std::string& line : lines) text += line;
  return text;
}

void read_record(std::string_view text, Record& into) {
  if (!text.starts_with(heading)) return;
  text.remove_prefix(heading.size());
  while (!text.empty()) {
    const auto end = text.find('\n');
    if (end == std::string_view::npos) break;  // cut short
    read_line(text.substr(0, end), into);
    text.remove_prefix(end + 1);
  }
}

std::string record_heading() {
  return std::string(heading);
}

}  // namespace fretsheaf::sheaf
