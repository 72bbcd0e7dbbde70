#include "sheaf/jobs.h"

#include <map>
#include <optional>
#include <utility>

#include "fretboard/instrument.h"
#include "source/nearest.h"
#include "transposition/wanted_keys.h"

namespace fretsheaf::sheaf {

namespace {

using transposition::Destination;

// The key, then what the command line chose in the lesson's place.
std::string suffix_of(const Request& request, const Destination& to, const lesson::Lesson& lesson,
                      const std::string& look) {
  std::string suffix = "." + transposition::key_there(lesson, to).slug();
  if (request.instrument) suffix += "." + *request.instrument;
  if (request.capo) suffix += ".capo-" + std::to_string(*request.capo);
  if (request.template_name) suffix += "." + look;
  return suffix;
}

// A destination and what on the command line asked for it.
struct Asked {
  Destination to;
  std::string by;  // "--key E", "" where nothing did
};

class JobList {
 public:
  JobList(const Request& request, const lesson::Lesson& lesson, const std::string& look)
      : request_(request), lesson_(lesson), look_(look) {}

  std::variant<std::vector<Job>, std::string> make() {
    Destination to;
    to.capo = request_.capo;
    if (request_.instrument) {
      const fretboard::Instrument* instrument = fretboard::find_instrument(*request_.instrument);
      if (instrument == nullptr)
        return "--instrument " + *request_.instrument + ": " + no_such_instrument(*request_.instrument);
      if (instrument != lesson_.instrument) to.instrument = instrument;
    }
    if (request_.keys.empty()) add({to, ""});
    if (request_.keys.empty() && request_.also_in) add_also_in(to);
    for (const std::string& text : request_.keys) {
      const auto keys = transposition::wanted_keys(text, lesson_.key);
      if (const auto* why = std::get_if<std::string>(&keys)) return "--key " + text + ": " + *why;
      for (const theory::Key& key : std::get<std::vector<theory::Key>>(keys)) {
        to.key = key;
        add({to, "--key " + text});
      }
    }
    if (problem_) return *problem_;
    return std::move(jobs_);
  }

 private:
  void add(const Asked& asked) {
    if (problem_) return;
    if (const auto why = transposition::refuse_capo(lesson_, asked.to)) {
      problem_ = "--capo " + std::to_string(*request_.capo) + ": " + *why;
      return;
    }
    Job job{request_.lesson,
            asked.to,
            request_.template_name,
            request_.formats,
            request_.split,
            request_.answers,
            suffix_of(request_, asked.to, lesson_, look_)};
    const auto [earlier, fresh] = taken_.emplace(job.suffix, asked.by);
    if (!fresh) {
      problem_ = (earlier->second == asked.by ? asked.by + " twice" : earlier->second + " and " + asked.by) +
                 " would both be written to '" + stem(request_.lesson) + job.suffix + ".…'; name each key once";
      return;
    }
    jobs_.push_back(std::move(job));
  }

  // A key that is named twice, or is the lesson's own, is no mistake that a whole course has to wait for.
  void add_also_in(Destination to) {
    for (const auto& key : lesson_.also_in) {
      to.key = key.value;
      if (!taken_.contains(suffix_of(request_, to, lesson_, look_))) add({to, "also-in"});
    }
  }

  const Request& request_;
  const lesson::Lesson& lesson_;
  const std::string& look_;
  std::vector<Job> jobs_;
  std::map<std::string, std::string> taken_;  // suffixes, and what asked for them
  std::optional<std::string> problem_;
};

}  // namespace

std::variant<std::vector<Job>, std::string> jobs_of(const Request& request, const lesson::Lesson& lesson,
                                                    const std::string& look) {
  return JobList(request, lesson, look).make();
}

std::string no_such_instrument(const std::string& name) {
  const std::vector<std::string_view> names = fretboard::instrument_names();
  const std::string near = source::nearest(name, names);
  if (!near.empty()) return "there is no such instrument; did you mean '" + near + "'?";
  std::string all;
  for (const std::string_view known : names) all += (all.empty() ? "" : ", ") + std::string(known);
  return "there is no such instrument; there are " + all;
}

}  // namespace fretsheaf::sheaf
