#include <algorithm>

#include "lesson/keys_example.h"
#include "lesson/limits.h"

namespace fretsheaf::lesson {
namespace {

using source::Code;

constexpr std::string_view figures = "0123456789";

using limits::fastest;
using limits::slowest;

struct TempoKeys {
  Setting<int> from;
  Setting<int> to;
  Setting<int> step;
  Setting<int> rungs;
  Setting<int> passes;
  Setting<theory::RungSpacing> spacing;
  Setting<theory::Rational> beat;
};

constexpr Choices<theory::RungSpacing, 2> spacings = {
    {{"even", theory::RungSpacing::even}, {"ratio", theory::RungSpacing::ratio}}};

void read_beat(TempoKeys& into, const Field& field) {
  const std::vector<std::string> units = theory::beat_unit_names();
  const std::vector<std::string_view> names(units.begin(), units.end());
  into.beat.set({});
  const auto index = read_name(field, names);
  if (index) into.beat.set({{*theory::parse_beat_unit(names[index->value]), index->range}});
}

template <auto member, int least, int most>
void whole(TempoKeys& into, const Field& field) {
  (into.*member).set(read_whole(field, least, most));
}

constexpr Rule<TempoKeys> rules[] = {
    {"from", "60", whole<&TempoKeys::from, slowest, fastest>},
    {"to", "108", whole<&TempoKeys::to, slowest, fastest>},
    {"step", "12", whole<&TempoKeys::step, 1, fastest - slowest>},
    {"passes", "4", whole<&TempoKeys::passes, 1, limits::passes>},
    {"rungs", "5", whole<&TempoKeys::rungs, 2, limits::rungs>},
    {"spacing", "\"even\"",
     [](TempoKeys& into, const Field& field) { into.spacing.set(read_choice(field, spacings)); }},
    {"beat", "\"quarter\"", read_beat},
};

// Which keys go together.
bool check_combination(const TempoKeys& keys, const Field& field) {
  const auto wrong = [&](Range range, Code code, std::string message, std::string help) {
    field.diagnostics.error(code, range, std::move(message), std::move(help));
    return false;
  };
  if (!keys.from.written) {
    return wrong(field.value.range, Code::missing_key, "'tempo' has no 'from'",
                 "write the tempo to start with, as in { from = 60, to = 108, step = 12 }");
  }
  if (keys.step && keys.rungs) {
    return wrong(keys.rungs.range(), Code::conflicting_keys, "'step' and 'rungs' exclude each other",
                 "keep one of them");
  }
  if (keys.spacing && !keys.rungs.written) {
    return wrong(keys.spacing.range(), Code::conflicting_keys,
                 "'spacing' says how 'rungs' are spread, and there is no 'rungs'",
                 "write rungs = 5, or take 'spacing' out");
  }
  const bool climbs = keys.to.written;
  for (const auto* setting : {&keys.step, &keys.rungs, &keys.passes}) {
    if (!climbs && *setting) {
      return wrong(setting->range(), Code::conflicting_keys, "this is for a tempo that climbs, and there is no 'to'",
                   "write the goal, as in { from = 60, to = 108, step = 12 }");
    }
  }
  if (!keys.from || !keys.to) return true;
  if (*keys.to < *keys.from) {
    return wrong(keys.to.range(), Code::out_of_range, "'to' is below 'from': a ladder climbs",
                 "write from = " + std::to_string(*keys.to) + ", to = " + std::to_string(*keys.from));
  }
  if (*keys.to > *keys.from && !keys.step.written && !keys.rungs.written) {
    return wrong(field.value.range, Code::missing_key, "'tempo' does not say how it climbs",
                 "write step = 12 or rungs = 5");
  }
  return true;
}

// The last rung is the goal all the same.
void warn_of_short_step(const TempoKeys& keys, const Field& field) {
  const int span = *keys.to - *keys.from;
  const int rest = span % *keys.step;
  if (rest == 0) return;
  const auto to = [&](int goal) { return "to = " + std::to_string(goal); };
  const int below = *keys.to - rest;
  const int above = below + *keys.step;
  const std::string ends = below > *keys.from && above <= fastest ? to(below) + " or " + to(above)
                           : above <= fastest                     ? to(above)
                                                                  : to(below);
  field.diagnostics.warning(Code::tempo_step_short, keys.step.range(),
                            "steps of " + std::to_string(*keys.step) + " from " + std::to_string(*keys.from) +
                                " do not meet " + std::to_string(*keys.to) + ": the last is " + std::to_string(rest),
                            "write " + ends + " for equal steps");
}

bool check_rungs(const TempoKeys& keys, const Field& field) {
  if (!keys.from || !keys.to) return true;
  const int span = *keys.to - *keys.from;
  if (keys.step && (span + *keys.step - 1) / *keys.step + 1 > limits::rungs) {
    const int least = (span + limits::rungs - 2) / (limits::rungs - 1);
    field.diagnostics.error(Code::out_of_range, keys.step.range(),
                            "this makes " + std::to_string((span + *keys.step - 1) / *keys.step + 1) +
                                " rungs, and there are at most " + std::to_string(limits::rungs),
                            "write a step of " + std::to_string(least) + " or more");
    return false;
  }
  if (keys.rungs && *keys.rungs > span + 1) {
    field.diagnostics.error(Code::out_of_range, keys.rungs.range(),
                            "there are only " + std::to_string(span + 1) + " whole tempos from " +
                                std::to_string(*keys.from) + " to " + std::to_string(*keys.to),
                            "write fewer rungs");
    return false;
  }
  if (keys.step) warn_of_short_step(keys, field);
  return true;
}

std::optional<theory::Tempo> read_ladder(const Field& field) {
  TempoKeys keys;
  read_table<TempoKeys>(field.value, rules, keys, {field.files, field.diagnostics, "'tempo'", nullptr});
  const bool sound = check_combination(keys, field) && check_rungs(keys, field);
  const bool wrong = keys.from.wrong() || keys.to.wrong() || keys.step.wrong() || keys.rungs.wrong() ||
                     keys.passes.wrong() || keys.spacing.wrong() || keys.beat.wrong();
  if (!sound || wrong) return {};
  theory::Tempo tempo;
  tempo.from = *keys.from;
  tempo.to = keys.to.value_or(tempo.from);
  if (keys.step) tempo.step = *keys.step;
  if (keys.rungs) tempo.rungs = *keys.rungs;
  if (tempo.from == tempo.to) tempo.rungs = 1;
  tempo.spacing = keys.spacing.value_or(tempo.spacing);
  tempo.passes = keys.passes.value_or(tempo.passes);
  if (keys.beat) tempo.beat = *keys.beat;
  return tempo;
}

std::optional<theory::Tempo> read_pair(const Field& field) {
  if (field.value.items.size() != 2 || field.value.header) {
    field.error(Code::unsound_value, "a list of tempos has two: a slow one and a fast one",
                "write [80, 100], or { from = 60, to = 108, step = 12 } for more");
    return {};
  }
  const auto slow = read_whole(field.with(field.value.items[0]), slowest, fastest);
  const auto fast = read_whole(field.with(field.value.items[1]), slowest, fastest);
  if (!slow || !fast) return {};
  if (slow->value >= fast->value) {
    field.error(Code::out_of_range, "the second tempo must be the faster one",
                slow->value == fast->value
                    ? "write the tempo alone, without brackets"
                    : "write [" + std::to_string(fast->value) + ", " + std::to_string(slow->value) + "]");
    return {};
  }
  theory::Tempo tempo;
  tempo.from = slow->value;
  tempo.to = fast->value;
  tempo.rungs = 2;
  tempo.pair = true;
  return tempo;
}

// "60 bpm" and "60-92" have the numbers in them.
void not_a_tempo(const Field& field) {
  constexpr std::string_view wanted = "a whole number, two of them in a list, or a table";
  if (field.value.kind != TomlValue::Kind::text) return wrong_type(field, wanted);
  std::vector<std::string> numbers;
  const std::string& text = field.value.text;
  for (std::size_t at = text.find_first_of(figures); at != std::string::npos && numbers.size() < 3;
       at = text.find_first_of(figures, at)) {
    const std::size_t end = std::min(text.find_first_not_of(figures, at), text.size());
    numbers.push_back(text.substr(at, end - at));
    at = end;
  }
  const bool sound = std::all_of(numbers.begin(), numbers.end(), [](const auto& n) { return n.size() < 4; });
  if (numbers.empty() || numbers.size() > 2 || !sound) return wrong_type(field, wanted);
  field.error(Code::wrong_type, "'tempo' must be " + std::string(wanted) + ", not a text",
              numbers.size() == 1 ? "write tempo = " + numbers[0]
                                  : "write tempo = [" + numbers[0] + ", " + numbers[1] +
                                        "], or { from = 60, to = 108, step = 12 } for the steps between");
}

}  // namespace

std::optional<Located<theory::Tempo>> read_tempo(const Field& field) {
  std::optional<theory::Tempo> tempo;
  if (field.value.kind == TomlValue::Kind::list) {
    tempo = read_pair(field);
  } else if (field.value.kind == TomlValue::Kind::table) {
    tempo = read_ladder(field);
  } else if (field.value.kind != TomlValue::Kind::whole) {
    not_a_tempo(field);
  } else if (const auto one = read_whole(field, slowest, fastest)) {
    tempo.emplace();
    tempo->from = tempo->to = one->value;
    tempo->rungs = 1;
  }
  if (!tempo) return {};
  return Located<theory::Tempo>{*tempo, field.value.range};
}

}  // namespace fretsheaf::lesson
