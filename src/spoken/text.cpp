#include <string>

#include "spoken/spoken.h"

namespace fretsheaf::spoken {
namespace {

// A link is told after its words, unless they are the address itself.
std::string plain_of(const score::Runs& runs) {
  std::string text;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    text += runs[i].text;
    const bool last_of_link = runs[i].link && (i + 1 == runs.size() || runs[i + 1].link != runs[i].link);
    if (last_of_link && !text.ends_with(*runs[i].link)) text += " (" + *runs[i].link + ")";
  }
  return text;
}

void add_table(const Piece& piece, std::string& text) {
  for (std::size_t i = 0; i < piece.cells.size(); ++i) text += (i > 0 ? ", " : "") + piece.cells[i];
  text += ".\n" + plain_of(piece.runs);
}

void add_piece(const Piece& piece, std::string& text) {
  switch (piece.kind) {
    case Piece::Kind::heading:
      text.append(static_cast<std::size_t>(piece.level), '#');
      text += ' ' + plain_of(piece.runs);
      break;
    case Piece::Kind::item:
      text += (piece.ordinal ? std::to_string(*piece.ordinal) + ". " : "- ") + plain_of(piece.runs);
      break;
    case Piece::Kind::lines:
      for (std::size_t i = 0; i < piece.cells.size(); ++i) text += (i > 0 ? "\n" : "") + piece.cells[i];
      break;
    case Piece::Kind::table:
      add_table(piece, text);
      break;
    case Piece::Kind::divider:
      return;
    case Piece::Kind::paragraph:
    case Piece::Kind::code:
      text += plain_of(piece.runs);
      break;
  }
  if (text.empty() || text.back() != '\n') text += '\n';
}

}  // namespace

std::string as_text(const Walk& walk) {
  std::string text;
  const Piece* before = nullptr;
  for (const Piece& piece : walk.pieces) {
    if (piece.kind == Piece::Kind::divider) continue;  // a blank line stands between thoughts already
    const bool same_list = before != nullptr && before->kind == Piece::Kind::item && piece.kind == Piece::Kind::item;
    if (before != nullptr && !same_list) text += '\n';
    add_piece(piece, text);
    before = &piece;
  }
  return text;
}

}  // namespace fretsheaf::spoken
