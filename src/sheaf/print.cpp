#include "sheaf/print.h"

// Compiled in: one library less to load.
#define XXH_INLINE_ALL
#include <xxhash.h>

#include <charconv>

namespace fretsheaf::sheaf {

namespace {

Print from(const XXH128_hash_t& hash) {
  return {hash.high64, hash.low64};
}

void add_hex(std::uint64_t number, std::string& text) {
  constexpr std::string_view digits = "0123456789abcdef";
  for (int shift = 60; shift >= 0; shift -= 4) text += digits[(number >> static_cast<unsigned>(shift)) & 15U];
}

bool read_hex(std::string_view digits, std::uint64_t& number) {
  const char* const end = digits.data() + digits.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, number, 16);
  return error == std::errc() && stop == end;
}

}  // namespace

std::string Print::hex() const {
  std::string text;
  text.reserve(32);
  add_hex(high, text);
  add_hex(low, text);
  return text;
}

Print print_of(std::string_view bytes) {
  return from(XXH3_128bits(bytes.data(), bytes.size()));
}

std::optional<Print> parse_print(std::string_view hex) {
  Print print;
  if (hex.size() != 32 || !read_hex(hex.substr(0, 16), print.high) || !read_hex(hex.substr(16), print.low)) return {};
  return print;
}

struct PrintOf::State {
  std::unique_ptr<XXH3_state_t, XXH_errorcode (*)(XXH3_state_t*)> hash{XXH3_createState(), XXH3_freeState};
};

PrintOf::PrintOf() : state_(std::make_unique<State>()) {
  XXH3_128bits_reset(state_->hash.get());
}
PrintOf::~PrintOf() = default;

PrintOf& PrintOf::add(std::string_view part) {
  const std::uint64_t size = part.size();
  XXH3_128bits_update(state_->hash.get(), &size, sizeof size);
  XXH3_128bits_update(state_->hash.get(), part.data(), part.size());
  return *this;
}

PrintOf& PrintOf::add(const Print& part) {
  return add(part.hex());
}

Print PrintOf::print() const {
  return from(XXH3_128bits_digest(state_->hash.get()));
}

}  // namespace fretsheaf::sheaf
