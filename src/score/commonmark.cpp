#include "score/commonmark.h"

#include <cmark.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace fretsheaf::score {
namespace {

struct Free {
  void operator()(cmark_node* node) const { cmark_node_free(node); }
  void operator()(cmark_iter* iter) const { cmark_iter_free(iter); }
};

std::string_view view(const char* text) {
  return text != nullptr ? std::string_view(text) : std::string_view();
}

// A tab between words is white space like any other (CommonMark 0.30, 2.2).
std::string with_spaces(std::string text) {
  std::replace(text.begin(), text.end(), '\t', ' ');
  return text;
}

// In code it leads to the next of the columns that are four characters apart, as it does where blocks begin.
std::string with_columns(std::string_view text) {
  constexpr std::size_t apart = 4;
  std::string out;
  std::size_t column = 0;
  for (const char c : text) {
    const std::size_t blanks = c == '\t' ? apart - column % apart : 0;
    out += blanks > 0 ? std::string(blanks, ' ') : std::string(1, c);
    const bool continues = (static_cast<unsigned char>(c) & 0xC0) == 0x80;
    column = c == '\n' ? 0 : column + (blanks > 0 ? blanks : continues ? 0 : 1);
  }
  return out;
}

// A block says no more of what it lies in; no page shows it.
constexpr std::size_t deepest_nesting = 32;

// Walks the tree without recursion, so that deep nesting costs no stack.
class Reader {
 public:
  Reader(std::string_view text, const Fill& fill) : fill_(fill) {
    root_.reset(cmark_parse_document(text.data(), text.size(), CMARK_OPT_VALIDATE_UTF8));
    cmark_consolidate_text_nodes(root_.get());
  }

  Blocks read() {
    const std::unique_ptr<cmark_iter, Free> iter(cmark_iter_new(root_.get()));
    for (cmark_event_type event = cmark_iter_next(iter.get()); event != CMARK_EVENT_DONE;
         event = cmark_iter_next(iter.get())) {
      cmark_node* node = cmark_iter_get_node(iter.get());
      const bool enter = event == CMARK_EVENT_ENTER;
      if (!on_block(node, enter)) on_inline(node, enter);
    }
    return std::move(blocks_);
  }

 private:
  struct Item {
    std::optional<int> ordinal;
    bool loose = false;
    bool begun = false;  // its mark has been given to a block
  };
  struct List {
    std::optional<int> next;  // its next item's number; none for bullets
    bool loose = false;
  };

  bool on_block(cmark_node* node, bool enter) {
    switch (cmark_node_get_type(node)) {
      case CMARK_NODE_DOCUMENT:
        return true;
      case CMARK_NODE_BLOCK_QUOTE:
        on_quote(enter);
        return true;
      case CMARK_NODE_LIST:
        on_list(node, enter);
        return true;
      case CMARK_NODE_ITEM:
        on_item(enter);
        return true;
      case CMARK_NODE_PARAGRAPH:
        if (enter) open_paragraph();
        return true;
      case CMARK_NODE_HEADING:
        if (enter) open(Block::Kind::heading).level = cmark_node_get_heading_level(node);
        return true;
      case CMARK_NODE_THEMATIC_BREAK:
        open(Block::Kind::rule);
        return true;
      case CMARK_NODE_CODE_BLOCK:
      case CMARK_NODE_HTML_BLOCK:
        on_literal_block(node);
        return true;
      default:
        return false;
    }
  }

  void enter(Container container) {
    inside_.push_back(container);
    ++opened_;
  }
  void leave() {
    inside_.pop_back();
    opened_ = std::max(0, opened_ - 1);
  }

  void on_quote(bool enters) {
    if (!enters) return leave();
    begin_item();
    enter(Container::quote);
  }

  void on_list(cmark_node* node, bool enters) {
    if (!enters) {
      lists_.pop_back();
      return leave();
    }
    begin_item();
    List list;
    list.loose = cmark_node_get_list_tight(node) == 0;
    if (cmark_node_get_list_type(node) == CMARK_ORDERED_LIST) list.next = cmark_node_get_list_start(node);
    lists_.push_back(list);
    enter(Container::list);
  }

  void on_item(bool enters) {
    if (!enters) {
      begin_item();  // of an item with nothing in it
      items_.pop_back();
      return;
    }
    List& list = lists_.back();
    items_.push_back({list.next, list.loose, false});
    if (list.next) ++*list.next;
  }

