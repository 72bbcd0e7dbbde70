// What threads meet at: the streams of news, the counter, the shelf.
#include <catch2/catch.hpp>
#include <thread>

#include "preview/counter.h"
#include "preview/news.h"
#include "preview/shelf.h"

using namespace fretsheaf::preview;
using namespace std::chrono_literals;

TEST_CASE("a stream begins with the version, and tells each later one") {
  News news(10s);
  const Next next = news.open();
  CHECK(next() == "event: version\ndata: 1\n\n");
  std::thread later([&] { news.tell(2); });
  CHECK(next() == "event: version\ndata: 2\n\n");
  later.join();
  news.tell(3);
  news.tell(4);
  CHECK(next() == "event: version\ndata: 4\n\n");
  news.close();
  CHECK(next() == std::nullopt);
  CHECK(news.open()() == std::nullopt);
}

TEST_CASE("a stream that has nothing to tell says that it lives") {
  News news(1ms);
  const Next next = news.open();
  next();
  CHECK(next() == ": still here\n\n");
}

TEST_CASE("a fifth stream takes the place of the oldest, which is told so and ends") {
  News news(10s);
  std::vector<Next> streams;
  for (int i = 0; i < 4; ++i) streams.push_back(news.open());
  CHECK(news.streams() == 4);
  streams[0]();
  std::thread waits([&] {
    CHECK(streams[0]() == "event: replaced\ndata: 0\n\n");
    CHECK(streams[0]() == std::nullopt);
  });
  const Next fifth = news.open();
  waits.join();
  CHECK(news.streams() == 4);
  CHECK(streams[1]() == "event: version\ndata: 1\n\n");
  CHECK(fifth() == "event: version\ndata: 1\n\n");
  streams[2] = nullptr;  // its connection is gone
  CHECK(news.streams() == 3);
}

TEST_CASE("a question waits at the counter until it is served, by whoever works") {
  const fretsheaf::platform::Wake bell;
  Counter counter(bell);
  Question question;
  question.lesson = "tide";
  std::thread asks([&] { CHECK(*counter.ask(question).body == "tide"); });
  int served = 0;
  while (served == 0) {
    counter.serve([&](const Question& asked) {
      ++served;
      return plain(200, asked.lesson);
    });
  }
  asks.join();
  CHECK(served == 1);
}

TEST_CASE("when nobody works any more, questions are sent away") {
  const fretsheaf::platform::Wake bell;
  Counter counter(bell);
  std::thread asks([&] { CHECK(counter.ask({}).status == 503); });
  counter.close();
  asks.join();
  CHECK(counter.ask({}).status == 503);
}

TEST_CASE("a page is on the shelf as long as a picture has it") {
  Shelf shelf;
  auto page = std::make_shared<const std::string>("<svg/>");
  shelf.put("one", page);
  shelf.put("one", std::make_shared<const std::string>("<svg/>"));  // which nobody keeps
  CHECK(*shelf.take("one") == "<svg/>");
  CHECK(shelf.take("two") == nullptr);
  page.reset();
  CHECK(shelf.take("one") == nullptr);
}
