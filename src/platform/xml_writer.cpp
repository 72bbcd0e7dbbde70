#include "platform/xml_writer.h"

#include "platform/xml_document.h"

namespace fretsheaf::platform {
namespace {

void append_escaped(std::string& out, std::string_view text, bool in_quotes) {
  for (const char c : text) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"' && in_quotes) {
      out += "&quot;";
    } else if (c == '\'' && in_quotes) {
      out += "&apos;";
    } else {
      out += c;
    }
  }
}

void write(XmlWriter& writer, const XmlElement& element) {
  writer.open(element.name);
  for (const XmlAttribute& attribute : element.attributes) writer.attribute(attribute.name, attribute.value);
  if (!element.text.empty()) writer.text(element.text);
  for (const XmlElement& child : element.children) write(writer, child);
  writer.close();
}

}  // namespace

std::string xml_escaped(std::string_view text) {
  std::string out;
  append_escaped(out, text, false);
  return out;
}

XmlWriter::XmlWriter(std::size_t indent) : indent_(indent), out_(R"(<?xml version="1.0" encoding="UTF-8"?>)") {}

void XmlWriter::open(std::string_view name) {
  end_tag();
  const bool has_text = !open_.empty() && open_.back().has_text;
  if (!has_text) begin_line();
  out_.append("<").append(name);
  open_.push_back({std::string(name), has_text});
  in_tag_ = true;
}

void XmlWriter::attribute(std::string_view name, std::string_view value) {
  out_.append(" ").append(name).append("=\"");
  append_escaped(out_, value, true);
  out_ += '"';
}

void XmlWriter::text(std::string_view text) {
  end_tag();
  open_.back().has_text = true;
  append_escaped(out_, text, false);
}

void XmlWriter::close() {
  const Open own = std::move(open_.back());
  open_.pop_back();
  if (in_tag_) {
    out_ += "/>";
  } else {
    if (!own.has_text) begin_line();
    out_.append("</").append(own.name).append(">");
  }
  in_tag_ = false;
  if (open_.empty()) out_ += '\n';
}

void XmlWriter::end_tag() {
  if (in_tag_) out_ += '>';
  in_tag_ = false;
}

void XmlWriter::begin_line() {
  out_ += '\n';
  out_.append(indent_ * open_.size(), ' ');
}

std::string xml_written(const XmlElement& root) {
  constexpr std::size_t indent = 4;
  XmlWriter writer(indent);
  write(writer, root);
  return writer.take();
}

}  // namespace fretsheaf::platform
