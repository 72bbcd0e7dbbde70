#include "platform/xml_library.h"

#include "platform/loaded_library.h"

namespace fretsheaf::platform {
namespace {

XmlLibrary load() {
  // By the number of the interface that its headers were of when this was compiled.
  LoadedLibrary library("libxml2.so.2");
  XmlLibrary xml;
  library.find("xmlInitParser", xml.init_parser);
  library.find("xmlSetStructuredErrorFunc", xml.set_structured_error);
  library.find("xmlNewParserCtxt", xml.new_parser);
  library.find("xmlFreeParserCtxt", xml.free_parser);
  library.find("xmlCtxtReadMemory", xml.read_memory);
  library.find("xmlStopParser", xml.stop_parser);
  library.find("xmlFreeDoc", xml.free_document);
  library.require_all("scores and SVG logos need Debian's package libxml2");
  // Once, before threads could meet in it.
  xml.init_parser();
  return xml;
}

}  // namespace

const XmlLibrary& xml_library() {
  static const XmlLibrary xml = load();
  return xml;
}

}  // namespace fretsheaf::platform
