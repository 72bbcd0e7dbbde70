// What it costs that a PDF tells its structure: marks, finishing, alternatives; as a share of the whole way from a
// lesson's text to its bytes. At most 0.35 is promised.
#include <benchmark/benchmark.h>

#include <chrono>
#include <string>

#include "laid_out.h"
#include "render/pdf_draw.h"
#include "render/render.h"

namespace {

using namespace fretsheaf;

double seconds_since(std::chrono::steady_clock::time_point begin) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Both ways in turn within each round, so that the ratio does not hang on what else the machine does.
void tagging_and_finishing(benchmark::State& state, const char* lesson) {
  benchmarks::Bench bench;
  const std::string name = std::string(FRETSHEAF_PROJECT_DIR "/demo-lessons/") + lesson;
  const std::string text = std::get<std::string>(bench.system.read(name, 1 << 22));
  double whole = 0;
  double marked = 0;
  double plain = 0;
  for (auto _ : state) {
    auto begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(render::pdf(bench.lay_out(name, text), bench.fonts));
    whole += seconds_since(begin);
    begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(render::draw_pdf(bench.lay_out(name, text), bench.fonts, render::Marks::on));
    marked += seconds_since(begin);
    begin = std::chrono::steady_clock::now();
    benchmark::DoNotOptimize(render::draw_pdf(bench.lay_out(name, text), bench.fonts, render::Marks::off));
    plain += seconds_since(begin);
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["whole_ms"] = whole / rounds * 1000;
  state.counters["marked_ms"] = marked / rounds * 1000;
  state.counters["untagged_ms"] = plain / rounds * 1000;
  state.counters["share"] = (whole - plain) / whole;
}

}  // namespace

BENCHMARK_CAPTURE(tagging_and_finishing, two_pages, "low-tide-vamp.lesson.toml")
    ->Unit(benchmark::kMillisecond)
    ->MinTime(2.0);
BENCHMARK_CAPTURE(tagging_and_finishing, three_pages, "shoreline-map.lesson.toml")
    ->Unit(benchmark::kMillisecond)
    ->MinTime(2.0);

BENCHMARK_MAIN();
