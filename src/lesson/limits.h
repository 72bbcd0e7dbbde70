#pragma once

#include <cstddef>

// How much a lesson may hold. Past each limit there is an error with its place; under them, time and memory grow with
// the input and no faster. demo-lessons/README.md tells them to teachers.
namespace fretsheaf::lesson::limits {

inline constexpr std::size_t bytes = std::size_t{4} * 1024 * 1024;  // of a lesson file and of a sheaf.toml
inline constexpr int nesting = 32;                                  // of lists and tables, and parts of a dotted key
inline constexpr std::size_t examples = 500;
inline constexpr std::size_t bars = 2000;       // of an example, and of a form
inline constexpr std::size_t counts = 100'000;  // of an example: 50 in each of its bars
inline constexpr std::size_t strip_rows = 64;   // of a strip
inline constexpr std::size_t form_chords = 16;  // of a bar of a form
inline constexpr std::size_t line = 500;        // characters of a text of one line: a title
inline constexpr std::size_t text = 50000;      // characters of a text of several: an intro, a practice note
inline constexpr std::size_t link = 300;        // characters: its QR code must be read from a page
inline constexpr std::size_t items = 200;       // of a list: practice notes, shapes
inline constexpr std::size_t word = 200;        // characters of a word of a grid: a chord, a syllable, words in quotes
inline constexpr std::size_t pages = 1000;      // of a handout
inline constexpr std::size_t unknown_keys = 100;  // of a table, that are said
inline constexpr int blank_bars = 200;
inline constexpr int log_rows = 60;
inline constexpr int rungs = 60;
inline constexpr int passes = 20;
inline constexpr int slowest = 20;
inline constexpr int fastest = 400;
inline constexpr int frets = 36;  // less the capo
inline constexpr std::size_t strings = 12;
// Pitches of open strings, as MIDI counts them: the contrabass's lowest C an octave down, and the highest from which 36
// frets stay in MIDI's range.
inline constexpr int lowest_string = 12;
inline constexpr int highest_string = 91;
inline constexpr int bars_per_line = 64;
inline constexpr std::size_t logo_bytes = std::size_t{4} * 1024 * 1024;
inline constexpr std::size_t logo_references = 10'000;   // parts drawn by reference: about half a second
inline constexpr std::size_t logo_reference_depth = 64;  // references within each other

}  // namespace fretsheaf::lesson::limits
