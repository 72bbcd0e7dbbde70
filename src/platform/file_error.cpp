#include "platform/file_error.h"

#include <cerrno>
#include <system_error>

namespace fretsheaf::platform {
namespace {

using Kind = FileError::Kind;

std::string in_the_systems_words(int error_number) {
  return std::generic_category().message(error_number);
}

}  // namespace

FileError missing_error() {
  return {Kind::missing, "is not there"};
}

FileError folder_error() {
  return {Kind::folder, "is a folder"};
}

FileError read_error(int error_number) {
  switch (error_number) {
    case ENOENT:
    case ENOTDIR:
      return missing_error();
    case EISDIR:
      return folder_error();
    case EACCES:
    case EPERM:
      return {Kind::not_allowed, "cannot be read: you have no permission"};
    default:
      return {Kind::other, "cannot be read: " + in_the_systems_words(error_number)};
  }
}

FileError write_error(int error_number) {
  switch (error_number) {
    case EISDIR:
      return folder_error();
    case EACCES:
    case EPERM:
    case EROFS:
      return {Kind::not_allowed, "cannot be written: you have no permission"};
    case ENOTDIR:
      return {Kind::other, "cannot be written: a part of its path is a file, not a folder"};
    case ENOSPC:
    case EDQUOT:
      return {Kind::other, "cannot be written: the disk is full"};
    case ENAMETOOLONG:
      return {Kind::other, "cannot be written: the name is too long"};
    default:
      return {Kind::other, "cannot be written: " + in_the_systems_words(error_number)};
  }
}

FileError not_ordinary_error() {
  return {Kind::other, "is no ordinary file"};
}

FileError too_large_error(std::size_t limit) {
  constexpr std::size_t mebibyte = std::size_t{1} << 20;
  const bool round = limit >= mebibyte && limit % mebibyte == 0;
  const std::string size =
      round ? std::to_string(limit / mebibyte) + " MiB" : std::to_string(limit) + (limit == 1 ? " byte" : " bytes");
  return {Kind::too_large, "is larger than " + size};
}

}  // namespace fretsheaf::platform
