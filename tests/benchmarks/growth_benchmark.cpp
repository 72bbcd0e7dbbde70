// How the cost of a handout grows with its length: one of 400 bars against ten times one of 40, lesson text to finished
// PDF bytes. 1 is linear; at most 1.2 is promised.
#include <benchmark/benchmark.h>

#include <chrono>
#include <string>

#include "laid_out.h"
#include "render/render.h"

namespace {

using fretsheaf::benchmarks::Bench;

// Four bars with a bit of everything, so often one after another, on all three staves.
std::string lesson(int bars) {
  std::string text =
      "title = \"Long way round\"\nkey = \"D dorian\"\ninstrument = \"bass\"\nstaves = [\"slash\", \"notes\", "
      "\"tab\"]\n"
      "labels = [\"chord-degrees\", \"counts\"]\n[[example]]\ntab = '''\n";
  for (int bar = 0; bar < bars; bar += 4) {
    text +=
        "count | 1   2   3   4   | 1   2   3 & 4   | 1  (2)  3  la li 4 | 1   & 2 (3)    |\n"
        "chord | i7              | IV7             | i7                 | v7             |\n"
        "mark  | mf              | <----------     | f                  | p              |\n"
        "G     |                 |                 |                  2 |                |\n"
        "D     | 0               |     2   3   4   |         0  3  2    |                |\n"
        "A     |     3       2   | 5         x     | 5                  | 0  h2 3>       |\n"
        "E     |         3       |                 |                    |                |\n\n";
  }
  return text + "'''\n";
}

double seconds_for(Bench& bench, const std::string& text) {
  const auto begin = std::chrono::steady_clock::now();
  benchmark::DoNotOptimize(fretsheaf::render::pdf(bench.lay_out("long.lesson.toml", text), bench.fonts));
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Both in turn within each round, so that the ratio does not hang on what else the machine does.
void growth_with_length(benchmark::State& state) {
  Bench bench;
  const std::string forty = lesson(40);
  const std::string four_hundred = lesson(400);
  seconds_for(bench, forty);  // opens the fonts
  double short_one = 0;
  double long_one = 0;
  for (auto _ : state) {
    for (int i = 0; i < 10; ++i) short_one += seconds_for(bench, forty);
    long_one += seconds_for(bench, four_hundred);
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["ten_of_40_ms"] = short_one / rounds * 1000;
  state.counters["one_of_400_ms"] = long_one / rounds * 1000;
  state.counters["ratio"] = long_one / short_one;
}

}  // namespace

BENCHMARK(growth_with_length)->Unit(benchmark::kMillisecond)->MinTime(2.0);

BENCHMARK_MAIN();
