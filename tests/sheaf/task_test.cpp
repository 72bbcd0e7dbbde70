#include "sheaf/task.h"

#include <catch2/catch.hpp>

using namespace fretsheaf::sheaf;

TEST_CASE("a task comes out of the pipe as it went in") {
  Task task;
  task.lesson = std::string("a\0b", 3);
  task.handouts = "out/a";
  task.keys = {"E", "Bb dorian"};
  task.formats = {Format::mxl};
  task.is_reading = true;
  CHECK(unpacked_task(packed(task)) == task);
  task.wanted = std::vector<Wanted>{{".d-dorian", {Format::pdf, Format::svg}}, {".e-dorian", {}}};
  CHECK(unpacked_task(packed(task)) == task);
}

TEST_CASE("an answer comes out of the pipe as it went in") {
  Answer answer;
  CHECK(unpacked_answer(packed(answer)) == answer);
  answer.status = Made::Status::unreadable;
  answer.findings = {{false, "x", "m", "h", "f", {1, 2, 3}, {4, 5, 6}, "text\n"}};
  answer.refusals = {"one", "two"};
  answer.reading = Reading{"D dorian", {".d-dorian"}, {Format::pdf}, {".e-dorian"}, {{"p", print_of("p")}}};
  answer.made = {{".d-dorian", Format::svg, {{".p1.svg", 7, -8, print_of("s")}}}};
  answer.failed = {".e-dorian"};
  CHECK(unpacked_answer(packed(answer)) == answer);
}
