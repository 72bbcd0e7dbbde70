#include "sheaf/crew.h"

#include <algorithm>

#include "platform/stop_signals.h"
#include "platform/worker_process.h"
#include "sheaf/worker.h"

namespace fretsheaf::sheaf {

namespace {

class OwnCrew final : public Crew {
 public:
  explicit OwnCrew(platform::Machine& system) : worker_(system) {}

  bool give(std::size_t number, const Task& task) override {
    if (!done_.empty()) return false;
    done_.push_back({number, worker_.work(task)});
    return true;
  }
  std::vector<Done> take(int) override { return std::exchange(done_, {}); }
  bool is_idle() const override { return done_.empty(); }
  bool is_stopped() override { return false; }
  void end() override { done_.clear(); }

 private:
  Worker worker_;
  std::vector<Done> done_;
};

// An answer for a task that has none.
Answer lost(const Task& task, const std::string& why) {
  Answer answer;
  answer.status = Made::Status::unreadable;
  answer.refusals.push_back(task.lesson + ": " + why);
  if (task.wanted) {
    for (const Wanted& wanted : *task.wanted) answer.failed.push_back(wanted.suffix);
  }
  return answer;
}

class ProcessCrew final : public Crew {
 public:
  ProcessCrew(int hands, platform::Machine& system) : system_(system), posts_(static_cast<std::size_t>(hands)) {}

  bool give(std::size_t number, const Task& task) override {
    for (Post& post : posts_) {
      if (post.number) continue;
      if (!post.worker && !start(post)) break;
      // One that ended while it was idle is replaced, once.
      if (!post.worker->send(packed(task))) {
        post.worker.reset();
        if (!start(post) || !post.worker->send(packed(task))) break;
      }
      post.number = number;
      post.task = task;
      return true;
    }
    if (!is_idle()) return false;
    lost_.push_back({number, lost(task, "no process could be started to make it")});
    return true;
  }

  std::vector<Done> take(int milliseconds) override {
    std::vector<Done> done = std::exchange(lost_, {});
    if (!done.empty()) return done;
    std::vector<int> descriptors = {signals_.descriptor()};
    for (const Post& post : posts_) {
      if (post.number) descriptors.push_back(post.worker->descriptor());
    }
    for (const int ready : platform::readable(descriptors, milliseconds)) {
      const auto post = std::find_if(posts_.begin(), posts_.end(),
                                     [&](const Post& one) { return one.number && one.worker->descriptor() == ready; });
      if (post != posts_.end()) done.push_back(receive(*post));
    }
    return done;
  }

  bool is_idle() const override {
    return lost_.empty() && std::none_of(posts_.begin(), posts_.end(), [](const Post& post) { return post.number; });
  }
  bool is_stopped() override { return signals_.came(); }
  void end() override {
    for (Post& post : posts_) post = Post{};
    lost_.clear();
  }

 private:
  // A place for a worker, and what it is at.
  struct Post {
    std::unique_ptr<platform::WorkerProcess> worker;
    std::optional<std::size_t> number;
    Task task;
  };

  bool start(Post& post) {
    // The fonts are opened in the worker: what cairo and FreeType hold does not outlive a fork in one piece.
    auto started = platform::WorkerProcess::start(
        [&system = system_, worker = std::shared_ptr<Worker>()](std::string_view message) mutable {
          if (!worker) worker = std::make_shared<Worker>(system);
          return packed(worker->work(unpacked_task(message)));
        });
    if (!started) return false;
    post.worker = std::make_unique<platform::WorkerProcess>(std::move(*started));
    return true;
  }

  Done receive(Post& post) {
    const std::size_t number = *std::exchange(post.number, std::nullopt);
    if (const std::optional<std::string> answer = post.worker->receive()) return {number, unpacked_answer(*answer)};
    const std::string how = post.worker->end();
    post.worker.reset();
    return {number, lost(post.task, "the process that made it " + how)};
  }

  platform::StopSignals signals_;
  platform::Machine& system_;
  std::vector<Post> posts_;
  std::vector<Done> lost_;
};

}  // namespace

std::unique_ptr<Crew> make_crew(int hands, platform::Machine& system) {
  if (!system.spans_processes()) return std::make_unique<OwnCrew>(system);
  return std::make_unique<ProcessCrew>(hands, system);
}

}  // namespace fretsheaf::sheaf
