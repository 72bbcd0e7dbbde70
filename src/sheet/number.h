#pragma once

#include <string>

namespace fretsheaf::sheet {

// The one way in which the project writes a length: decimal point, no exponent, no locale, and never "-0". `decimals`
// are 0 to 9; a number that is not finite is written "nan" or "inf".
void append_fixed(std::string& out, double value, int decimals);  // "1.50"
void append_short(std::string& out, double value, int decimals);  // "1.5": no zeros at the end

std::string fixed(double value, int decimals);
std::string shortest(double value, int decimals);

}  // namespace fretsheaf::sheet
