// Who is let in, and what an address asks for.
#include "preview/gate.h"

#include <catch2/catch.hpp>

#include "preview/front.h"
#include "preview/page_files.h"

using namespace fretsheaf::preview;

namespace {

const std::string secret(32, 'a');
const Gate gate(secret, 8080);

Request asking(const std::string& path) {
  Request request;
  request.method = "GET";
  request.path = path;
  request.hosts = {"127.0.0.1:8080"};
  return request;
}

int status(const Request& request) {
  const Gate::Pass pass = gate.pass(request);
  return pass.refusal ? pass.refusal->status : 200;
}

}  // namespace

TEST_CASE("the address has the secret, and what follows it is what is asked for") {
  CHECK(gate.address() == "http://127.0.0.1:8080/" + secret + "/");
  CHECK(gate.pass(asking("/" + secret + "/")).what.empty());
  CHECK(gate.pass(asking("/" + secret + "/pages/x.svg")).what == "pages/x.svg");
}

TEST_CASE("a name that is not this machine's own is refused, and so is none or a second one") {
  Request request = asking("/" + secret + "/");
  CHECK(status(request) == 200);
  for (const char* host :
       {"evil.example", "127.0.0.1", "127.0.0.1:80", "127.0.0.1:8080.evil.example", "", "LOCALHOST"}) {
    CAPTURE(host);
    request.hosts = {host};
    CHECK(status(request) == 421);
  }
  request.hosts = {};
  CHECK(status(request) == 421);
  request.hosts = {"127.0.0.1:8080", "evil.example"};
  CHECK(status(request) == 421);
  request.hosts = {"localhost:8080"};
  CHECK(status(request) == 200);
}

TEST_CASE("a page of another origin is refused, whatever it knows") {
  Request request = asking("/" + secret + "/");
  for (const char* origin : {"http://evil.example", "https://127.0.0.1:8080", "null", "", "http://127.0.0.1:80"}) {
    CAPTURE(origin);
    request.origins = {"http://127.0.0.1:8080", origin};
    CHECK(status(request) == 403);
  }
  request.origins = {"http://localhost:8080"};
  CHECK(status(request) == 200);
}

TEST_CASE("without the whole secret there is nothing") {
  for (const std::string& path : {std::string(), std::string("/"), "/" + secret, "/" + secret.substr(1) + "/",
                                  "/" + secret + "a/", "/b" + secret.substr(1) + "/", "//" + secret + "/"}) {
    CAPTURE(path);
    CHECK(status(asking(path)) == 404);
  }
}

TEST_CASE("there is only reading") {
  Request request = asking("/" + secret + "/");
  for (const char* method : {"POST", "PUT", "DELETE", "OPTIONS", "get", ""}) {
    CAPTURE(method);
    request.method = method;
    CHECK(status(request) == 405);
  }
  request.method = "HEAD";
  CHECK(status(request) == 200);
}

TEST_CASE("a question is what its path and query say") {
  Request request = asking("");
  CHECK_FALSE(question_of("nothing.json", request));
  CHECK(question_of("lessons.json", request)->about == Question::About::lessons);
  request.query = {{"lesson", "tide"}, {"key", "E dorian"}, {"look", "compact"}, {"copy", "answers"}};
  const Question question = *question_of("handout.pdf", request);
  CHECK(question.about == Question::About::pdf);
  CHECK(question.lesson == "tide");
  CHECK(question.choice == Choice{"E dorian", "compact", true});
  CHECK(question_of("handout.musicxml", request)->about == Question::About::musicxml);
  request.query = {{"lesson", std::string(5000, 'x')}, {"copy", "handout"}};
  CHECK(question_of("lesson.json", request)->lesson.size() == 1000);
  CHECK_FALSE(question_of("lesson.json", request)->choice.answers);
}

TEST_CASE("the page's files are built in, with their types, and no others are") {
  CHECK(page_file("")->type == "text/html; charset=utf-8");
  CHECK(page_file("preview.css")->type == "text/css; charset=utf-8");
  CHECK(page_file("preview.js")->body->find("EventSource") != std::string::npos);
  CHECK_FALSE(page_file("preview.h"));
  CHECK_FALSE(page_file("../preview.js"));
  // Whole, and in its own bytes: the words have characters beyond ASCII.
  CHECK(page_file("words.js")->body->find("The lesson\u2019s own") != std::string::npos);
  CHECK(page_file("preview.html")->body->ends_with("</html>\n"));
}
