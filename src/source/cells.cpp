#include "source/cells.h"

#include <clocale>
#include <cwchar>

namespace fretsheaf::source {
namespace {

// The library answers for the thread's locale, which is that of a program without a language, where nothing is wide.
class UnicodeLocale {
 public:
  UnicodeLocale() {
    // Made once, and kept as long as the program runs: there may be thousands of lines to underline.
    static const locale_t unicode = newlocale(LC_CTYPE_MASK, "C.UTF-8", nullptr);
    if (unicode != nullptr) before_ = uselocale(unicode);
  }
  ~UnicodeLocale() {
    if (before_ != nullptr) uselocale(before_);
  }
  UnicodeLocale(const UnicodeLocale&) = delete;
  UnicodeLocale& operator=(const UnicodeLocale&) = delete;

 private:
  locale_t before_ = nullptr;
};

constexpr char32_t first_wide_or_joining = U'\u0300';

}  // namespace

std::size_t cells_of(char32_t character) {
  if (character < first_wide_or_joining) return 1;
  const UnicodeLocale locale;
  const int cells = wcwidth(static_cast<wchar_t>(character));
  return cells < 0 ? 1 : static_cast<std::size_t>(cells);
}

}  // namespace fretsheaf::source