  // Gives an item's mark to a block of its own where none has it yet.
  void begin_item() {
    if (!items_.empty() && !items_.back().begun) open_paragraph();
  }

  void open_paragraph() {
    if (items_.empty() || items_.back().begun) {
      add_block(Block::Kind::paragraph);
      return;
    }
    Item& item = items_.back();
    item.begun = true;
    Block& block = add_block(Block::Kind::list_item);
    block.ordinal = item.ordinal;
    block.loose = item.loose;
  }

  Block& open(Block::Kind kind) {
    begin_item();
    return add_block(kind);
  }

  Block& add_block(Block::Kind kind) {
    Block& block = blocks_.emplace_back();
    block.kind = kind;
    const std::size_t depth = std::min(inside_.size(), deepest_nesting);
    block.inside.assign(inside_.begin(), inside_.begin() + static_cast<std::ptrdiff_t>(depth));
    block.opens = std::min(opened_, static_cast<int>(depth));
    opened_ = 0;
    return block;
  }

  void on_literal_block(cmark_node* node) {
    const bool code = cmark_node_get_type(node) == CMARK_NODE_CODE_BLOCK;
    if (code) {
      open(Block::Kind::code);
    } else {
      open_paragraph();
    }
    std::string_view text = view(cmark_node_get_literal(node));
    while (text.ends_with('\n')) text.remove_suffix(1);
    add(code ? with_columns(fill_(text)) : fill_(text), code);
  }

  void on_inline(cmark_node* node, bool enter) {
    switch (cmark_node_get_type(node)) {
      case CMARK_NODE_EMPH:
        emphasis_ += enter ? 1 : -1;
        break;
      case CMARK_NODE_STRONG:
        strong_ += enter ? 1 : -1;
        break;
      case CMARK_NODE_LINK:
        link_ = enter ? std::optional<std::string>(view(cmark_node_get_url(node))) : std::nullopt;
        break;
      case CMARK_NODE_SOFTBREAK:
        add(" ", false);
        break;
      case CMARK_NODE_LINEBREAK:
        add("\n", false);
        break;
      case CMARK_NODE_CODE:
        add(fill_(view(cmark_node_get_literal(node))), true);
        break;
      case CMARK_NODE_TEXT:
      case CMARK_NODE_HTML_INLINE:
        add(fill_(view(cmark_node_get_literal(node))), false);
        break;
      default:
        break;
    }
  }

  void add(std::string text, bool code) {
    Runs& runs = blocks_.back().runs;
    Run run{with_spaces(std::move(text)), emphasis_ > 0, strong_ > 0, code, link_};
    if (!runs.empty()) {
      const std::string text_before = std::exchange(runs.back().text, run.text);
      const bool alike = runs.back() == run;
      runs.back().text = alike ? text_before + run.text : text_before;
      if (alike) return;
    }
    if (!run.text.empty()) runs.push_back(std::move(run));
  }

  const Fill& fill_;
  std::unique_ptr<cmark_node, Free> root_;
  Blocks blocks_;
  std::vector<Container> inside_;
  int opened_ = 0;  // containers since the last block
  std::vector<List> lists_;
  std::vector<Item> items_;
  int emphasis_ = 0;
  int strong_ = 0;
  std::optional<std::string> link_;
};

}  // namespace

Blocks read_blocks(std::string_view text, const Fill& fill) {
  return Reader(text, fill).read();
}

Runs read_title(std::string_view text, const Fill& fill) {
  // A no-break space in front keeps signs from being a block's, and as white space leaves emphasis as it is.
  constexpr std::string_view guard = "\u00A0";
  std::string line(guard);
  line += text;
  std::replace(line.begin(), line.end(), '\n', ' ');
  Runs runs;
  for (Block& block : read_blocks(line, fill)) runs.insert(runs.end(), block.runs.begin(), block.runs.end());
  if (!runs.empty() && runs.front().text.starts_with(guard)) runs.front().text.erase(0, guard.size());
  if (!runs.empty() && runs.front().text.empty()) runs.erase(runs.begin());
  return runs;
}

std::string plain(const Runs& runs) {
  std::string text;
  for (const Run& run : runs) text += run.text;
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

}  // namespace fretsheaf::score
