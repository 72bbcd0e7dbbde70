#include <algorithm>
#include <string>
#include <string_view>

#include "spoken/spoken.h"

namespace fretsheaf::spoken {
namespace {

// Whether the words of a link are its address.
bool is_told(std::string_view link, std::string_view text) {
  constexpr std::string_view mail = "mailto:";
  if (link.starts_with(mail)) link.remove_prefix(mail.size());
  return text.ends_with(link);
}

// A link is told after its words, unless they say it.
std::string plain_of(const score::Runs& runs) {
  std::string text;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    text += runs[i].text;
    const bool last_of_link = runs[i].link && (i + 1 == runs.size() || runs[i + 1].link != runs[i].link);
    if (last_of_link && !is_told(*runs[i].link, text)) text += " (" + *runs[i].link + ")";
  }
  return text;
}

void add_table(const Piece& piece, std::string& text) {
  for (std::size_t i = 0; i < piece.cells.size(); ++i) text += (i > 0 ? ", " : "") + piece.cells[i];
  text += ".\n" + plain_of(piece.runs);
}

// What lies in a list stands as far to the right as it lies deep.
std::string indented(const std::string& text, int depth) {
  std::string out;
  const std::string margin(static_cast<std::size_t>(depth) * 2, ' ');
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1);
    if (text[at] != '\n') out += margin;
    out.append(text, at, end + 1 - at);
    at = end + 1;
  }
  return out;
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
    std::string own;
    add_piece(piece, own);
    text += indented(own, piece.kind == Piece::Kind::item ? piece.depth - 1 : piece.depth);
    before = &piece;
  }
  return text;
}

}  // namespace fretsheaf::spoken
