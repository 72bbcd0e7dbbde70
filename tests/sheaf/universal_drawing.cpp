#include "sheaf/universal_drawing.h"

#include <algorithm>
#include <cctype>
#include <sstream>

namespace fretsheaf::test {
namespace {

using Object = QPDFObjectHandle;

const std::set<std::string> paints = {"S",  "s",  "f",  "F", "f*", "B",  "B*", "b",
                                      "b*", "Tj", "TJ", "'", "\"", "Do", "sh", "BI"};

// Reads operators with what comes before them.
class Reader : public Object::ParserCallbacks {
 public:
  void handleObject(Object object) override {
    if (!object.isOperator()) {
      operands_.push_back(object);
      return;
    }
    take(object.getOperatorValue());
    operands_.clear();
  }

  void handleEOF() override {
    if (!open_.empty()) say("a marked content does not end");
  }

  Drawing drawing;

 private:
  struct Marked {
    bool told = false;
    bool artifact = false;
    bool in_text = false;
  };

  void say(const std::string& fault) {
    if (std::ranges::find(drawing.faults, fault) == drawing.faults.end()) drawing.faults.push_back(fault);
  }

  bool any(bool Marked::*kind) const {
    return std::ranges::any_of(open_, [&](const Marked& marked) { return marked.*kind; });
  }

  void take(const std::string& name) {
    if (name == "BDC" || name == "BMC") begin();
    if (name == "EMC") end();
    if (name == "BT" || name == "ET") in_text_ = name == "BT";
    if (paints.contains(name) && !any(&Marked::told) && !any(&Marked::artifact)) {
      say("something is drawn that is neither told nor an artifact");
    }
  }

  void begin() {
    Marked marked;
    marked.in_text = in_text_;
    marked.artifact = !operands_.empty() && operands_[0].isName() && operands_[0].getName() == "/Artifact";
    Object properties = operands_.size() > 1 ? operands_[1] : Object::newNull();
    if (properties.isDictionary() && properties.getKey("/MCID").isInteger()) {
      marked.told = true;
      if (marked.artifact || any(&Marked::artifact)) say("an artifact is told");
      if (any(&Marked::told)) say("a content lies in another");
      if (!drawing.contents.insert(properties.getKey("/MCID").getIntValue()).second)
        say("two contents have one number");
    }
    if (marked.artifact && any(&Marked::told)) say("an artifact lies in what is told");
    open_.push_back(marked);
  }

  void end() {
    if (open_.empty()) return say("a marked content ends that did not begin");
    if (open_.back().in_text != in_text_) say("a marked content and a text overlap");
    open_.pop_back();
  }

  std::vector<Object> operands_;
  std::vector<Marked> open_;
  bool in_text_ = false;
};

}  // namespace

Drawing read_drawing(QPDFObjectHandle page) {
  Reader reader;
  page.parsePageContents(&reader);
  return std::move(reader.drawing);
}

bool maps_to_nothing(QPDFObjectHandle to_unicode) {
  const auto buffer = to_unicode.getStreamData();
  std::string text(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
  std::ranges::transform(text, text.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  const std::size_t first = std::min(text.find("beginbfchar"), text.find("beginbfrange"));
  if (first == std::string::npos) return true;
  // Of a line of the map, the last number is what it leads to.
  std::istringstream lines(text.substr(first));
  for (std::string line; std::getline(lines, line);) {
    const std::size_t at = line.rfind('<');
    if (at == std::string::npos || line.rfind('>') == std::string::npos) continue;
    const std::string target = line.substr(at, line.rfind('>') - at + 1);
    if (target == "<0000>" || target == "<feff>" || target == "<fffe>") return true;
  }
  return false;
}

}  // namespace fretsheaf::test
