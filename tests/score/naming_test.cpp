// Notes named as the trade names them where a handout is read.
#include "score/naming.h"

#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "score/build.h"
#include "score/printed.h"
#include "spell_out.h"

using namespace fretsheaf;
using lesson::NoteNames;
using score::Naming;
using theory::Letter;
using theory::NoteName;
using words::Language;

namespace {

const Naming letters{NoteNames::letters, Language::en};
const Naming german{NoteNames::letters_h, Language::de};

Naming syllables(Language language) {
  return {NoteNames::syllables, language};
}

// One alteration of all letters from C up.
std::string names(int alteration, const Naming& naming, std::string (*name)(NoteName, const Naming&)) {
  std::string all;
  for (const Letter letter : {Letter::C, Letter::D, Letter::E, Letter::F, Letter::G, Letter::A, Letter::B}) {
    all += (all.empty() ? "" : " ") + name({letter, alteration}, naming);
  }
  return all;
}

const std::string music =
    "title = \"The pulse of {{degree b7}}\"\nlabels = [\"notes\"]\n"
    "practice = [\"{{key}}: {{degree b3}}, {{note 1.2}}, {{chord V7}}, {{chord Bb/D}}, {{place 1.1}}\"]\n" +
    score::test::grid(
        "count | 1  2  3  4  |\n"
        "chord | i           |\n"
        "spell |    Bb Bb    |\n"
        "G     |       3     |\n"
        "A     | 2  1     4  |\n");

score::Score built(const std::string& keys) {
  source::Diagnostics diagnostics;
  score::Score score = score::build_score(
      score::test::read("title = \"Slipway\"\nkey = \"B minor\"\ninstrument = \"guitar\"\n" + keys, music),
      diagnostics);
  CHECK(diagnostics.list().empty());
  return score;
}

std::string practice(const score::Score& score) {
  return plain(score.examples[0].practice[0].front().runs);
}

std::string fact(const score::Score& score, score::Fact::Kind kind) {
  for (const score::Fact& fact : score.heading.facts) {
    if (fact.kind == kind) return plain(fact.value);
  }
  return {};
}

std::string labels(const score::Score& score) {
  std::string all;
  for (const score::Event& event : score.examples[0].bars[0].events) all += event.note_name + " ";
  return all;
}

}  // namespace

TEST_CASE("letters carry their signs") {
  CHECK(names(0, letters, score::printed) == "C D E F G A B");
  CHECK(names(1, letters, score::printed) == "C♯ D♯ E♯ F♯ G♯ A♯ B♯");
  CHECK(names(-2, letters, score::in_words) == "C♭♭ D♭♭ E♭♭ F♭♭ G♭♭ A♭♭ B♭♭");
  CHECK(names(-1, letters, score::chord_root) == "C♭ D♭ E♭ F♭ G♭ A♭ B♭");
}

// The German names of the 35 notes (common practice; Duden, from memory).
TEST_CASE("with H, B flat is B, and names end in -is and -es") {
  for (const auto name : {score::printed, score::in_words}) {
    CHECK(names(0, german, name) == "C D E F G A H");
    CHECK(names(1, german, name) == "Cis Dis Eis Fis Gis Ais His");
    CHECK(names(2, german, name) == "Cisis Disis Eisis Fisis Gisis Aisis Hisis");
    CHECK(names(-1, german, name) == "Ces Des Es Fes Ges As B");
    CHECK(names(-2, german, name) == "Ceses Deses Eses Feses Geses Ases Heses");
  }
}

TEST_CASE("with H, chord symbols keep their signs, but B is B flat") {
  CHECK(names(0, german, score::chord_root) == "C D E F G A H");
  CHECK(names(-1, german, score::chord_root) == "C♭ D♭ E♭ F♭ G♭ A♭ B");
  CHECK(names(1, german, score::chord_root) == "C♯ D♯ E♯ F♯ G♯ A♯ H♯");
}

TEST_CASE("syllables have the accents of their language") {
  CHECK(names(0, syllables(Language::it), score::printed) == "do re mi fa sol la si");
  CHECK(names(0, syllables(Language::es), score::printed) == "do re mi fa sol la si");
  CHECK(names(0, syllables(Language::fr), score::printed) == "do ré mi fa sol la si");
  CHECK(names(0, syllables(Language::pt), score::printed) == "dó ré mi fá sol lá si");
  CHECK(names(-1, syllables(Language::en), score::printed) == "do♭ re♭ mi♭ fa♭ sol♭ la♭ si♭");
}

