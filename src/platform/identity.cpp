#include "platform/identity.h"

#include <elf.h>
#include <link.h>
#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <string_view>
#include <vector>

#include "platform/loaded_library.h"

namespace fretsheaf::platform {
namespace {

constexpr const char* own_program = "/proc/self/exe";

std::string hex(const unsigned char* bytes, std::size_t count) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text;
  for (std::size_t i = 0; i < count; ++i) {
    text += digits[bytes[i] >> 4U];
    text += digits[bytes[i] & 15U];
  }
  return text;
}

std::size_t padded(std::size_t length) {
  return (length + 3) / 4 * 4;
}

// The build id among the notes of one segment ("Notes", System V ABI, chapter 5); empty where there is none.
std::string id_in(const unsigned char* at, std::size_t size) {
  while (size >= sizeof(ElfW(Nhdr))) {
    ElfW(Nhdr) note;
    std::memcpy(&note, at, sizeof note);
    const std::size_t name = sizeof note;
    const std::size_t content = name + padded(note.n_namesz);
    const std::size_t next = content + padded(note.n_descsz);
    if (next > size) break;
    if (note.n_type == NT_GNU_BUILD_ID && std::memcmp(at + name, ELF_NOTE_GNU, note.n_namesz) == 0) {
      return hex(at + content, note.n_descsz);
    }
    at += next;
    size -= next;
  }
  return {};
}

std::string build_id(const dl_phdr_info& object) {
  for (int i = 0; i < object.dlpi_phnum; ++i) {
    const ElfW(Phdr)& part = object.dlpi_phdr[i];
    if (part.p_type != PT_NOTE) continue;
    // An address as the loader gives it is a number.
    const auto* notes = reinterpret_cast<const unsigned char*>(object.dlpi_addr + part.p_vaddr);  // NOLINT
    if (std::string id = id_in(notes, part.p_memsz); !id.empty()) return id;
  }
  return {};
}

std::string size_and_time(const std::string& path) {
  struct stat found {};
  if (::stat(path.c_str(), &found) != 0) return "unknown";
  return std::to_string(found.st_size) + " " + std::to_string(found.st_mtim.tv_sec) + "." +
         std::to_string(found.st_mtim.tv_nsec);
}

// What was slipped in from outside (a tool that watches or shifts the clock) is no part of the program; the kernel's
// own object (which has no file) is no library.
bool is_foreign(const std::string& path) {
  const char* slipped_in = std::getenv("LD_PRELOAD");
  if (slipped_in != nullptr && std::string_view(slipped_in).find(path) != std::string_view::npos) return true;
  return path.find('/') == std::string::npos;
}

struct Objects {
  std::vector<std::string> lines;
  std::string folder;  // of the C library, with the slash
};

int add_object(dl_phdr_info* object, std::size_t, void* into) {
  auto& [lines, folder] = *static_cast<Objects*>(into);
  std::string path = object->dlpi_name;
  if (path.empty() && !lines.empty()) return 0;
  if (path.empty()) path = own_program;
  if (path != own_program && is_foreign(path)) return 0;
  std::string id = build_id(*object);
  if (id.empty()) id = size_and_time(path);
  const std::size_t name = path.rfind('/') + 1;
  if (path.substr(name) == "libc.so.6") folder = path.substr(0, name);
  lines.push_back(path.substr(name) + " " + id + "\n");
  return 0;
}

}  // namespace

std::string program_identity() {
  Objects objects;
  dl_iterate_phdr(add_object, &objects);
  auto& [lines, folder] = objects;
  for (const std::string name : late_libraries) lines.push_back(name + " " + size_and_time(folder + name) + "\n");
  // Libraries are loaded in no promised order.
  std::sort(lines.begin(), lines.end());
  std::string all;
  for (const std::string& line : lines) all += line;
  return all;
}

}  // namespace fretsheaf::platform
