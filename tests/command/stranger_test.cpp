// A lesson from a stranger: what it may read, where it may write, and what a handout of it may hold. All on a disk,
// since symbolic links are among the ways out.
#include <catch2/catch.hpp>
#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "support/project.h"
#include "support/running.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;

namespace {

const std::string head = "title = \"Low tide\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
const std::string music = "[[example]]\ntab = '''\ncount | 1   2   3   4   |\nA     | 5       5       |\n'''\n";

// A folder `course` with a lesson to be put in, and beside it what no lesson has a right to.
struct Desk {
  Desk() {
    fs::create_directories(folder / "course/inner");
    fs::create_directories(folder / "outside");
    put(folder / "outside/look.toml", "accent = \"#095461\"\n");
    put(folder / "outside/lantern.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"4\" height=\"4\"/>");
    put(folder / "outside/face.ttf", "no font");
    fs::create_symlink("../outside/look.toml", folder / "course/look-link.toml");
    fs::create_symlink("../outside/lantern.svg", folder / "course/lantern-link.svg");
    fs::create_symlink("../outside/face.ttf", folder / "course/face-link.ttf");
    fs::create_symlink("../outside", folder / "course/linked");
  }

  std::string run(const std::string& words) {
    std::string said;
    const int status = fretsheaf::test::shell("fretsheaf " + words, folder.path(), &said);
    return "status " + std::to_string(status) + "\n" + said;
  }

  // All files and links below the folder, by their paths in it.
  std::set<std::string> files() const {
    std::set<std::string> found;
    for (const auto& entry : fs::recursive_directory_iterator(folder.path())) {
      if (!entry.is_directory())
        found.insert(fs::relative(entry.path().parent_path(), folder.path()) / entry.path().filename());
    }
    return found;
  }

  TemporaryFolder folder;
};

}  // namespace

TEST_CASE("a template or a logo outside of a lesson's folder is refused, whichever way it is named") {
  Desk desk;
  const std::string away = desk.folder / "outside/";
  struct Way {
    std::string key, value;
  };
  const std::vector<Way> ways = {
      {"template", "../outside/look.toml"}, {"template", "inner/../../outside/look.toml"},
      {"template", "./linked/look.toml"},   {"template", "look-link.toml"},
      {"template", away + "look.toml"},     {"template", "../outside/none.toml"},
      {"logo", "../outside/lantern.svg"},   {"logo", "inner/../../outside/lantern.svg"},
      {"logo", "linked/lantern.svg"},       {"logo", "lantern-link.svg"},
      {"logo", away + "lantern.svg"},
  };
  for (const Way& way : ways) {
    const std::string line = way.key + " = \"" + way.value + "\"";
    const std::string alt = way.key == "logo" ? "logo-alt = \"A lantern\"\n" : "";
    put(desk.folder / "course/a.lesson.toml", head + line + "\n" + alt + music);
    const auto before = desk.files();
    const std::string said = desk.run("typeset course/a.lesson.toml");
    INFO(line << "\n" << said);
    const std::string column = std::to_string(way.key.size() + 4);
    CHECK(said.starts_with("status 1\ncourse/a.lesson.toml:4:" + column + ": error: '" + way.value.substr(0, 39)));
    CHECK(said.find("' lies outside the folder of these lessons\n  " + line + "\n") != std::string::npos);
    CHECK(said.ends_with("\nhelp: put the " + way.key + " beside the lesson file and write its name alone\n"));
    CHECK(desk.files() == before);
  }
}

TEST_CASE("a sheaf.toml opens no way out for its lessons") {
  Desk desk;
  put(desk.folder / "course/a.lesson.toml", head + music);
  for (const std::string value : {"../outside/look.toml", "linked/look.toml", "look-link.toml"}) {
    put(desk.folder / "course/sheaf.toml", "[defaults]\ntemplate = \"" + value + "\"\n");
    const std::string said = desk.run("check course/a.lesson.toml");
    CHECK(said.starts_with("status 1\ncourse/sheaf.toml:2:12: error: '" + value + "' lies outside the folder"));
  }
}

TEST_CASE("the fonts of a lesson's own template lie in the lesson's folder") {
  Desk desk;
  put(desk.folder / "course/a.lesson.toml", head + "template = \"inner/look.toml\"\n" + music);
  for (const std::string& value :
       {std::string("../../outside/face.ttf"), std::string("../linked/face.ttf"), std::string("../face-link.ttf"),
        desk.folder / "outside/face.ttf", std::string("/dev/zero")}) {
    put(desk.folder / "course/inner/look.toml", "[type]\nbody = { size = 11, fonts = [\"" + value + "\"] }\n");
    const std::string path = (value.front() == '/' ? "" : "course/inner/") + value;
    CHECK(desk.run("typeset course/a.lesson.toml") ==
          "status 1\ncourse/a.lesson.toml:4:12: error: the font '" + path +
              "' of this template lies outside the folder of these lessons\n"
              "  template = \"inner/look.toml\"\n             ^^^^^^^^^^^^^^^^^\n"
              "help: put the font beside the template and write its name alone\n");
  }
  put(desk.folder / "course/face.ttf", "no font");
  put(desk.folder / "course/inner/look.toml", "[type]\nbody = { size = 11, fonts = [\"../face.ttf\"] }\n");
  CHECK(desk.run("typeset course/a.lesson.toml") ==
        "status 3\nfretsheaf: error: the font file course/inner/../face.ttf holds no TrueType or OpenType font\n");
}

