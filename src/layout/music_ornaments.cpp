#include <algorithm>
#include <span>
#include <string>

#include "layout/music_signs.h"
#include "words/words.h"

namespace fretsheaf::layout {

using lesson::Approach;
using sheet::Part;
using sheet::Path;
using sheet::Segment;
using templates::Role;

namespace {

// In tab gaps: the house's measures; grace notes are chosen by eye.
constexpr double bend_from = 0.65;
constexpr double bend_to = 2.125;
constexpr double bend_tip = 1.0;        // above the top line
constexpr double release_height = 1.9;  // of the tip above the digit's line, at least
constexpr double bend_line = 0.1;
constexpr double arrow_half = 0.3125;
constexpr double arrow_long = 0.525;
constexpr double amount_gap = 0.3125;
constexpr double slide_gap = 0.275;
constexpr double slide_slope = 0.3375;
constexpr double slide_line = 0.125;
constexpr double short_slide = 1.1;
constexpr double grace_scale = 0.8;
constexpr double grace_gap = 0.95;
constexpr double grace_slur_over = 0.3;
constexpr double grace_slide_gap = 1.35;  // "5/7" would read as a fraction

double grace_size(const Context& context) {
  const double size = context.type.look().style(Role::digit).size;
  return std::max(grace_scale * size, std::min(size, context.type.look().least_type));
}

double reach_on(const std::vector<LineGap>& gaps, int string) {
  const auto gap = std::find_if(gaps.begin(), gaps.end(), [&](const LineGap& g) { return g.string == string; });
  return gap == gaps.end() ? 0 : gap->right - proportion::digit_gap;
}

// "½", "1", "1½": whole tones, as the trade writes a bend's amount.
std::string amount(theory::Rational tones) {
  const std::int64_t whole = tones.floor();
  const theory::Rational part = tones - theory::Rational(whole);
  std::string text = whole > 0 ? std::to_string(whole) : "";
  if (part == theory::Rational()) return text;
  if (part == theory::Rational(1, 2)) return text + "½";
  if (part == theory::Rational(1, 4)) return text + "¼";
  if (part == theory::Rational(3, 4)) return text + "¾";
  return text + (text.empty() ? "" : " ") + part.to_string();
}

void arrow_head(Layer& layer, double tab, double x, double tip, int direction) {
  const Path head = polygon(Part::bend, {{x - arrow_half * tab, tip + direction * arrow_long * tab},
                                         {x + arrow_half * tab, tip + direction * arrow_long * tab},
                                         {x, tip}});
  layer.path(head, bounds(head));
}

void add_curve(Layer& layer, double tab, sheet::Point from, sheet::Point to, sheet::Point control) {
  Path curve;
  curve.part = Part::bend;
  curve.stroke = sheet::Color{};
  curve.stroke_width = bend_line * tab;
  curve.segments = {{Segment::Kind::move, from, {}, {}}, {Segment::Kind::curve, to, control, control}};
  layer.thin(curve);
}

// Returns its right edge.
double add_bend(Layer& layer, const Context& context, const score::Note& note, double reach, double after) {
  const double tab = context.tab;
  const double y = (note.place.string - 1) * tab;
  // A release needs height to come down from.
  const double height = note.bend->release ? std::max(bend_tip * tab, release_height * tab - y) : bend_tip * tab;
  const double tip = -height;
  const double x = std::max(bend_to * tab, after + (arrow_half + 0.6) * tab);
  const double from = std::max(bend_from * tab, reach + 0.25 * tab);
  add_curve(layer, tab, {from, y}, {x, tip + arrow_long * tab}, {x, y});
  arrow_head(layer, tab, x, tip, 1);
  const Words text = context.type.set(Role::technique, amount(note.bend->tones), Part::technique);
  layer.centred(text, x, tip - amount_gap * tab - text.ink.bottom);
  if (!note.bend->release) return x + arrow_half * tab;
  const double down = x + 1.6 * tab;
  const double foot = y - bend_from * tab;
  add_curve(layer, tab, {x, tip}, {down, foot - arrow_long * tab}, {down, tip});
  arrow_head(layer, tab, down, foot, -1);
  return down + arrow_half * tab;
}

void add_short_slide(Layer& layer, double tab, double left, double y, bool up) {
  const double slope = (up ? slide_slope : -slide_slope) * tab;
  const Path line = stroked(Part::slide, {{left, y + slope}, {left + short_slide * tab, y - slope}}, slide_line * tab);
  layer.path(line, bounds(line));
}

// The sign that joins a grace note to what follows it; `below` where the string above has a note too. A slur
// goes over the two digits as far as their middles, which are half their widths away, so that it ends before the next.
void join_grace(Layer& layer, double tab, double left, double right, double y, Approach approach, bool below,
                double half, double half_next) {
  if (approach == Approach::slide_up || approach == Approach::slide_down) {
    const double slope = (approach == Approach::slide_up ? slide_slope : -slide_slope) * tab;
    const Path line =
        stroked(Part::slide, {{left + 0.1 * tab, y + slope}, {right - 0.1 * tab, y - slope}}, slide_line * tab);
    layer.path(line, bounds(line));
    return;
  }
  if (below) {
    // Under a digit of the next string the slur keeps between its own.
    const double inset = 0.1 * tab;
    layer.thin(crescent(Part::slur, {left + inset, y - 0.28 * tab}, {right - inset, y - 0.28 * tab}, 0.15 * tab,
                        0.11 * tab, 0.05 * tab));
    return;
  }
  const double above = y - 0.5625 * tab;
  const double over = std::min(grace_slur_over * tab, half - 0.05 * tab);
  const double over_next = std::min(grace_slur_over * tab, half_next - 0.05 * tab);
  const Path slur =
      crescent(Part::slur, {left - over, above}, {right + over_next, above}, 0.22 * tab, 0.11 * tab, 0.05 * tab);
  layer.thin(slur);
}

void add_graces(Layer& layer, const Context& context, const score::Note& note, double reach, bool below_another,
                std::vector<LineGap>& gaps) {
  const double tab = context.tab;
  const double y = (note.place.string - 1) * tab;
  const double size = grace_size(context);
  const double cap = context.type.cap_height(Role::digit) * size / context.type.look().style(Role::digit).size;
  double edge = -reach;
  double half_next = reach;
  for (std::size_t i = note.graces.size(); i-- > 0;) {
    const Words digit =
        context.type.set_at_size(Role::digit, size, std::to_string(note.graces[i].place.fret), Part::digit);
    const double width = digit.ink.right - digit.ink.left;
    const Approach approach = i + 1 < note.graces.size() ? note.graces[i + 1].approach : note.approach;
    const bool slides = approach == Approach::slide_up || approach == Approach::slide_down;
    const double right = edge - (slides ? grace_slide_gap : grace_gap) * tab;
    layer.words(digit, right - width - digit.ink.left, y + cap / 2);
    join_grace(layer, tab, right, edge, y, approach, below_another, width / 2, half_next);
    half_next = width / 2;
    const double gap = proportion::digit_gap * tab;
    gaps.push_back({note.place.string, right - width - gap, right + gap});
    edge = right - width;
  }
}

const char* letter_of(Approach approach) {
  if (approach == Approach::hammer_on) return "h";
  if (approach == Approach::pull_off) return "p";
  return "";
}

}  // namespace

bool leads_on(const Context& context, int bar, int event, int string) {
  const std::span<const Joint> joints = context.joints_out_of(bar, bar);
  return std::any_of(joints.begin(), joints.end(),
                     [&](const Joint& joint) { return joint.string == string && joint.from_event == event; });
}

bool slides_on(const Context& context, int bar, int event, int string) {
  const std::span<const Joint> joints = context.joints_out_of(bar, bar);
  return std::any_of(joints.begin(), joints.end(), [&](const Joint& joint) {
    const bool slide = joint.approach == Approach::slide_up || joint.approach == Approach::slide_down;
    return slide && joint.string == string && joint.from_event == event;
  });
}

Layer tab_ornaments(const Context& context, int bar, int index, std::vector<LineGap>& gaps) {
  const score::Event& event = context.event(bar, index);
  Layer layer;
  const double tab = context.tab;
  // Bends rise through all strings above their own, the lower one around the higher one.
  double bent = 0;
  for (const score::Note& note : event.notes) {
    if (note.bend && !note.tie_from) {
      bent = add_bend(layer, context, note, reach_on(gaps, note.place.string), bent);
    }
  }
  for (std::size_t i = 0; i < event.notes.size(); ++i) {
    const score::Note& note = event.notes[i];
    if (note.tie_from) continue;
    const double reach = reach_on(gaps, note.place.string);
    const double y = (note.place.string - 1) * tab;
    if (note.approach_from_nowhere) {
      const double left = -reach - (slide_gap + short_slide) * tab;
      add_short_slide(layer, tab, left, y, note.approach == Approach::slide_up);
    }
    if (note.slide_off != lesson::SlideOff::none && !slides_on(context, bar, index, note.place.string)) {
      const double left = std::max(reach, bent) + slide_gap * tab;
      add_short_slide(layer, tab, left, y, note.slide_off == lesson::SlideOff::up);
    }
    const bool below_another = i > 0 && event.notes[i - 1].place.string + 1 == note.place.string;
    if (!note.graces.empty()) add_graces(layer, context, note, reach, below_another, gaps);
  }
  return layer;
}

Layer technique_word(const Context& context, const score::Event& event, const score::Event* before) {
  const auto harmonic = [](const score::Event& e) {
    return std::any_of(e.notes.begin(), e.notes.end(),
                       [](const score::Note& n) { return n.head == score::HeadKind::harmonic && !n.tie_from; });
  };
  Layer layer;
  if (harmonic(event) && (before == nullptr || !harmonic(*before))) {
    const std::string word(words::word(context.score.language, words::Word::harmonic));
    layer.centred(context.type.set(Role::technique, word, Part::technique), 0, 0);
    return layer;
  }
  for (const score::Note& note : event.notes) {
    if (note.graces.empty() || *letter_of(note.approach) == '\0') continue;
    const Words letter = context.type.set(Role::technique, letter_of(note.approach), Part::technique);
    layer.centred(letter, -(0.4 + grace_gap / 2) * context.tab, 0);
    break;
  }
  return layer;
}

Layer slash_graces(const Context& context, const score::Event& event) {
  Layer layer;
  std::size_t count = 0;
  for (const score::Note& note : event.notes) count = std::max(count, note.graces.size());
  const double sp = context.space;
  const double small = 0.62 * sp;
  for (std::size_t i = 0; i < count; ++i) {
    const double x = -head_reach(context, event) - (1.35 + 1.5 * static_cast<double>(i)) * sp;
    const Path head = polygon(
        Part::slash_head,
        {{x - 0.95 * small, small}, {x - 0.25 * small, small}, {x + 0.95 * small, -small}, {x + 0.25 * small, -small}});
    layer.path(head, bounds(head));
    const double stem = x + 0.95 * small - 0.04 * sp;
    const double tip = -2.5 * sp;
    layer.rule(Part::stem, {stem, -small}, {stem, tip}, 0.08 * sp);
    if (count > 1) continue;
    const Words flag = context.type.sign(U'\U0001D16E', small, Part::flag);
    layer.words(flag, stem - 0.04 * sp - flag.ink.left, tip - flag.ink.top);
    // The stroke through the flag says that it takes no time of its own.
    layer.path(
        stroked(Part::stem, {{stem - 0.5 * sp, tip + 1.35 * sp}, {stem + 0.75 * sp, tip + 0.45 * sp}}, 0.08 * sp),
        {stem - 0.5 * sp, tip + 0.4 * sp, stem + 0.75 * sp, tip + 1.4 * sp});
  }
  if (count > 1) {
    // Several are beamed, as sixteenths are.
    const double right = -head_reach(context, event) - 1.35 * sp + 0.95 * small;
    const double left = right - 1.5 * sp * static_cast<double>(count - 1) - 0.08 * sp;
    for (const double y : {-2.5, -2.05}) {
      layer.rule(Part::beam, {left, (y + 0.15) * sp}, {right, (y + 0.15) * sp}, 0.3 * sp);
    }
  }
  return layer;
}

Layer vibrato_sign(const Context& context, const score::Event& event) {
  Layer layer;
  const bool any = std::any_of(event.notes.begin(), event.notes.end(),
                               [](const score::Note& note) { return note.vibrato && !note.tie_from; });
  if (!any) return layer;
  const double tab = context.tab;
  const double period = 0.65 * tab;
  const double height = 0.1875 * tab;
  const int waves = event.value.log2 <= 2 ? 4 : 2;
  Path wave;
  wave.part = Part::technique;
  wave.stroke = sheet::Color{};
  wave.stroke_width = 0.1125 * tab;
  double x = -0.25 * tab;
  wave.segments.push_back({Segment::Kind::move, {x, 0}, {}, {}});
  for (int i = 0; i < 2 * waves; ++i) {
    // Half a wave; a cubic whose controls lie h off its chord reaches 3/4 h.
    const double y = (i % 2 == 0 ? -height : height) * 4 / 3;
    const double next = x + period / 2;
    wave.segments.push_back({Segment::Kind::curve, {next, 0}, {x + period * 0.18, y}, {next - period * 0.18, y}});
    x = next;
  }
  layer.path(wave, bounds(wave));
  return layer;
}

}  // namespace fretsheaf::layout
