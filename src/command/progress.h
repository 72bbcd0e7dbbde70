#pragma once

#include <chrono>
#include <cstddef>
#include <string>

#include "command/command.h"
#include "sheaf/course_run.h"

namespace fretsheaf::command {

// "[||||||......] 480 of 1200, 27 a second, 26 s left"; no rate before something is done.
std::string progress_bar(std::size_t done, std::size_t of, double seconds);

// "45 s", "12 min 5 s", "2 h 14 min"
std::string in_words(double seconds);

// Shows how a run goes on: on a terminal a bar in one place, with messages above it; else a line at each tenth. What is
// `silent` shows messages alone; where they go into a document it holds them back.
class Progress final : public sheaf::Listener {
 public:
  enum class Manner { shown, messages_alone, nothing };
  Progress(Manner manner, Console& console);

  void say(const std::vector<sheaf::Finding>& findings, const std::vector<std::string>& refusals) override;
  void progress(std::size_t done, std::size_t of) override;

  // Takes the bar away.
  void end();

  double seconds() const;
  const std::vector<sheaf::Finding>& findings() const { return findings_; }

 private:
  using Clock = std::chrono::steady_clock;
  void show();
  void clear();

  Manner manner_;
  Console& console_;
  std::vector<sheaf::Finding> findings_;
  Clock::time_point begin_ = Clock::now();
  Clock::time_point making_{};  // since when handouts are made
  Clock::time_point drawn_{};
  std::string bar_;
  std::size_t tenth_ = 0;
};

}  // namespace fretsheaf::command
