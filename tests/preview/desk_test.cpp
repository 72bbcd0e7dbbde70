// What the page is told of a lesson, and when it is made anew.
#include "preview/desk.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "platform/disk_system.h"
#include "platform/memory_system.h"

using namespace fretsheaf;
using namespace fretsheaf::preview;
using nlohmann::json;

namespace {

const std::string mooring =
    "title = \"Mooring lines\"\n"
    "key = \"D dorian\"\n"
    "also-in = [\"E dorian\"]\n"
    "instrument = \"bass\"\n"
    "\n"
    "[[example]]\n"
    "tab = '''\n"
    "count | 1   2 & 3   4   | 1   & (2) 3   4   |\n"
    "chord | i7              | IV7               |\n"
    "D     |                 |           2       |\n"
    "A     | 5   5 5     3   | 5   x             |\n"
    "E     |         3       |                   |\n"
    "'''\n";

std::string with(std::string text, const std::string& what, const std::string& instead) {
  return text.replace(text.find(what), what.size(), instead);
}

// A desk in a folder of its own, in memory.
struct Fixture {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};
  Shelf shelf;
  std::unique_ptr<Desk> desk;

  explicit Fixture(const std::string& path, const std::string& text = mooring) {
    system.files["/course/tide.lesson.toml"] = text;
    desk = std::make_unique<Desk>(path, system, shelf);
  }

  Response ask(Question::About about, const std::string& name = "tide", const Choice& choice = {}) const {
    return desk->answer({about, name, choice});
  }
  json told(const Choice& choice = {}, const std::string& name = "tide") const {
    return json::parse(*ask(Question::About::lesson, name, choice).body);
  }
  json list() const { return json::parse(*ask(Question::About::lessons).body); }
  bool write(const std::string& path, const std::string& text) {
    system.files[path] = text;
    return desk->changed({path});
  }
};

const char* const path = "/course/tide.lesson.toml";

// The place in the music of the first example.
json place(const json& told, int bar, const std::string& at) {
  for (const json& one : told["picture"]["places"]) {
    if (one["bar"] == bar && one["at"] == at) return one;
  }
  return {};
}

}  // namespace

TEST_CASE("a lesson's pages are on the shelf, with its keys, its own first") {
  const Fixture here(path);
  const json told = here.told();
  CHECK(told["name"] == "tide");
  CHECK(told["file"] == "tide.lesson.toml");
  CHECK(told["inFolder"] == false);
  CHECK(told["fresh"] == true);
  CHECK(told["problems"].empty());
  const json picture = told["picture"];
  CHECK(picture["title"] == "Mooring lines");
  CHECK(picture["choice"] == json{{"key", "D dorian"}, {"look", "music-stand"}, {"answers", false}});
  REQUIRE(picture["pages"].size() == 1);
  CHECK(here.shelf.take(picture["pages"][0])->starts_with("<?xml"));
  CHECK(picture["keys"].size() == 12);
  CHECK(picture["keys"][0] == json{{"key", "D dorian"}, {"printed", "D Dorian"}, {"group", "own"}});
  CHECK(picture["keys"][1] == json{{"key", "E dorian"}, {"printed", "E Dorian"}, {"group", "also-in"}});
  CHECK(picture["keys"][2]["group"] == "other");
  CHECK(picture["looks"] == json{"music-stand", "compact", "large-print"});
}

TEST_CASE("a note is told by name, string and fret, degree, count and place in the file") {
  const Fixture here(path);
  const json told = here.told();
  // By hand: the fifth fret of the A string is D, the tonic; of G7 it is the fifth. Columns count from 1.
  const json first = place(told, 1, "3/8");
  CHECK(first["kind"] == "notes");
  CHECK(first["count"] == "2 &");
  CHECK(first["chord"] == "Dm7");
  CHECK(first["notes"] == json::parse(R"([{"name": "D", "string": "A", "fret": 5, "degree": "1", "chordDegree": "1",
                                           "manner": "", "held": false, "line": 11, "column": 15}])"));
  CHECK(place(told, 2, "0")["notes"][0]["chordDegree"] == "5");
  CHECK(place(told, 2, "1/4")["kind"] == "rest");
  const json dead = place(told, 2, "1/8")["notes"][0];
  CHECK(dead["manner"] == "dead");
  CHECK(dead["name"] == "");
  CHECK(dead["degree"] == "");
}

TEST_CASE("another key moves the notes and keeps where they are written") {
  const Fixture here(path);
  const json note = place(here.told({"E dorian", "", false}), 1, "0")["notes"][0];
  CHECK(note["name"] == "E");
  CHECK(note["degree"] == "1");
  CHECK(note["line"] == 11);
  CHECK(note["column"] == 9);
}

