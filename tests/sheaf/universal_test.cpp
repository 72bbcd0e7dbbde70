// Handouts for everyone: the demo lessons' PDFs keep the rules of PDF/UA-1 that a program can check, and Poppler reads
// their texts in the order of the page.
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <set>
#include <sstream>

#include "layout/lesson_files.h"
#include "render/render.h"
#include "sheaf/said_by.h"
#include "sheaf/universal_rules.h"
#include "spoken/spoken.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;
using sheet::Tag;

namespace {

using Object = QPDFObjectHandle;

const std::vector<std::string> looks = {"music-stand", "compact", "large-print"};

bool holds_words(Tag tag) {
  static const std::set<Tag> tags = {Tag::heading1,   Tag::heading2,  Tag::heading3,     Tag::paragraph,
                                     Tag::list_label, Tag::list_body, Tag::table_header, Tag::table_cell,
                                     Tag::figure,     Tag::link,      Tag::span};
  return tags.contains(tag);
}

// The sign of a dynamic's letter: U+1D18C to U+1D191, of Musical Symbols.
std::string letter_of(std::string_view sign) {
  constexpr std::string_view letters = "rszpmf";
  const auto at = static_cast<unsigned char>(sign[3]) - 0x8CU;
  return sign.substr(0, 3) == "\xF0\x9D\x86" && at < letters.size() ? std::string(1, letters[at]) : std::string();
}

// Without spaces, which Poppler adds between words that stand apart, and without the signs of the music font, which it
// takes from the font's own map: Musical Symbols (U+1D100 to U+1D1FF) but a dynamic's letters, and accidentals.
std::string bare(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const std::string_view three = text.substr(i, 3);
    if (three.starts_with("\xF0\x9D") && three.size() == 3 && (static_cast<unsigned char>(three[2]) & 0xFCU) == 0x84) {
      out += letter_of(text.substr(i, 4));
      i += 3;
    } else if (three == "\u266D" || three == "\u266E" || three == "\u266F") {
      i += 2;
    } else if (text[i] != ' ') {
      out += text[i];
    }
  }
  return out;
}

std::string address_of(const sheet::Group& group) {
  for (const sheet::Item& item : group.items) {
    if (const auto* link = std::get_if<sheet::Link>(&item)) return link->uri;
  }
  return "";
}

// The texts of a document as it tells them: each tag that holds words, with the words that stand in it in one go; those
// of pictures bare.
class Texts {
 public:
  std::vector<std::string> of(const sheet::Sheet& sheet) {
    for (const sheet::Page& page : sheet.pages) read(page.items, nullptr, false);
    std::vector<std::string> all;
    for (const Piece& piece : pieces_) {
      if (!piece.text.empty()) all.push_back(piece.text);
    }
    return all;
  }

 private:
  struct Piece {
    const sheet::Group* group = nullptr;
    std::string text;
  };

  void read(const std::vector<sheet::Item>& items, const sheet::Group* in, bool picture) {
    for (const sheet::Item& item : items) {
      if (const auto* run = std::get_if<sheet::GlyphRun>(&item)) add(picture ? bare(run->text) : run->text, in);
      const auto* group = std::get_if<sheet::Group>(&item);
      if (group == nullptr || group->tag == Tag::artifact) continue;
      read(group->items, group->tag == Tag::none ? in : group, picture || group->tag == Tag::figure);
    }
  }

  // A paragraph that a page's end parts is one, and so is a link that a line's end parts.
  static bool are_one(const sheet::Group& a, const sheet::Group& b) {
    if (&a == &b || (a.flow != 0 && a.flow == b.flow)) return true;
    return a.tag == Tag::link && b.tag == Tag::link && address_of(a) == address_of(b);
  }

  void add(const std::string& text, const sheet::Group* in) {
    if (in == nullptr || !holds_words(in->tag)) return;
    if (pieces_.empty() || !are_one(*pieces_.back().group, *in)) pieces_.push_back({in, ""});
    pieces_.back().text += text;
  }

  std::vector<Piece> pieces_;
};

// The strings that Poppler prints of the structure; several in one element that follow each other are one.
std::vector<std::string> texts_of(const std::string& said) {
  std::vector<std::string> all;
  std::size_t last = std::string::npos;  // how far in the string before stands, if no element began since
  std::size_t figure = std::string::npos;
  std::istringstream lines(said);
  for (std::string line; std::getline(lines, line);) {
    const std::size_t begin = line.find_first_not_of(' ');
    if (begin == std::string::npos) continue;
    if (line[begin] != '"') {
      if (line[begin] != '/') last = std::string::npos;
      // What lies in a figure is told further in.
      if (line.compare(begin, 6, "Figure") == 0) figure = begin;
      if (line.compare(begin, 6, "Figure") != 0 && begin <= figure) figure = std::string::npos;
      continue;
    }
    const bool picture = figure != std::string::npos && begin > figure;
    const std::string words = line.substr(begin + 1, line.size() - begin - 2);
    const std::string text = picture ? bare(words) : words;
    begin == last ? all.back() += text : all.emplace_back(text);
    last = begin;
  }
  std::erase(all, "");
  return all;
}

