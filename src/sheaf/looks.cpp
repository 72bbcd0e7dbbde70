#include "sheaf/looks.h"

#include <string_view>
#include <utility>

#include "sheaf/fonts_of.h"
#include "source/nearest.h"
#include "template/reader.h"
#include "typeface/known_fonts.h"

namespace fretsheaf::sheaf {

namespace {

using source::Code;

std::string unknown_template(const std::string& name, const platform::System& system) {
  std::string message = "there is no template '" + name + "'";
  const std::vector<std::string> names = templates::template_names(system);
  const std::vector<std::string_view> views(names.begin(), names.end());
  const std::string near = source::nearest(name, views);
  if (!near.empty()) message += "; did you mean '" + near + "'?";
  return message;
}

std::string what_templates_are(const platform::System& system) {
  std::string all;
  for (const std::string& name : templates::template_names(system)) all += (all.empty() ? "" : ", ") + name;
  return "the templates are " + all + "; one of your own is named by its path, which ends in .toml";
}

}  // namespace

const Look* Looks::find(const std::optional<std::string>& asked, const lesson::Lesson& lesson, const std::string& root,
                        Made& made) {
  const bool brought = !asked && !lesson.template_path.empty();
  const std::string own = brought ? lesson.template_path : lesson.template_name.value;
  const std::string name = asked.value_or(own);
  if (const auto known = looks_.find(name); known != looks_.end()) {
    return brought && leads_out(known->second.look, lesson, root, made) ? nullptr : &known->second;
  }
  std::optional<templates::Template> look = read(name, asked.has_value(), lesson, made);
  if (!look || (brought && leads_out(*look, lesson, root, made))) return nullptr;
  return open(name, std::move(*look), made);
}

std::optional<templates::Template> Looks::read(const std::string& name, bool is_asked, const lesson::Lesson& lesson,
                                               Made& made) const {
  templates::ReadTemplate read = templates::read_template(name, system_);
  if (read.look) return std::move(read.look);
  if (read.missing && is_asked) {
    made.status = Made::Status::request_wrong;
    made.refusal = unknown_template(name, system_);
    return std::nullopt;
  }
  made.status = Made::Status::lesson_wrong;
  if (read.missing) {
    made.reports.front().diagnostics.error(Code::template_unknown, lesson.template_name.range,
                                           unknown_template(lesson.template_name.value, system_),
                                           what_templates_are(system_));
  } else {
    made.reports.push_back({std::move(read.files), std::move(read.diagnostics)});
  }
  return std::nullopt;
}

// A template that a lesson brings along opens no way out of its folder.
bool Looks::leads_out(const templates::Template& look, const lesson::Lesson& lesson, const std::string& root,
                      Made& made) const {
  const std::optional<std::string> font = font_outside(look, root, system_);
  if (!font) return false;
  made.status = Made::Status::lesson_wrong;
  made.reports.front().diagnostics.error(
      Code::outside_folder, lesson.template_name.range,
      "the font '" + *font + "' of this template lies outside the folder of these lessons",
      "put the font beside the template and write its name alone");
  return true;
}

const Look* Looks::open(const std::string& name, templates::Template read, Made& made) {
  Look look{std::move(read), {}, {}};
  if (std::optional<std::string> missing = open_fonts(look.look, fonts_, look.fonts)) {
    made.status = Made::Status::unreadable;
    made.refusal = *missing;
    return nullptr;
  }
  look.inputs = inputs_of(look.look);
  return &looks_.emplace(name, std::move(look)).first->second;
}

// What was read for a look: a font that an earlier one had opened already was not read again.
Inputs Looks::inputs_of(const templates::Template& look) {
  if (traced_ == nullptr) return {};
  Inputs inputs = traced_->take();
  font_inputs_.insert(inputs.begin(), inputs.end());
  for (const templates::TypeStyle& role : look.type) {
    for (const std::string& name : role.fonts) {
      const typeface::KnownFont* known = typeface::known_font(name);
      const auto read = font_inputs_.find(known == nullptr ? name : system_.font_path(known->file));
      if (read != font_inputs_.end()) inputs.insert(*read);
    }
  }
  return inputs;
}

}  // namespace fretsheaf::sheaf
