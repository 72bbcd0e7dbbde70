#include "exchange/score_file.h"

#include <algorithm>
#include <string_view>
#include <utility>
#include <variant>

#include "exchange/container.h"
#include "exchange/xml_bytes.h"

namespace fretsheaf::exchange {

using source::Code;

namespace {

class Opener {
 public:
  Opener(std::string name, source::Diagnostics& diagnostics) : name_(std::move(name)), diagnostics_(diagnostics) {}

  ScoreFile open(std::string bytes) {
    if (bytes.size() > max_score_bytes) {
      refuse(Code::file_too_large, "this file has more than 16 MiB", "a lesson's score is smaller: take it in parts");
      return std::move(file_);
    }
    if (is_packed(bytes)) {
      auto unpacked = unpack(bytes, max_score_bytes);
      if (const auto* why = std::get_if<Unpackable>(&unpacked)) {
        refuse(why->code, why->what, why->help);
        return std::move(file_);
      }
      bytes = std::move(std::get<std::string>(unpacked));
    }
    parse(std::move(bytes));
    return std::move(file_);
  }

 private:
  void refuse(Code code, std::string what, std::string help) {
    file_.text = source::Text(name_, "");
    diagnostics_.error(code, {}, std::move(what), std::move(help));
  }

  void parse(std::string bytes) {
    if (auto why = as_utf8(bytes)) return refuse(why->code, std::move(why->what), std::move(why->help));
    file_.text = source::Text(name_, std::move(bytes));
    if (const auto why = look_over(file_.text.bytes())) {
      const auto at = static_cast<std::uint32_t>(why->at);
      diagnostics_.error(why->code, {at, at + 1, 0}, why->what, why->help);
      return;
    }
    auto parsed = platform::parse_xml(file_.text.bytes(), platform::XmlEncoding::utf8);
    if (const auto* fault = std::get_if<platform::XmlFault>(&parsed)) return report(*fault);
    file_.document = std::get<platform::XmlDocument>(std::move(parsed));
  }

  void report(platform::XmlFault fault) {
    const int line = std::min(fault.line, file_.text.line_count());
    const auto at = static_cast<std::uint32_t>(file_.text.offset(line, 1));
    diagnostics_.error(Code::adopt_not_xml, {at, at + 1, 0}, "this is not sound XML from here on",
                       "export the score anew from the program that made it");
  }

  std::string name_;
  source::Diagnostics& diagnostics_;
  ScoreFile file_;
};

}  // namespace

ScoreFile open_score_file(const std::string& name, std::string bytes, source::Diagnostics& diagnostics) {
  return Opener(name, diagnostics).open(std::move(bytes));
}

}  // namespace fretsheaf::exchange
