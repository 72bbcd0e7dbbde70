#include <array>

#include "command/help.h"

namespace fretsheaf::command {

namespace {

constexpr HelpEntry all[] = {
#define FRETSHEAF_VERB(word, form, text, example) {HelpKind::verb, "", word, form, text, example},
#include "command/help_verbs.def"
#define FRETSHEAF_OPTION(verb, word, value, text) {HelpKind::option, verb, word, value, text, ""},
#include "command/help_options.def"
#define FRETSHEAF_ROW(word, text, example) {HelpKind::row, "", word, "", text, example},
#include "command/help_rows.def"
#define FRETSHEAF_SIGN(row, word, text, example) {HelpKind::sign, row, word, "", text, example},
#define FRETSHEAF_FILLED_IN(word, text, example) {HelpKind::filled_in, "", word, "", text, example},
#include "command/help_signs.def"
#define FRETSHEAF_LESSON_KEY(word, text, example) {HelpKind::lesson_key, "", word, "", text, example},
#define FRETSHEAF_EXAMPLE_KEY(word, text, example) {HelpKind::example_key, "", word, "", text, example},
#define FRETSHEAF_PART_KEY(key, word, text, example) {HelpKind::part_key, key, word, "", text, example},
#include "command/help_lesson_keys.def"
#define FRETSHEAF_SHEAF_KEY(section, word, text, example) {HelpKind::sheaf_key, section, word, "", text, example},
#include "command/help_sheaf_keys.def"
#define FRETSHEAF_TEMPLATE_KEY(table, word, text, example) {HelpKind::template_key, table, word, "", text, example},
#include "command/help_template_keys.def"
};

}  // namespace

std::span<const HelpEntry> help_entries() {
  return all;
}

}  // namespace fretsheaf::command
