#include "exchange/adopt_spans.h"

#include <algorithm>
#include <functional>
#include <map>
#include <utility>

#include "lesson/grid_text.h"

namespace fretsheaf::exchange {

using lesson::Moment;
using lesson::SpanKind;

namespace {

bool earlier(const Moment& a, const Moment& b) {
  return a.bar != b.bar ? a.bar < b.bar : a.at < b.at;
}

class SpanSetter {
 public:
  explicit SpanSetter(const SpanInput& input) : in_(input) {}

  void run() {
    for (std::size_t bar = 0; bar < in_.music.bars.size(); ++bar) {
      for (const Mark& mark : taken(bar).marks) read(static_cast<int>(bar), mark);
      if (words_) short_line();
    }
    for (const auto& [number, open] : open_) {
      in_.context.losses.left_out(open.element, open.measure, "a line that never ends");
    }
    const auto head = [](bool Head::*sign) {
      return [sign](const Happening& own) {
        return std::any_of(own.tones.begin(), own.tones.end(), [&](const TakenTone& tone) { return tone.head.*sign; });
      };
    };
    add_runs(SpanKind::palm_mute, head(&Head::palm_mute));
    add_runs(SpanKind::let_ring, head(&Head::let_ring));
    add_runs(SpanKind::tremolo, [](const Happening& own) { return own.tremolo; });
  }

 private:
  struct Open {
    SpanKind kind = SpanKind::crescendo;
    Moment first;
    const Xml* element = nullptr;
    int measure = 0;
  };

  const TakenMeasure& taken(std::size_t bar) const {
    return in_.context.part.measures[static_cast<std::size_t>(in_.section.first) + bar];
  }

  void read(int bar, const Mark& mark) {
    const Moment here = moment(bar, mark.at);
    if (words_ && mark.kind != Mark::Kind::line_start) short_line();
    switch (mark.kind) {
      case Mark::Kind::crescendo:
      case Mark::Kind::diminuendo:
        return begin(mark.kind == Mark::Kind::crescendo ? SpanKind::crescendo : SpanKind::diminuendo, here,
                     "wedge" + mark.number, mark);
      case Mark::Kind::wedge_stop:
        return end("wedge" + mark.number, bar, mark);
      case Mark::Kind::words:
        if (span_name_of(mark.text)) words_ = Open{*span_name_of(mark.text), here, mark.element, measure(bar)};
        return;
      case Mark::Kind::line_start:
        if (!words_) {
          in_.context.losses.left_out(mark.element, measure(bar), "a line between notes");
          open_[mark.number] = Open{SpanKind::crescendo, {-1, {}}, mark.element, measure(bar)};
          return;
        }
        begin(std::exchange(words_, std::nullopt)->kind, here, mark.number, mark);
        return;
      case Mark::Kind::line_stop:
        return end(mark.number, bar, mark);
      default:
        return;
    }
  }

  int measure(int bar) const { return in_.section.first + bar; }

  // Where a bar's count is; in a `%` bar its first beat.
  Moment moment(int bar, Rational at) const {
    const lesson::Bar& own = in_.music.bars[static_cast<std::size_t>(bar)];
    at += own.begin;
    if (at < own.end && lesson::can_count(at, own.meter)) return {bar, at};
    return last_before({bar, at + Rational(1, 1000000)}).value_or(Moment{bar, own.begin});
  }

  // The last event that begins before a moment.
  std::optional<Moment> last_before(const Moment& limit) const {
    std::optional<Moment> last;
    for (int bar = std::max(limit.bar - 1, 0); bar <= limit.bar; ++bar) {
      for (const lesson::Event& event : in_.music.bars[static_cast<std::size_t>(bar)].events) {
        const Moment own{bar, event.at};
        if (earlier(own, limit)) last = own;
      }
    }
    return last;
  }

