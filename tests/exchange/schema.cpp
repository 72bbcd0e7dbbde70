#include "exchange/schema.h"

#include <catch2/catch.hpp>
#include <cstdlib>

#include "support/project.h"
#include "support/temporary_folder.h"

namespace fretsheaf::exchange::test {

bool schema_accepts(const std::vector<std::string>& documents, const std::string& schema, bool meant_to_fail) {
  const TemporaryFolder folder;
  int number = 0;
  for (const std::string& document : documents) put(folder / (std::to_string(++number) + ".musicxml"), document);
  const std::string schemas = fretsheaf::test::project_folder() + "/tests/exchange/schema";
  const std::string command = "cd '" + folder.path() + "' && XML_CATALOG_FILES='" + schemas +
                              "/catalog.xml' xmllint --nonet --noout --schema '" + schemas + "/" + schema +
                              "' *.musicxml 2> complaints";
  const bool fine = std::system(command.c_str()) == 0;
  if (!fine && !meant_to_fail) WARN(bytes_of(folder / "complaints"));
  return fine;
}

}  // namespace fretsheaf::exchange::test
