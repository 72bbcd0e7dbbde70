#include "render/pdf_metadata.h"

#include "render/svg_writer.h"

namespace fretsheaf::render {
namespace {

std::string escaped(const std::string& text) {
  return platform::xml_escaped(xml_text(text));
}

}  // namespace

std::string pdf_metadata(const sheet::Sheet& sheet, bool universal) {
  const std::string title = escaped(sheet.title);
  const std::string author = escaped(sheet.author);
  std::string out;
  out += "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n";
  out += "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n";
  out += "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n";
  out += "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"";
  out += " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">\n";
  out += "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" + title + "</rdf:li></rdf:Alt></dc:title>\n";
  if (!author.empty()) out += "<dc:creator><rdf:Seq><rdf:li>" + author + "</rdf:li></rdf:Seq></dc:creator>\n";
  if (!sheet.language.empty()) {
    out += "<dc:language><rdf:Bag><rdf:li>" + escaped(sheet.language) + "</rdf:li></rdf:Bag></dc:language>\n";
  }
  out += std::string("<xmp:CreatorTool>") + creator + "</xmp:CreatorTool>\n";
  out += std::string("<xmp:CreateDate>") + creation_date + "</xmp:CreateDate>\n";
  if (universal) out += "<pdfuaid:part>1</pdfuaid:part>\n";
  out += "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n";
  return out;
}

}  // namespace fretsheaf::render
