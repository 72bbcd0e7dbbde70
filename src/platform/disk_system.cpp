#include "platform/disk_system.h"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <limits>

#include "platform/append.h"
#include "platform/atomic_write.h"
#include "platform/data_folder.h"
#include "platform/descriptor.h"
#include "platform/file_error.h"
#include "platform/file_lock.h"
#include "platform/folder.h"
#include "platform/fonts.h"
#include "platform/identity.h"
#include "platform/real_path.h"

namespace fretsheaf::platform {
namespace {

// Where Debian's fonts-noto-core, fonts-sil-charis, fonts-inter and fonts-dejavu-core put their files: tried first,
// because a walk through all fonts of a desktop takes longer than a page.
constexpr std::array<std::string_view, 4> known_font_folders = {
    "/usr/share/fonts/truetype/noto", "/usr/share/fonts/truetype/charis", "/usr/share/fonts/opentype/inter",
    "/usr/share/fonts/truetype/dejavu"};
constexpr const char* font_root = "/usr/share/fonts";

// `limit` bytes at the most. A pipe does not say how much it will give, so one byte more is asked for.
FileResult<std::string> read_all(int descriptor, std::size_t limit, std::size_t expected) {
  limit = std::min(limit, std::numeric_limits<std::size_t>::max() / 2);
  std::string bytes;
  std::size_t filled = 0;
  bytes.resize(std::min(limit, expected) + 1);
  while (true) {
    const ssize_t got = ::read(descriptor, bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return read_error(errno);
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
    if (filled > limit) return too_large_error(limit);
    if (filled == bytes.size()) bytes.resize(std::min(limit + 1, 2 * bytes.size() + 4096));
  }
  bytes.resize(filled);
  return bytes;
}

struct OpenFile {
  Descriptor descriptor;
  std::size_t size;
  bool is_regular;
};

// A pipe that a shell hands over goes by one of these names; a pipe among files waits for a writer for ever.
bool is_handed_over(const std::string& path) {
  return path.starts_with("/dev/") || path.starts_with("/proc/");
}

FileResult<OpenFile> open_file(const std::string& path, std::size_t limit) {
  const bool waits = is_handed_over(path);
  Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | (waits ? 0 : O_NONBLOCK)));
  if (!file.is_open()) return read_error(errno);
  struct stat found {};
  if (::fstat(file.number(), &found) != 0) return read_error(errno);
  if (S_ISDIR(found.st_mode)) return folder_error();
  const auto size = static_cast<std::size_t>(found.st_size);
  const bool is_regular = S_ISREG(found.st_mode);
  if (!is_regular && !waits) return not_ordinary_error();
  if (is_regular && size > limit) return too_large_error(limit);
  return OpenFile{std::move(file), size, is_regular};
}

std::string own_path() {
  std::string path(4096, '\0');
  const ssize_t length = ::readlink("/proc/self/exe", path.data(), path.size());
  path.resize(length > 0 ? static_cast<std::size_t>(length) : 0);
  return path;
}

bool is_there(const std::string& path) {
  struct stat found {};
  return ::stat(path.c_str(), &found) == 0;
}

}  // namespace

FileResult<std::string> DiskSystem::read(const std::string& path, std::size_t limit) const {
  if (path == "-") return read_all(STDIN_FILENO, limit, 0);
  const auto opened = open_file(path, limit);
  if (const auto* failed = std::get_if<FileError>(&opened)) return *failed;
  const auto& file = std::get<OpenFile>(opened);
  return read_all(file.descriptor.number(), limit, file.size);
}

FileResult<SharedBytes> DiskSystem::view(const std::string& path, std::size_t limit) const {
  if (path == "-") return System::view(path, limit);
  const auto opened = open_file(path, limit);
  if (const auto* failed = std::get_if<FileError>(&opened)) return *failed;
  const auto& file = std::get<OpenFile>(opened);
  if (!file.is_regular || file.size == 0) return System::view(path, limit);
  void* mapped = ::mmap(nullptr, file.size, PROT_READ, MAP_PRIVATE, file.descriptor.number(), 0);
  if (mapped == MAP_FAILED) return read_error(errno);
  const auto unmap = [size = file.size](const void* at) { ::munmap(const_cast<void*>(at), size); };
  return SharedBytes{std::shared_ptr<const void>(mapped, unmap), {static_cast<const char*>(mapped), file.size}};
}

std::optional<FileError> DiskSystem::write(const std::string& path, std::string_view bytes) {
  if (path != "-") return write_atomically(path, bytes);
  if (const int failed = write_all(STDOUT_FILENO, bytes)) return write_error(failed);
  return std::nullopt;
}

std::optional<FileError> DiskSystem::append(const std::string& path, std::string_view bytes, bool synced) {
  return append_to(path, bytes, synced);
}

Lock DiskSystem::lock(const std::string& path, Sharing sharing) {
  return lock_file(path, sharing);
}

void DiskSystem::sweep(const std::string& folder) {
  sweep_temporaries(folder);
}

std::optional<FileStatus> DiskSystem::status(const std::string& path) const {
  struct stat found {};
  if (::lstat(path.c_str(), &found) != 0) return std::nullopt;
  FileStatus status;
  status.is_link = S_ISLNK(found.st_mode);
  if (status.is_link && ::stat(path.c_str(), &found) != 0) return std::nullopt;
  using Kind = FileStatus::Kind;
  status.kind = S_ISREG(found.st_mode) ? Kind::file : S_ISDIR(found.st_mode) ? Kind::folder : Kind::other;
  status.size = static_cast<std::uint64_t>(found.st_size);
  constexpr std::int64_t second = 1'000'000'000;
  status.changed = static_cast<std::int64_t>(found.st_mtim.tv_sec) * second + found.st_mtim.tv_nsec;
  return status;
}

std::string DiskSystem::absolute(const std::string& path) const {
  std::error_code failed;
  std::filesystem::path whole = std::filesystem::weakly_canonical(std::filesystem::absolute(path, failed), failed);
  if (failed) whole = std::filesystem::absolute(path, failed).lexically_normal();
  std::string text = whole.string();
  while (text.size() > 1 && text.back() == '/') text.pop_back();
  return text;
}

bool DiskSystem::exists(const std::string& path) const {
  return is_there(path);
}

std::string DiskSystem::real_path(const std::string& path) const {
  return platform::real_path(path);
}

std::optional<FileError> DiskSystem::remove(const std::string& path) {
  if (::unlink(path.c_str()) == 0 || errno == ENOENT || errno == ENOTDIR) return std::nullopt;
  const int failed = errno;
  struct stat found {};
  // POSIX lets unlink say EPERM of a folder.
  if (::lstat(path.c_str(), &found) == 0 && S_ISDIR(found.st_mode)) return folder_error();
  return write_error(failed);
}

std::vector<std::string> DiskSystem::list(const std::string& folder) const {
  return folder_names(folder);
}

std::string DiskSystem::data_path(std::string_view name) const {
  const char* chosen = std::getenv("FRETSHEAF_DATA");
  const DataPlaces places{chosen == nullptr ? "" : chosen, own_path(), FRETSHEAF_CHECKOUT, FRETSHEAF_INSTALLED};
  return data_folder(places, is_there) + "/" + std::string(name);
}

std::string DiskSystem::font_path(std::string_view file_name) const {
  return find_font(file_name, known_font_folders, font_root);
}

std::string DiskSystem::identity() const {
  return program_identity();
}

}  // namespace fretsheaf::platform
