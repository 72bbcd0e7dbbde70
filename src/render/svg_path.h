#pragma once

#include <initializer_list>
#include <string>

#include "sheet/number.h"

namespace fretsheaf::render {

// The `d` of a path, as short as it can be read: numbers apart by a space or a minus sign.
class SvgPath {
 public:
  explicit SvgPath(int decimals) : decimals_(decimals) {}

  void draw(char command, std::initializer_list<double> numbers) {
    data_ += command;
    bool first = true;
    for (const double number : numbers) {
      const std::string written = sheet::shortest(number, decimals_);
      if (!first && written.front() != '-') data_ += ' ';
      data_ += written;
      first = false;
    }
  }

  const std::string& data() const { return data_; }

 private:
  int decimals_;
  std::string data_;
};

}  // namespace fretsheaf::render
