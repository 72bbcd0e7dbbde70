// MusicXML out, against the PDF of the same lesson; and in, a thousand measures.
#include <benchmark/benchmark.h>

#include <ctime>
#include <string>

#include "exchange/adopt.h"
#include "exchange/musicxml.h"
#include "laid_out.h"
#include "layout/layout.h"
#include "lesson/reader.h"
#include "render/render.h"
#include "score/build.h"
#include "spoken/spoken.h"
#include "stopwatch.h"
#include "walking_line.h"

namespace {

using namespace fretsheaf;
using benchmarks::seconds_since;

void musicxml_against_pdf(benchmark::State& state) {
  benchmarks::Bench bench;
  const lesson::ReadLesson read = lesson::read_lesson("haul.lesson.toml", benchmarks::walking_line(400), bench.system);
  if (!read.lesson) {
    state.SkipWithError("the lesson has errors");
    return;
  }
  double out = 0;
  double pdf = 0;
  for (auto _ : state) {
    source::Diagnostics diagnostics;
    const score::Score score = score::build_score(*read.lesson, diagnostics);
    std::clock_t begin = std::clock();
    benchmark::DoNotOptimize(exchange::musicxml(score));
    out += seconds_since(begin);
    begin = std::clock();
    const sheet::Sheet sheet =
        layout::lay_out(score, spoken::alternatives(score), bench.look, bench.fonts, bench.by_role, diagnostics);
    benchmark::DoNotOptimize(render::pdf(sheet, bench.fonts));
    pdf += seconds_since(begin);
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["musicxml_ms"] = out / rounds * 1000;
  state.counters["pdf_ms"] = pdf / rounds * 1000;
  state.counters["ratio"] = out / pdf;
}

// The same score without what only a tab says.
std::string without_places(std::string document) {
  for (const std::string name : {"string", "fret"}) {
    const std::string open = "<" + name + ">";
    const std::string close = "</" + name + ">";
    for (std::size_t at = document.find(open); at != std::string::npos; at = document.find(open, at)) {
      document.erase(at, document.find(close, at) + close.size() - at);
    }
  }
  return document;
}

void a_thousand_measures(benchmark::State& state) {
  benchmarks::Bench bench;
  const lesson::ReadLesson read = lesson::read_lesson("haul.lesson.toml", benchmarks::walking_line(1000), bench.system);
  if (!read.lesson) {
    state.SkipWithError("the lesson has errors");
    return;
  }
  source::Diagnostics diagnostics;
  const std::string document = exchange::musicxml(score::build_score(*read.lesson, diagnostics));
  const std::string pitches = without_places(document);
  double kept = 0;
  double found = 0;
  for (auto _ : state) {
    std::clock_t begin = std::clock();
    const bool first = exchange::adopt("haul.musicxml", document, {}).lesson.has_value();
    kept += seconds_since(begin);
    begin = std::clock();
    const bool second = exchange::adopt("haul.musicxml", pitches, {}).lesson.has_value();
    found += seconds_since(begin);
    if (!first || !second) {
      state.SkipWithError("the score is not adopted");
      return;
    }
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["with_places_s"] = kept / rounds;
  state.counters["pitches_alone_s"] = found / rounds;
}

}  // namespace

BENCHMARK(musicxml_against_pdf)->Unit(benchmark::kMillisecond)->MinTime(2.0);
BENCHMARK(a_thousand_measures)->Unit(benchmark::kMillisecond)->MinTime(2.0);

BENCHMARK_MAIN();
