#pragma once

#include <compare>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace fretsheaf::sheaf {

// The print of some bytes: equal for equal bytes, and for no others that anyone will meet (XXH3, 128 bits; it guards
// against accidents, not against forgers).
struct Print {
  std::uint64_t high = 0;
  std::uint64_t low = 0;

  auto operator<=>(const Print&) const = default;

  // 32 hexadecimal digits, as the hash's own canonical form writes them.
  std::string hex() const;
};

Print print_of(std::string_view bytes);

// Of what `hex` writes; nullopt for anything else.
std::optional<Print> parse_print(std::string_view hex);

// The print of several parts in order. Where one part ends and the next begins counts too.
class PrintOf {
 public:
  PrintOf();
  ~PrintOf();
  PrintOf(const PrintOf&) = delete;
  PrintOf& operator=(const PrintOf&) = delete;

  PrintOf& add(std::string_view part);
  PrintOf& add(const Print& part);
  Print print() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace fretsheaf::sheaf
