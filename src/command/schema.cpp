
#include "lesson/schema.h"

#include <nlohmann/json.hpp>

#include "command/command.h"
#include "command/report.h"

namespace fretsheaf::command {

namespace {

using nlohmann::ordered_json;

// A sheaf.toml: [defaults] with the keys that lessons have in common, and [output].
ordered_json sheaf_schema(const ordered_json& lesson) {
  ordered_json defaults = lesson.at("properties");
  defaults.erase("title");
  defaults.erase("example");
  ordered_json definitions = lesson.at("definitions");
  definitions.erase("example");
  definitions.erase("tempo");
  definitions.erase("bpm");
  const ordered_json output = {
      {"type", "object"},
      {"additionalProperties", false},
      {"description", "Where the handouts go, and in which formats."},
      {"properties",
       {{"folder", {{"type", "string"}, {"description", "A folder, from this file's own."}}},
        {"as", {{"type", "array"}, {"uniqueItems", true}, {"items", {{"enum", {"pdf", "svg", "musicxml", "mxl"}}}}}}}}};
  return {{"$schema", lesson.at("$schema")},
          {"title", "fretsheaf sheaf"},
          {"description", "A sheaf.toml: what the lessons of a folder have in common."},
          {"type", "object"},
          {"additionalProperties", false},
          {"properties",
           {{"defaults", {{"type", "object"}, {"additionalProperties", false}, {"properties", defaults}}},
            {"output", output}}},
          {"definitions", definitions}};
}

}  // namespace

Exit schema(const SchemaOptions& options, Console& console) {
  if (options.of == "lesson") {
    console.out += lesson::schema();
    return Exit::done;
  }
  if (options.of == "sheaf") {
    console.out += sheaf_schema(ordered_json::parse(lesson::schema())).dump(2) + "\n";
    return Exit::done;
  }
  complain("schema " + options.of + ": there is a schema of a lesson and of a sheaf", console);
  return Exit::request_wrong;
}

}  // namespace fretsheaf::command
