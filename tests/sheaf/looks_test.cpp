// The look of a handout, while what it was read from changes.
#include <catch2/catch.hpp>
#include <string>

#include "platform/disk_system.h"
#include "platform/memory_system.h"
#include "sheaf/workshop.h"
#include "typeface/known_fonts.h"

using namespace fretsheaf;

TEST_CASE("a font that leads out of its folder after a plan was made is an error of the lesson") {
  platform::DiskSystem disk;
  platform::MemorySystem system(disk);
  const std::string path = disk.font_path(typeface::known_fonts().front().file);
  system.files["face.ttf"] = std::get<std::string>(disk.read(path, std::size_t{1} << 26));
  system.files["look.toml"] = "[type]\nbody = { size = 11, fonts = [\"face.ttf\"] }\n";
  system.files["a.lesson.toml"] =
      "title = \"Slack water\"\nkey = \"C major\"\ninstrument = \"guitar\"\ntemplate = \"look.toml\"\n"
      "[[example]]\ntab = '''\ncount | 1   |\ne     | 3   |\n'''\n";
  sheaf::Workshop workshop(system);
  sheaf::Request request;
  request.lesson = "a.lesson.toml";
  request.formats = {sheaf::Format::svg};
  const sheaf::Plan plan = workshop.plan(request);
  REQUIRE(plan.jobs.size() == 1);
  system.links["face.ttf"] = "/elsewhere/face.ttf";
  const sheaf::Made made = workshop.make(plan.jobs.front());
  CHECK(made.status == sheaf::Made::Status::lesson_wrong);
  CHECK(made.outputs.empty());
  REQUIRE(made.reports.size() == 1);
  REQUIRE(made.reports.front().diagnostics.list().size() == 1);
  CHECK(made.reports.front().diagnostics.list().front().message ==
        "the font 'face.ttf' of this template lies outside the folder of these lessons");
}

TEST_CASE("a format is read by the name that it is called by") {
  using sheaf::Format;
  for (const Format format : {Format::pdf, Format::svg, Format::musicxml, Format::mxl}) {
    CHECK(sheaf::parse_format(sheaf::format_name(format)) == format);
  }
  CHECK(sheaf::format_name(Format::musicxml) == "musicxml");
  CHECK_FALSE(sheaf::parse_format("PDF"));
}
