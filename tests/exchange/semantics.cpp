#include "exchange/semantics.h"

#include "exchange/semantics_rules.h"

namespace fretsheaf::exchange::test {

std::vector<std::string> complaints(const std::string& document, bool short_fifth_string) {
  tinyxml2::XMLDocument xml;
  if (xml.Parse(document.data(), document.size()) != tinyxml2::XML_SUCCESS) return {"not XML"};
  const XMLElement* root = xml.FirstChildElement("score-partwise");
  if (root == nullptr) return {"no score-partwise"};
  Complaints result;
  check_head(*root, result);
  for (const XMLElement* part = root->FirstChildElement("part"); part != nullptr;
       part = part->NextSiblingElement("part")) {
    const Timeline timeline = timeline_of(*part);
    result.insert(result.end(), timeline.complaints.begin(), timeline.complaints.end());
    check_time(timeline, result);
    check_pairs(timeline, result);
    check_strings(timeline, short_fifth_string, result);
    check_beams(timeline, result);
    check_form(timeline, result);
    check_directions(timeline, result);
  }
  return result;
}

}  // namespace fretsheaf::exchange::test
