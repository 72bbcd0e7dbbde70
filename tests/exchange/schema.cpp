#include "exchange/schema.h"

#include <catch2/catch.hpp>
#include <cstdlib>

#include "support/project.h"
#include "support/temporary_folder.h"

namespace fretsheaf::exchange::test {

bool schema_accepts(const std::vector<std::string>& documents, bool meant_to_fail) {
  const TemporaryFolder folder;
  int number = 0;
  for (const std::string& document : documents) put(folder / (std::to_string(++number) + ".musicxml"), document);
  const std::string schema = fretsheaf::test::project_folder() + "/tests/exchange/schema";
  const std::string command = "cd '" + folder.path() + "' && XML_CATALOG_FILES='" + schema +
                              "/catalog.xml' xmllint --nonet --noout --schema '" + schema +
                              "/musicxml.xsd' *.musicxml 2> complaints";
  const bool fine = std::system(command.c_str()) == 0;
  if (!fine && !meant_to_fail) WARN(bytes_of(folder / "complaints"));
  return fine;
}

}  // namespace fretsheaf::exchange::test