// As the program lays it out, with the words of its pictures.
sheet::Sheet pages_of(test::Music& music, const std::string& text) {
  const score::Score score = music.score_of(text);
  return layout::lay_out(score, spoken::alternatives(score), music.look, music.fonts, music.by_role, music.diagnostics);
}

// A handout with everything that a rule speaks of.
std::string full_handout() {
  test::Music music;
  return render::pdf(
      music.pages(
          "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\nlink = \"https://eelgrass.example/\"\n"
          "practice-log = 2\nintro = '''\n# Mud\n\nSee [the shed](https://shed.example/).\n\n- low\n- high\n'''\n"
          "[[example]]\ntempo = [60, 80]\ntab = '''\nchord | i       |\ncount | 1 2 3 4 |\nA     | 5 7 5 8 |\n'''\n"),
      music.fonts);
}

}  // namespace

TEST_CASE("every demo lesson's PDF keeps the rules of PDF/UA that a program can check, in every template") {
  const TemporaryFolder folder;
  for (const std::string& look : looks) {
    test::Music music(look);
    for (const test::LessonFile& lesson : test::demo_lessons(music.system)) {
      INFO(look << ", " << lesson.name);
      const std::string made = render::pdf(pages_of(music, lesson.text), music.fonts);
      CHECK(test::offences(made) == std::vector<std::string>{});
      put(folder / "handout.pdf", made);
      CHECK(test::said_by("qpdf --check '" + (folder / "handout.pdf") + "'")
                .find("No syntax or stream encoding errors") != std::string::npos);
    }
  }
}

TEST_CASE("Poppler reads the texts of every demo lesson in the order of its pages, and no others") {
  const TemporaryFolder folder;
  for (const std::string& look : looks) {
    test::Music music(look);
    for (const test::LessonFile& lesson : test::demo_lessons(music.system)) {
      INFO(look << ", " << lesson.name);
      const sheet::Sheet sheet = pages_of(music, lesson.text);
      put(folder / "handout.pdf", render::pdf(sheet, music.fonts));
      const std::vector<std::string> found =
          texts_of(test::said_by("pdfinfo -struct-text '" + (folder / "handout.pdf") + "'"));
      CHECK(found == Texts().of(sheet));
      CHECK(found.size() > 10);
    }
  }
}

