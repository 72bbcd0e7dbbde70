#include "score/written_bar.h"

#include <algorithm>
#include <span>

#include "score/split.h"
#include "score/tuplet_spans.h"
#include "score/values.h"

namespace fretsheaf::score {
namespace {

std::vector<Rational> joints_of(const lesson::Bar& bar) {
  std::vector<Rational> joints;
  for (const lesson::Event& event : bar.events) joints.push_back(event.at);
  joints.push_back(bar.end);
  return joints;
}

bool is_whole_bar_rest(const lesson::Bar& bar) {
  return bar.events.size() == 1 && bar.events.front().kind == lesson::EventKind::rest &&
         bar.events.front().length == bar.meter.bar();
}

class Writer {
 public:
  Writer(const lesson::Bar& bar, const MetricSpan& tree)
      : bar_(bar), tree_(tree), spans_(tuplet_spans(tree, joints_of(bar))) {
    for (const TupletSpan& span : spans_) {
      out_.tuplets.push_back({-1, -1, span.actual, span.normal, span.unit.value_or(NoteValue{}), true});
    }
  }

  WrittenBar write() {
    if (is_whole_bar_rest(bar_)) {
      out_.symbols.push_back({0, bar_.events.front().at, bar_.events.front().length, NoteValue{0, 0}, {}, true});
      return std::move(out_);
    }
    for (std::size_t i = 0; i < bar_.events.size(); ++i) write_event(i);
    return std::move(out_);
  }

 private:
  // Cuts the event where tuplets begin and end.
  void write_event(std::size_t index) {
    const lesson::Event& event = bar_.events[index];
    const std::size_t first = out_.symbols.size();
    const Rational end = event.at + event.length;
    bool written = event.length > Rational(0);
    for (Rational at = event.at; at < end;) {
      const std::optional<int> tuplet = tuplet_at(at);
      const Rational stop = std::min(end, tuplet ? span(*tuplet).end() : next_tuplet(at, end));
      written = write_piece(index, at, stop, tuplet) && written;
      at = stop;
    }
    if (!written) out_.unwritable.push_back(index);
    if (out_.symbols.size() == first) return;
    out_.symbols[first].first = true;
    out_.symbols.back().last = true;
  }

  bool write_piece(std::size_t index, Rational from, Rational to, std::optional<int> tuplet) {
    const bool rest = bar_.events[index].kind == lesson::EventKind::rest;
    std::vector<NoteValue> values = tuplet ? split_in_tuplet(span(*tuplet), from, to, rest)
                                           : split(tree_, from, to, rest ? Sound::rest : Sound::note);
    if (values.empty()) {
      add({index, from, to - from, NoteValue{shortest_log2, 0}, tuplet, false, false, false});
      return false;
    }
    for (const NoteValue& value : values) {
      Rational length = value.length();
      if (tuplet) length = length * Rational(span(*tuplet).normal, span(*tuplet).actual);
      add({index, from, length, value, tuplet, false, false, false});
      from += length;
    }
    return true;
  }

  void add(const Symbol& symbol) {
    if (symbol.tuplet) {
      Tuplet& tuplet = out_.tuplets[static_cast<std::size_t>(*symbol.tuplet)];
      tuplet.last = static_cast<int>(out_.symbols.size());
      if (tuplet.first < 0) tuplet.first = tuplet.last;
    }
    out_.symbols.push_back(symbol);
  }

  const TupletSpan& span(int tuplet) const { return spans_[static_cast<std::size_t>(tuplet)]; }

  std::optional<int> tuplet_at(Rational at) const {
    for (std::size_t i = 0; i < spans_.size(); ++i) {
      if (spans_[i].begin <= at && at < spans_[i].end()) return static_cast<int>(i);
    }
    return std::nullopt;
  }

  Rational next_tuplet(Rational at, Rational otherwise) const {
    for (const TupletSpan& span : spans_) {
      if (at < span.begin) return span.begin;
    }
    return otherwise;
  }

  const lesson::Bar& bar_;
  const MetricSpan& tree_;
  std::vector<TupletSpan> spans_;
  WrittenBar out_;
};

}  // namespace

WrittenBar write_bar(const lesson::Bar& bar, const MetricSpan& tree) {
  return Writer(bar, tree).write();
}

}  // namespace fretsheaf::score
