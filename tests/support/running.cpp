#include "support/running.h"

#include <fcntl.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "support/project.h"
#include "support/temporary_folder.h"

namespace fretsheaf::test {

namespace {

std::string folder_of_program() {
  return program().substr(0, program().rfind('/'));
}

[[noreturn]] void execute(const std::vector<std::string>& arguments, const std::string& folder) {
  std::vector<char*> words = {const_cast<char*>("fretsheaf")};
  for (const std::string& word : arguments) words.push_back(const_cast<char*>(word.c_str()));
  words.push_back(nullptr);
  if (::chdir(folder.c_str()) == 0) ::execv(program().c_str(), words.data());
  ::_exit(127);
}

}  // namespace

int shell(const std::string& line, const std::string& folder, std::string* said) {
  const TemporaryFolder own;
  const std::string command = "cd '" + folder + "' && PATH='" + folder_of_program() + "':$PATH && { " + line +
                              "\n} >'" + (own / "said") + "' 2>&1 </dev/null";
  const int status = std::system(command.c_str());
  if (said != nullptr) *said = bytes_of(own / "said");
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

Running::Running(const std::vector<std::string>& arguments, const std::string& folder, const std::string& said_to)
    : process_(::fork()) {
  if (process_ != 0) return;
  const int file = ::open(said_to.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0666);
  ::dup2(file, STDOUT_FILENO);
  ::dup2(file, STDERR_FILENO);
  execute(arguments, folder);
}

Running::~Running() {
  if (process_ > 0) {
    signal(SIGKILL);
    wait();
  }
}

void Running::signal(int number) const {
  ::kill(process_, number);
}

int Running::wait() {
  int status = 0;
  while (::waitpid(process_, &status, 0) < 0 && errno == EINTR) continue;
  process_ = -1;
  return WIFSIGNALED(status) ? -1 - WTERMSIG(status) : WEXITSTATUS(status);
}

std::vector<pid_t> children_of(pid_t process) {
  const std::string id = std::to_string(process);
  std::istringstream words(bytes_of("/proc/" + id + "/task/" + id + "/children"));
  std::vector<pid_t> children;
  for (pid_t child = 0; words >> child;) children.push_back(child);
  return children;
}

std::string on_terminal(const std::vector<std::string>& arguments, const std::string& folder) {
  int terminal = -1;
  const pid_t process = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (process == 0) execute(arguments, folder);
  std::string shown;
  std::array<char, 4096> part{};
  // A terminal whose other side is gone gives an error, not an end.
  for (ssize_t got = 0; (got = ::read(terminal, part.data(), part.size())) > 0;) {
    shown.append(part.data(), static_cast<std::size_t>(got));
  }
  ::close(terminal);
  ::waitpid(process, nullptr, 0);
  return shown;
}

}  // namespace fretsheaf::test
