#include "platform/stop_signals.h"

#include <sys/signalfd.h>
#include <unistd.h>

namespace fretsheaf::platform {
namespace {

sigset_t not_ignored() {
  sigset_t signals;
  sigemptyset(&signals);
  for (const int number : {SIGINT, SIGTERM, SIGHUP}) {
    struct sigaction now {};
    const bool ignored = ::sigaction(number, nullptr, &now) == 0 && now.sa_handler == SIG_IGN;
    if (!ignored) sigaddset(&signals, number);
  }
  return signals;
}

int block(sigset_t& before) {
  const sigset_t signals = not_ignored();
  ::sigprocmask(SIG_BLOCK, &signals, &before);
  return ::signalfd(-1, &signals, SFD_CLOEXEC | SFD_NONBLOCK);
}

}  // namespace

StopSignals::StopSignals() : descriptor_(block(before_)) {}

StopSignals::~StopSignals() {
  came();  // one that is still waiting has been heard: it must not end the program now
  ::sigprocmask(SIG_SETMASK, &before_, nullptr);
}

bool StopSignals::came() {
  signalfd_siginfo signal{};
  while (::read(descriptor_.number(), &signal, sizeof signal) == sizeof signal) came_ = true;
  return came_;
}

}  // namespace fretsheaf::platform
