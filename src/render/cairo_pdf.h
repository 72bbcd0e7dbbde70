#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fretsheaf::render {

// A PDF as cairo writes it when it is held to PDF 1.4: plain objects one after another, a key of a dictionary a line,
// and the table of their places at the end. It can be read and changed with next to no work; a general reader and
// writer of PDF (libqpdf) took a third of a handout's time, and by far the most of what a cold run had to load.
class CairoPdf {
 public:
  // nullopt for what is not written so.
  static std::optional<CairoPdf> read(std::string_view bytes);

  int catalog() const { return catalog_; }
  const std::vector<int>& pages() const { return pages_; }  // their objects
  int objects() const { return static_cast<int>(bodies_.size()); }
  // What stands between "12 0 obj" and "endobj"; empty where there is no such object.
  const std::string& body(int object) const { return bodies_[static_cast<std::size_t>(object)]; }

  // A new object, and what it holds.
  int add(std::string body = {});
  void set(int object, std::string body) { bodies_[static_cast<std::size_t>(object)] = std::move(body); }
  // Its number is free for a new one.
  void drop(int object);

  // Writes `key` (with its slash) of a dictionary anew, whatever it was.
  void set_key(int object, std::string_view key, const std::string& value);
  // The number that a key's value begins with: a reference's object; nullopt where it has none.
  std::optional<int> number_of(int object, std::string_view key) const;

  // A stream's bytes as they were before they were packed, and others in their place.
  std::optional<std::string> unpacked(int stream) const;
  void pack(int stream, const std::string& bytes);

  // The whole file, the same for the same objects; its identity is made of them.
  std::string written() const;

 private:
  bool read_table(std::string_view bytes);
  bool read_objects(std::string_view bytes);
  bool read_pages();

  std::vector<std::string> bodies_;  // by number; the first is none
  std::vector<std::size_t> places_;
  std::size_t table_ = 0;
  std::vector<int> free_;
  std::vector<int> pages_;
  int catalog_ = 0;
  int info_ = 0;
};

}  // namespace fretsheaf::render
