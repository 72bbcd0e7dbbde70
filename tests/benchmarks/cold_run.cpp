// A lesson as a cold process against a bare program that draws the same finished sheet, started in turn. The bare
// program writes nothing; ours writes its handout whole or not at all, so that on a disk it waits until the disk has
// it. That is the disk's time: the ratio is told without it (into a folder in memory) and with it.
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "laid_out.h"

namespace {

struct Run {
  std::vector<double> milliseconds;
  long peak_kilobytes = 0;

  double median() {
    std::sort(milliseconds.begin(), milliseconds.end());
    return milliseconds[milliseconds.size() / 2];
  }
};

void start(const std::vector<std::string>& words, Run& run) {
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  const auto begin = std::chrono::steady_clock::now();
  pid_t child = 0;
  posix_spawn_file_actions_t quiet;
  posix_spawn_file_actions_init(&quiet);
  posix_spawn_file_actions_addopen(&quiet, 2, "/dev/null", O_WRONLY, 0);
  if (posix_spawn(&child, arguments[0], &quiet, nullptr, arguments.data(), environ) != 0) std::exit(3);
  posix_spawn_file_actions_destroy(&quiet);
  int status = 0;
  rusage usage{};
  if (wait4(child, &status, 0, &usage) < 0 || status != 0) {
    std::fprintf(stderr, "%s failed\n", arguments[0]);
    std::exit(1);
  }
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
  run.milliseconds.push_back(took.count());
  run.peak_kilobytes = std::max(run.peak_kilobytes, usage.ru_maxrss);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) {
    std::fputs("usage: cold_run PROGRAM BARE_PROGRAM LESSON\n", stderr);
    return 2;
  }
  const std::string name = "/fretsheaf-cold-run-" + std::to_string(getpid());
  const std::string in_memory = "/dev/shm" + name;
  const std::string on_disk = "/tmp" + name;
  const std::string recording = in_memory + "/recording";
  {
    fretsheaf::benchmarks::Bench bench;
    const std::string text = std::get<std::string>(bench.system.read(argv[3], 1 << 22));
    bench.system.write(recording, bench.recording(argv[3], text));
  }
  Run whole;
  Run with_disk;
  Run bare;
  for (int round = 0; round < 41; ++round) {
    start({argv[1], "typeset", argv[3], "--to", in_memory}, whole);
    start({argv[2], recording}, bare);
    start({argv[1], "typeset", argv[3], "--to", on_disk}, with_disk);
  }
  std::printf("cold run: %.1f ms, bare drawing: %.1f ms, ratio %.2f; onto this disk %.1f ms, ratio %.2f\n",
              whole.median(), bare.median(), whole.median() / bare.median(), with_disk.median(),
              with_disk.median() / bare.median());
  std::printf("peak memory %.1f MB and %.1f MB\n", static_cast<double>(whole.peak_kilobytes) / 1024,
              static_cast<double>(bare.peak_kilobytes) / 1024);
  return std::system(("rm -rf " + in_memory + " " + on_disk).c_str());
}
