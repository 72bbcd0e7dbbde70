// The floor of a cold run: reads a recorded sheet and has cairo draw it.
#include <cstdio>
#include <string>

#include "bare_draw.h"

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  std::FILE* file = std::fopen(argv[1], "rb");
  if (file == nullptr) return 3;
  std::string recording;
  char buffer[1 << 16];
  for (std::size_t got = 0; (got = std::fread(buffer, 1, sizeof buffer, file)) > 0;) recording.append(buffer, got);
  std::fclose(file);
  return fretsheaf::benchmarks::bare_draw(recording) > 0 ? 0 : 1;
}
