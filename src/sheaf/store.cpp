#include "sheaf/store.h"

#include <algorithm>
#include <variant>

#include "sheaf/places.h"
#include "sheaf/put_in_place.h"

namespace fretsheaf::sheaf {

namespace {

constexpr std::size_t most_bytes = std::size_t{1} << 32U;
constexpr std::string_view record_ending = "record";
constexpr std::string_view journal_ending = "journal";

std::string share_name(const Share& share) {
  return "share-" + std::to_string(share.number) + "-of-" + std::to_string(share.of) + ".";
}

}  // namespace

std::string record_folder(const std::string& root) {
  return joined(root, ".fretsheaf");
}

Store::Store(const std::string& root, const Order& order, platform::Machine& system)
    : folder_(record_folder(root)), is_whole_(order.is_whole()), system_(system) {
  const std::string name = order.share ? share_name(*order.share) : order.only ? "only." : "";
  journal_ = name + std::string(journal_ending);
  if (!order.only) record_ = name + std::string(record_ending);
}

std::string Store::text(const std::string& name) const {
  auto read = system_.read(path(name), most_bytes);
  auto* bytes = std::get_if<std::string>(&read);
  return bytes == nullptr ? std::string() : std::move(*bytes);
}

std::vector<std::string> Store::names() const {
  std::vector<std::string> names;
  for (const std::string_view ending : {record_ending, journal_ending}) {
    if (system_.exists(path(std::string(ending)))) names.emplace_back(ending);
    for (const std::string& name : system_.list(folder_)) {
      if (name.ends_with("." + std::string(ending)) && !name.starts_with('.')) names.push_back(name);
    }
  }
  return names;
}

Record Store::load() const {
  Record record;
  for (const std::string& name : names()) read_record(text(name), record);
  return record;
}

std::optional<platform::FileError> Store::append(const std::string& lines, bool synced) {
  std::string begin;
  if (!appended_) {
    // What a kill left may end in the middle of a line, or of the first.
    const bool goes_on = text(journal_).starts_with(record_heading());
    if (!goes_on) system_.remove(path(journal_));
    begin = goes_on ? "\n" : record_heading();
  }
  appended_ = true;
  return system_.append(path(journal_), begin + lines, synced);
}

std::optional<platform::FileError> Store::finish(const Record& all, bool forgotten) {
  if (record_.empty()) return std::nullopt;
  if (!forgotten && !appended_ && names() == std::vector<std::string>{record_}) return std::nullopt;
  std::string now;
  std::vector<std::string> merged;
  if (is_whole_) {
    now = text_of(all);
    merged = names();
  } else {
    Record own;
    merged = {record_, journal_};
    for (const std::string& name : merged) read_record(text(name), own);
    now = text_of(own);
  }
  if (now != text(record_)) {
    if (auto error = put_in_place(system_, path(record_), now)) return error;
  }
  for (const std::string& name : merged) {
    if (name != record_) system_.remove(path(name));
  }
  if (is_whole_) remove_share_locks();
  return std::nullopt;
}

void Store::remove_share_locks() {
  for (const std::string& name : system_.list(folder_)) {
    if (name.starts_with("share-") && name.ends_with(".lock")) system_.remove(path(name));
  }
}

}  // namespace fretsheaf::sheaf
