#include "sheaf/handout_reader.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <string_view>

namespace fretsheaf::test {

namespace {

// The value of an attribute in a tag; "" where it has none.
std::string attribute(std::string_view tag, const std::string& name) {
  const std::string begin = " " + name + "=\"";
  const auto at = tag.find(begin);
  if (at == std::string_view::npos) return {};
  const auto from = at + begin.size();
  return std::string(tag.substr(from, tag.find('"', from) - from));
}

// Calls `take` with every tag of the file, "<" and ">" left out.
template <typename Take>
void each_tag(std::string_view xml, Take take) {
  for (auto at = xml.find('<'); at != std::string_view::npos; at = xml.find('<', at + 1)) {
    const auto end = xml.find('>', at);
    take(xml.substr(at + 1, end - at - 1));
  }
}

bool all_figures(const std::string& text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
}

// Reads the figures of a tab: the line that one stands on is its string.
class DigitReader {
 public:
  explicit DigitReader(int strings) : strings_(strings) {}

  std::vector<std::vector<Digit>> read(const std::string& svg) {
    each_tag(svg, [&](std::string_view tag) { take(tag); });
    end_line();
    return std::move(examples_);
  }

 private:
  struct Figure {
    double y = 0;
    double size = 0;
    int fret = 0;
    std::string event;
  };

  void take(std::string_view tag) {
    const std::string kind = attribute(tag, "class");
    if (kind == "example") begin_example(std::stoul(attribute(tag, "data-example")));
    if (kind == "tab-line") add_line(std::stod(attribute(tag, "y1")));
    if (kind == "event" && attribute(tag, "data-staff") == "tab") {
      event_ = attribute(tag, "data-bar") + " " + attribute(tag, "data-at") + " " + attribute(tag, "data-line");
    }
    if (kind == "digit" && all_figures(attribute(tag, "data-text"))) add_figure(tag);
  }

  // "translate(103.24 255.62) scale(0.01)"
  void add_figure(std::string_view tag) {
    const std::string transform = attribute(tag, "transform");
    const auto y = transform.find(' ');
    const auto scale = transform.find("scale(") + 6;
    figures_.push_back({std::stod(transform.substr(y + 1)), std::stod(transform.substr(scale)),
                        std::stoi(attribute(tag, "data-text")), event_});
  }

  void begin_example(std::size_t number) {
    end_line();
    current_ = number - 1;
    examples_.resize(std::max(examples_.size(), number));
  }

  // A tab's lines stand above its figures in the file.
  void add_line(double y) {
    if (!figures_.empty()) end_line();
    if (std::find(lines_.begin(), lines_.end(), y) == lines_.end()) lines_.push_back(y);
  }

  void end_line() {
    if (figures_.empty()) return;
    std::sort(lines_.begin(), lines_.end());
    // A tab without figures may have stood before: its lines are farther up.
    const auto count = static_cast<std::size_t>(strings_);
    if (lines_.size() < count) throw std::runtime_error("a tab has too few lines");
    const std::vector<double> lines(lines_.end() - static_cast<std::ptrdiff_t>(count), lines_.end());
    const double gap = lines[1] - lines[0];
    double largest = 0;
    for (const Figure& figure : figures_) largest = std::max(largest, figure.size);
    for (const Figure& figure : figures_) {
      // Half its height of about nine tenths of a gap stands under the line.
      const auto above = std::lround((figure.y - 0.45 * gap - lines[0]) / gap);
      if (above < 0 || above >= strings_) throw std::runtime_error("a figure stands on no line");
      examples_[current_].push_back(
          {{static_cast<int>(above) + 1, figure.fret}, figure.event, figure.size < 0.95 * usual(largest)});
    }
    figures_.clear();
    lines_.clear();
  }

  // A line of music may have nothing but small figures.
  double usual(double largest) { return usual_ = std::max(usual_, largest); }