namespace {

Object page(QPDF& pdf, int number = 0) {
  return pdf.getAllPages().at(static_cast<std::size_t>(number));
}

// The first element of a type that an element holds, in reading order; null where it holds none.
Object first_in(Object element, const std::string& type) {
  Object kids = element.getKey("/K");
  for (Object kid : kids.isArray() ? kids.getArrayAsVector() : std::vector{kids}) {
    if (!kid.isDictionary() || !kid.getKey("/S").isName()) continue;
    if (kid.getKey("/S").getName() == type) return kid;
    if (Object found = first_in(kid, type); !found.isNull()) return found;
  }
  return Object::newNull();
}

Object element(QPDF& pdf, const std::string& type) {
  Object found = first_in(pdf.getRoot().getKey("/StructTreeRoot"), type);
  INFO(type);
  REQUIRE(found.isDictionary());
  return found;
}

Object font(QPDF& pdf, const std::string& type) {
  for (Object object : pdf.getAllObjects()) {
    if (object.isDictionary() && object.getKey("/Subtype").isName() && object.getKey("/Subtype").getName() == type &&
        object.hasKey("/BaseFont")) {
      return object;
    }
  }
  FAIL("there is no font " << type);
  return Object::newNull();
}

// Changes the drawing of the first page.
void redraw(QPDF& pdf, const std::string& from, const std::string& to) {
  Object contents = page(pdf).getKey("/Contents");
  const auto buffer = contents.getStreamData();
  std::string drawing(reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize());
  const std::size_t at = drawing.find(from);
  REQUIRE(at != std::string::npos);
  drawing.replace(at, from.size(), to);
  contents.replaceStreamData(drawing, Object::newNull(), Object::newNull());
}

void set_array_item(Object array, int at, Object item) {
  REQUIRE(array.isArray());
  array.setArrayItem(at, item);
}

struct Mutation {
  std::string offence;
  std::function<void(QPDF&)> make;
};

// Each breaks one rule.
std::vector<Mutation> mutations() {
  const auto name = [](const char* text) { return Object::newName(text); };
  return {
      {"the document does not say that it is marked", [](QPDF& p) { p.getRoot().removeKey("/MarkInfo"); }},
      {"the document has no language", [](QPDF& p) { p.getRoot().removeKey("/Lang"); }},
      {"the window does not show the title", [](QPDF& p) { p.getRoot().removeKey("/ViewerPreferences"); }},
      {"the document has no title", [](QPDF& p) { p.getTrailer().getKey("/Info").removeKey("/Title"); }},
      {"there is no metadata", [](QPDF& p) { p.getRoot().removeKey("/Metadata"); }},
      {"the metadata make no claim",
       [](QPDF& p) {
         p.getRoot().getKey("/Metadata").replaceStreamData("<dc:title>", Object::newNull(), Object::newNull());
       }},
      {"the metadata have no title",
       [](QPDF& p) {
         p.getRoot()
             .getKey("/Metadata")
             .replaceStreamData("<pdfuaid:part>1</pdfuaid:part>", Object::newNull(), Object::newNull());
       }},
      {"there is no structure", [](QPDF& p) { p.getRoot().removeKey("/StructTreeRoot"); }},
      {"there is no parent tree", [](QPDF& p) { p.getRoot().getKey("/StructTreeRoot").removeKey("/ParentTree"); }},
      {"an element has the type /Tide, which no standard knows",
       [=](QPDF& p) { element(p, "/P").replaceKey("/S", name("/Tide")); }},
      {"an element /P names another parent", [](QPDF& p) { element(p, "/P").replaceKey("/P", element(p, "/Figure")); }},
      {"a heading /H3 comes after level 1", [=](QPDF& p) { element(p, "/H2").replaceKey("/S", name("/H3")); }},
      {"a figure has no alternative", [](QPDF& p) { element(p, "/Figure").removeKey("/Alt"); }},
      {"a table's header does not say for what", [](QPDF& p) { element(p, "/TH").removeKey("/A"); }},
      {"a table has no headers",
       [=](QPDF& p) {
         for (Object object : p.getAllObjects()) {
           const bool header =
               object.isDictionary() && object.getKey("/S").isName() && object.getKey("/S").getName() == "/TH";
           if (header) object.replaceKey("/S", name("/TD"));
         }
       }},
      {"/Table holds /P", [=](QPDF& p) { element(p, "/TR").replaceKey("/S", name("/P")); }},
      {"/TR holds /P", [=](QPDF& p) { element(p, "/TH").replaceKey("/S", name("/P")); }},
      {"/L holds /P", [=](QPDF& p) { element(p, "/LI").replaceKey("/S", name("/P")); }},
      {"/LI holds /P", [=](QPDF& p) { element(p, "/LBody").replaceKey("/S", name("/P")); }},
      {"a link has no area",
       [](QPDF& p) {
         Object kids = element(p, "/Link").getKey("/K");
         kids.eraseItem(kids.getArrayNItems() - 1);
       }},
      {"a link is in no element",
       [](QPDF& p) {
         Object kids = element(p, "/Link").getKey("/K");
         kids.eraseItem(kids.getArrayNItems() - 1);
       }},
      {"an area lies in what is no link", [=](QPDF& p) { element(p, "/Link").replaceKey("/S", name("/Span")); }},
      {"a link does not say where it leads",
       [](QPDF& p) { page(p).getKey("/Annots").getArrayItem(0).removeKey("/Contents"); }},
      {"the parent tree gives a link to another element",
       [](QPDF& p) { page(p).getKey("/Annots").getArrayItem(0).replaceKey("/StructParent", Object::newInteger(0)); }},
      {"the tab order of a page is not that of its structure", [](QPDF& p) { page(p).removeKey("/Tabs"); }},
      {"something is drawn that is neither told nor an artifact",
       [](QPDF& p) { redraw(p, "/Artifact << /Type /Layout >> BDC", "/Tide BMC"); }},
      {"an artifact is told",
       [](QPDF& p) { redraw(p, "/Artifact << /Type /Layout >> BDC", "/Artifact << /MCID 900 >> BDC"); }},
      {"two contents have one number", [](QPDF& p) { redraw(p, "/MCID 1 ", "/MCID 0 "); }},
      {"a content is drawn that the structure does not hold", [](QPDF& p) { redraw(p, "/MCID 0 ", "/MCID 900 "); }},
      {"the structure holds a content that is not drawn", [](QPDF& p) { redraw(p, "/MCID 0 ", "/MCID 900 "); }},
      {"a marked content does not end", [](QPDF& p) { redraw(p, "EMC\n", "\n"); }},
      {"a marked content ends that did not begin", [](QPDF& p) { redraw(p, "/Artifact << /Type /Layout >> BDC", ""); }},
      {"a content lies in another",
       [](QPDF& p) { redraw(p, "/MCID 0 >> BDC", "/MCID 0 >> BDC /Span << /MCID 901 >> BDC EMC"); }},
      {"an artifact lies in what is told",
       [](QPDF& p) { redraw(p, "/MCID 0 >> BDC", "/MCID 0 >> BDC /Artifact BMC EMC"); }},
      {"a marked content and a text overlap", [](QPDF& p) { redraw(p, "ET\n", "EMC ET /Span BMC\n"); }},
      {"two elements hold one content",
       [](QPDF& p) {
         Object kids = element(p, "/H1").getKey("/K");
         element(p, "/P").replaceKey("/K", kids.isArray() ? kids.getArrayItem(0) : kids);
       }},
      {"the structure holds a content of no page", [](QPDF& p) { element(p, "/H1").removeKey("/Pg"); }},
      {"the parent tree gives a content to another element",
       [](QPDF& p) {
         Object numbers = p.getRoot().getKey("/StructTreeRoot").getKey("/ParentTree").getKey("/Nums");
         set_array_item(numbers.getArrayItem(1), 0, element(p, "/Figure"));
       }},
      {"is not embedded", [](QPDF& p) { font(p, "/TrueType").getKey("/FontDescriptor").removeKey("/FontFile2"); }},
      {"has no way back to Unicode", [](QPDF& p) { font(p, "/TrueType").removeKey("/ToUnicode"); }},
      {"maps a glyph to no character",
       [](QPDF& p) {
         font(p, "/TrueType")
             .getKey("/ToUnicode")
             .replaceStreamData("1 beginbfchar\n<01> <FEFF>\nendbfchar", Object::newNull(), Object::newNull());
       }},
      {"does not say how its glyphs are numbered", [](QPDF& p) { font(p, "/CIDFontType2").removeKey("/CIDToGIDMap"); }},
      {"has the encoding of another kind", [](QPDF& p) { font(p, "/TrueType").removeKey("/Encoding"); }},
  };
}

}  // namespace

