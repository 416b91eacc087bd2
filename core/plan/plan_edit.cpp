// field_text, with_field and field_options of plan_fields.h: one field of a plan as a person reads,
// types and chooses it.
#include <algorithm>

#include "core/base/plain_text.h"
#include "core/catalogue/renamed_ids.h"
#include "core/encode/json_path.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

std::vector<std::string> split_ids(std::string_view text) {
  std::vector<std::string> ids;
  std::string id;
  for (const char c : text) {
    if (c != ',' && c != ' ') {
      id += c;
    } else if (!id.empty()) {
      ids.push_back(std::move(id));
      id.clear();
    }
  }
  if (!id.empty()) ids.push_back(std::move(id));
  return ids;
}

std::string joined(const std::vector<std::string>& ids) {
  std::string text;
  for (const std::string& id : ids) text += (text.empty() ? "" : ", ") + id;
  return text;
}

/// The id itself when a row has it, otherwise the first row's; unchanged when there is no row.
template <class Row>
std::string kept_or_first(const std::vector<Row>& rows, const std::string& id) {
  return rows.empty() || find_row(rows, id) != nullptr ? id : rows.front().id;
}

/// What the chosen ids lead to; null from the first that leads nowhere.
struct Chosen {
  const Camera* camera = nullptr;
  const SensorMode* mode = nullptr;
  const Recording* recording = nullptr;
};

Chosen chosen_rows(const Plan& plan, const Catalogue& catalogue) {
  Chosen rows;
  rows.camera = find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  if (rows.camera != nullptr) rows.mode = find_row(rows.camera->modes, plan.format.mode);
  if (rows.mode != nullptr) rows.recording = find_row(rows.mode->recordings, plan.format.recording);
  return rows;
}

/// What is chosen below a changed camera, mode or recording option follows it.
void follow_format(Plan& plan, const Catalogue& catalogue, IdList changed) {
  FormatChoice& format = plan.format;
  Chosen rows = chosen_rows(plan, catalogue);
  if (changed == IdList::camera && rows.camera != nullptr) {
    format.mode = kept_or_first(rows.camera->modes, format.mode);
    rows = chosen_rows(plan, catalogue);
  }
  if (changed != IdList::recording && rows.mode != nullptr) {
    format.recording = kept_or_first(rows.mode->recordings, format.recording);
    rows = chosen_rows(plan, catalogue);
  }
  if (rows.recording == nullptr || rows.recording->codecs.empty()) return;
  const auto& codecs = rows.recording->codecs;
  if (std::find(codecs.begin(), codecs.end(), format.codec) == codecs.end())
    format.codec = codecs.front();
}

/// What hangs on a changed field follows it.
void follow_change(Plan& plan, const FieldPlace& place, const Catalogue& catalogue) {
  const IdList ids = place.info->ids;
  if (ids == IdList::camera || ids == IdList::mode || ids == IdList::recording) {
    follow_format(plan, catalogue, ids);
  }
  if (!place.info->pointer.ends_with("/anchor/kind")) return;
  Anchor& anchor = plan.deliverable.frame_lines[place.line].anchor;
  if (anchor.kind != AnchorKind::free) anchor = Anchor{.kind = anchor.kind};
}

template <class Row>
std::vector<FieldOption> options_of(const std::vector<Row>& own, const std::vector<Row>& library) {
  std::vector<FieldOption> options;
  for (const Row& row : own) options.push_back({row.id, row.name});
  for (const Row& row : library) {
    if (find_row(own, row.id) == nullptr) options.push_back({row.id, row.name});
  }
  return options;
}

std::vector<FieldOption> codec_options(const Plan& plan, const Catalogue& catalogue,
                                       const Recording* recording) {
  std::vector<FieldOption> options;
  if (recording == nullptr) return options;
  for (const std::string& id : recording->codecs) {
    const Codec* codec = find_row(plan.own.codecs, catalogue.codecs, id);
    options.push_back({id, codec != nullptr ? codec->name : id});
  }
  return options;
}