TEST_CASE("nothing is written outside of the folder that is asked for, whatever lessons and titles are called") {
  Desk desk;
  const std::vector<std::string> names = {"...lesson.toml", "..-up.lesson.toml", "a\nb\x1b[31m.lesson.toml",
                                          " .lesson.toml",  "~.lesson.toml",     "%2e%2e%2fx.lesson.toml"};
  for (const std::string& name : names) {
    put(desk.folder / ("course/" + name),
        "title = \"../../outside/..\"\nsubtitle = \"/etc/x\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n"
        "[[example]]\ntitle = \"../../up\"\n" +
            music.substr(12) + music);
  }
  const auto before = desk.files();
  CHECK(desk.run("typeset course/*.lesson.toml course/.*.lesson.toml --to made --as pdf,svg,musicxml,mxl --split")
            .starts_with("status 0\n"));
  std::size_t made = 0;
  for (const std::string& file : desk.files()) {
    if (before.contains(file)) continue;
    ++made;
    INFO(file);
    CHECK(file.starts_with("made/"));
    CHECK(file.find('/', 5) == std::string::npos);
  }
  CHECK(made == names.size() * 6);  // a PDF, an SVG page, and two documents in two forms
}

TEST_CASE("a handout replaces a symbolic link in its place, and leaves what that leads to as it was") {
  Desk desk;
  put(desk.folder / "course/a.lesson.toml", head + music);
  put(desk.folder / "outside/precious", "as it was");
  for (const std::string verb : {"typeset course/a.lesson.toml", "sheaf course"}) {
    fs::remove(desk.folder / "course/a.d-dorian.pdf");
    fs::create_symlink("../outside/precious", desk.folder / "course/a.d-dorian.pdf");
    CHECK(desk.run(verb).starts_with("status 0\n"));
    CHECK(bytes_of(desk.folder / "outside/precious") == "as it was");
    CHECK(bytes_of(desk.folder / "course/a.d-dorian.pdf").starts_with("%PDF-"));
    CHECK_FALSE(fs::is_symlink(desk.folder / "course/a.d-dorian.pdf"));
  }
}

TEST_CASE("a course from strangers writes nowhere but in its folder, whatever its sheaf.toml says") {
  Desk desk;
  put(desk.folder / "course/a.lesson.toml", head + music);
  const std::set<std::string> before = desk.files();
  const std::string absolute = desk.folder / "outside";
  for (const std::string& folder :
       {std::string("../outside"), std::string("linked"), std::string("linked/deep"), absolute}) {
    put(desk.folder / "course/sheaf.toml", "[output]\nfolder = \"" + folder + "\"\n");
    const std::string said = desk.run("sheaf course");
    INFO(said);
    CHECK(said.find("lies outside the folder of this sheaf.toml\n") != std::string::npos);
    CHECK(said.starts_with("status 1\n"));
    for (const std::string& file : desk.files()) {
      if (before.find(file) == before.end()) CHECK(file.starts_with("course/"));
    }
  }
}

TEST_CASE("a link in a text leads to the web or to a mailbox, however its scheme is written") {
  Desk desk;
  const std::vector<std::string> links = {"[a](javascript:alert(1))",
                                          "[a](JaVaScRiPt:alert(1))",
                                          "[a](javascript&#58;alert(1))",
                                          "[a](&#x6A;avascript:alert(1))",
                                          "[a](data:text/html,x)",
                                          "[a](DATA:text/html;base64,eA==)",
                                          "[a](file:///etc/hosts)",
                                          "[a](vbscript:msgbox)",
                                          "[a](//example.org)",
                                          "[a](\\t javascript:alert(1))",
                                          "<javascript:alert(1)>",
                                          "[a]\\n\\n[a]: javascript:alert(1)",
                                          "[a](<javascript:alert(1)>)",
                                          "[a](../up)",
                                          "[a](#top)",
                                          "[a](http&#58javascript:x)",
                                          "[a]()",
                                          "[a](view-source:https://example.org)"};
  const std::vector<std::string> places = {"intro = \"\"\"", "practice = [\"\"\"", "[[example]]\nintro = \"\"\"",
                                           "[[example]]\npractice = [\"\"\""};
  for (const std::string& place : places) {
    for (const std::string& link : links) {
      const bool list = place.find('[', 10) != std::string::npos;
      const std::string text = place + "Low " + link + "\"\"\"" + (list ? "]\n" : "\n");
      const std::string rest = place.starts_with("[[") ? music.substr(12) : music;
      put(desk.folder / "course/a.lesson.toml", head + text + rest);
      const std::string said = desk.run("check course/a.lesson.toml");
      INFO(text << said);
      CHECK(said.starts_with("status 1\n"));
      CHECK(said.find(": error: this link leads neither to the web nor to a mailbox\n") != std::string::npos);
    }
  }
}

