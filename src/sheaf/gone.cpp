#include "sheaf/gone.h"

#include <algorithm>
#include <unordered_map>

namespace fretsheaf::sheaf {

namespace {

bool has(const auto& list, const auto& one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

bool is_gone(const MadeEntry& made, const CourseLesson& lesson, const LessonPlan& plan, const Order& order) {
  if (!made.handout.starts_with(lesson.recorded_handouts)) return true;
  const std::string suffix = made.handout.substr(lesson.recorded_handouts.size());
  const bool has_key = has(plan.suffixes, suffix) || has(plan.own_suffixes, suffix);
  if (!has_key) return order.keys.empty();
  return !has(plan.formats, made.format) && order.formats.empty();
}

}  // namespace

std::vector<MadeEntry> gone(const Record& record, const Course& course, const std::map<std::size_t, LessonPlan>& plans,
                            const Order& order) {
  std::unordered_map<std::string, std::size_t> lessons;
  for (std::size_t i = 0; i < course.lessons.size(); ++i) lessons[course.lessons[i].name] = i;
  std::vector<MadeEntry> gone;
  for (const auto& [name, made] : record.made) {
    if (!course.places.is_in_folder(made.lesson)) continue;
    const auto lesson = lessons.find(made.lesson);
    if (lesson == lessons.end()) {
      gone.push_back(made);
      continue;
    }
    const auto plan = plans.find(lesson->second);
    if (plan == plans.end()) continue;
    if (is_gone(made, course.lessons[lesson->second], plan->second, order)) gone.push_back(made);
  }
  return gone;
}

}  // namespace fretsheaf::sheaf