TEST_CASE("errors come with their line and carets, and the last good picture stays") {
  Fixture here(path);
  const json before = here.told();
  CHECK(here.write(path, with(mooring, "\"bass\"", "\"bas\"")));
  const json told = here.told();
  CHECK(told["fresh"] == false);
  CHECK(told["picture"] == before["picture"]);
  REQUIRE(told["problems"].size() == 1);
  const json problem = told["problems"][0];
  CHECK(problem["error"] == true);
  CHECK(problem["file"] == "tide.lesson.toml");
  CHECK(problem["line"] == 4);
  CHECK(problem["column"] == 14);
  CHECK(problem["message"] == "'instrument' cannot be 'bas'");
  CHECK(problem["help"] == "did you mean 'bass'?");
  CHECK(problem["excerpt"] == "  instrument = \"bas\"\n               ^^^^^");
  // Whoever opens it now, in whatever key, sees the last good one there is.
  CHECK(here.told({"A dorian", "", false})["picture"] == before["picture"]);
  here.write(path, mooring);
  CHECK(here.told() == before);
}

TEST_CASE("a lesson that never was good has no picture") {
  const Fixture here(path, with(mooring, "\"bass\"", "\"bas\""));
  const json told = here.told();
  CHECK(told["fresh"] == false);
  CHECK(told["picture"].is_null());
}

TEST_CASE("a file that is gone is told of, and a page stays") {
  Fixture here(path);
  here.told();
  here.system.files.erase(path);
  // The folder is not empty, so that it is still there.
  here.system.files["/course/a.txt"] = "";
  CHECK(here.desk->changed({path}));
  const json told = here.told();
  CHECK(told["fresh"] == false);
  CHECK_FALSE(told["picture"].is_null());
  CHECK(told["problems"][0]["line"] == 0);
  CHECK(told["problems"][0]["message"].get<std::string>().find("is not there") != std::string::npos);
}

TEST_CASE("a choice that the lesson does not offer is its own") {
  const Fixture here(path);
  const json own = here.told();
  for (const Choice& choice : {Choice{"nonsense", "", false}, Choice{"E minor", "", false}, Choice{"all", "", false},
                               Choice{"", "/etc/passwd", false}, Choice{"", "own.toml", false}, Choice{"", "", true}}) {
    CAPTURE(choice.key, choice.look, choice.answers);
    CHECK(here.told(choice)["picture"] == own["picture"]);
    // Also where no other was made before it.
    CHECK(Fixture(path).told(choice)["picture"] == own["picture"]);
  }
}

TEST_CASE("no template is read by a path that comes from a page") {
  Fixture here(path);
  here.system.files["/course/own.toml"] = "a file that is no template";
  CHECK(here.told({"", "/course/own.toml", false})["problems"].empty());
  CHECK(here.told({"E dorian", "/course/own.toml", false})["problems"].empty());
  const Response made = here.ask(Question::About::pdf, "tide", {"", "/course/own.toml", false});
  CHECK(made.status == 200);
}

TEST_CASE("what is made is kept until a file changes that it was made from") {
  Fixture here(path);
  const Question question{Question::About::lesson, "tide", {}};
  const auto first = here.desk->answer(question).body;
  CHECK(here.desk->answer(question).body == first);
  CHECK_FALSE(here.write("/course/notes.txt", "anything"));
  CHECK_FALSE(here.write("/elsewhere/sheaf.toml", "anything"));
  CHECK(here.desk->answer(question).body == first);
  CHECK(here.desk->version() == 1);
  CHECK(here.write(path, with(mooring, "Mooring", "Heaving")));
  CHECK(here.desk->version() == 2);
  CHECK(here.told()["picture"]["title"] == "Heaving lines");
}

TEST_CASE("a sheaf.toml counts, and so does a template and a picture that were missing") {
  Fixture here(path);
  const json before = here.told();
  CHECK(here.write("/sheaf.toml", "[defaults]\npaper = \"letter\"\n"));
  CHECK(here.told()["picture"]["pages"] != before["picture"]["pages"]);
  CHECK(here.write(path, with(mooring, "title", "template = \"own.toml\"\ntitle")));
  CHECK(here.told()["fresh"] == false);
  const std::string look =
      std::get<std::string>(here.system.read(here.system.data_path("templates") + "/music-stand.toml", 1'000'000));
  CHECK(here.write("/course/own.toml", look));
  const json own = here.told();
  CHECK(own["fresh"] == true);
  CHECK(here.write("/course/own.toml", with(look, "#095461", "#702040")));
  CHECK(here.told()["picture"]["pages"] != own["picture"]["pages"]);
  const auto folders = here.desk->folders();
  for (const char* folder : {"/course", "/"}) {
    CAPTURE(folder);
    CHECK(std::find(folders.begin(), folders.end(), folder) != folders.end());
  }
}

