#include "exchange/loudness.h"

#include <array>

namespace fretsheaf::exchange {

namespace {

struct Level {
  std::string_view name;
  int velocity;
};

constexpr std::array<Level, 8> levels = {
    {{"ppp", 16}, {"pp", 33}, {"p", 49}, {"mp", 64}, {"mf", 80}, {"f", 96}, {"ff", 112}, {"fff", 126}}};

theory::Rational percentage_of(const Level& level) {
  return theory::Rational(level.velocity) * theory::Rational(100, 90);
}

}  // namespace

std::optional<theory::Rational> loudness(std::string_view dynamic) {
  for (const Level& level : levels) {
    if (level.name == dynamic) return percentage_of(level);
  }
  return std::nullopt;
}

std::string dynamic_of(theory::Rational percentage) {
  const auto distance = [&](const Level& level) {
    const theory::Rational off = percentage_of(level) - percentage;
    return off < theory::Rational(0) ? -off : off;
  };
  const Level* nearest = &levels.front();
  for (const Level& level : levels) {
    if (distance(level) < distance(*nearest)) nearest = &level;
  }
  return std::string(nearest->name);
}

theory::Rational next_level(theory::Rational percentage, bool louder) {
  if (louder) {
    for (const Level& level : levels) {
      if (percentage_of(level) > percentage) return percentage_of(level);
    }
    return percentage_of(levels.back());
  }
  for (std::size_t i = levels.size(); i-- > 0;) {
    if (percentage_of(levels[i]) < percentage) return percentage_of(levels[i]);
  }
  return percentage_of(levels.front());
}

std::string decimal_text(theory::Rational value) {
  std::string text = std::to_string(value.to_double());
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text;
}

}  // namespace fretsheaf::exchange
