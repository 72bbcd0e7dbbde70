#include "house/rooms.h"

#include <catch2/catch.hpp>
#include <filesystem>

#include "house/files.h"

using Lines = std::vector<std::string>;

TEST_CASE("every include keeps to the table of rooms") {
  const auto files = files_below("src", {".h", ".cpp", ".def"});
  CHECK(files.size() > 50);
  for (const std::string& path : files) {
    for (const std::string& bad : bad_includes(path, text_of(path))) FAIL_CHECK(bad);
  }
}

TEST_CASE("every link line keeps to the table of rooms") {
  const std::string cmake = text_of("src/CMakeLists.txt");
  CHECK(cmake.find("room(layout SEES ") != std::string::npos);
  for (const std::string& bad : bad_link_lines(cmake)) FAIL_CHECK(bad);
}

TEST_CASE("a room never sees a room that sees it") {
  for (const auto& [room, seen] : rooms()) {
    CHECK_FALSE(seen.contains(room));
    for (const std::string& other : seen) {
      CAPTURE(room, other);
      REQUIRE(rooms().contains(other));
      CHECK_FALSE(rooms().at(other).contains(room));
    }
  }
}

TEST_CASE("an upward include is caught, with its place") {
  CHECK(bad_includes("src/score/build.cpp", "#include \"score/build.h\"\n\n#include \"layout/layout.h\"\n") ==
        Lines{"src/score/build.cpp:3: score may not see layout"});
  CHECK(bad_includes("src/theory/key.h", "  #  include <source/range.h>\n") ==
        Lines{"src/theory/key.h:1: theory may not see source"});
  CHECK(bad_includes("src/render/pdf.cpp", "#include \"score/score.h\"\n#include \"sheet/sheet.h\"\n") ==
        Lines{"src/render/pdf.cpp:1: render may not see score"});
  CHECK(bad_includes("src/main.cpp", "#include \"command/command.h\"\n#include \"layout/layout.h\"\n") ==
        Lines{"src/main.cpp:2: main may not see layout"});
}

TEST_CASE("an include without its room, and a room of no table, are caught") {
  CHECK(bad_includes("src/theory/key.cpp", "#include \"key.h\"\n") ==
        Lines{"src/theory/key.cpp:1: name the room: key.h"});
  CHECK(bad_includes("src/attic/box.h", "") == Lines{"src/attic/box.h: attic is no room of the table"});
}

TEST_CASE("includes that keep to the table, and the system's, pass") {
  CHECK(bad_includes("src/lesson/reader.cpp",
                     "#include <vector>\n#include <toml++/toml.h>\n#include \"lesson/reader.h\"\n"
                     "#include \"theory/key.h\"\n// #include \"layout/layout.h\"\n#define INCLUDE \"x\"\n")
            .empty());
  CHECK(bad_includes("src/main.cpp", "#include \"command/command.h\"\n").empty());
}

TEST_CASE("an upward link line is caught") {
  CHECK(bad_link_lines("room(score SEES lesson layout USES PkgConfig::CMARK)\nroom(attic)\n") ==
        Lines{"score may not link layout", "attic is no room of the table"});
  CHECK(bad_link_lines("room(score SEES lesson words USES PkgConfig::CMARK)\n").empty());
}

TEST_CASE("cairo is included only where pages are drawn or fonts are opened") {
  for (const std::string& path : files_below("src", {".h", ".cpp"})) {
    const bool may = path.starts_with("src/render/") || path.starts_with("src/typeface/");
    CAPTURE(path);
    CHECK((may || text_of(path).find("#include <cairo") == std::string::npos));
  }
}

TEST_CASE("every room has its paragraph to begin with") {
  for (const auto& entry : std::filesystem::directory_iterator(project_path("src"))) {
    if (!entry.is_directory()) continue;
    const std::string room = entry.path().filename().string();
    const std::string readme = text_of("src/" + room + "/README.md");
    CAPTURE(room);
    CHECK(readme.starts_with("# " + room + "\n"));
    CHECK(readme.size() > 100);
  }
}
