#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include "layout/music_signs.h"

namespace fretsheaf::layout {

using sheet::Part;
using templates::Role;

namespace {

// An accidental beside figures and letters: its staff space as a share of their size, and the gap between the two.
constexpr double flat_space = 0.40;
constexpr double sharp_space = 0.33;  // a sharp is the taller sign
constexpr double accidental_gap = 0.06;
constexpr double fingered_scale = 0.85;  // of the chord as a capo lets it be fingered
constexpr double raise = 0.325;          // of the raised part of a chord symbol, of its size

char32_t accidental(char letter) {
  return letter == 'b' ? U'\u266D' : U'\u266F';
}

// Sets parts of a text one after another.
class Setting {
 public:
  Setting(Type& type, Part part, double factor = 1) : type_(type), part_(part), factor_(factor) {}

  double size(Role role) const { return type_.look().style(role).size * factor_; }

  void text(Role role, const std::string& text, double y = 0) {
    if (text.empty()) return;
    const Words words = type_.set_at_size(role, size(role), text, part_);
    layer_.words(words, x_, y);
    x_ += words.width;
  }
  void sign(Role role, char letter, double y = 0) {
    const bool flat = letter == 'b';
    const char32_t code_point = accidental(letter);
    const double space = (flat ? flat_space : sharp_space) * size(role);
    const Words words = type_.signs({&code_point, 1}, space, part_, flat ? "♭" : "♯");
    const double gap = accidental_gap * size(role);
    // The sign's own origin is far left of its ink.
    layer_.words(words, x_ + gap - words.ink.left, y);
    x_ += words.ink.right - words.ink.left + 2 * gap;
  }
  // Text in which 'b' and '#' before a figure are accidentals ("b9", "#11").
  void figures(Role role, const std::string& text, double y) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
      const bool sign =
          (text[i] == 'b' || text[i] == '#') && i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9';
      if (!sign) {
        plain += text[i];
        continue;
      }
      this->text(role, plain, y);
      plain.clear();
      this->sign(role, text[i], y);
    }
    this->text(role, plain, y);
  }
  // A root as it is printed: letters, then ♭ or ♯.
  void name(Role role, const std::string& name) {
    constexpr std::size_t sign_bytes = std::string_view("♭").size();
    const std::size_t letters = std::min(name.find("♭"), name.find("♯"));
    this->text(role, name.substr(0, letters));
    for (std::size_t at = letters; at < name.size(); at += sign_bytes) {
      sign(role, name.compare(at, sign_bytes, "♭") == 0 ? 'b' : '#');
    }
  }
  void space(double width) { x_ += width; }
  // The size of what follows; nothing is set smaller than the template allows.
  void scale(double factor) {
    const double least = type_.look().least_type / std::max(1.0, type_.look().style(Role::chord_raised).size);
    factor_ = std::max(factor, std::min(1.0, least));
  }
  Layer take() { return std::move(layer_); }

 private:
  Type& type_;
  Part part_;
  double factor_;
  double x_ = 0;
  Layer layer_;
};

void add_chord(Setting& setting, const theory::Chord& chord, const score::Naming& naming) {
  const theory::ChordSymbolParts parts = theory::symbol_parts(chord);
  setting.name(Role::chord, score::chord_root(parts.root, naming));
  setting.text(Role::chord, parts.on_line);
  if (!parts.raised.empty()) setting.space(0.04 * setting.size(Role::chord));
  setting.figures(Role::chord_raised, parts.raised, -raise * setting.size(Role::chord));
  if (!parts.bass) return;
  setting.text(Role::chord, "/");
  setting.name(Role::chord, score::chord_root(*parts.bass, naming));
}

}  // namespace

Layer chord_symbol(Type& type, const theory::Chord& chord, const score::Naming& naming, double size_factor) {
  Setting setting(type, Part::chord_symbol, size_factor);
  add_chord(setting, chord, naming);
  return setting.take();
}

Layer chord_symbol(Type& type, const score::ChordMark& mark, const score::Naming& naming) {
  Setting setting(type, Part::chord_symbol);
  if (mark.chord) {
    add_chord(setting, *mark.chord, naming);
  } else {
    setting.text(Role::chord, "N.C.");
  }
  if (mark.fingered) {
    // Smaller, so that it is seen to belong to the name before it.
    setting.space(0.25 * setting.size(Role::chord));
    setting.scale(fingered_scale);
    setting.text(Role::chord, "(");
    add_chord(setting, *mark.fingered, naming);
    setting.text(Role::chord, ")");
  }
  return setting.take();
}

Layer chord_mark(const Context& context, const score::ChordMark& mark) {
  Layer layer = chord_symbol(context.type, mark, context.score.naming);
  layer.move(-proportion::head * context.space, 0);
  return layer;
}

}  // namespace fretsheaf::layout
