#include "theory/meter.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "theory/tempo.h"

using namespace fretsheaf::theory;

namespace {

Meter meter(const char* text) {
  return parse_meter(text).value();
}

std::string beats_text(const char* text) {
  std::string result;
  for (const Rational& beat : meter(text).beats()) result += (result.empty() ? "" : " ") + beat.to_string();
  return result;
}

}  // namespace

TEST_CASE("Meters are read with their groups") {
  CHECK(meter("4/4") == Meter{});
  CHECK(meter("2+2+3/8") == Meter{{2, 2, 3}, 8});
  CHECK(meter("2+2+3/8").upper() == 7);
  CHECK(meter("2+2+3/8").bar() == Rational(7, 8));
  CHECK(meter("12/8").bar() == Rational(3, 2));
  CHECK(meter("12/8").count() == Rational(1, 8));
  CHECK(meter("64/1").bar() == Rational(64));
}

TEST_CASE("Every meter within the limits reads back as written, and none beyond") {
  for (int upper = 1; upper <= 64; ++upper) {
    for (const int lower : {1, 2, 4, 8, 16, 32, 64}) {
      const std::string text = std::to_string(upper) + "/" + std::to_string(lower);
      CHECK(parse_meter(text).value().to_string() == text);
    }
  }
  CHECK(meter("3+3+2/8").to_string() == "3+3+2/8");
  for (const char* wrong : {"",     "/",    "4",    "4/",   "/4",    "0/4",    "65/4",          "4/3",          "4/128",
                            "4/0",  "-4/4", "+4/4", "4+/4", "+/4",   "2++2/8", "60+5/8",        "04/4",         "4/04",
                            " 4/4", "4/4 ", "4 /4", "C",    "4/4/4", "3.5/4",  "99999999999/4", "4/99999999999"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_meter(wrong));
  }
}

TEST_CASE("Compound meters have three counts a beat") {
  // Common practice: 6, 9 and 12 over 8 or 16.
  for (const char* compound : {"6/8", "9/8", "12/8", "15/8", "6/16", "12/16"}) CHECK(meter(compound).compound());
  for (const char* simple : {"2/4", "3/4", "6/4", "3/8", "4/8", "7/8", "3+3/8", "2+2+2/8"}) {
    CAPTURE(simple);
    CHECK_FALSE(meter(simple).compound());
  }
}

TEST_CASE("Beats that notation keeps visible") {
  // Common practice.
  CHECK(beats_text("4/4") == "0 1/4 1/2 3/4");
  CHECK(beats_text("3/4") == "0 1/4 1/2");
  CHECK(beats_text("2/2") == "0 1/2");
  CHECK(beats_text("6/8") == "0 3/8");
  CHECK(beats_text("12/8") == "0 3/8 3/4 9/8");
  CHECK(beats_text("3/8") == "0");
  CHECK(beats_text("2/8") == "0");
  CHECK(beats_text("1/8") == "0");
  CHECK(beats_text("4/8") == "0 1/4");
  CHECK(beats_text("6/16") == "0 3/16");
}

TEST_CASE("Written groups are the beats, of counts shorter than a quarter") {
  CHECK(beats_text("2+2+3/8") == "0 1/4 1/2");
  CHECK(beats_text("3+2/8") == "0 3/8");
  CHECK(beats_text("3+3+2/8") == "0 3/8 3/4");
  CHECK(beats_text("3+2/4") == "0 1/4 1/2 3/4 1");
}

TEST_CASE("An ungrouped odd meter goes in quarters, the odd count with the last") {
  CHECK(beats_text("5/8") == "0 1/4");
  CHECK(beats_text("7/8") == "0 1/4 1/2");
  CHECK(beats_text("5/16") == "0");
  CHECK(beats_text("7/16") == "0 1/4");
  CHECK(beats_text("11/16") == "0 1/4 1/2");
}

TEST_CASE("Beats start at 0, rise and stay inside the bar, in every meter") {
  for (int upper = 1; upper <= 64; ++upper) {
    for (const int lower : {1, 2, 4, 8, 16, 32, 64}) {
      const Meter each{{upper}, lower};
      const std::vector<Rational> beats = each.beats();
      REQUIRE_FALSE(beats.empty());
      CHECK(beats.front() == Rational(0));
      for (std::size_t index = 1; index < beats.size(); ++index) CHECK(beats[index - 1] < beats[index]);
      CHECK(beats.back() < each.bar());
    }
  }
}

TEST_CASE("The meter's own beat is what a metronome counts") {
  // Common practice.
  CHECK(beat_unit(meter("4/4")) == Rational(1, 4));
  CHECK(beat_unit(meter("2/2")) == Rational(1, 2));
  CHECK(beat_unit(meter("6/8")) == Rational(3, 8));
  CHECK(beat_unit(meter("12/8")) == Rational(3, 8));
  CHECK(beat_unit(meter("3/8")) == Rational(1, 8));
  CHECK(beat_unit(meter("2+2+3/8")) == Rational(1, 8));
  CHECK(beat_unit(meter("6/16")) == Rational(3, 16));
}

TEST_CASE("counts as rhythm counting says them (common practice)") {
  const Rational quarter(1, 4);
  CHECK(count_name(Rational(0), quarter) == "1");
  CHECK(count_name(Rational(1, 16), quarter) == "e");
  CHECK(count_name(Rational(1, 8), quarter) == "&");
  CHECK(count_name(Rational(3, 16), quarter) == "a");
  CHECK(count_name(Rational(1, 12), quarter) == "la");
  CHECK(count_name(Rational(5, 12), quarter) == "li");
  CHECK(count_name(Rational(1, 20), quarter) == "+1/5");
  CHECK(count_name(Rational(3, 4), quarter) == "4");
  CHECK(count_name(Rational(5, 8), Rational(1, 8)) == "6");
  CHECK(count_name(Rational(3, 16), Rational(1, 8)) == "&");
  CHECK(count_name(Rational(1, 2), Rational(1, 2)) == "2");
}