  void begin(SpanKind kind, const Moment& here, const std::string& number, const Mark& mark) {
    constexpr std::size_t most_at_once = 8;
    if (open_.size() >= most_at_once) {
      return in_.context.losses.left_out(mark.element, measure(here.bar), "a ninth line at once");
    }
    open_[number] = Open{kind, here, mark.element, measure(here.bar)};
  }

  void end(const std::string& number, int bar, const Mark& mark) {
    const auto open = open_.find(number);
    if (open == open_.end()) {
      return in_.context.losses.left_out(mark.element, measure(bar), "a line that nothing begins");
    }
    const Open own = open->second;
    open_.erase(open);
    if (own.first.bar < 0) return;
    const lesson::Bar& here = in_.music.bars[static_cast<std::size_t>(bar)];
    Moment last = last_before({bar, here.begin + mark.at}).value_or(own.first);
    if (earlier(last, own.first)) last = own.first;
    in_.music.spans.push_back({own.kind, own.first, last, {}});
  }

  // Words without a line are for one note, unless the notes say it themselves.
  void short_line() {
    const Open own = *std::exchange(words_, std::nullopt);
    in_.music.spans.push_back({own.kind, own.first, own.first, {}});
  }

  // Where spans of a kind begin, in order, and how far those up to there reach.
  struct Reach {
    Moment first;
    Moment last;
  };

  std::vector<Reach> reaches_of(SpanKind kind) const {
    std::vector<Reach> reaches;
    for (const lesson::Span& span : in_.music.spans) {
      if (span.kind == kind) reaches.push_back({span.first, span.last});
    }
    std::sort(reaches.begin(), reaches.end(), [](const Reach& a, const Reach& b) { return earlier(a.first, b.first); });
    for (std::size_t i = 1; i < reaches.size(); ++i) {
      if (earlier(reaches[i].last, reaches[i - 1].last)) reaches[i].last = reaches[i - 1].last;
    }
    return reaches;
  }

  // Whether a span has that event.
  bool covered(const std::vector<Reach>& reaches, const Happening& own) const {
    const lesson::Bar& bar = in_.music.bars[static_cast<std::size_t>(own.bar)];
    const Moment begin{own.bar, own.at + bar.begin};
    const Moment end{own.bar, begin.at + own.length};
    const auto after = std::partition_point(reaches.begin(), reaches.end(),
                                            [&](const Reach& reach) { return earlier(reach.first, end); });
    return after != reaches.begin() && !earlier((after - 1)->last, begin);
  }

  // Events side by side that carry a sign are one span.
  void add_runs(SpanKind kind, const std::function<bool(const Happening&)>& has_sign) {
    const std::vector<Reach> reaches = reaches_of(kind);
    std::vector<lesson::Span> spans;
    bool open = false;
    for (const Happening& own : in_.happenings) {
      const bool percent = in_.music.bars[static_cast<std::size_t>(own.bar)].same_as_previous;
      const bool signed_here = !percent && has_sign(own) && !covered(reaches, own);
      const Moment here{own.bar, own.at + in_.music.bars[static_cast<std::size_t>(own.bar)].begin};
      if (signed_here && open) spans.back().last = here;
      if (signed_here && !open) spans.push_back({kind, here, here, {}});
      open = signed_here;
    }
    in_.music.spans.insert(in_.music.spans.end(), spans.begin(), spans.end());
  }

  const SpanInput& in_;
  std::map<std::string, Open> open_;
  std::optional<Open> words_;  // that wait for their line
};

}  // namespace

void add_spans(const SpanInput& input) {
  SpanSetter(input).run();
}

std::optional<lesson::SpanKind> span_name_of(const std::string& words) {
  if (words == "P.M." || words == "PM" || words == "palm mute") return SpanKind::palm_mute;
  if (words == "let ring" || words == "Let ring") return SpanKind::let_ring;
  return std::nullopt;
}

}  // namespace fretsheaf::exchange