  int strings_;
  double usual_ = 0;
  std::vector<std::vector<Digit>> examples_;
  std::size_t current_ = 0;
  std::string event_;
  std::vector<double> lines_;
  std::vector<Figure> figures_;
};

// The elements of that name, with what is in them; none of them lies in another of the name.
std::vector<std::string_view> elements(std::string_view xml, const std::string& name) {
  std::vector<std::string_view> all;
  const std::string open = "<" + name;
  const std::string close = "</" + name + ">";
  for (auto at = xml.find(open); at != std::string_view::npos; at = xml.find(open, at + 1)) {
    const char after = xml[at + open.size()];
    if (after != '>' && after != ' ') continue;
    const auto end = xml.find(close, at);
    all.push_back(xml.substr(at, end - at));
    at = end;
  }
  return all;
}

std::string value(std::string_view xml, const std::string& name) {
  const auto at = xml.find("<" + name + ">");
  if (at == std::string_view::npos) return {};
  const auto from = at + name.size() + 2;
  return std::string(xml.substr(from, xml.find('<', from) - from));
}

bool has(std::string_view xml, std::string_view text) {
  return xml.find(text) != std::string_view::npos;
}

int letter_steps(char letter) {
  static const std::map<char, int> steps = {{'C', 0}, {'D', 2}, {'E', 4}, {'F', 5}, {'G', 7}, {'A', 9}, {'B', 11}};
  return steps.at(letter);
}

Heard heard(std::string_view note) {
  Heard out;
  const std::string alter = value(note, "alter");
  out.midi = letter_steps(value(note, "step").at(0)) + (alter.empty() ? 0 : std::stoi(alter)) +
             12 * (std::stoi(value(note, "octave")) + 1);
  out.place = {std::stoi(value(note, "string")), std::stoi(value(note, "fret"))};
  out.harmonic = has(note, "<harmonic");
  out.dead = has(note, "<notehead>x</notehead>");
  out.grace = has(note, "<grace");
  out.held = has(note, "<tie type=\"stop\"");
  return out;
}

}  // namespace

std::vector<std::vector<Digit>> digits_of(const std::string& svg, int strings) {
  return DigitReader(strings).read(svg);
}

std::vector<std::string> labels_of(const std::string& svg, const std::string& kind) {
  std::vector<std::string> all;
  each_tag(svg, [&](std::string_view tag) {
    if (attribute(tag, "class") == kind) all.push_back(attribute(tag, "data-text"));
  });
  return all;
}

std::vector<int> named_in(const std::vector<std::string>& labels) {
  std::vector<int> notes;
  for (const std::string& label : labels) {
    for (std::size_t at = 0; at < label.size();) {
      if (label.compare(at, 3, "♭") == 0 || label.compare(at, 3, "♯") == 0) {
        notes.back() += label.compare(at, 3, "♯") == 0 ? 1 : -1;
        at += 3;
      } else {
        if (label[at] != ' ') notes.push_back(letter_steps(label[at]));
        ++at;
      }
    }
  }
  for (int& note : notes) note = (note + 24) % 12;
  return notes;
}

std::vector<Heard> notes_of(const std::string& document) {
  std::vector<Heard> notes;
  bool repeated = false;
  for (const std::string_view measure : elements(document, "measure")) {
    if (has(measure, "<measure-repeat type=\"stop\"")) repeated = false;
    if (has(measure, "<measure-repeat type=\"start\"")) repeated = true;
    for (const std::string_view note : elements(measure, "note")) {
      if (!has(note, "<fret>")) continue;
      notes.push_back(heard(note));
      notes.back().repeated = repeated;
    }
  }
  return notes;
}

const Strings& strings_of(const std::string& instrument) {
  static const std::map<std::string, Strings> all = {
      {"bass", {{43, 38, 33, 28}, 863.6}},
      {"bass-5", {{43, 38, 33, 28, 23}, 863.6}},
      {"bass-6", {{48, 43, 38, 33, 28, 23}, 863.6}},
      {"guitar", {{64, 59, 55, 50, 45, 40}, 647.7}},
      {"guitar-7", {{64, 59, 55, 50, 45, 40, 35}, 647.7}},
      {"ukulele", {{69, 64, 60, 67}, 381}},
      {"baritone-ukulele", {{64, 59, 55, 50}, 510}},
      {"mandolin", {{76, 69, 62, 55}, 352}},
      {"banjo", {{62, 59, 55, 50, 67}, 667, true}},
      {"tenor-banjo", {{69, 62, 55, 48}, 584}},
  };
  return all.at(instrument);
}

int sounding(const Strings& strings, int capo, StringAndFret place, bool harmonic) {
  const bool is_short = strings.short_last && place.string == static_cast<int>(strings.open.size());
  const int open = strings.open.at(static_cast<std::size_t>(place.string) - 1) + capo;
  const int above = place.fret == 0 ? 0 : place.fret - (is_short ? 5 : 0);
  if (!harmonic) return open + above;
  // Semitones over the open string of the partial at that node, to the nearest: common practice.
  static const std::map<int, int> partials = {{3, 31},  {4, 28},  {5, 24},  {7, 19},  {9, 28}, {12, 12},
                                              {16, 28}, {19, 19}, {24, 24}, {28, 28}, {31, 31}};
  return open + partials.at(above);
}

double span(const Strings& strings, int capo, int low, int high) {
  return strings.scale_length * (std::exp2(-(capo + low) / 12.0) - std::exp2(-(capo + high) / 12.0));
}

}  // namespace fretsheaf::test