std::vector<FieldOption> id_options(const Plan& plan, const Catalogue& library, IdList ids) {
  const Catalogue& own = plan.own;
  const Chosen rows = chosen_rows(plan, library);
  switch (ids) {
    case IdList::none:
    case IdList::self:
    case IdList::card_kind:
      return {};
    case IdList::camera:
      return options_of(own.cameras, library.cameras);
    case IdList::mode:
      return rows.camera != nullptr ? options_of(rows.camera->modes, {})
                                    : std::vector<FieldOption>();
    case IdList::recording:
      return rows.mode != nullptr ? options_of(rows.mode->recordings, {})
                                  : std::vector<FieldOption>();
    case IdList::codec:
      return codec_options(plan, library, rows.recording);
    case IdList::lens_set:
      return options_of(own.lens_sets, library.lens_sets);
    case IdList::container:
      return options_of(own.containers, library.containers);
    case IdList::card:
      return options_of(own.cards, library.cards);
    case IdList::link:
      return options_of(own.links, library.links);
    case IdList::drive:
      return options_of(own.drives, library.drives);
    case IdList::tape:
      return options_of(own.tapes, library.tapes);
    case IdList::checksum:
      return options_of(own.checksums, library.checksums);
  }
  return {};
}

/// Writes one typed field into the plan; the value itself is checked, the plan is not.
void apply(Plan& plan, std::string_view pointer, std::string_view text, const Catalogue& catalogue,
           Problems& problems) {
  const JsonPath at(pointer);
  if (pointer == kCamerasPointer) {
    plan.choose.cameras = split_ids(text);
    return;
  }
  const auto place = find_field(pointer);
  const std::size_t lines = plan.deliverable.frame_lines.size();
  if (!place || (per_frame_line(*place->info) && place->line >= lines)) {
    add_problem(problems, at, in_quotes(text),
                "the pointer of a field of this plan, such as /lens/focal_mm");
    return;
  }
  if (place->info->ids == IdList::codec) text = current_codec_id(text);
  const auto value = value_from_text(*place->info, text);
  if (!value || !value_accepted(*place->info, *value)) {
    add_problem(problems, at, in_quotes(text), accepted_values(*place->info));
    return;
  }
  place->info->write(plan, place->line, *value);
  follow_change(plan, *place, catalogue);
}

/// The plan when nothing was wrong with it before and its check finds nothing.
Checked<Plan> checked(Plan plan, Problems problems, const Catalogue& catalogue) {
  if (problems.empty()) problems = check_plan(plan, catalogue);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return plan;
}

}  // namespace

std::string field_text(const Plan& plan, std::string_view pointer) {
  if (pointer == kCamerasPointer) return joined(plan.choose.cameras);
  const auto place = find_field(pointer);
  if (!place) return {};
  const bool there =
      !per_frame_line(*place->info) || place->line < plan.deliverable.frame_lines.size();
  return there ? value_text(*place->info, place->info->read(plan, place->line)) : std::string();
}

Checked<Plan> with_field(const Plan& plan, std::string_view pointer, std::string_view text,
                         const Catalogue& catalogue) {
  Plan changed = plan;
  Problems problems;
  apply(changed, pointer, text, catalogue, problems);
  return checked(std::move(changed), std::move(problems), catalogue);
}

Checked<Plan> with_fields(const Plan& plan, std::span<const TypedField> fields,
                          const Catalogue& catalogue) {
  Plan changed = plan;
  Problems problems;
  for (const TypedField& typed : fields) {
    apply(changed, typed.pointer, typed.text, catalogue, problems);
  }
  return checked(std::move(changed), std::move(problems), catalogue);
}

std::vector<FieldOption> field_options(const Plan& plan, const Catalogue& catalogue,
                                       const FieldInfo& info) {
  std::vector<FieldOption> options;
  for (const ChoiceName& choice : info.choices) {
    options.push_back({std::string(choice.token), std::string(choice.label)});
  }
  if (info.kind != FieldKind::id) return options;
  options = id_options(plan, catalogue, info.ids);
  if (info.optional) options.insert(options.begin(), {"", "None"});
  return options;
}

}  // namespace widegate
