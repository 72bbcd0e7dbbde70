#include "command/progress.h"

#include <algorithm>
#include <cmath>

#include "command/report.h"

namespace fretsheaf::command {

namespace {

constexpr std::size_t bar_width = 24;
constexpr auto redraw_every = std::chrono::milliseconds(100);
// Back to the line's start, and away with what stands there (ECMA-48, EL).
constexpr const char* clear_line = "\r\x1b[K";

}  // namespace

std::string in_words(double seconds) {
  const auto whole = static_cast<long>(std::lround(seconds));
  if (whole < 60) return std::to_string(whole) + " s";
  if (whole < 3600) return std::to_string(whole / 60) + " min " + std::to_string(whole % 60) + " s";
  return std::to_string(whole / 3600) + " h " + std::to_string(whole % 3600 / 60) + " min";
}

std::string progress_bar(std::size_t done, std::size_t of, double seconds) {
  const std::size_t filled = of == 0 ? bar_width : done * bar_width / of;
  std::string bar = "[" + std::string(filled, '|') + std::string(bar_width - filled, '.') + "] ";
  bar += std::to_string(done) + " of " + std::to_string(of);
  if (done == 0 || seconds <= 0) return bar;
  const double rate = static_cast<double>(done) / seconds;
  bar += ", " + std::to_string(std::max(1L, std::lround(rate))) + " a second";
  if (done < of) bar += ", " + in_words(static_cast<double>(of - done) / rate) + " left";
  return bar;
}

Progress::Progress(Manner manner, Console& console) : manner_(manner), console_(console) {}

double Progress::seconds() const {
  return std::chrono::duration<double>(Clock::now() - begin_).count();
}

void Progress::say(const std::vector<sheaf::Finding>& findings, const std::vector<std::string>& refusals) {
  clear();
  for (const sheaf::Finding& finding : findings) {
    if (manner_ != Manner::nothing) console_.errors += finding.text;
    findings_.push_back(finding);
  }
  for (const std::string& refusal : refusals) complain(refusal, console_);
  console_.errors += bar_;
  show();
}

void Progress::progress(std::size_t done, std::size_t of) {
  if (manner_ != Manner::shown || of == 0) return;
  const Clock::time_point now = Clock::now();
  if (making_ == Clock::time_point{}) making_ = now;
  if (console_.errors_are_terminal) {
    if (done < of && now - drawn_ < redraw_every) return;
    clear();
    drawn_ = now;
    bar_ = progress_bar(done, of, std::chrono::duration<double>(now - making_).count());
    console_.errors += bar_;
    show();
  } else if (done * 10 / of > tenth_) {
    tenth_ = done * 10 / of;
    console_.errors += std::to_string(done) + " of " + std::to_string(of) + " done\n";
    show();
  }
}

void Progress::end() {
  clear();
  bar_.clear();
  show();
}

void Progress::clear() {
  if (!bar_.empty()) console_.errors += clear_line;
}

void Progress::show() {
  if (console_.show) console_.show(console_);
}

}  // namespace fretsheaf::command
