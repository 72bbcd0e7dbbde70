#include "watched_run.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <thread>

namespace fretsheaf::benchmarks {

namespace {

using Clock = std::chrono::steady_clock;

double since(Clock::time_point begin) {
  return std::chrono::duration<double>(Clock::now() - begin).count();
}

double in_seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

std::vector<pid_t> family(pid_t process) {
  std::vector<pid_t> all = {process};
  std::ifstream children("/proc/" + std::to_string(process) + "/task/" + std::to_string(process) + "/children");
  for (pid_t child = 0; children >> child;) all.push_back(child);
  return all;
}

// Memory of its own, in megabytes: what processes share (the program, fonts that are mapped) counts once, at its owner.
double own_memory(pid_t process) {
  std::ifstream status("/proc/" + std::to_string(process) + "/status");
  for (std::string line; std::getline(status, line);) {
    if (line.starts_with("RssAnon:")) return std::atof(line.c_str() + 8) / 1024;
  }
  return 0;
}

double all_memory(pid_t process) {
  std::ifstream status("/proc/" + std::to_string(process) + "/status");
  for (std::string line; std::getline(status, line);) {
    if (line.starts_with("VmRSS:")) return std::atof(line.c_str() + 6) / 1024;
  }
  return 0;
}

// What it has said so far.
std::string said(const std::string& file) {
  std::ifstream stream(file);
  std::stringstream text;
  text << stream.rdbuf();
  return text.str();
}

pid_t start(const std::vector<std::string>& words, const std::string& to) {
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t files;
  posix_spawn_file_actions_init(&files);
  posix_spawn_file_actions_addopen(&files, 2, to.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0666);
  // Ctrl-C is to reach it also where this runs in the background and is deaf to it.
  posix_spawnattr_t hears;
  posix_spawnattr_init(&hears);
  sigset_t interrupt;
  sigemptyset(&interrupt);
  sigaddset(&interrupt, SIGINT);
  posix_spawnattr_setsigdefault(&hears, &interrupt);
  posix_spawnattr_setflags(&hears, POSIX_SPAWN_SETSIGDEF);
  pid_t child = 0;
  if (posix_spawn(&child, arguments[0], &files, &hears, arguments.data(), environ) != 0) std::exit(3);
  posix_spawnattr_destroy(&hears);
  posix_spawn_file_actions_destroy(&files);
  return child;
}

}  // namespace

Watched watch(const std::vector<std::string>& words, double stop_after) {
  const std::string messages = std::filesystem::temp_directory_path() / ("fretsheaf-said-" + std::to_string(getpid()));
  Watched run;
  const Clock::time_point begin = Clock::now();
  Clock::time_point stopped{};
  const pid_t child = start(words, messages);
  std::map<pid_t, double> at_a_tenth;
  int status = 0;
  rusage usage{};
  while (wait4(child, &status, WNOHANG, &usage) == 0) {
    if (stop_after > 0 && stopped == Clock::time_point{} && since(begin) > stop_after) {
      stopped = Clock::now();
      kill(child, SIGINT);
    }
    double all = 0;
    const bool is_past_a_tenth = !at_a_tenth.empty() || said(messages).find("done\n") != std::string::npos;
    for (const pid_t process : family(child)) {
      const double own = own_memory(process);
      all += all_memory(process);
      if (!is_past_a_tenth || own == 0) continue;
      const double before = at_a_tenth.emplace(process, own).first->second;
      double& growth = process == child ? run.planner_growth_megabytes : run.worker_growth_megabytes;
      growth = std::max(growth, own - before);
    }
    run.peak_megabytes = std::max(run.peak_megabytes, all);
    std::this_thread::sleep_for(std::chrono::milliseconds(since(begin) < 1 || stop_after > 0 ? 1 : 50));
  }
  run.seconds = since(begin);
  run.processor_seconds = in_seconds(usage.ru_utime) + in_seconds(usage.ru_stime);
  if (stop_after > 0) run.seconds_to_stop = since(stopped);
  run.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  if (run.status != 0 && stop_after == 0) std::fputs(said(messages).c_str(), stderr);
  std::filesystem::remove(messages);
  return run;
}

}  // namespace fretsheaf::benchmarks
