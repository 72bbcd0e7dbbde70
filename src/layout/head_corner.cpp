#include "layout/head_corner.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "layout/furniture.h"
#include "layout/music_layer.h"
#include "layout/qr_code.h"
#include "words/words.h"

namespace fretsheaf::layout {
namespace {

using sheet::Part;
using templates::Role;

constexpr double gap = 16;      // beside and below what stands there
constexpr double qr_side = 66;  // the house's measure
constexpr double qr_drop = 1;
constexpr double caption_drop = 13;
constexpr double caption_leading = 1.19;  // of the caption's size
constexpr double logo_width = 120;
constexpr double logo_height = 44;
constexpr double tag_drop = -2;  // of the answer key's frame
constexpr double tag_inset = 5;
constexpr double tag_line = 1.2;
constexpr double rounding = 0.1;

class Corner {
 public:
  Corner(const score::Heading& heading, double width, Setter& setter)
      : heading_(heading), width_(width), setter_(setter) {}

  HeadCorner make() {
    qr();
    logo();
    answer_key();
    return std::move(corner_);
  }

 private:
  double right() const { return width_ - corner_.taken; }

  void put(sheet::Tag tag, std::vector<sheet::Item> items, std::string alternative = {}) {
    sheet::Group group;
    group.tag = tag;
    group.alternative = std::move(alternative);
    group.items = std::move(items);
    corner_.items.emplace_back(std::move(group));
  }

  void take(double width, double bottom) {
    corner_.taken += width;
    corner_.bottom = std::max(corner_.bottom, bottom);
  }

  // The least measure that words fit into in two lines.
  double two_lines(std::string_view text) {
    double least = setter_.type.width(Role::caption, text);
    for (std::size_t at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1)) {
      least = std::min(least, std::max(setter_.type.width(Role::caption, text.substr(0, at)),
                                       setter_.type.width(Role::caption, text.substr(at + 1))));
    }
    return least + rounding;
  }

  // The code and the words under it are one area to click.
  void qr() {
    if (!heading_.link) return;
    std::optional<QrCode> code = qr_code(*heading_.link, qr_side);
    if (!code) return;
    const double left = right() - code->side;
    sheet::Group figure;
    figure.tag = sheet::Tag::figure;
    figure.alternative = bare_address(*heading_.link);
    figure.items.emplace_back(std::move(code->path));
    sheet::translate(figure.items, left, qr_drop);
    std::vector<sheet::Item> items;
    items.emplace_back(std::move(figure));
    const double cap = setter_.type.cap_height(Role::caption);
    double y = qr_drop + code->side + std::max(caption_drop, code->quiet_zone() + cap);
    const std::string hint(words::word(setter_.words, words::Word::link_hint));
    const double measure = std::max(code->side, two_lines(hint));
    for (TextLine& line :
         set_plain(hint, measure, {Role::caption, 1, Part::text, setter_.language, {}}, setter_.type)) {
      // Centred under the code, or flush with it where they are wider.
      const double indent = measure > code->side ? measure - line.width : (measure - line.width) / 2;
      sheet::translate(line.items, right() - measure + indent, y);
      for (sheet::Item& item : line.items) items.push_back(std::move(item));
      y += caption_leading * setter_.type.look().style(Role::caption).size;
    }
    y -= caption_leading * setter_.type.look().style(Role::caption).size;
    items.emplace_back(sheet::Link{{right() - measure, qr_drop, right(), y}, *heading_.link});
    put(sheet::Tag::link, std::move(items));
    take(std::max(code->side + std::max(code->quiet_zone(), gap), measure + gap), y);
  }

  // As large as its corner lets it be.
  void logo() {
    if (!heading_.logo) return;
    const score::Logo& logo = *heading_.logo;
    const double scale = std::min(logo_width / logo.width, logo_height / logo.height);
    sheet::Image image;
    image.part = Part::logo;
    image.kind = logo.svg ? sheet::Image::Kind::svg : sheet::Image::Kind::png;
    image.bytes = logo.bytes;
    image.area = {right() - scale * logo.width, 0, right(), scale * logo.height};
    std::vector<sheet::Item> items;
    items.emplace_back(std::move(image));
    put(sheet::Tag::figure, std::move(items), logo.alternative);
    take(scale * logo.width + gap, scale * logo.height);
  }

  // In a frame: it is seen at a glance that this is not the student's copy.
  void answer_key() {
    if (heading_.answer_key.empty()) return;
    Words words = setter_.type.set(Role::heading, heading_.answer_key, Part::heading);
    const double baseline = tag_drop + tag_inset + setter_.type.cap_height(Role::heading);
    const double left = right() - words.width - 2 * tag_inset;
    sheet::translate(words.items, left + tag_inset, baseline);
    put(sheet::Tag::paragraph, std::move(words.items));
    corner_.items.emplace_back(framed(Part::answer, {left, tag_drop, right(), baseline + tag_inset}, tag_line));
    take(words.width + 2 * tag_inset + gap, baseline + tag_inset);
  }

  const score::Heading& heading_;
  double width_;
  Setter& setter_;
  HeadCorner corner_;
};

}  // namespace

HeadCorner head_corner(const score::Heading& heading, double width, Setter& setter) {
  return Corner(heading, width, setter).make();
}

}  // namespace fretsheaf::layout
