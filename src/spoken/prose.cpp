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

// The level of the highest heading: it comes right under what the text stands in.
int highest_heading(const score::Blocks& blocks) {
  int level = deepest_heading;
  for (const score::Block& block : blocks) {
    if (block.kind == score::Block::Kind::heading) level = std::min(level, block.level);
  }
  return level;
}

Piece piece_of(const score::Block& block, int level, const Phrases& phrases) {
  Piece piece;
  piece.kind = kind_of(block);
  piece.level = std::clamp(level + block.level, 1, deepest_heading);
  piece.ordinal = block.ordinal;
  const auto count = [&](score::Container container) {
    return static_cast<int>(std::count(block.inside.begin(), block.inside.end(), container));
  };
  piece.quoted = count(score::Container::quote) > 0;
  piece.depth = count(score::Container::list);
  piece.begins_list = piece.kind == Piece::Kind::item && block.opens > 0;
  piece.runs = block.runs;
  for (score::Run& run : piece.runs) {
    if (!run.code) run.text = phrases.plain(run.text);
  }
  return piece;
}

}  // namespace

void add_prose(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk) {
  const int above = level + 1 - highest_heading(blocks);
  for (const score::Block& block : blocks) walk.pieces.push_back(piece_of(block, above, phrases));
}

void add_note(const score::Blocks& blocks, int level, const Phrases& phrases, Walk& walk) {
  const std::size_t first = walk.pieces.size();
  add_prose(blocks, level, phrases, walk);
  if (walk.pieces.size() == first) return;
  Piece& head = walk.pieces[first];
  if (head.kind == Piece::Kind::paragraph) head.kind = Piece::Kind::item;
  // What begins with a heading, or with lines as they stand, is no item.
  if (head.kind != Piece::Kind::item) return;
  for (std::size_t i = first; i < walk.pieces.size(); ++i) ++walk.pieces[i].depth;
}

}  // namespace fretsheaf::spoken
