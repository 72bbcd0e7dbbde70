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
  // A list of catalogs has blanks between them, which the folder's name may have too: it is named from inside.
  const std::string command = "cd '" + schemas +
                              "' && XML_CATALOG_FILES=catalog.xml xmllint --nonet --noout --schema " + schema + " '" +
                              folder.path() + "'/*.musicxml 2> '" + folder.path() + "/complaints'";
  const bool fine = std::system(command.c_str()) == 0;
  if (!fine && !meant_to_fail) WARN(bytes_of(folder / "complaints"));
  return fine;
}

}  // namespace fretsheaf::exchange::test
