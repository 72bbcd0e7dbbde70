#include "spoken/prose.h"

#include <algorithm>

namespace fretsheaf::spoken {
namespace {

constexpr int deepest_heading = 6;  // of HTML

Piece::Kind kind_of(const score::Block& block) {
  switch (block.kind) {
    case score::Block::Kind::paragraph:
      break;
    case score::Block::Kind::heading:
      return Piece::Kind::heading;
    case score::Block::Kind::list_item:
      return Piece::Kind::item;
    case score::Block::Kind::code:
      return Piece::Kind::code;
    case score::Block::Kind::rule:
      return Piece::Kind::divider;
  }
  return Piece::Kind::paragraph;
}

Piece piece_of(const score::Block& block, int level, const Phrases& phrases) {
  Piece piece;
  piece.kind = kind_of(block);
  piece.level = std::min(level + std::max(1, block.level), deepest_heading);
  piece.ordinal = block.ordinal;
  piece.quoted = std::find(block.inside.begin(), block.inside.end(), score::Container::quote) != block.inside.end();
  piece.runs = block.runs;
  for (score::Run& run : piece.runs) {
    if (!run.code) run.text = phrases.plain(run.text);
  }
  return piece;
}

}  // namespace

void add_prose(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk) {
  for (const score::Block& block : blocks) walk.pieces.push_back(piece_of(block, level, phrases));
}

void add_note(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk) {
  const std::size_t first = walk.pieces.size();
  add_prose(blocks, level, phrases, walk);
  if (walk.pieces.size() > first && walk.pieces[first].kind == Piece::Kind::paragraph) {
    walk.pieces[first].kind = Piece::Kind::item;
  }
}

}  // namespace fretsheaf::spoken
