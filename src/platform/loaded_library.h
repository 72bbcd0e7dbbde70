#pragma once

#include <array>
#include <string>

namespace fretsheaf::platform {

// All that are loaded so, by the names that they are loaded by. The program's identity tells them too.
inline constexpr std::array late_libraries = {"libqrencode.so.4", "librsvg-2.so.2", "libxml2.so.2", "libzip.so.4"};

// A library of the machine's that few runs need: not linked but loaded when one does, because it and what it needs in
// turn would keep every other run waiting. Stays loaded, so that the functions outlive this.
class LoadedLibrary {
 public:
  // By its bare file name, with the number of its interface: "libzip.so.4".
  explicit LoadedLibrary(const char* file);

  // Points `function` at the library's function of this name, whose type the caller answers for; nullptr where there is
  // none.
  template <typename Function>
  void find(const char* name, Function*& function) {
    function = reinterpret_cast<Function*>(address(name));
  }

  // Whether the library is there, and everything that was looked for in it.
  bool has_all() const { return has_all_; }
  // Throws std::runtime_error where it has not: that the file cannot be loaded, and `need` ("packed scores need
  // Debian's package libzip4").
  void require_all(const std::string& need) const;

 private:
  void* address(const char* name);

  const char* file_;
  void* library_;
  bool has_all_;
};

}  // namespace fretsheaf::platform
