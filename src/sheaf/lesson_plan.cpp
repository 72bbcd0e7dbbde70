#include "sheaf/lesson_plan.h"

#include <variant>

#include "lesson/sheaf_of.h"
#include "theory/key.h"
#include "transposition/wanted_keys.h"

namespace fretsheaf::sheaf {

namespace {

// The sheaf.toml of a kit; "" for none. One that lies nearer may have come since.
std::string sheaf_in(const Inputs& kit) {
  for (const auto& [path, print] : kit) {
    if (lesson::is_sheaf_file(path)) return path;
  }
  return {};
}

// The suffixes of the keys that the command line named; nullopt where one cannot be had of this lesson.
std::optional<std::vector<std::string>> asked_suffixes(const std::vector<std::string>& keys, const std::string& own) {
  const std::optional<theory::Key> key = theory::parse_key(own);
  if (!key) return std::nullopt;
  std::vector<std::string> suffixes;
  for (const std::string& text : keys) {
    const auto wanted = transposition::wanted_keys(text, *key);
    const auto* list = std::get_if<std::vector<theory::Key>>(&wanted);
    if (list == nullptr) return std::nullopt;
    for (const theory::Key& one : *list) suffixes.push_back("." + one.slug());
  }
  return suffixes;
}

}  // namespace

std::optional<LessonPlan> recalled(const CourseLesson& lesson, const Print& now, const Record& record,
                                   Fingerprints& fingerprints, const Order& order) {
  const auto found = record.lessons.find(lesson.name);
  if (found == record.lessons.end()) return std::nullopt;
  const LessonEntry& entry = found->second;
  const auto kit = record.kits.find(entry.kit);
  if (kit == record.kits.end() || fingerprints.fingerprint(now, entry.kit) != entry.fingerprint) return std::nullopt;
  if (sheaf_in(kit->second) != lesson.sheaf || !fingerprints.is_intact(kit->first, kit->second)) return std::nullopt;

  LessonPlan plan{entry.fingerprint, entry.suffixes, entry.suffixes, entry.formats};
  if (!order.keys.empty()) {
    const auto suffixes = asked_suffixes(order.keys, entry.key);
    if (!suffixes) return std::nullopt;
    plan.suffixes = *suffixes;
  }
  if (!order.formats.empty()) plan.formats = order.formats;
  return plan;
}

LessonPlan learned(const CourseLesson& lesson, const Reading& reading, const Places& places,
                   const Fingerprints& fingerprints, const Order& order, Record& record) {
  Print own;
  Inputs kit;
  for (const auto& [path, print] : reading.inputs) {
    if (path == lesson.path) {
      own = print;
    } else {
      kit[places.recorded(path)] = print;
    }
  }
  LessonEntry entry;
  entry.lesson = lesson.name;
  entry.kit = kit_print(kit);
  entry.fingerprint = fingerprints.fingerprint(own, entry.kit);
  entry.key = reading.key;
  entry.suffixes = reading.suffixes;
  entry.formats = reading.formats;
  LessonPlan plan{entry.fingerprint, reading.asked, reading.suffixes,
                  order.formats.empty() ? reading.formats : order.formats};
  record.kits[entry.kit] = std::move(kit);
  record.add(std::move(entry));
  return plan;
}

}  // namespace fretsheaf::sheaf
