#include "score/filler.h"

#include <type_traits>
#include <variant>

#include "score/printed.h"
#include "theory/key.h"
#include "words/sentences.h"
#include "words/words.h"

namespace fretsheaf::score {

std::string printed_place(const lesson::Note& note, const fretboard::Neck& neck, const Naming& naming) {
  const std::string string = string_name(note.place.string, neck, naming);
  return note.dead ? string : words::place_name(naming.language, string, note.place.fret);
}

std::string Filler::fill(std::string_view text, std::optional<std::size_t> example) const {
  if (text.find("{{") == std::string_view::npos) return std::string(text);
  std::string out;
  for (const lesson::TextPart& part : lesson::parse_placeholders(text)) {
    const std::string_view written = text.substr(part.begin, part.end - part.begin);
    const auto* placeholder = std::get_if<lesson::Placeholder>(&part.value);
    out += placeholder != nullptr ? value(*placeholder, example).value_or(std::string(written)) : std::string(written);
  }
  return out;
}

std::optional<std::string> Filler::value(const lesson::Placeholder& placeholder,
                                         std::optional<std::size_t> example) const {
  const theory::Key& key = example ? lesson_.examples[*example].key : lesson_.key;
  return std::visit(
      [&](const auto& wanted) -> std::optional<std::string> {
        using Wanted = std::decay_t<decltype(wanted)>;
        if constexpr (std::is_same_v<Wanted, lesson::KeyPlaceholder>) {
          return printed(key, naming_);
        } else if constexpr (std::is_same_v<Wanted, lesson::DegreePlaceholder>) {
          return in_words(theory::degree_name(key, wanted.degree), naming_);
        } else if constexpr (std::is_same_v<Wanted, lesson::ChordPlaceholder>) {
          return printed(wanted.chord, key, naming_);
        } else if constexpr (std::is_same_v<Wanted, lesson::NotePlaceholder>) {
          return note_name(wanted.of, example);
        } else if constexpr (std::is_same_v<Wanted, lesson::PlacePlaceholder>) {
          return place(wanted.of, example);
        } else {
          return tempo(wanted.last, example);
        }
      },
      placeholder);
}

const lesson::Note* Filler::find(const lesson::StruckNote& of, const lesson::Example* example) const {
  if (example == nullptr) return nullptr;
  const lesson::Event* event = lesson::find_struck(example->music, of.bar, of.note);
  return event != nullptr ? lesson::naming_note(*event, lesson_.neck) : nullptr;
}

std::optional<std::string> Filler::note_name(const lesson::StruckNote& of, std::optional<std::size_t> text_of) const {
  const lesson::Example* example = lesson::example_meant(lesson_, of.example, text_of);
  const lesson::Note* note = find(of, example);
  if (note == nullptr || note->dead) return std::nullopt;
  const auto index = static_cast<std::size_t>(example - lesson_.examples.data());
  return in_words(notes_[index].of(*note).name, naming_);
}

std::optional<std::string> Filler::place(const lesson::StruckNote& of, std::optional<std::size_t> text_of) const {
  const lesson::Note* note = find(of, lesson::example_meant(lesson_, of.example, text_of));
  if (note == nullptr) return std::nullopt;
  return printed_place(*note, lesson_.neck, naming_);
}

std::optional<std::string> Filler::tempo(bool last, std::optional<std::size_t> text_of) const {
  const lesson::Example* example = lesson::example_meant(lesson_, std::nullopt, text_of);
  if (example == nullptr || !example->tempo) return std::nullopt;
  return std::to_string(last ? example->tempo->to : example->tempo->from);
}

}  // namespace fretsheaf::score