TEST_CASE("handouts of a stranger's lesson hold no script, and only links to the web and to mailboxes") {
  Desk desk;
  const std::string bad = "<script>alert(1)</script><a href='javascript:x' onload=\\\"x\\\">&lt;script>]]>";
  std::string lesson = "title = \"Low \\\\<script>alert(1)\\\\</script>\"\nkey = \"D dorian\"\ninstrument = \"bass\"\n";
  for (const char* key : {"teacher", "series", "level", "copyright"})
    lesson += std::string(key) + " = \"" + bad + "\"\n";
  lesson +=
      "link = \"https://example.org/?q='--javascript:alert(1)\"\n"
      "practice = [\"[web](HTTPS://example.org/a?b='%22(c)) [mail](mailto:a@example.org) <http://example.org>\"]\n"
      "[[example]]\ntitle = \"\\\\<svg onload=x>\"\nintro = \"`<script>` & javascript:alert(1)\"\ntab = '''\n"
      "count   | 1               2           3           4 |\n"
      "text    | \"<script>x</script>\"                      |\n"
      "section | \"<script>y\"                               |\n"
      "lyric   | <script>        javascript:             z |\n"
      "A       | 5               5           5           5 |\n'''\n";
  put(desk.folder / "course/a.lesson.toml", lesson);
  CHECK(desk.run("typeset course/a.lesson.toml --to made --as pdf,svg").starts_with("status 0\n"));

  const std::string svg = bytes_of(desk.folder / "made/a.d-dorian.p1.svg");
  CHECK(svg.find("<script") == std::string::npos);
  CHECK(svg.find("foreignObject") == std::string::npos);
  CHECK(svg.find("&lt;script&gt;") != std::string::npos);
  const std::string bare = std::regex_replace(svg, std::regex("\"[^\"]*\""), "\"\"");
  CHECK_FALSE(std::regex_search(bare, std::regex("<[^>]*\\son[a-z]+\\s*=")));
  std::set<std::string> leading;
  const std::regex href("href=\"([^\"]*)\"");
  for (std::sregex_iterator at(svg.begin(), svg.end(), href), end; at != end; ++at) {
    if ((*at)[1].str().front() != '#') leading.insert((*at)[1]);
  }
  CHECK(leading == std::set<std::string>{"HTTPS://example.org/a?b=%27%22(c)", "http://example.org",
                                         "https://example.org/?q=%27--javascript:alert(1)", "mailto:a@example.org"});

  // As qpdf, a reader of its own, lays the file open.
  std::string pdf;
  CHECK(fretsheaf::test::shell("qpdf --qdf --object-streams=disable made/a.d-dorian.pdf -", desk.folder.path(), &pdf) ==
        0);
  CHECK(pdf.find("/URI (HTTPS://example.org/a?b=%27%22") != std::string::npos);
  for (const char* key : {"/JS", "/JavaScript", "/Launch", "/OpenAction", "/AA", "/EmbeddedFile", "/GoToR", "/GoToE",
                          "/SubmitForm", "/ImportData", "/RichMedia", "/Rendition", "/XFA", "/AcroForm"}) {
    INFO(key);
    CHECK_FALSE(std::regex_search(pdf, std::regex(std::string(key) + "[^A-Za-z]")));
  }
  const std::regex uri("/URI \\(([a-zA-Z]*):");
  std::set<std::string> schemes;
  for (std::sregex_iterator at(pdf.begin(), pdf.end(), uri), end; at != end; ++at) schemes.insert((*at)[1]);
  CHECK(schemes == std::set<std::string>{"HTTPS", "http", "https", "mailto"});
}

TEST_CASE("a file's name changes no terminal and no build file") {
  Desk desk;
  put(desk.folder / "course/a\x1b[31m\nb.lesson.toml", "title = Low tide\n");
  CHECK(desk.run("check course/a*.lesson.toml")
            .starts_with("status 1\ncourse/a\uFFFD[31m\uFFFDb.lesson.toml:1:9: error: a text needs quotes"));
  CHECK(desk.run("check 'course/\x1b[32m'").starts_with("status 3\nfretsheaf: error: course/\uFFFD[32m: is not there"));
  put(desk.folder / "course/a\x1b[31m\nb.lesson.toml", head + music);
  CHECK(desk.run("typeset course/a*.lesson.toml --to made --depfile made/all.d") ==
        "status 2\nfretsheaf: error: --depfile: a name with a line end in it cannot be told to a build; rename the "
        "file\n");
  CHECK_FALSE(fs::exists(desk.folder / "made/all.d"));
}
