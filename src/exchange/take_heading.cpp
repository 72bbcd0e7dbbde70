#include "exchange/take_heading.h"

#include <string>
#include <vector>

#include "exchange/xml_text.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

// What a lesson of ours says of its heading beyond title, creator and rights.
void take_own_facts(const Xml& identification, TakenHeading& heading) {
  const Xml* more = identification.child("miscellaneous");
  if (more == nullptr) return;
  for (const Xml* e : more->all("miscellaneous-field")) {
    const std::string name = attribute(*e, "name");
    if (name == "series") heading.series = text_of(*e);
    if (name == "level") heading.level = text_of(*e);
    if (name == "subtitle") heading.subtitle = text_of(*e);
  }
}

// A lesson names one.
void lose_other_creators(const Xml& identification, Losses& losses) {
  const std::vector<const Xml*> creators = identification.all("creator");
  for (std::size_t i = 1; i < creators.size(); ++i) {
    losses.lose(Code::adopt_left_out, creators[i],
                "a second creator, " + text_of(*creators[i]).substr(0, 40) + ", is left out",
                "a lesson has one 'teacher': write others into its intro");
  }
}

}  // namespace

TakenHeading take_heading(const Xml& root, Losses& losses) {
  TakenHeading heading;
  const std::string movement = text_of(root, "movement-title");
  if (const Xml* work = root.child("work")) {
    heading.title = text_of(*work, "work-title");
    const auto number = whole(text_of(*work, "work-number"));
    if (number && *number >= 0 && *number <= 9999) heading.number = number;
  }
  if (heading.title.empty()) {
    heading.title = movement;
  } else if (movement != heading.title) {
    heading.subtitle = movement;
  }
  for (const Xml* e : root.all("credit")) {
    const std::string type = text_of(*e, "credit-type");
    if (type == "title" && heading.title.empty()) heading.title = text_of(*e, "credit-words");
    if (type == "subtitle" && heading.subtitle.empty()) heading.subtitle = text_of(*e, "credit-words");
  }
  if (const Xml* identification = root.child("identification")) {
    heading.creator = text_of(*identification, "creator");
    heading.rights = text_of(*identification, "rights");
    take_own_facts(*identification, heading);
    lose_other_creators(*identification, losses);
  }
  return heading;
}

}  // namespace fretsheaf::exchange
