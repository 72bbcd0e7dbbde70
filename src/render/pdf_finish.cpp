#include "render/pdf_finish.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "render/pdf_file.h"
#include "render/pdf_metadata.h"
#include "render/pdf_tags.h"

namespace fretsheaf::render {
namespace {

using Object = PdfFile::Object;

class Finish {
 public:
  Finish(PdfFile& file, const sheet::Sheet& sheet, const Structure& structure)
      : file_(file), sheet_(sheet), structure_(structure) {}

  void run();

 private:
  void tree();
  void say_figure(Object object, const Element& element);
  Object kids(std::size_t index);
  Object content(const Content& content, int own_page);
  Object annotation(const Area& area, const std::string& uri, Object element);
  bool is_told(std::size_t index) const;
  void parent_tree(Object root);
  void pages();
  void catalog();

  double up(int page, double y) const { return sheet_.pages[static_cast<std::size_t>(page)].height - y; }
  Object rectangle(int page, const sheet::Box& box);

  PdfFile& file_;
  const sheet::Sheet& sheet_;
  const Structure& structure_;
  std::vector<Object> pages_;
  std::vector<Object> elements_;
  std::vector<std::vector<Object>> annotations_;  // of each page
  std::vector<Object> of_annotations_;            // the elements of all, in the order of their keys
};

// Elements that hold nothing are left out, but for the cells that are there to be written in.
bool Finish::is_told(std::size_t index) const {
  const Element& element = structure_.elements[index];
  if (element.tag == sheet::Tag::table_cell) return true;
  return std::ranges::any_of(element.kids, [&](const auto& kid) {
    const auto* child = std::get_if<std::size_t>(&kid);
    return child == nullptr || is_told(*child);
  });
}

Object Finish::rectangle(int page, const sheet::Box& box) {
  const Object rectangle = file_.array();
  for (const double side : {box.left, up(page, box.bottom), box.right, up(page, box.top)}) {
    file_.append(rectangle, file_.length(side));
  }
  return rectangle;
}

// Of a kid on another page than the rest of its element, the page is said too.
Object Finish::content(const Content& content, int own_page) {
  if (content.page == own_page) return file_.number(content.number);
  const Object reference = file_.dictionary();
  file_.set(reference, "/Type", file_.name("/MCR"));
  file_.set(reference, "/Pg", pages_[static_cast<std::size_t>(content.page)]);
  file_.set(reference, "/MCID", file_.number(content.number));
  return reference;
}

Object Finish::annotation(const Area& area, const std::string& uri, Object element) {
  const auto page = static_cast<std::size_t>(area.page);
  const Object action = file_.dictionary();
  file_.set(action, "/S", file_.name("/URI"));
  file_.set(action, "/URI", file_.ascii(uri));
  const Object border = file_.dictionary();
  file_.set(border, "/W", file_.number(0));
  const Object made = file_.dictionary();
  file_.set(made, "/Type", file_.name("/Annot"));
  file_.set(made, "/Subtype", file_.name("/Link"));
  file_.set(made, "/Rect", rectangle(area.page, area.box));
  file_.set(made, "/F", file_.number(4));  // is printed
  file_.set(made, "/BS", border);
  file_.set(made, "/A", action);
  file_.set(made, "/Contents", file_.text(uri));
  // Keys of the parent tree: first the pages', then the annotations'.
  file_.set(made, "/StructParent", file_.number(static_cast<int>(pages_.size() + of_annotations_.size())));
  const Object object = file_.indirect(made);
  annotations_[page].push_back(object);
  of_annotations_.push_back(element);
  const Object reference = file_.dictionary();
  file_.set(reference, "/Type", file_.name("/OBJR"));
  file_.set(reference, "/Pg", pages_[page]);
  file_.set(reference, "/Obj", object);
  return reference;
}

Object Finish::kids(std::size_t index) {
  const Element& element = structure_.elements[index];
  const Object object = elements_[index];
  const Object kids = file_.array();
  int own_page = -1;
  for (const auto& kid : element.kids) {
    if (const auto* child = std::get_if<std::size_t>(&kid)) {
      if (!is_told(*child)) continue;
      file_.set(elements_[*child], "/P", object);
      file_.append(kids, elements_[*child]);
    } else if (const auto* marked = std::get_if<Content>(&kid)) {
      if (own_page < 0) {
        own_page = marked->page;
        file_.set(object, "/Pg", pages_[static_cast<std::size_t>(own_page)]);
      }
      file_.append(kids, content(*marked, own_page));
    } else {
      file_.append(kids, annotation(std::get<Area>(kid), element.uri, object));
    }
  }
  return kids;
}

void Finish::say_figure(Object object, const Element& element) {
  if (!element.alternative.empty()) file_.set(object, "/Alt", file_.text(element.alternative));
  if (element.boxes.size() != 1) return;
  const auto& [page, box] = element.boxes.front();
  const Object attributes = file_.dictionary();
  file_.set(attributes, "/O", file_.name("/Layout"));
  file_.set(attributes, "/BBox", rectangle(page, box));
  file_.set(object, "/A", attributes);
}

// The headers of a ladder's rows, and of a log's columns: a row that has cells too is named by its header.
const char* scope_of(const Structure& structure, const Element& row) {
  const bool cells = std::ranges::any_of(row.kids, [&](const auto& kid) {
    const auto* child = std::get_if<std::size_t>(&kid);
    return child != nullptr && structure.elements[*child].tag == sheet::Tag::table_cell;
  });
  return cells ? "/Row" : "/Column";
}

void Finish::tree() {
  const Object root = file_.indirect(file_.dictionary());
  file_.set(root, "/Type", file_.name("/StructTreeRoot"));
  for (const Element& element : structure_.elements) {
    const Object made = file_.dictionary();
    file_.set(made, "/Type", file_.name("/StructElem"));
    file_.set(made, "/S", file_.name((std::string("/") + structure_type(element.tag)).c_str()));
    elements_.push_back(file_.indirect(made));
  }
  file_.set(elements_.front(), "/P", root);
  file_.set(root, "/K", elements_.front());
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    const Element& element = structure_.elements[i];
    if (i > 0 && !is_told(i)) continue;
    if (!element.kids.empty()) file_.set(elements_[i], "/K", kids(i));
    if (element.tag == sheet::Tag::figure) say_figure(elements_[i], element);
    if (element.tag != sheet::Tag::table_row) continue;
    for (const auto& kid : element.kids) {
      const auto* child = std::get_if<std::size_t>(&kid);
      if (child == nullptr || structure_.elements[*child].tag != sheet::Tag::table_header) continue;
      const Object attributes = file_.dictionary();
      file_.set(attributes, "/O", file_.name("/Table"));
      file_.set(attributes, "/Scope", file_.name(scope_of(structure_, element)));
      file_.set(elements_[*child], "/A", attributes);
    }
  }
  parent_tree(root);
  file_.set(file_.root(), "/StructTreeRoot", root);
}

void Finish::parent_tree(Object root) {
  const Object numbers = file_.array();
  int key = 0;
  for (const auto& owners : structure_.owners) {
    const Object of_page = file_.array();
    for (const auto& owner : owners) file_.append(of_page, owner ? elements_[*owner] : file_.null());
    file_.append(numbers, file_.number(key++));
    file_.append(numbers, file_.indirect(of_page));
  }
  for (const Object element : of_annotations_) {
    file_.append(numbers, file_.number(key++));
    file_.append(numbers, element);
  }
  const Object tree = file_.dictionary();
  file_.set(tree, "/Nums", numbers);
  file_.set(root, "/ParentTree", file_.indirect(tree));
  file_.set(root, "/ParentTreeNextKey", file_.number(key));
}

// cairo writes an operator a line: "/NonStruct << /MCID 3 >> BDC".
std::string with_artifacts(const std::string& drawing) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 2> tags = {{
      {"/NonStruct << /MCID ", "/Artifact << /Type /Layout >> BDC"},
      {"/Private << /MCID ", "/Artifact << /Type /Pagination >> BDC"},
  }};
  std::string out;
  out.reserve(drawing.size() + 4096);
  for (std::size_t at = 0; at < drawing.size();) {
    const std::size_t end = std::min(drawing.find('\n', at), drawing.size() - 1) + 1;
    const std::string_view line = std::string_view(drawing).substr(at, end - at);
    const auto* const tag = std::ranges::find_if(tags, [&](const auto& one) { return line.starts_with(one.first); });
    if (tag == tags.end()) {
      out += line;
    } else {
      (out += tag->second) += '\n';
    }
    at = end;
  }
  return out;
}

