#pragma once

#include <limits>
#include <span>

#include "sheet/sheet.h"

// Outlines: how far layers of ink must part so that none touches another.
namespace fretsheaf::layout {

// How far `lower` must move down (negative: could move up) so that wherever the two lie above each other, `gap` stays
// between them. Boxes nearer than `beside` sideways count as above each other. Lowest double where nothing meets.
double descent(std::span<const sheet::Box> upper, std::span<const sheet::Box> lower, double gap, double beside);

}  // namespace fretsheaf::layout
