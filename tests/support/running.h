#pragma once

#include <sys/types.h>

#include <string>
#include <vector>

namespace fretsheaf::test {

// Runs a line of the shell in a folder, with the built program in its PATH; what it printed on both its outputs goes
// into `said`, and its exit status is returned.
int shell(const std::string& line, const std::string& folder, std::string* said = nullptr);

// The built program, going on while the test does something else. What it says goes into a file.
class Running {
 public:
  Running(const std::vector<std::string>& arguments, const std::string& folder, const std::string& said_to);
  Running(const Running&) = delete;
  Running& operator=(const Running&) = delete;
  ~Running();  // kills it

  pid_t process() const { return process_; }
  void signal(int number) const;
  // Waits until it has ended: its exit status, or −1 − the number of the signal that ended it.
  int wait();

 private:
  pid_t process_;
};

// The processes that a process has started and that live.
std::vector<pid_t> children_of(pid_t process);

// What the program writes to a terminal: runs it with all three of its standard files being one.
std::string on_terminal(const std::vector<std::string>& arguments, const std::string& folder);

}  // namespace fretsheaf::test