TEST_CASE("in running words a syllable's sign has its name") {
  const NoteName f_sharp{Letter::F, 1};
  const NoteName b_flat{Letter::B, -1};
  CHECK(score::in_words(f_sharp, syllables(Language::it)) == "fa diesis");
  CHECK(score::in_words(b_flat, syllables(Language::it)) == "si bemolle");
  CHECK(score::in_words(f_sharp, syllables(Language::fr)) == "fa dièse");
  CHECK(score::in_words(b_flat, syllables(Language::fr)) == "si bémol");
  CHECK(score::in_words(f_sharp, syllables(Language::es)) == "fa sostenido");
  CHECK(score::in_words(b_flat, syllables(Language::es)) == "si bemol");
  CHECK(score::in_words(f_sharp, syllables(Language::pt)) == "fá sustenido");
  CHECK(score::in_words(b_flat, syllables(Language::pt)) == "si bemol");
  CHECK(score::in_words({Letter::B, -2}, syllables(Language::it)) == "si doppio bemolle");
  CHECK(score::in_words({Letter::F, 2}, syllables(Language::fr)) == "fa double dièse");
}

TEST_CASE("a chord's syllable has a capital") {
  CHECK(names(0, syllables(Language::fr), score::chord_root) == "Do Ré Mi Fa Sol La Si");
  CHECK(score::chord_root({Letter::B, -1}, syllables(Language::es)) == "Si♭");
}

TEST_CASE("a handout in German names its notes in German throughout") {
  const score::Score score = built("language = \"de\"\nnote-names = \"letters-h\"\n");
  CHECK(fact(score, score::Fact::Kind::key) == "h-Moll");
  CHECK(fact(score, score::Fact::Kind::tuning) == "E A D G H E");
  CHECK(practice(score) == "h-Moll: D, B, F♯7, B/D, A-Saite, 2. Bund");
  CHECK(labels(score) == "H B B Cis ");
  CHECK(plain(score.examples[0].title) == "The pulse of A");
  // The tab's strings, top line first; the higher of two that share a letter is small.
  CHECK(score.string_letters == std::vector<std::string>{"e", "H", "G", "D", "A", "E"});
  CHECK(score::printed(*theory::parse_key("Bb major"), german) == "B-Dur");
  CHECK(score::printed(*theory::parse_key("F# minor"), german) == "fis-Moll");
  CHECK(score::printed(*theory::parse_key("Eb dorian"), german) == "Es dorisch");
}

TEST_CASE("a handout in Italian names its notes in syllables throughout") {
  const score::Score score = built("language = \"it\"\nnote-names = \"syllables\"\n");
  CHECK(fact(score, score::Fact::Kind::key) == "si minore");
  CHECK(fact(score, score::Fact::Kind::tuning) == "mi la re sol si mi");
  CHECK(practice(score) == "si minore: re, si bemolle, Fa♯7, Si♭/Re, corda la, tasto 2");
  CHECK(labels(score) == "si si♭ si♭ do♯ ");
  CHECK(score.string_letters == std::vector<std::string>{"mi", "Si", "Sol", "Re", "La", "Mi"});
  CHECK(score::printed(*theory::parse_key("Bb major"), syllables(Language::it)) == "si bemolle maggiore");
  CHECK(score::printed(*theory::parse_key("F# minor"), syllables(Language::fr)) == "fa dièse mineur");
  CHECK(score::printed(*theory::parse_key("D dorian"), syllables(Language::pt)) == "ré dórico");
}

TEST_CASE("a string's letter keeps its size and its number") {
  CHECK(score::string_letter("b", german) == "h");
  CHECK(score::string_letter("Bb", german) == "B");
  CHECK(score::string_letter("Eb", german) == "Es");
  CHECK(score::string_letter("3", german) == "3");
  CHECK(score::string_letter("Eb", letters) == "E♭");
  CHECK(score::string_letter("eb", letters) == "e♭");
  CHECK(score::string_letter("d", syllables(Language::fr)) == "ré");
}

TEST_CASE("no two notes of a handout share a name, however they are named") {
  for (const Language language : words::languages) {
    for (const NoteNames which : {NoteNames::letters, NoteNames::letters_h, NoteNames::syllables}) {
      for (const auto name : {score::printed, score::in_words, score::chord_root}) {
        std::set<std::string> seen;
        for (int fifths = -15; fifths <= 19; ++fifths) {
          CHECK(seen.insert(name(theory::note_name_from_fifths(fifths), {which, language})).second);
        }
      }
    }
  }
}
