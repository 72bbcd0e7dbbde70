// Lesson text to finished PDF bytes in one process, against cairo drawing the same finished sheet.
#include <benchmark/benchmark.h>

#include <chrono>
#include <string>

#include "bare_draw.h"
#include "laid_out.h"
#include "render/render.h"

namespace {

using fretsheaf::benchmarks::Bench;

const std::string lesson_name = FRETSHEAF_PROJECT_DIR "/demo-lessons/low-tide-vamp.lesson.toml";

std::string lesson_text(Bench& bench) {
  return std::get<std::string>(bench.system.read(lesson_name, 1 << 22));
}

double seconds_since(std::chrono::steady_clock::time_point begin) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Both ways in turn within each round, so that the ratio does not hang on what else the machine does.
void whole_way_against_the_floor(benchmark::State& state) {
  Bench bench;
  const std::string text = lesson_text(bench);
  const std::string recording = bench.recording(lesson_name, text);
  double whole = 0;
  double floor = 0;
  for (auto _ : state) {
    auto begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(fretsheaf::render::pdf(bench.lay_out(lesson_name, text), bench.fonts));
    whole += seconds_since(begin);
    begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(fretsheaf::benchmarks::bare_draw(recording));
    floor += seconds_since(begin);
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["whole_ms"] = whole / rounds * 1000;
  state.counters["floor_ms"] = floor / rounds * 1000;
  state.counters["ratio"] = whole / floor;
}

}  // namespace

BENCHMARK(whole_way_against_the_floor)->Unit(benchmark::kMillisecond)->MinTime(2.0);

BENCHMARK_MAIN();
