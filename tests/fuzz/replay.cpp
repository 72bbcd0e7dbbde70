// Gives each file that is named, and each below the folders that are named, to one target.
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "fuzz/target.h"

namespace fs = std::filesystem;

namespace {

void replay(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  const std::string bytes(std::istreambuf_iterator<char>(file), {});
  std::cout << path.filename().string() << '\n' << std::flush;
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

}  // namespace

int main(int count, char** words) {
  int files = 0;
  for (int i = 1; i < count; ++i) {
    if (!fs::is_directory(words[i])) {
      replay(words[i]);
      ++files;
      continue;
    }
    for (const auto& entry : fs::recursive_directory_iterator(words[i])) {
      if (!entry.is_regular_file()) continue;
      replay(entry.path());
      ++files;
    }
  }
  return files > 0 ? 0 : 1;  // a corpus that is gone is no success
}
