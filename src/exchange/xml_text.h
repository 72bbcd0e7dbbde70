#pragma once

#include <optional>
#include <string>

#include "exchange/taken.h"

// Small questions to elements.
namespace fretsheaf::exchange {

// An element's own text without white space around it; empty where it has none.
std::string text_of(const Xml& element);
std::string text_of(const Xml& parent, const char* child);  // empty where there is no such child
std::string attribute(const Xml& element, const char* name);
bool has(const Xml& parent, const char* child);

// A whole number, as schemas write one; nullopt where it is none or has more than nine figures.
std::optional<int> whole(const std::string& text);
// A decimal number up to nine figures before the point and six behind it; nullopt where it is none.
std::optional<Rational> decimal(const std::string& text);
// The simplest fraction that a number written with six decimals may have come from, with a denominator up to 64.
Rational simplest(Rational value);

}  // namespace fretsheaf::exchange
