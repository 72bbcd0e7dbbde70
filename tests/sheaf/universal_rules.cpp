#include "sheaf/universal_rules.h"

#include <algorithm>
#include <map>
#include <qpdf/QPDFNumberTreeObjectHelper.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <set>

#include "sheaf/universal_drawing.h"

namespace fretsheaf::test {
namespace {

using Object = QPDFObjectHandle;

const std::set<std::string> block_types = {"/Document", "/P",      "/H1",    "/H2",   "/H3",        "/L",
                                           "/LI",       "/Lbl",    "/LBody", "/TR",   "/TH",        "/TD",
                                           "/Table",    "/Figure", "/Span",  "/Link", "/BlockQuote"};

std::string id_of(Object object) {
  return object.getObjGen().unparse();
}

bool has_text(Object object) {
  return object.isString() && !object.getUTF8Value().empty();
}

// Calls visit for each of what a key holds: one thing or an array of them.
template <typename Visit>
void each(Object kids, Visit&& visit) {
  if (kids.isArray()) {
    for (Object kid : kids.getArrayAsVector()) visit(kid);
  } else if (!kids.isNull()) {
    visit(kids);
  }
}

class Rules {
 public:
  explicit Rules(QPDF& pdf) : pdf_(pdf), root_(pdf.getRoot()) {}

  std::vector<std::string> all() {
    catalog();
    number_pages();
    tree();
    for (std::size_t i = 0; i < pages_.size(); ++i) page(i);
    fonts();
    return std::move(said_);
  }

 private:
  void say(const std::string& what) { said_.push_back(what); }
  void require(bool kept, const std::string& what) {
    if (!kept) say(what);
  }

  void catalog();
  void metadata();
  void number_pages();
  void tree();
  void element(Object element, Object parent);
  void kid(Object kid, Object element, const std::string& own_page);
  void kinds_of_kids(Object element, const std::string& type);
  void table_header(Object element);
  void heading(const std::string& type);
  void page(std::size_t index);
  void contents(std::size_t index, Object page);
  void annotations(Object page);
  void fonts();
  void font(Object font);
  Object parent_of(Object key);

