#include "sheaf/fingerprints.h"

#include <algorithm>

#include "lesson/reader.h"

namespace fretsheaf::sheaf {

namespace {

// More than any font or picture has.
constexpr std::size_t most_bytes = std::size_t{1} << 30U;

}  // namespace

Fingerprints::Fingerprints(const Places& places, const platform::Machine& system)
    : places_(places), system_(system), program_(PrintOf().add(system.identity()).add(system.data_path("")).print()) {}

std::optional<Fingerprints::LessonFile> Fingerprints::lesson(const std::string& path) const {
  const auto read = system_.read(path, lesson::max_lesson_bytes);
  const auto* bytes = std::get_if<std::string>(&read);
  if (bytes == nullptr) return std::nullopt;
  return LessonFile{print_of(*bytes), bytes->size()};
}

Print Fingerprints::fingerprint(const Print& lesson, const Print& kit) const {
  return PrintOf().add(program_).add(lesson).add(kit).print();
}

bool Fingerprints::is_intact(const Print& print, const Inputs& kit) {
  const auto known = kits_.find(print);
  if (known != kits_.end()) return known->second;
  const bool intact =
      std::all_of(kit.begin(), kit.end(), [this](const auto& file) { return current(file.first) == file.second; });
  kits_[print] = intact;
  return intact;
}

std::optional<Print> Fingerprints::current(const std::string& recorded) {
  const auto known = files_.find(recorded);
  if (known != files_.end()) return known->second;
  const auto viewed = system_.view(places_.working(recorded), most_bytes);
  std::optional<Print> print;
  if (const auto* bytes = std::get_if<platform::SharedBytes>(&viewed)) print = print_of(bytes->bytes);
  files_[recorded] = print;
  return print;
}

}  // namespace fretsheaf::sheaf
