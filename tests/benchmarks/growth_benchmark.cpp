// How the cost of a handout grows with its length: one of 400 bars against ten times one of 40, lesson text to finished
// PDF bytes. 1 is linear; at most 1.2 is promised. And how the costs of setting texts and of reading lessons and scores
// grow up to the limits, for a sound lesson and for what a stranger may send: each input against ten of a tenth.
#include <benchmark/benchmark.h>

#include <chrono>
#include <iterator>
#include <string>

#include "exchange/adopt.h"
#include "laid_out.h"
#include "lesson/limits.h"
#include "lesson/reader.h"
#include "platform/memory_system.h"
#include "render/render.h"
#include "stopwatch.h"

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

// Inputs of reading, by how often their part stands in them at the limit.
struct Input {
  const char* name;
  std::string (*of)(int times);
  int most;
};

std::string repeated(const std::string& part, int times) {
  std::string all;
  for (int i = 0; i < times; ++i) all += part;
  return all;
}

const std::string head = "title = \"Long way round\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";

std::string in_a_bar(const std::string& part, int times) {
  const std::string tokens = repeated(part, times);
  return head + "[[example]]\ntab = '''\ncount | 1 2 3 4" + std::string(tokens.size(), ' ') + "|\nA     | 5     " +
         tokens + " |\n'''\n";
}

const Input inputs[] = {
    {"bars", lesson, static_cast<int>(fretsheaf::lesson::limits::bars)},
    {"frets_under_no_count", [](int times) { return in_a_bar("5 ", times); }, 200000},
    {"one_run", [](int times) { return in_a_bar("h7p5", times); }, 100000},
    {"stars", [](int times) { return head + "intro = \"" + repeated("*a **b ", times) + "\"\n"; }, 7000},
    {"brackets", [](int times) { return head + "intro = \"" + repeated("[", times) + "\"\n"; }, 50000},
    {"bad_links", [](int times) { return head + "intro = \"" + repeated("[a](b) ", times) + "\"\n"; }, 7000},
    {"unknown_keys",
     [](int times) {
       std::string text = head;
       for (int i = 0; i < times; ++i) text += "k" + std::to_string(i) + " = 1\n";
       return text;
     },
     200000},
    {"unknown_rows",
     [](int times) { return head + "[[example]]\ntab = '''\n" + repeated("foo | x |\n", times) + "'''\n"; }, 200000},
};

double seconds_to_read(const std::string& text) {
  const fretsheaf::platform::MemorySystem nowhere;
  const std::clock_t begin = std::clock();
  const auto read = fretsheaf::lesson::read_lesson("long.lesson.toml", text, nowhere);
  for (const auto& one : read.diagnostics.sorted()) {
    benchmark::DoNotOptimize(fretsheaf::source::render(one, read.files));
  }
  return fretsheaf::benchmarks::seconds_since(begin);
}

std::string score_of(const std::string& parts, const std::string& rest) {
  return "<score-partwise><part-list>" + parts + "</part-list>" + rest + "</score-partwise>";
}

// Scores that would be slow if what is in them were looked for once for each of its kind.
const Input scores[] = {
    {"parts",
     [](int times) {
       std::string list;
       std::string parts;
       for (int i = 0; i < times; ++i) {
         list += "<score-part id=\"P" + std::to_string(i) + "\"/>";
         parts += "<part id=\"P" + std::to_string(i) + "\"/>";
       }
       return score_of(list, parts);
     },
     50000},
    {"losses_of_many_kinds",
     [](int times) {
       std::string kinds;
       for (int i = 0; i < times; ++i) kinds += "<k" + std::to_string(i) + "/>";
       return score_of("<score-part id=\"P1\"/>",
                       "<part id=\"P1\"><measure><attributes><divisions>1</divisions></attributes><note><pitch><step>E"
                       "</step><octave>3</octave></pitch><duration>4</duration></note>" +
                           kinds + "</measure></part>");
     },
     50000},
};

double seconds_to_adopt(const std::string& text) {
  const std::clock_t begin = std::clock();
  const auto adopted = fretsheaf::exchange::adopt("long.musicxml", text, {});
  for (const auto& one : adopted.diagnostics.sorted()) {
    benchmark::DoNotOptimize(fretsheaf::source::render(one, adopted.files));
  }
  return fretsheaf::benchmarks::seconds_since(begin);
}

// Both in turn within each round. `whole` and `tenth` return the seconds that they took.
template <typename Whole, typename Tenth>
void against_tenths(benchmark::State& state, Whole whole, Tenth tenth) {
  double short_one = 0;
  double long_one = 0;
  for (auto _ : state) {
    for (int i = 0; i < 10; ++i) short_one += tenth();
    long_one += whole();
  }
  const double rounds = static_cast<double>(state.iterations());
  state.counters["ten_of_a_tenth_ms"] = short_one / rounds * 1000;
  state.counters["at_the_limit_ms"] = long_one / rounds * 1000;
  state.counters["ratio"] = long_one / short_one;
}

// Texts as long as they may be: words, a word without end, styles that change with every word.
const Input texts[] = {
    {"prose", [](int times) { return repeated("the tide goes out ", times); }, 2700},
    {"one_word", [](int times) { return repeated("abcdefg", times); }, 7000},
    {"styles", [](int times) { return repeated("*ab* **cd** ", times); }, 4000},
};

// Twenty examples, each with such a text.
std::string lesson_of_texts(const std::string& text) {
  std::string all = head;
  for (int i = 0; i < 20; ++i) all += "[[example]]\nblank-bars = 1\nintro = \"" + text + "\"\n";
  return all;
}

void growth_of_texts(benchmark::State& state) {
  const Input& input = texts[state.range(0)];
  state.SetLabel(input.name);
  Bench bench;
  const std::string whole = lesson_of_texts(input.of(input.most));
  const std::string tenth = lesson_of_texts(input.of(input.most / 10));
  seconds_for(bench, tenth);  // opens the fonts
  against_tenths(
      state, [&] { return seconds_for(bench, whole); }, [&] { return seconds_for(bench, tenth); });
}

template <typename Seconds>
void growth_of(const Input& input, Seconds seconds, benchmark::State& state) {
  state.SetLabel(input.name);
  const std::string whole = input.of(input.most);
  const std::string tenth = input.of(input.most / 10);
  against_tenths(
      state, [&] { return seconds(whole); }, [&] { return seconds(tenth); });
}

void growth_of_reading(benchmark::State& state) {
  growth_of(inputs[state.range(0)], seconds_to_read, state);
}

void growth_of_adopting(benchmark::State& state) {
  growth_of(scores[state.range(0)], seconds_to_adopt, state);
}

}  // namespace

BENCHMARK(growth_of_adopting)->DenseRange(0, std::size(scores) - 1)->Unit(benchmark::kMillisecond);
BENCHMARK(growth_of_reading)->DenseRange(0, std::size(inputs) - 1)->Unit(benchmark::kMillisecond);
BENCHMARK(growth_of_texts)->DenseRange(0, std::size(texts) - 1)->Unit(benchmark::kMillisecond);
BENCHMARK(growth_with_length)->Unit(benchmark::kMillisecond)->MinTime(2.0);

BENCHMARK_MAIN();