  QPDF& pdf_;
  Object root_;
  std::vector<std::string> said_;
  std::vector<Object> pages_;
  std::map<std::string, std::size_t> page_numbers_;               // by the page's object
  std::map<std::pair<std::size_t, long long>, Object> contents_;  // by page and MCID: whose it is
  std::map<std::string, Object> referred_;                        // annotations that the tree holds, and whose
  int level_ = 0;
};

// ISO 14289-1, 7.1 and 7.2; ISO 32000-1, 14.7.1.
void Rules::catalog() {
  require(root_.getKey("/MarkInfo").isDictionary() && root_.getKey("/MarkInfo").getKey("/Marked").isBool() &&
              root_.getKey("/MarkInfo").getKey("/Marked").getBoolValue(),
          "the document does not say that it is marked");
  require(has_text(root_.getKey("/Lang")), "the document has no language");
  Object view = root_.getKey("/ViewerPreferences");
  require(
      view.isDictionary() && view.getKey("/DisplayDocTitle").isBool() && view.getKey("/DisplayDocTitle").getBoolValue(),
      "the window does not show the title");
  Object info = pdf_.getTrailer().getKey("/Info");
  require(info.isDictionary() && has_text(info.getKey("/Title")), "the document has no title");
  metadata();
}

// 5 and 7.1.
void Rules::metadata() {
  Object stream = root_.getKey("/Metadata");
  if (!stream.isStream()) return say("there is no metadata");
  const auto buffer = Object(stream).getStreamData();
  const std::string text(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
  require(text.find("<pdfuaid:part>1</pdfuaid:part>") != std::string::npos, "the metadata make no claim");
  require(text.find("<dc:title>") != std::string::npos, "the metadata have no title");
}

void Rules::number_pages() {
  for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper(pdf_).getAllPages()) {
    page_numbers_[id_of(page.getObjectHandle())] = pages_.size();
    pages_.push_back(page.getObjectHandle());
  }
}

void Rules::tree() {
  Object tree = root_.getKey("/StructTreeRoot");
  if (!tree.isDictionary()) return say("there is no structure");
  require(tree.getKey("/ParentTree").isDictionary(), "there is no parent tree");
  each(tree.getKey("/K"), [&](Object kid) { element(kid, tree); });
}

// No level is left out on the way down (7.4.2).
void Rules::heading(const std::string& type) {
  if (type.size() != 3 || type[1] != 'H') return;
  const int level = type[2] - '0';
  require(level <= level_ + 1, "a heading " + type + " comes after level " + std::to_string(level_));
  level_ = level;
}

void Rules::element(Object element, Object parent) {
  if (!element.isDictionary() || !element.getKey("/S").isName()) return say("the structure holds what is no element");
  const std::string type = element.getKey("/S").getName();
  require(block_types.contains(type), "an element has the type " + type + ", which no standard knows");
  require(id_of(element.getKey("/P")) == id_of(parent), "an element " + type + " names another parent");
  heading(type);
  if (type == "/Figure") require(has_text(element.getKey("/Alt")), "a figure has no alternative");  // 7.3
  if (type == "/TH") table_header(element);
  kinds_of_kids(element, type);
  Object page = element.getKey("/Pg");
  const std::string own_page = page.isDictionary() ? id_of(page) : std::string();
  each(element.getKey("/K"), [&](Object one) { kid(one, element, own_page); });
}

// A header says whether it is a row's or a column's (7.5).
void Rules::table_header(Object element) {
  Object attributes = element.getKey("/A");
  const bool scope = attributes.isDictionary() && attributes.getKey("/Scope").isName();
  require(scope, "a table's header does not say for what");
}

// What lists and tables are made of (ISO 32000-1, 14.8.4.3).
void Rules::kinds_of_kids(Object element, const std::string& type) {
  static const std::map<std::string, std::set<std::string>> made_of = {
      {"/L", {"/LI"}}, {"/LI", {"/Lbl", "/LBody"}}, {"/Table", {"/TR"}}, {"/TR", {"/TH", "/TD"}}};
  const auto known = made_of.find(type);
  int headers = 0;
  bool areas = false;
  each(element.getKey("/K"), [&](Object one) {
    const bool is_element = one.isDictionary() && one.getKey("/S").isName();
    areas = areas || (one.isDictionary() && one.getKey("/Obj").isDictionary());
    const std::string kid = is_element ? one.getKey("/S").getName() : "a content";
    if (known != made_of.end()) require(known->second.contains(kid), type + " holds " + kid);
    if (type != "/Table") return;
    each(one.getKey("/K"), [&](Object cell) { headers += cell.getKey("/S").getName() == "/TH" ? 1 : 0; });
  });
  if (type == "/Table") require(headers > 0, "a table has no headers");
  if (type == "/Link") require(areas, "a link has no area");
}

void Rules::kid(Object kid, Object element, const std::string& own_page) {
  if (kid.isDictionary() && kid.getKey("/S").isName()) return this->element(kid, element);
  if (kid.isDictionary() && kid.getKey("/Obj").isDictionary()) {
    require(element.getKey("/S").getName() == "/Link", "an area lies in what is no link");
    referred_[id_of(kid.getKey("/Obj"))] = element;
    return;
  }
  const bool elsewhere = kid.isDictionary() && kid.getKey("/MCID").isInteger();
  Object number = elsewhere ? kid.getKey("/MCID") : kid;
  const std::string page = elsewhere && kid.getKey("/Pg").isDictionary() ? id_of(kid.getKey("/Pg")) : own_page;
  if (!number.isInteger() || !page_numbers_.contains(page)) return say("the structure holds a content of no page");
  const bool first = contents_.emplace(std::pair(page_numbers_[page], number.getIntValue()), element).second;
  require(first, "two elements hold one content");
}

Object Rules::parent_of(Object key) {
  Object tree = root_.getKey("/StructTreeRoot");
  if (!tree.isDictionary() || !tree.getKey("/ParentTree").isDictionary() || !key.isInteger()) return Object::newNull();
  QPDFNumberTreeObjectHelper parents(tree.getKey("/ParentTree"), pdf_);
  Object found = Object::newNull();
  parents.findObject(key.getIntValue(), found);
  return found;
}

void Rules::page(std::size_t index) {
  Object page = pages_[index];
  Object tabs = page.getKey("/Tabs");
  require(tabs.isName() && tabs.getName() == "/S", "the tab order of a page is not that of its structure");  // 7.18.3
  contents(index, page);
  annotations(page);
}

// All that is drawn is told or an artifact (7.1), and each knows of the other (ISO 32000-1, 14.7.4.4).
void Rules::contents(std::size_t index, Object page) {
  const Drawing drawing = read_drawing(page);
  for (const std::string& fault : drawing.faults) say(fault);
  Object parents = parent_of(page.getKey("/StructParents"));
  for (const auto& [place, element] : contents_) {
    if (place.first != index) continue;
    require(drawing.contents.contains(place.second), "the structure holds a content that is not drawn");
    const bool listed = parents.isArray() && place.second < parents.getArrayNItems();
    Object parent = listed ? parents.getArrayItem(static_cast<int>(place.second)) : Object::newNull();
    require(listed && id_of(parent) == id_of(element), "the parent tree gives a content to another element");
  }
  for (const long long number : drawing.contents) {
    require(contents_.contains({index, number}), "a content is drawn that the structure does not hold");
  }
}

// 7.18.1 and 7.18.5.
void Rules::annotations(Object page) {
  each(page.getKey("/Annots"), [&](Object annotation) {
    require(has_text(annotation.getKey("/Contents")), "a link does not say where it leads");
    const auto referred = referred_.find(id_of(annotation));
    if (referred == referred_.end()) return say("a link is in no element");
    require(id_of(parent_of(annotation.getKey("/StructParent"))) == id_of(referred->second),
            "the parent tree gives a link to another element");
  });
}

void Rules::fonts() {
  std::set<std::string> seen;
  for (Object object : pdf_.getAllObjects()) {
    if (!object.isDictionary() || !object.getKey("/Type").isName()) continue;
    if (object.getKey("/Type").getName() == "/Font" && seen.insert(id_of(object)).second) font(object);
  }
}

// 7.21.
void Rules::font(Object font) {
  const std::string type = font.getKey("/Subtype").isName() ? font.getKey("/Subtype").getName() : "";
  const std::string name = font.getKey("/BaseFont").isName() ? font.getKey("/BaseFont").getName() : "(no name)";
  const bool of_another = type == "/CIDFontType0" || type == "/CIDFontType2";
  if (!of_another) {
    Object map = font.getKey("/ToUnicode");
    require(map.isStream(), "the font " + name + " has no way back to Unicode");
    if (map.isStream()) require(!maps_to_nothing(map), "the font " + name + " maps a glyph to no character");
  }
  if (type == "/Type0") return;
  Object described = font.getKey("/FontDescriptor");
  bool embedded = false;
  for (const char* key : {"/FontFile", "/FontFile2", "/FontFile3"}) {
    embedded = embedded || (described.isDictionary() && described.getKey(key).isStream());
  }
  require(embedded, "the font " + name + " is not embedded");
  if (type == "/CIDFontType2") {
    require(font.hasKey("/CIDToGIDMap"), "the font " + name + " does not say how its glyphs are numbered");
  }
  if (type == "/TrueType" && described.isDictionary()) {
    const bool symbolic = (described.getKey("/Flags").getIntValue() & 4) != 0;
    require(symbolic != font.getKey("/Encoding").isName(), "the font " + name + " has the encoding of another kind");
  }
}

}  // namespace

std::vector<std::string> offences(QPDF& pdf) {
  return Rules(pdf).all();
}

void read(QPDF& pdf, const std::string& bytes) {
  pdf.setSuppressWarnings(true);
  pdf.processMemoryFile("handout.pdf", bytes.data(), bytes.size());
}

std::vector<std::string> offences(const std::string& bytes) {
  QPDF pdf;
  read(pdf, bytes);
  return offences(pdf);
}

}  // namespace fretsheaf::test
