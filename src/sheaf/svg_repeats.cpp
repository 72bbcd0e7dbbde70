#include "sheaf/svg_repeats.h"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "lesson/limits.h"
#include "sheaf/svg_name.h"

namespace fretsheaf::sheaf {
namespace {

using platform::XmlElement;

using Targets = std::vector<const XmlElement*>;
using ById = std::unordered_map<std::string_view, const XmlElement*>;

// A gradient of so few colours costs no more than one colour, and nothing in it can refer to what is drawn.
bool is_plain_gradient(const XmlElement& element) {
  const std::string_view name = local_name(element.name);
  return (name == "linearGradient" || name == "radialGradient") && element.children.size() <= 64;
}

void find_ids(const XmlElement& element, ById& by_id) {
  for (const platform::XmlAttribute& attribute : element.attributes) {
    if (local_name(attribute.name) == "id") by_id.emplace(attribute.value, &element);
  }
  for (const XmlElement& child : element.children) find_ids(child, by_id);
}

// What stands behind each `#` up to where a name ends: the whole of a link, or one in `url(#…)`. A colour is no part's
// name, and a name that no part has leads nowhere.
void find_targets(std::string_view text, const ById& by_id, Targets& targets) {
  for (std::size_t at = 0; (at = text.find('#', at)) != std::string_view::npos;) {
    const std::size_t end = std::min(text.find_first_of(")'\" \t\r\n;,}", ++at), text.size());
    const auto found = by_id.find(text.substr(at, end - at));
    if (found != by_id.end() && !is_plain_gradient(*found->second)) targets.push_back(found->second);
  }
}

class Walk {
 public:
  explicit Walk(const XmlElement& root) {
    find_ids(root, by_id_);
    note(root);
    each_ = drawn_by_style();
    drawn_ = 0;
    draw(root, false);
  }

  bool too_much() const { return too_much_; }

 private:
  // Once for each part, however often it is drawn: a value may be long.
  void note(const XmlElement& element) {
    Targets targets;
    for (const platform::XmlAttribute& attribute : element.attributes) {
      if (local_name(attribute.name) != "id") find_targets(attribute.value, by_id_, targets);
    }
    if (!targets.empty()) targets_.emplace(&element, std::move(targets));
    if (local_name(element.name) == "style") find_styled(element.text);
    for (const XmlElement& child : element.children) note(child);
  }

  // A selector, `#name`, refers to nothing.
  void find_styled(std::string_view css) {
    for (std::size_t at = 0; (at = css.find("url(", at)) != std::string_view::npos; at += 4) {
      find_targets(css.substr(at, css.find(')', at) - at), by_id_, styled_);
    }
  }

  // How often all style sheets together may have one part drawn: what they refer to may hold parts that they refer
  // from.
  std::size_t drawn_by_style() {
    std::size_t each = 1;
    for (const XmlElement* target : styled_) {
      drawn_ = 0;
      follow(*target);
      if (too_many(each *= drawn_)) break;
    }
    return each;
  }

  bool too_many(std::size_t drawn) { return too_much_ = too_much_ || drawn > lesson::limits::logo_references; }

  void draw(const XmlElement& element, bool again) {
    if (again || each_ > 1) drawn_ += each_;
    if (too_many(drawn_)) return;
    const auto targets = targets_.find(&element);
    if (targets != targets_.end()) {
      for (const XmlElement* target : targets->second) follow(*target);
    }
    for (const XmlElement& child : element.children) draw(child, again);
  }

  // A part that refers to itself is drawn by nobody, and yet it takes time to find that out.
  void follow(const XmlElement& target) {
    if (too_many(++drawn_)) return;
    if (std::find(within_.begin(), within_.end(), &target) != within_.end()) return;
    too_much_ = too_much_ || within_.size() == lesson::limits::logo_reference_depth;
    if (too_much_) return;
    within_.push_back(&target);
    draw(target, true);
    within_.pop_back();
  }

  ById by_id_;
  std::unordered_map<const XmlElement*, Targets> targets_;
  Targets within_;
  Targets styled_;  // what style sheets refer to
  std::size_t each_ = 1;
  std::size_t drawn_ = 0;
  bool too_much_ = false;
};

}  // namespace

bool repeats_too_much(const XmlElement& root) {
  return Walk(root).too_much();
}

}  // namespace fretsheaf::sheaf