void Finish::pages() {
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const Object page = pages_[i];
    file_.set_drawing(page, with_artifacts(file_.drawing(page)));
    file_.set(page, "/StructParents", file_.number(static_cast<int>(i)));
    file_.set(page, "/Tabs", file_.name("/S"));
    if (annotations_[i].empty()) continue;
    const Object all = file_.array();
    for (const Object annotation : annotations_[i]) file_.append(all, annotation);
    file_.set(page, "/Annots", all);
  }
}

void Finish::catalog() {
  const Object root = file_.root();
  if (!sheet_.language.empty()) file_.set(root, "/Lang", file_.ascii(sheet_.language));
  const Object marks = file_.dictionary();
  file_.set(marks, "/Marked", file_.yes());
  file_.set(root, "/MarkInfo", marks);
  const Object view = file_.dictionary();
  file_.set(view, "/DisplayDocTitle", file_.yes());
  file_.set(root, "/ViewerPreferences", view);
  const Object metadata = file_.stream(pdf_metadata(sheet_, is_universal(sheet_, structure_)));
  file_.set(file_.dictionary_of(metadata), "/Type", file_.name("/Metadata"));
  file_.set(file_.dictionary_of(metadata), "/Subtype", file_.name("/XML"));
  file_.set(root, "/Metadata", metadata);
}

void Finish::run() {
  for (int i = 0; i < static_cast<int>(structure_.owners.size()); ++i) pages_.push_back(file_.page(i));
  annotations_.resize(pages_.size());
  // cairo leaves out how its glyphs are numbered, which is as they come (ISO 14289-1, 7.21.3.2).
  file_.for_each_cid_font([&](Object font) { file_.set(font, "/CIDToGIDMap", file_.name("/Identity")); });
  tree();
  pages();
  catalog();
}

}  // namespace

std::optional<std::string> finish_pdf(const std::string& drawn, const sheet::Sheet& sheet, const Structure& structure) {
  const QpdfLibrary* const qpdf = qpdf_library();
  if (qpdf == nullptr) return std::nullopt;
  PdfFile file(*qpdf, drawn);
  if (!file.good()) return std::nullopt;
  Finish(file, sheet, structure).run();
  return file.written();
}

}  // namespace fretsheaf::render
