// A generated course by `fretsheaf sheaf`, against cairo drawing the same sheets on as many processes.
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "bare_draw.h"
#include "generated_course.h"
#include "laid_out.h"
#include "theory/keys.h"
#include "watched_run.h"

namespace {

using namespace fretsheaf::benchmarks;
namespace fs = std::filesystem;

constexpr int keys = 12;

double seconds_since(std::chrono::steady_clock::time_point begin) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Sheets from all over the course, every key among them: drawing all of them would need their recordings, gigabytes.
std::vector<std::string> recordings(int lessons) {
  Bench bench;
  std::vector<std::string> names;
  for (const auto& key : fretsheaf::theory::all_keys(fretsheaf::theory::Mode::dorian)) names.push_back(key.to_string());
  std::vector<std::string> sheets;
  constexpr int sample = 120;
  for (int i = 0; i < sample; ++i) {
    const int lesson = i * lessons / sample;
    const std::string& key = names[static_cast<std::size_t>(i) % names.size()];
    sheets.push_back(bench.recording(bench.lay_out_in(key, "lesson", generated_lesson(lesson))));
  }
  return sheets;
}

// What cairo needs for a sheet, in seconds.
struct Floor {
  double wall = 0;
  double processor = 0;
};

double processor_seconds_of_children() {
  rusage usage{};
  getrusage(RUSAGE_CHILDREN, &usage);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
  };
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

// So many processes drawing at once, each all sheets with fonts opened once.
Floor floor_a_sheet(const std::vector<std::string>& sheets, int processes) {
  const auto begin = std::chrono::steady_clock::now();
  const double before = processor_seconds_of_children();
  constexpr int rounds = 4;
  for (int i = 0; i < processes; ++i) {
    if (fork() != 0) continue;
    BareDrawing drawing;
    std::size_t bytes = 0;
    for (int round = 0; round < rounds; ++round) {
      for (const std::string& sheet : sheets) bytes += drawing.draw(sheet);
    }
    _exit(bytes > 0 ? 0 : 1);
  }
  for (int i = 0; i < processes; ++i) wait(nullptr);
  const double drawn = static_cast<double>(sheets.size()) * rounds * processes;
  return {seconds_since(begin) / drawn, (processor_seconds_of_children() - before) / drawn};
}

double middle(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

class Course {
 public:
  Course(std::string program, int lessons)
      : program_(std::move(program)),
        folder_(fs::temp_directory_path() / ("fretsheaf-course-" + std::to_string(getpid()))),
        lessons_(lessons) {
    generate_course(folder_ + "/all", lessons);
    generate_course(folder_ + "/few", std::min(lessons, 40));
    generate_course(folder_ + "/one", 1);
  }
  Course(const Course&) = delete;
  Course& operator=(const Course&) = delete;
  ~Course() { fs::remove_all(folder_); }

  Watched run(const std::string& part, const std::string& to, int jobs = 2, double stop_after = 0) const {
    const Watched run =
        watch({program_, "sheaf", folder_ + "/" + part, "--to", folder_ + "/" + to, "--jobs", std::to_string(jobs)},
              stop_after);
    if (run.status != 0 && stop_after == 0) std::exit(1);
    return run;
  }

  void whole_against_the_floor() const {
    const std::vector<std::string> sheets = recordings(lessons_);
    const Floor before = floor_a_sheet(sheets, 2);
    const Watched whole = run("all", "out");
    const Floor after = floor_a_sheet(sheets, 2);
    const double bare = (before.wall + after.wall) / 2;
    const double bare_processor = (before.processor + after.processor) / 2;
    const int handouts = lessons_ * keys;
    std::printf("%d lessons in %d keys on 2 processes: %.1f s, %.2f ms a handout; bare drawing %.2f ms; ratio %.2f\n",
                lessons_, keys, whole.seconds, whole.seconds / handouts * 1000, bare * 1000,
                whole.seconds / handouts / bare);
    std::printf("the same in processor time: %.2f ms a handout, bare drawing %.2f ms; ratio %.2f\n",
                whole.processor_seconds / handouts * 1000, bare_processor * 1000,
                whole.processor_seconds / handouts / bare_processor);
    std::printf("memory: %.0f MB in all; growth after the first tenth: %.1f MB a worker, %.1f MB the planner\n",
                whole.peak_megabytes, whole.worker_growth_megabytes, whole.planner_growth_megabytes);
  }

  void nothing_and_one_lesson() const {
    std::vector<double> nothing;
    std::vector<double> edited;
    std::vector<double> alone;
    for (int i = 0; i < 5; ++i) {
      nothing.push_back(run("all", "out").seconds);
      std::ofstream(generated_path(folder_ + "/all", 0)) << generated_lesson(100'000 + i);
      edited.push_back(run("all", "out").seconds);
      std::ofstream(generated_path(folder_ + "/one", 0)) << generated_lesson(100'000 + i);
      alone.push_back(run("one", "alone").seconds);
    }
    std::printf("nothing changed: %.0f ms\n", middle(nothing) * 1000);
    std::printf("one lesson edited: %.0f ms; that lesson alone %.0f ms; ratio to both together %.2f\n",
                middle(edited) * 1000, middle(alone) * 1000, middle(edited) / (middle(alone) + middle(nothing)));
  }

  void scaling() const {
    std::vector<double> ratios;
    for (int i = 0; i < 3; ++i) {
      const double one = run("few", "few-1-" + std::to_string(i), 1).seconds;
      ratios.push_back(one / run("few", "few-2-" + std::to_string(i), 2).seconds);
    }
    std::printf("from one process to two: %.2f times as fast\n", middle(ratios));
  }

  void stopping() const {
    std::vector<double> times;
    for (int i = 0; i < 5; ++i) times.push_back(run("all", "stopped-" + std::to_string(i), 2, 0.3).seconds_to_stop);
    std::printf("stopped by Ctrl-C after at most %.0f ms\n", *std::max_element(times.begin(), times.end()) * 1000);
  }

 private:
  std::string program_;
  std::string folder_;
  int lessons_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2 || argc > 3) {
    std::fputs("usage: course_benchmark PROGRAM [LESSONS]\n", stderr);
    return 2;
  }
  const Course course(argv[1], argc == 3 ? std::atoi(argv[2]) : 1000);
  course.whole_against_the_floor();
  course.nothing_and_one_lesson();
  course.scaling();
  course.stopping();
  return 0;
}