TEST_CASE("the answer key of an exercise shows what the handout hides") {
  const Fixture here(path, with(mooring, "tab =", "hide = [\"frets\"]\ntab ="));
  const json handout = here.told();
  CHECK(handout["picture"]["exercise"] == true);
  CHECK(place(handout, 1, "0")["kind"] == "hidden");
  const json answers = here.told({"", "", true});
  CHECK(answers["picture"]["choice"]["answers"] == true);
  CHECK(place(answers, 1, "0")["notes"][0]["name"] == "D");
  CHECK(answers["picture"]["pages"] != handout["picture"]["pages"]);
  CHECK(here.ask(Question::About::pdf, "tide", {"", "", true}).save_as == "tide.d-dorian.answers.pdf");
  const Response refused = here.ask(Question::About::musicxml);
  CHECK(refused.status == 409);
  CHECK(*refused.body == "The exercise hides all of its music. Choose the answer key.\n");
  CHECK(here.ask(Question::About::musicxml, "tide", {"", "", true}).status == 200);
}

TEST_CASE("downloads are made in the chosen key, and not of a lesson with errors") {
  Fixture here(path);
  const Response pdf = here.ask(Question::About::pdf, "tide", {"E dorian", "", false});
  CHECK(pdf.save_as == "tide.e-dorian.pdf");
  CHECK(pdf.type == "application/pdf");
  CHECK(pdf.body->starts_with("%PDF-"));
  const Response document = here.ask(Question::About::musicxml);
  CHECK(document.save_as == "tide.d-dorian.musicxml");
  CHECK(document.type == "application/vnd.recordare.musicxml+xml");  // as MusicXML 4.0's site registers it
  here.write(path, with(mooring, "\"bass\"", "\"bas\""));
  const Response refused = here.ask(Question::About::pdf);
  CHECK(refused.status == 409);
  CHECK(*refused.body == "The lesson has errors. Nothing is made until they are mended.\n");
}

TEST_CASE("a folder lists its lessons by name with what is wrong, and follows what comes and goes") {
  Fixture here("/course");
  here.system.files["/course/more/reef.lesson.toml"] = with(mooring, "\"bass\"", "\"bas\"");
  CHECK(here.desk->changed({"/course/more"}));
  json list = here.list();
  CHECK(list["folder"] == "course");
  REQUIRE(list["lessons"].size() == 2);
  CHECK(list["lessons"][0] == json{{"name", "more/reef"}, {"title", ""}, {"errors", 1}, {"warnings", 0}});
  CHECK(list["lessons"][1] == json{{"name", "tide"}, {"title", "Mooring lines"}, {"errors", 0}, {"warnings", 0}});
  CHECK(here.told({}, "tide")["inFolder"] == true);
  here.write("/course/more/reef.lesson.toml", mooring);
  CHECK(here.list()["lessons"][0]["errors"] == 0);
  here.system.files.erase("/course/more/reef.lesson.toml");
  CHECK(here.desk->changed({"/course/more/reef.lesson.toml"}));
  CHECK(here.list()["lessons"].size() == 1);
  CHECK(here.ask(Question::About::lesson, "more/reef").status == 404);
}

TEST_CASE("a lesson that went is listed again when it comes back") {
  Fixture here("/course");
  here.write("/course/ebb.lesson.toml", mooring);
  REQUIRE(here.list()["lessons"].size() == 2);
  here.system.files.erase("/course/ebb.lesson.toml");
  CHECK(here.desk->changed({"/course/ebb.lesson.toml"}));
  REQUIRE(here.list()["lessons"].size() == 1);
  CHECK(here.write("/course/ebb.lesson.toml", mooring));
  CHECK(here.list()["lessons"].size() == 2);
}

TEST_CASE("a lesson is found by its name in the list alone") {
  Fixture here("/course");
  here.system.files["/secret.lesson.toml"] = mooring;
  for (const char* name : {"", "../secret", "/secret", "/course/tide", "tide.lesson.toml", "-"}) {
    CAPTURE(name);
    CHECK(here.ask(Question::About::lesson, name).status == 404);
    CHECK(here.ask(Question::About::pdf, name).status == 404);
  }
}

TEST_CASE("only so many choices are kept, the latest") {
  const Fixture here(path);
  const json first = here.told();
  const std::string page = first["picture"]["pages"][0];
  const std::vector<json> keys = first["picture"]["keys"];
  for (const char* look : {"", "compact", "large-print"}) {
    for (const json& key : keys) here.told({key["key"], look, false});
  }
  CHECK(here.shelf.take(page) == nullptr);
  CHECK(here.told() == first);
  CHECK(here.shelf.take(page) != nullptr);
}

TEST_CASE("a page that stands in for one with errors is there as long as what names it") {
  Fixture here(path);
  here.told();
  here.write(path, with(mooring, "\"bass\"", "\"bas\""));
  const json told = here.told({"E dorian", "", false});
  for (int i = 0; i < 30; ++i) here.told({"key " + std::to_string(i), "", true});
  const json again = here.told({"key 29", "", true});
  CHECK(here.shelf.take(again["picture"]["pages"][0]) != nullptr);
  CHECK(again["picture"] == told["picture"]);
}

TEST_CASE("a list is left when all is to end") {
  platform::DiskSystem disk;
  platform::MemorySystem system{disk};
  system.files[path] = mooring;
  Shelf shelf;
  Desk desk("/course", system, shelf, [] { return true; });
  CHECK(desk.answer({Question::About::lessons, "", {}}).status == 503);
}
