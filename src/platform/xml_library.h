#pragma once

#include <libxml/parser.h>
#include <libxml/xmlerror.h>

namespace fretsheaf::platform {

// The functions of libxml2 that are used. It is not linked: with the tables of characters that it brings along it takes
// over a millisecond to load, and only scores that are taken in and SVG logos are read as XML.
struct XmlLibrary {
  decltype(&xmlInitParser) init_parser = nullptr;
  decltype(&xmlSetStructuredErrorFunc) set_structured_error = nullptr;
  decltype(&xmlNewParserCtxt) new_parser = nullptr;
  decltype(&xmlFreeParserCtxt) free_parser = nullptr;
  decltype(&xmlCtxtReadMemory) read_memory = nullptr;
  decltype(&xmlStopParser) stop_parser = nullptr;
  decltype(&xmlFreeDoc) free_document = nullptr;
};

// Ready for use in any thread. Throws std::runtime_error where the library is not installed.
const XmlLibrary& xml_library();

}  // namespace fretsheaf::platform
