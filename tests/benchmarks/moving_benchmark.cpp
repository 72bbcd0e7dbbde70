// A line of 64 bars moved into the twelve keys, against typesetting the twelve handouts.
#include <benchmark/benchmark.h>

#include <ctime>
#include <optional>
#include <string>

#include "laid_out.h"
#include "layout/layout.h"
#include "lesson/reader.h"
#include "render/render.h"
#include "score/build.h"
#include "spoken/spoken.h"
#include "stopwatch.h"
#include "theory/keys.h"
#include "transposition/move.h"
#include "walking_line.h"

namespace {

using namespace fretsheaf;
using benchmarks::seconds_since;

void moving_against_typesetting(benchmark::State& state) {
  benchmarks::Bench bench;
  const lesson::ReadLesson read = lesson::read_lesson(
      "walk.lesson.toml", benchmarks::walking_line(64, "labels = [\"chord-degrees\"]\n"), bench.system);
  if (!read.lesson) {
    state.SkipWithError("the lesson has errors");
    return;
  }
  double moving = 0;
  double typesetting = 0;
  for (auto _ : state) {
    for (const theory::Key& key : theory::all_keys(read.lesson->key.mode)) {
      source::Diagnostics diagnostics;
      transposition::Destination to;
      to.key = key;
      std::clock_t begin = std::clock();
      const std::optional<transposition::Moved> there = transposition::move(*read.lesson, to, diagnostics);
      moving += seconds_since(begin);
      if (!there) {
        state.SkipWithError("the lesson does not fit a key");
        return;
      }
      begin = std::clock();
      const score::Score score = score::build_score(there->lesson, diagnostics);
      const sheet::Sheet sheet =
          layout::lay_out(score, spoken::alternatives(score), bench.look, bench.fonts, bench.by_role, diagnostics);
      benchmark::DoNotOptimize(render::pdf(sheet, bench.fonts));
      typesetting += seconds_since(begin);
    }
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["moving_ms"] = moving / rounds * 1000;
  state.counters["typesetting_ms"] = typesetting / rounds * 1000;
  state.counters["ratio"] = moving / typesetting;
}

}  // namespace

BENCHMARK(moving_against_typesetting)->Unit(benchmark::kMillisecond)->MinTime(2.0);

BENCHMARK_MAIN();
