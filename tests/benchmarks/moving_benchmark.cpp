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
#include "theory/keys.h"
#include "transposition/move.h"

namespace {

using namespace fretsheaf;

// A walking line that climbs and falls through the strings, with chords, hammer-ons and slides.
std::string lesson_text() {
  std::string text = "title = \"Long walk\"\nkey = \"A dorian\"\ninstrument = \"bass\"\nlabels = [\"chord-degrees\"]\n";
  text += "[[example]]\ntempo = 120\ntab = '''\n";
  for (int strip = 0; strip < 16; ++strip) {
    text +=
        "count | 1   2   3   4   | 1   2   &   3   4   | 1   2   3   &   4   | 1   2   3   4   |\n"
        "chord | Am7             | D7                  | Am7                 | E7              |\n"
        "G     |                 |             5   h7  | 7   5               |                 |\n"
        "D     |         5   7   | 4   5   7           |         7   /9  5   |             6   |\n"
        "A     | 5   7           |                     |                     | 7   5   4       |\n"
        "E     |                 |                     |                     |                 |\n\n";
  }
  return text + "'''\n";
}

// Of the processor, so that what else the machine does has no say.
double seconds_since(std::clock_t begin) {
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

void moving_against_typesetting(benchmark::State& state) {
  benchmarks::Bench bench;
  const lesson::ReadLesson read = lesson::read_lesson("walk.lesson.toml", lesson_text(), bench.system);
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
      const sheet::Sheet sheet = layout::lay_out(score, bench.look, bench.fonts, bench.by_role, diagnostics);
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
