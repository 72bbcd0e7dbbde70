#include <string>
#include <string_view>

#include "spoken/spoken.h"

namespace fretsheaf::spoken {
namespace {

void add_escaped(std::string_view text, std::string& html) {
  for (const char c : text) {
    switch (c) {
      case '&':
        html += "&amp;";
        break;
      case '<':
        html += "&lt;";
        break;
      case '>':
        html += "&gt;";
        break;
      case '"':
        html += "&quot;";
        break;
      default:
        html += c;
    }
  }
}

void add_run(const score::Run& run, std::string& html) {
  if (run.link) {
    html += "<a href=\"";
    add_escaped(*run.link, html);
    html += "\">";
  }
  if (run.strong) html += "<strong>";
  if (run.emphasis) html += "<em>";
  if (run.code) html += "<code>";
  for (std::string_view text = run.text; !text.empty();) {
    const auto end = run.code ? std::string_view::npos : text.find('\n');
    add_escaped(text.substr(0, end), html);
    if (end == std::string_view::npos) break;
    html += "<br>\n";
    text.remove_prefix(end + 1);
  }
  if (run.code) html += "</code>";
  if (run.emphasis) html += "</em>";
  if (run.strong) html += "</strong>";
  if (run.link) html += "</a>";
}

void add_element(std::string_view name, const score::Runs& runs, std::string& html) {
  html += '<';
  html += name;
  html += '>';
  for (const score::Run& run : runs) add_run(run, html);
  html += "</";
  html += name;
  html += ">\n";
}

void add_lines(const Piece& piece, std::string& html) {
  html += "<p>";
  for (std::size_t i = 0; i < piece.cells.size(); ++i) {
    if (i > 0) html += "<br>\n";
    add_escaped(piece.cells[i], html);
  }
  html += "</p>\n";
}

void add_table(const Piece& piece, std::string& html) {
  html += "<table>\n<caption>";
  for (const score::Run& run : piece.runs) add_run(run, html);
  html += "</caption>\n<tr>";
  for (const std::string& cell : piece.cells) {
    html += "<th scope=\"col\">";
    add_escaped(cell, html);
    html += "</th>";
  }
  html += "</tr>\n";
  for (int row = 0; row < piece.rows; ++row) {
    html += "<tr>";
    for (std::size_t i = 0; i < piece.cells.size(); ++i) html += "<td></td>";
    html += "</tr>\n";
  }
  html += "</table>\n";
}

// The document's body: lists that lie in each other, and quotes, are open from their first piece to their last.
class Body {
 public:
  explicit Body(std::string& html) : html_(html) {}

  void add(const Piece& piece) {
    if (piece.quoted != quoted_) {
      close_lists(0);
      html_ += piece.quoted ? "<blockquote>\n" : "</blockquote>\n";
      quoted_ = piece.quoted;
    }
    close_lists(static_cast<std::size_t>(piece.depth));
    if (piece.kind == Piece::Kind::item) begin_item(piece);
    add_piece(piece);
  }

  void end() {
    close_lists(0);
    if (quoted_) html_ += "</blockquote>\n";
  }

 private:
  void begin_item(const Piece& piece) {
    const std::string_view list = piece.ordinal ? "ol" : "ul";
    const auto depth = static_cast<std::size_t>(piece.depth);
    if (lists_.size() == depth && (piece.begins_list || lists_.back() != list)) close_lists(depth - 1);
    if (lists_.size() == depth) html_ += "</li>\n<li>";
    while (lists_.size() < depth) {
      open_list(list, piece);
      html_ += "<li>";
    }
  }

  void open_list(std::string_view list, const Piece& piece) {
    html_ += '<';
    html_ += list;
    if (piece.ordinal && *piece.ordinal != 1) html_ += " start=\"" + std::to_string(*piece.ordinal) + '"';
    html_ += ">\n";
    lists_.push_back(list);
  }

  // All that lie deeper.
  void close_lists(std::size_t depth) {
    while (lists_.size() > depth) {
      html_ += "</li>\n</";
      html_ += lists_.back();
      html_ += ">\n";
      lists_.pop_back();
    }
  }

  void add_piece(const Piece& piece) {
    switch (piece.kind) {
      case Piece::Kind::heading:
        return add_element("h" + std::to_string(piece.level), piece.runs, html_);
      case Piece::Kind::paragraph:
        return add_element("p", piece.runs, html_);
      case Piece::Kind::item:
        for (const score::Run& run : piece.runs) add_run(run, html_);
        return;
      case Piece::Kind::code:
        return add_element("pre", piece.runs, html_);
      case Piece::Kind::lines:
        return add_lines(piece, html_);
      case Piece::Kind::table:
        return add_table(piece, html_);
      case Piece::Kind::divider:
        html_ += "<hr>\n";
    }
  }

  std::string& html_;
  std::vector<std::string_view> lists_;  // that are open, the outermost first
  bool quoted_ = false;
};

}  // namespace

std::string as_html(const Walk& walk) {
  std::string html =
      "<!DOCTYPE html>\n<html lang=\"" + walk.language + "\">\n<head>\n<meta charset=\"utf-8\">\n<title>";
  add_escaped(walk.title, html);
  html += "</title>\n</head>\n<body>\n<main>\n";
  Body body(html);
  for (const Piece& piece : walk.pieces) body.add(piece);
  body.end();
  html += "</main>\n</body>\n</html>\n";
  return html;
}

}  // namespace fretsheaf::spoken
