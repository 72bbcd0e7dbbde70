// Pictures of whole lines of music, as Poppler draws them: small, grey, and compared with a tolerance, so that only
// what a reader would see counts. FRETSHEAF_UPDATE_GOLDEN=1 writes them anew.
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <sstream>
#include <string>
#include <string_view>

#include "layout/music_fixture.h"
#include "layout/sample_lines.h"
#include "render/render.h"
#include "support/project.h"
#include "support/temporary_folder.h"

using namespace fretsheaf;

namespace {

constexpr double margin = 20;

// Each line of the lesson's first example on a page of its own size.
std::string pdf_of(const std::string& lesson) {
  test::Music music;
  sheet::Sheet sheet;
  sheet.title = "Low tide";
  sheet.language = "en";
  for (layout::MusicLine& line : music.lines(lesson)) {
    sheet::translate(line.items, margin, margin - line.top);
    sheet.pages.push_back({488 + 2 * margin, line.bottom - line.top + 2 * margin, std::move(line.items)});
  }
  REQUIRE(sheet.pages.size() == 1);
  return render::pdf(sheet, music.fonts);
}

struct Picture {
  int width = 0;
  int height = 0;
  std::string grey;  // a byte a pixel, 255 white
};

Picture read_pgm(const std::string& bytes) {
  std::istringstream in(bytes);
  std::string magic;
  int most = 0;
  Picture picture;
  in >> magic >> picture.width >> picture.height >> most;
  REQUIRE(magic == "P5");
  REQUIRE(most == 255);
  in.get();
  picture.grey = bytes.substr(static_cast<std::size_t>(in.tellg()));
  REQUIRE(picture.grey.size() == static_cast<std::size_t>(picture.width * picture.height));
  return picture;
}

// At 54 dots an inch: a staff space is four pixels.
std::string drawn(const std::string& pdf) {
  const TemporaryFolder folder;
  put(folder / "line.pdf", pdf);
  const std::string command =
      "pdftoppm -gray -r 54 -singlefile '" + (folder / "line.pdf") + "' '" + folder.path() + "/line'";
  REQUIRE(std::system(command.c_str()) == 0);
  return bytes_of(folder / "line.pgm");
}

// The most by which the mean grey of two places of the pictures differs, from 0 to 255. A place is a square of `side`
// pixels: what is drawn a hair to the side, or with other edges, leaves its mean as it was.
constexpr int side = 6;
double difference(const Picture& a, const Picture& b) {
  if (a.width != b.width || a.height != b.height) return 255;
  double most = 0;
  for (int top = 0; top + side <= a.height; top += side / 2) {
    for (int left = 0; left + side <= a.width; left += side / 2) {
      int sum = 0;
      for (int y = top; y < top + side; ++y) {
        for (int x = left; x < left + side; ++x) {
          const auto at = static_cast<std::size_t>(y * a.width + x);
          sum += static_cast<unsigned char>(a.grey[at]) - static_cast<unsigned char>(b.grey[at]);
        }
      }
      most = std::max(most, std::abs(sum) / static_cast<double>(side * side));
    }
  }
  return most;
}

constexpr double tolerance = 16;

void check_picture(const std::string& name, const std::string& lesson) {
  const std::string path = test::project_folder() + "/tests/sheaf/pictures/" + name + ".pgm";
  const std::string now = drawn(pdf_of(lesson));
  const char* flag = std::getenv("FRETSHEAF_UPDATE_GOLDEN");
  if (flag != nullptr && std::string_view(flag) == "1") put(path, now);
  const std::string kept = bytes_of(path);
  REQUIRE(!kept.empty());
  CHECK(difference(read_pgm(kept), read_pgm(now)) < tolerance);
}

}  // namespace

TEST_CASE("the picture of a line with notes") {
  check_picture("notes", test::notes_sample);
}

TEST_CASE("the picture of a line with techniques") {
  check_picture("techniques", test::techniques_sample);
}

TEST_CASE("the picture of a line with repeats and endings") {
  check_picture("structure", test::structure_sample);
}

TEST_CASE("pictures differ where a reader would see it, and not by a hair") {
  const Picture picture = read_pgm(drawn(pdf_of(test::notes_sample)));
  CHECK(difference(picture, picture) == 0);
  // Another fret, an articulation left out, a sharp left out of the key.
  for (const auto& [from, to] :
       {std::pair{"5    1>", "4    1>"}, std::pair{"2_", "2 "}, std::pair{"A major", "D major"}}) {
    std::string other = test::notes_sample;
    const auto at = other.find(from);
    REQUIRE(at != std::string::npos);
    other.replace(at, std::string_view(from).size(), to);
    INFO(from);
    CHECK(difference(picture, read_pgm(drawn(pdf_of(other)))) > tolerance);
  }
  // A staff line that is drawn a quarter of a pixel lower has other edges.
  Picture hair = picture;
  for (char& grey : hair.grey) {
    const int value = static_cast<unsigned char>(grey);
    if (value > 40 && value < 215) grey = static_cast<char>(value + 12);
  }
  CHECK(difference(picture, hair) < tolerance);
}
