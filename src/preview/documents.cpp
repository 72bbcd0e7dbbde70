#include "preview/documents.h"

#include <nlohmann/json.hpp>

namespace fretsheaf::preview {
namespace {

using nlohmann::ordered_json;

// A file's name need not be UTF-8; the document is.
std::string text_of(const ordered_json& document) {
  return document.dump(-1, ' ', false, ordered_json::error_handler_t::replace);
}

const char* group_name(KeyChoice::Group group) {
  switch (group) {
    case KeyChoice::Group::own:
      return "own";
    case KeyChoice::Group::also_in:
      return "also-in";
    case KeyChoice::Group::other:
      return "other";
  }
  return "other";
}

ordered_json choice_of(const Choice& choice) {
  return {{"key", choice.key}, {"look", choice.look}, {"answers", choice.answers}};
}

ordered_json problems_of(const std::vector<Problem>& problems) {
  ordered_json list = ordered_json::array();
  for (const Problem& problem : problems) {
    list.push_back({{"error", problem.is_error},
                    {"file", problem.file},
                    {"line", problem.line},
                    {"column", problem.column},
                    {"message", problem.message},
                    {"excerpt", problem.excerpt},
                    {"help", problem.help}});
  }
  return list;
}

ordered_json notes_of(const MusicPlace& place) {
  ordered_json notes = ordered_json::array();
  for (const NotePlace& note : place.notes) {
    notes.push_back({{"name", note.name},
                     {"string", note.string},
                     {"fret", note.fret},
                     {"degree", note.degree},
                     {"chordDegree", note.chord_degree},
                     {"manner", note.manner},
                     {"held", note.held},
                     {"line", note.line},
                     {"column", note.column}});
  }
  return notes;
}

ordered_json places_of(const Picture& picture) {
  ordered_json list = ordered_json::array();
  for (const MusicPlace& place : picture.places) {
    list.push_back({{"example", place.example},
                    {"bar", place.bar},
                    {"at", place.at},
                    {"kind", place.kind},
                    {"count", place.count},
                    {"key", place.key},
                    {"chord", place.chord},
                    {"notes", notes_of(place)},
                    {"line", place.line},
                    {"column", place.column}});
  }
  return list;
}

ordered_json picture_of(const Picture& picture) {
  ordered_json keys = ordered_json::array();
  for (const KeyChoice& key : picture.keys) {
    keys.push_back({{"key", key.key}, {"printed", key.printed}, {"group", group_name(key.group)}});
  }
  ordered_json pages = ordered_json::array();
  for (const ShownPage& page : picture.pages) pages.push_back(page.name);
  return {{"choice", choice_of(picture.choice)},
          {"title", picture.title},
          {"exercise", picture.exercise},
          {"keys", std::move(keys)},
          {"looks", picture.looks},
          {"pages", std::move(pages)},
          {"places", places_of(picture)}};
}

}  // namespace

std::string list_document(const std::string& folder, const std::vector<ListEntry>& entries) {
  ordered_json lessons = ordered_json::array();
  for (const ListEntry& entry : entries) {
    lessons.push_back(
        {{"name", entry.name}, {"title", entry.title}, {"errors", entry.errors}, {"warnings", entry.warnings}});
  }
  return text_of({{"folder", folder}, {"lessons", std::move(lessons)}});
}

std::string lesson_document(const std::string& name, const std::string& file, bool in_folder, const Choice& wanted,
                            const std::vector<Problem>& problems, const Picture* picture, bool is_fresh) {
  return text_of({{"name", name},
                  {"file", file},
                  {"inFolder", in_folder},
                  {"wanted", choice_of(wanted)},
                  {"fresh", is_fresh},
                  {"problems", problems_of(problems)},
                  {"picture", picture == nullptr ? ordered_json() : picture_of(*picture)}});
}

}  // namespace fretsheaf::preview
