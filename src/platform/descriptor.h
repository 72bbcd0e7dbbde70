#pragma once

#include <string_view>
#include <utility>

namespace fretsheaf::platform {

// An open file descriptor and its only owner; -1 where opening failed.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor();

  bool is_open() const { return number_ >= 0; }
  int number() const { return number_; }

  // Closes now; false where closing reports an error (a network disk may say only then that it is full).
  bool close();

 private:
  int number_;
};

// Writes all of it; 0, or the error number.
int write_all(int descriptor, std::string_view bytes);

}  // namespace fretsheaf::platform
