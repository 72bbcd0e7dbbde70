#include "support/cases.h"

#include <algorithm>
#include <fstream>
#include <stdexcept>

#include "support/project.h"

namespace fretsheaf::test {
namespace {

// The bytes that are written as ⟨FF⟩, put in.
std::string with_bytes(const std::string& text) {
  const std::string open = "⟨";
  const std::string close = "⟩";
  std::string bytes;
  std::size_t done = 0;
  for (auto at = text.find(open); at != std::string::npos; at = text.find(open, done)) {
    const std::size_t digits = at + open.size();
    if (text.compare(digits + 2, close.size(), close) != 0) throw std::runtime_error("⟨ has two figures: " + text);
    bytes += text.substr(done, at - done);
    bytes += static_cast<char>(std::stoi(text.substr(digits, 2), nullptr, 16));
    done = digits + 2 + close.size();
  }
  return bytes + text.substr(done);
}

// Gathers the lines of one case.
class CaseReader {
 public:
  explicit CaseReader(const std::string& heading) {
    const std::size_t colon = heading.find(": ");
    if (colon != std::string::npos) case_.code = heading.substr(0, colon);
    std::replace(case_.code.begin(), case_.code.end(), '_', '-');
    case_.what = colon == std::string::npos ? heading : heading.substr(colon + 2);
  }

  void add(const std::string& line) {
    if (line.starts_with("-- ")) {
      other_ = line.substr(3);
      case_.files[other_];
    } else if (!other_.empty()) {
      case_.files[other_] += with_bytes(line) + "\n";
    } else if (!whole_ && line.starts_with("top ")) {
      top_ += line.substr(4) + "\n";
    } else if (!whole_ && line.starts_with("in ")) {
      in_ += line.substr(3) + "\n";
    } else if (!whole_ && line.starts_with("to ")) {
      case_.key = line.substr(3);
    } else {
      const bool first = body_.empty();
      whole_ =
          whole_ || (first && line.find_first_not_of(' ') != std::string::npos && line.find('|') == std::string::npos);
      body_ += line + "\n";
    }
  }

  WrittenCase take() {
    while (body_.ends_with("\n\n")) body_.pop_back();
    std::string lesson = body_;
    if (!whole_) {
      lesson = (top_.find("title") == std::string::npos ? "title = \"Low tide\"\n" : "") +
               std::string("key = \"D dorian\"\ninstrument = \"bass\"\n") + top_ + "\n[[example]]\n" + in_ +
               "tab = '''\n" + body_ + "'''\n";
    }
    case_.files["a.lesson.toml"] = with_bytes(lesson);
    return std::move(case_);
  }

 private:
  WrittenCase case_;
  std::string top_;
  std::string in_;
  std::string body_;
  std::string other_;  // the file that lines go to, beside the lesson
  bool whole_ = false;
};

}  // namespace

std::vector<WrittenCase> written_cases(const std::string& name) {
  std::ifstream file(project_folder() + "/tests/" + name, std::ios::binary);
  if (!file) throw std::runtime_error("no such file of cases: " + name);
  std::vector<WrittenCase> cases;
  std::vector<CaseReader> reading;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with("== ")) {
      if (!reading.empty()) cases.push_back(reading.back().take());
      reading.assign(1, CaseReader(line.substr(3)));
    } else if (!reading.empty()) {
      reading.back().add(line);
    }
  }
  if (!reading.empty()) cases.push_back(reading.back().take());
  return cases;
}

}  // namespace fretsheaf::test
