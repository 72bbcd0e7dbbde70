#include "preview/preview.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <thread>

#include "platform/folder_watch.h"
#include "platform/secret.h"
#include "platform/stop_signals.h"
#include "platform/wake.h"
#include "platform/worker_process.h"
#include "preview/desk.h"
#include "preview/front.h"
#include "preview/server.h"

namespace fretsheaf::preview {
namespace {

// Some editors save by moving a file away and writing it anew. For so long it may be gone without being missed.
constexpr int milliseconds_to_come_back = 150;

// The thread that works: it alone reads lessons and draws.
class Worker {
 public:
  Worker(const std::string& path, platform::Machine& machine, Shelf& shelf, News& news, platform::StopSignals& signals)
      : machine_(machine), news_(news), signals_(signals), desk_(path, machine, shelf, [&] { return signals.came(); }) {
    follow();
  }

  Counter& counter() { return counter_; }

  // Until the program is asked to stop.
  void work() {
    const std::array<int, 3> waits_for = {signals_.descriptor(), watch_.descriptor(), bell_.descriptor()};
    while (!signals_.came()) {
      platform::readable(waits_for, -1);
      look_for_changes();
      bell_.silence();
      counter_.serve([&](const Question& question) {
        if (signals_.came()) return plain(503, "The preview has ended.\n");
        look_for_changes();
        Response response = desk_.answer(question);
        follow();
        return response;
      });
    }
    counter_.close();
  }

 private:
  void look_for_changes() {
    platform::FolderWatch::Changes changes = watch_.changes();
    if (changes.paths.empty() && !changes.lost) return;
    const auto is_gone = [&](const std::string& path) { return !machine_.exists(path); };
    if (std::any_of(changes.paths.begin(), changes.paths.end(), is_gone)) {
      const std::array<int, 1> more = {watch_.descriptor()};
      platform::readable(more, milliseconds_to_come_back);
      platform::FolderWatch::Changes later = watch_.changes();
      changes.paths.insert(changes.paths.end(), later.paths.begin(), later.paths.end());
      changes.lost = changes.lost || later.lost;
    }
    if (changes.lost) desk_.all_changed();
    if (!desk_.changed(changes.paths) && !changes.lost) return;
    follow();
    news_.tell(desk_.version());
  }

  void follow() {
    for (const std::string& folder : desk_.folders()) watch_.follow(folder);
  }

  platform::Machine& machine_;
  News& news_;
  platform::StopSignals& signals_;
  platform::FolderWatch watch_;
  platform::Wake bell_;
  Counter counter_{bell_};
  Desk desk_;
};

// A very long lesson may take seconds to draw, and nobody waits for it who has pressed Ctrl-C. Nothing is written here
// that could be left half.
class LastResort {
 public:
  explicit LastResort(const platform::StopSignals& signals)
      : thread_([this, stops = signals.descriptor()] { watch(stops); }) {}
  LastResort(const LastResort&) = delete;
  LastResort& operator=(const LastResort&) = delete;
  ~LastResort() {
    ended_.ring();
    thread_.join();
  }

 private:
  void watch(int stops) const {
    const std::array<int, 2> either = {stops, ended_.descriptor()};
    platform::readable(either, -1);
    const std::array<int, 1> end = {ended_.descriptor()};
    constexpr int patience = 600;  // milliseconds
    if (platform::readable(end, patience).empty()) std::_Exit(0);
  }

  platform::Wake ended_;
  std::thread thread_;
};

}  // namespace

std::optional<std::string> preview(const std::string& path, int port, platform::Machine& machine,
                                   const std::function<void(const std::string& address)>& ready) {
  platform::StopSignals signals;  // before there are other threads, which hold the signals back too
  const std::optional<std::string> secret = platform::new_secret();
  if (!secret) return "this machine gives no random numbers";
  auto opened = open_server(port);
  if (const auto* why = std::get_if<std::string>(&opened)) return *why;
  const auto& server = std::get<std::unique_ptr<Server>>(opened);
  const Gate gate(*secret, server->port());
  Shelf shelf;
  News news;
  Worker worker(path, machine, shelf, news, signals);
  Front front(gate, worker.counter(), shelf, news);
  server->start([&](const Request& request) { return front.answer(request); });
  const LastResort last_resort(signals);
  ready(gate.address());
  worker.work();
  news.close();
  server->stop();
  return std::nullopt;
}

}  // namespace fretsheaf::preview
