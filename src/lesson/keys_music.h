#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "lesson/keys_value.h"

namespace fretsheaf::lesson {

// The keys that a lesson and each of its examples may have.
struct MusicKeys {
  Setting<theory::Key> key;
  Setting<theory::Meter> meter;
  Setting<theory::Feel> feel;
  Setting<std::vector<Staff>> staves;
  Setting<std::vector<Label>> labels;
  Setting<std::optional<int>> bars_per_line;
};

void read_key(MusicKeys& into, const Field& field);
void read_meter(MusicKeys& into, const Field& field);
void read_feel(MusicKeys& into, const Field& field);
void read_staves(MusicKeys& into, const Field& field);
void read_labels(MusicKeys& into, const Field& field);
void read_bars_per_line(MusicKeys& into, const Field& field);

// A key of at most seven signs. The mode may be left out where there is a default.
std::optional<theory::Key> read_key_name(const Field& field, std::string_view text,
                                         std::optional<theory::Mode> default_mode = {});

}  // namespace fretsheaf::lesson