TEST_CASE("each rule is seen to be broken where it is") {
  const std::string handout = full_handout();
  REQUIRE(test::offences(handout) == std::vector<std::string>{});
  for (const Mutation& mutation : mutations()) {
    INFO(mutation.offence);
    QPDF pdf;
    test::read(pdf, handout);
    mutation.make(pdf);
    const std::vector<std::string> said = test::offences(pdf);
    const bool seen = std::ranges::any_of(
        said, [&](const std::string& one) { return one.find(mutation.offence) != std::string::npos; });
    CHECK(seen);
  }
}

TEST_CASE("a handout without words for a figure, without a title or with a level left out makes no claim") {
  test::Music music;
  const auto claims = [&](const std::function<void(sheet::Sheet&)>& change) {
    sheet::Sheet sheet;
    sheet.title = "Low tide";
    sheet.language = "en";
    sheet::Group figure;
    figure.tag = Tag::figure;
    figure.alternative = "A lantern";
    figure.items = {sheet::Rule{sheet::Part::rule, {10, 10}, {90, 10}, 1, {}, 0, 0}};
    sheet::Group heading = figure;
    heading.tag = Tag::heading1;
    sheet.pages = {{100, 100, {heading, figure}}};
    change(sheet);
    QPDF pdf;
    const std::string made = render::pdf(sheet, music.fonts);
    test::read(pdf, made);
    const auto metadata = pdf.getRoot().getKey("/Metadata").getStreamData();
    const std::string text(reinterpret_cast<const char*>(metadata->getBuffer()), metadata->getSize());
    return text.find("pdfuaid:part") != std::string::npos;
  };
  const auto group = [](sheet::Sheet& sheet, std::size_t at) -> sheet::Group& {
    return std::get<sheet::Group>(sheet.pages[0].items[at]);
  };
  CHECK(claims([](sheet::Sheet&) {}));
  CHECK_FALSE(claims([](sheet::Sheet& sheet) { sheet.title.clear(); }));
  CHECK_FALSE(claims([](sheet::Sheet& sheet) { sheet.language.clear(); }));
  CHECK_FALSE(claims([&](sheet::Sheet& sheet) { group(sheet, 1).alternative.clear(); }));
  CHECK_FALSE(claims([&](sheet::Sheet& sheet) { group(sheet, 0).tag = Tag::heading2; }));
}
