#pragma once

#include <string>
#include <vector>

namespace fretsheaf::exchange::test {

// Whether the W3C's schema (schema/) accepts the documents, all in one run of libxml2's xmllint. What it complains of
// is said in the test's output, unless it is meant to complain.
bool schema_accepts(const std::vector<std::string>& documents, const std::string& schema = "musicxml.xsd",
                    bool meant_to_fail = false);

}  // namespace fretsheaf::exchange::test
