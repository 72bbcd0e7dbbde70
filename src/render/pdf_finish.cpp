#include "render/pdf_finish.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "render/cairo_pdf.h"
#include "render/pdf_metadata.h"
#include "render/pdf_syntax.h"
#include "render/pdf_tags.h"

namespace fretsheaf::render {
namespace {

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

// The headers of a ladder's rows, and of a log's columns: a row that has cells too is named by its header.
const char* scope_in(const Structure& structure, const Element& row) {
  const bool cells = std::ranges::any_of(row.kids, [&](const auto& kid) {
    const auto* child = std::get_if<std::size_t>(&kid);
    return child != nullptr && structure.elements[*child].tag == sheet::Tag::table_cell;
  });
  return cells ? "/Row" : "/Column";
}

class Finish {
 public:
  Finish(CairoPdf& file, const sheet::Sheet& sheet, const Structure& structure)
      : file_(file), sheet_(sheet), structure_(structure) {}

  // False where the file is not as `structure` has it.
  bool run();

 private:
  void drop_cairos_own();
  void tree();
  void element(std::size_t index, int parent, const std::string& more);
  std::string kids(std::size_t index, std::string& page);
  std::string content(const Content& content, int own_page) const;
  std::string annotation(const Area& area, std::size_t element);
  std::string figure(const Element& element) const;
  bool is_told(std::size_t index) const;
  int parent_tree();
  bool pages();
  void catalog();

  int page_object(int page) const { return file_.pages()[static_cast<std::size_t>(page)]; }
  std::string rectangle(int page, const sheet::Box& box) const;

