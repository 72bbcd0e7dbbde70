#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lesson/keys_music.h"
#include "lesson/keys_value.h"

namespace fretsheaf::lesson {

// What stands under one `[[example]]`. What has to fit the neck or the music is checked when these are known.
struct ExampleKeys {
  MusicKeys music;
  Setting<std::string> title;
  Setting<std::string> intro;
  Setting<theory::Tempo> tempo;
  Setting<std::vector<Prose>> practice;
  Setting<BuildUp> build_up;
  Setting<Form> form;
  Setting<NeckPicture> neck;
  Setting<std::vector<Shape>> shapes;
  Setting<int> vary;
  Setting<int> blank_bars;
  Setting<Hidden> hide;
  Setting<std::string> tab;
  Range grid;  // the bytes between the quotes of `tab`
  Range range;
};

ExampleKeys read_example_keys(const TomlValue& table, const source::Files& files, source::Diagnostics& diagnostics);

bool is_example_key(std::string_view name);
std::vector<std::string_view> example_key_names();

// Each in a file of its own.
std::optional<Located<theory::Tempo>> read_tempo(const Field& field);
std::optional<Located<Form>> read_form(const Field& field);
std::optional<Located<NeckPicture>> read_neck(const Field& field);
std::optional<Located<std::vector<Shape>>> read_shapes(const Field& field);

}  // namespace fretsheaf::lesson
