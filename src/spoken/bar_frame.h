#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "spoken/marks.h"

// What is told before a bar and after it.
namespace fretsheaf::spoken {

std::string head_of(const score::Example& example, std::size_t bar, const std::vector<Mark>& marks,
                    const Phrases& phrases);
std::string tail_of(const score::Example& example, std::size_t bar, const Phrases& phrases);

}  // namespace fretsheaf::spoken