  CairoPdf& file_;
  const sheet::Sheet& sheet_;
  const Structure& structure_;
  std::vector<int> elements_;                // their objects
  std::vector<std::string> annotations_;     // of each page, references
  std::vector<std::size_t> of_annotations_;  // the elements of all, in the order of their keys
  int root_ = 0;
};

// The structure that cairo makes of the marks.
void Finish::drop_cairos_own() {
  std::vector<int> own;
  for (int i = 1; i < file_.objects(); ++i) {
    if (file_.body(i).starts_with("<< /Type /StructElem\n")) own.push_back(i);
  }
  if (const std::optional<int> root = file_.number_of(file_.catalog(), "/StructTreeRoot")) {
    own.push_back(*root);
    if (const std::optional<int> parents = file_.number_of(*root, "/ParentTree")) own.push_back(*parents);
  }
  std::ranges::for_each(own, [&](int object) { file_.drop(object); });
}

// Elements that hold nothing are left out, but for the cells that are there to be written in.
bool Finish::is_told(std::size_t index) const {
  const Element& element = structure_.elements[index];
  if (element.tag == sheet::Tag::table_cell) return true;
  return std::ranges::any_of(element.kids, [&](const auto& kid) {
    const auto* child = std::get_if<std::size_t>(&kid);
    return child == nullptr || is_told(*child);
  });
}

std::string Finish::rectangle(int page, const sheet::Box& box) const {
  const double height = sheet_.pages[static_cast<std::size_t>(page)].height;
  return "[" + pdf_number(box.left) + " " + pdf_number(height - box.bottom) + " " + pdf_number(box.right) + " " +
         pdf_number(height - box.top) + "]";
}

// Of a kid on another page than the rest of its element, the page is said too.
std::string Finish::content(const Content& content, int own_page) const {
  std::string number = std::to_string(content.number);
  if (content.page == own_page) return number;
  return "<< /Type /MCR /Pg " + pdf_reference(page_object(content.page)) + " /MCID " + number + " >>";
}

std::string Finish::annotation(const Area& area, std::size_t element) {
  const std::string& uri = structure_.elements[element].uri;
  // Keys of the parent tree: first the pages', then the annotations'.
  const std::size_t key = file_.pages().size() + of_annotations_.size();
  // To be printed (4), as what the page is.
  const int object =
      file_.add("<< /Type /Annot\n   /Subtype /Link\n   /Rect " + rectangle(area.page, area.box) +
                "\n   /F 4\n   /BS << /W 0 >>\n   /A << /S /URI /URI " + pdf_ascii(uri) + " >>\n   /Contents " +
                pdf_ascii(uri) + "\n   /StructParent " + std::to_string(key) + "\n>>\n");
  annotations_[static_cast<std::size_t>(area.page)] += " " + pdf_reference(object);
  of_annotations_.push_back(element);
  return "<< /Type /OBJR /Pg " + pdf_reference(page_object(area.page)) + " /Obj " + pdf_reference(object) + " >>";
}

std::string Finish::figure(const Element& element) const {
  std::string said;
  if (!element.alternative.empty()) said += "   /Alt " + pdf_text(element.alternative) + "\n";
  if (element.boxes.size() != 1) return said;
  const auto& [page, box] = element.boxes.front();
  return said += "   /A << /O /Layout /BBox " + rectangle(page, box) + " >>\n";
}

// Writes the elements below this one, and says all that it holds. `page` becomes its line of the page where it begins.
std::string Finish::kids(std::size_t index, std::string& page) {
  const Element& element = structure_.elements[index];
  const bool is_row = element.tag == sheet::Tag::table_row;
  const std::string scope = is_row ? scope_in(structure_, element) : "";
  std::string said;
  int own_page = -1;
  for (const auto& kid : element.kids) {
    if (const auto* child = std::get_if<std::size_t>(&kid)) {
      if (!is_told(*child)) continue;
      const bool header = structure_.elements[*child].tag == sheet::Tag::table_header;
      this->element(*child, elements_[index], header ? "   /A << /O /Table /Scope " + scope + " >>\n" : "");
      said += " " + pdf_reference(elements_[*child]);
    } else if (const auto* marked = std::get_if<Content>(&kid)) {
      if (own_page < 0) {
        own_page = marked->page;
        page = "   /Pg " + pdf_reference(page_object(own_page)) + "\n";
      }
      said += " " + content(*marked, own_page);
    } else {
      said += " " + annotation(std::get<Area>(kid), index);
    }
  }
  return said;
}

void Finish::element(std::size_t index, int parent, const std::string& more) {
  const Element& element = structure_.elements[index];
  std::string page;
  const std::string held = kids(index, page);
  std::string body = "<< /Type /StructElem\n   /S /";
  body += structure_type(element.tag);
  body += "\n   /P " + pdf_reference(parent) + "\n" + page + more;
  if (!held.empty()) body += "   /K [" + held + " ]\n";
  if (element.tag == sheet::Tag::figure) body += figure(element);
  file_.set(elements_[index], body + ">>\n");
}

void Finish::tree() {
  root_ = file_.add();
  for (std::size_t i = 0; i < structure_.elements.size(); ++i) {
    elements_.push_back(i == 0 || is_told(i) ? file_.add() : 0);
  }
  element(0, root_, "");
  const std::size_t keys = file_.pages().size() + of_annotations_.size();
  file_.set(root_, "<< /Type /StructTreeRoot\n   /K " + pdf_reference(elements_.front()) + "\n   /ParentTree " +
                       pdf_reference(parent_tree()) + "\n   /ParentTreeNextKey " + std::to_string(keys) + "\n>>\n");
}

int Finish::parent_tree() {
  std::string tree = "<< /Nums [\n";
  int key = 0;
  for (const auto& owners : structure_.owners) {
    std::string of_page = "[";
    for (const auto& owner : owners) of_page += owner ? " " + pdf_reference(elements_[*owner]) : " null";
    tree += "   " + std::to_string(key++) + " " + pdf_reference(file_.add(of_page + " ]\n")) + "\n";
  }
  for (const std::size_t element : of_annotations_) {
    tree += "   " + std::to_string(key++) + " " + pdf_reference(elements_[element]) + "\n";
  }
  return file_.add(tree + "] >>\n");
}

bool Finish::pages() {
  for (std::size_t i = 0; i < file_.pages().size(); ++i) {
    const int page = file_.pages()[i];
    const std::optional<int> drawing = file_.number_of(page, "/Contents");
    const std::optional<std::string> bytes = drawing ? file_.unpacked(*drawing) : std::nullopt;
    if (!bytes) return false;
    if (const std::optional<int> length = file_.number_of(*drawing, "/Length")) file_.drop(*length);
    file_.pack(*drawing, with_artifacts(*bytes));
    file_.set_key(page, "/StructParents", std::to_string(i));
    file_.set_key(page, "/Tabs", "/S");
    if (!annotations_[i].empty()) file_.set_key(page, "/Annots", "[" + annotations_[i] + " ]");
  }
  return true;
}

void Finish::catalog() {
  const int catalog = file_.catalog();
  file_.set_key(catalog, "/StructTreeRoot", pdf_reference(root_));
  file_.set_key(catalog, "/MarkInfo", "<< /Marked true >>");
  file_.set_key(catalog, "/ViewerPreferences", "<< /DisplayDocTitle true >>");
  if (!sheet_.language.empty()) file_.set_key(catalog, "/Lang", pdf_text(sheet_.language));
  const std::string metadata = pdf_metadata(sheet_, is_universal(sheet_, structure_));
  file_.set_key(
      catalog, "/Metadata",
      pdf_reference(file_.add("<< /Type /Metadata\n   /Subtype /XML\n   /Length " + std::to_string(metadata.size()) +
                              "\n>>\nstream\n" + metadata + "\nendstream\n")));
}

bool Finish::run() {
  if (file_.pages().size() != structure_.owners.size()) return false;
  annotations_.resize(file_.pages().size());
  drop_cairos_own();
  // cairo leaves out how its glyphs are numbered, which is as they come (ISO 14289-1, 7.21.3.2).
  for (int i = 1; i < file_.objects(); ++i) {
    if (file_.body(i).find("/Subtype /CIDFontType2\n") < 64) file_.set_key(i, "/CIDToGIDMap", "/Identity");
  }
  tree();
  if (!pages()) return false;
  catalog();
  return true;
}

}  // namespace

std::optional<std::string> finish_pdf(const std::string& drawn, const sheet::Sheet& sheet, const Structure& structure) {
  std::optional<CairoPdf> file = CairoPdf::read(drawn);
  if (!file || !Finish(*file, sheet, structure).run()) return std::nullopt;
  return file->written();
}

}  // namespace fretsheaf::render
