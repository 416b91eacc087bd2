#include "web/view/comparison.h"

#include <algorithm>
#include <utility>

#include "core/plan/plan_json.h"
#include "core/report/evaluate.h"
#include "web/view/choice_items.h"
#include "web/view/ranking_rows.h"

namespace widegate {
namespace {

constexpr std::string_view kStoreKey = "comparison";
constexpr std::string_view kFormatMark = "format ";
constexpr std::string_view kKept = "kept";

const Camera* camera_of(const App& app, const FormatChoice& format) {
  return find_row(app.plan().own.cameras, app.library().cameras, format.camera);
}

std::string name_of(const Catalogue& own, const Catalogue& library, const FormatChoice& format) {
  const Camera* camera = find_row(own.cameras, library.cameras, format.camera);
  const SensorMode* mode = camera == nullptr ? nullptr : find_row(camera->modes, format.mode);
  const Recording* recording =
      mode == nullptr ? nullptr : find_row(mode->recordings, format.recording);
  if (recording == nullptr) return {};
  return camera->name + " · " + mode->name + " · " + recording->name;
}

/// The same id where the list has it, else its first row's.
template <class Row>
const Row& same_or_first(const std::vector<Row>& rows, const std::string& id) {
  const Row* row = find_row(rows, id);
  return row != nullptr ? *row : rows.front();
}

/// Makes mode, recording and codec such as the camera has them, as near to what they were as can
/// be.
FormatChoice settled(const App& app, FormatChoice format) {
  const Camera* camera = camera_of(app, format);
  if (camera == nullptr) return app.plan().format;
  const SensorMode& mode = same_or_first(camera->modes, format.mode);
  const Recording& recording = same_or_first(mode.recordings, format.recording);
  format.mode = mode.id;
  format.recording = recording.id;
  const auto& codecs = recording.codecs;
  if (std::find(codecs.begin(), codecs.end(), format.codec) == codecs.end()) {
    format.codec = codecs.front();
  }
  return format;
}

std::optional<Plan> second_plan(const App& app, const ComparisonState& state) {
  if (state.kept) return state.kept;
  if (!state.format) return std::nullopt;
  Plan plan = app.plan();
  plan.format = settled(app, *state.format);
  return plan;
}

Control make(std::string_view id, ControlKind kind, std::string_view label) {
  Control control;
  control.id = id;
  control.kind = kind;
  control.section = kCompareSection;
  control.label = label;
  return control;
}

Control camera_control(const App& app, const ComparisonState& state) {
  Control control = make(kCompareCamera, ControlKind::choice, "Compare with");
  put_item(control, "", "Nothing", !state.kept && !state.format);
  if (state.kept) {
    put_item(control, kKept, "The plan that was kept: " + state.kept->title, true);
  }
  for (const Camera* camera : cameras_to_choose(app)) {
    put_item(control, camera->id, camera->name,
             !state.kept && state.format && state.format->camera == camera->id);
  }
  return control;
}

template <class Row>
Control row_control(std::string_view id, std::string_view label, const std::vector<Row>* rows,
                    const std::string& chosen) {
  Control control = make(id, ControlKind::choice, label);
  control.enabled = rows != nullptr;
  if (rows == nullptr) return control;
  for (const Row& row : *rows) put_item(control, row.id, row.name, row.id == chosen);
  return control;
}

void follow(ComparisonState& state, FormatChoice format) {
  state.kept.reset();
  state.format = std::move(format);
}

}  // namespace

Comparison make_comparison(const App& app, const ComparisonState& state) {
  Comparison comparison;
  const auto plan = second_plan(app, state);
  if (!plan) return comparison;
  comparison.second = evaluate(*plan, app.library());
  comparison.rows = differences(app.report(), comparison.second);
  comparison.there = !comparison.rows.empty();
  if (!comparison.there) return comparison;
  comparison.first_name = name_of(app.plan().own, app.library(), app.plan().format);
  comparison.second_name = name_of(plan->own, app.library(), plan->format);
  comparison.second_picture = picture_data(*plan, comparison.second, app.library());
  return comparison;
}

std::vector<ResultRow> comparison_rows(const Comparison& comparison) {
  std::vector<ResultRow> rows;
  for (const Difference& each : comparison.rows) {
    ResultRow& row = rows.emplace_back();
    row.section = kCompareSection;
    row.key = "compare." + std::string(each.key);
    row.label = each.label;
    row.value_text = each.first + " " + std::string(each.unit) + " against " + each.second;
    row.unit = std::string(each.unit) + ", " + each.change;
  }
  return rows;
}

std::vector<Control> comparison_controls(const App& app, const ComparisonState& state) {
  std::vector<Control> controls;
  controls.push_back(camera_control(app, state));
  const bool by_format = state.format && !state.kept;
  const FormatChoice format = by_format ? settled(app, *state.format) : FormatChoice{};
  const Camera* camera = by_format ? camera_of(app, format) : nullptr;
  const SensorMode* mode = camera == nullptr ? nullptr : find_row(camera->modes, format.mode);
  controls.push_back(row_control(kCompareMode, "Its sensor mode",
                                 camera == nullptr ? nullptr : &camera->modes, format.mode));
  controls.push_back(row_control(kCompareRecording, "Its recording option",
                                 mode == nullptr ? nullptr : &mode->recordings, format.recording));
  Control beside = make(kSideBySide, ControlKind::flag, "Scenes side by side");
  beside.value = state.side_by_side ? 1 : 0;
  beside.edit_text = state.side_by_side ? "true" : "false";
  beside.value_text = state.side_by_side ? "yes" : "no";
  controls.push_back(std::move(beside));
  Control use = make(kUseCompared, ControlKind::action,
                     state.kept ? "Go back to the kept plan" : "Use this format");
  use.enabled = state.kept || by_format;
  controls.push_back(std::move(use));
  Control keep = make(kKeepToCompare, ControlKind::action, "Keep this plan to compare");
  keep.enabled = app.report().problems.empty();
  controls.push_back(std::move(keep));
  Control stop = make(kStopComparing, ControlKind::action, "Stop comparing");
  stop.enabled = state.kept || state.format;
  controls.push_back(std::move(stop));
  return controls;
}

bool set_comparison_control(std::string_view id, std::string_view text, const App& app,
                            ComparisonState& state) {
  FormatChoice format = state.format.value_or(app.plan().format);
  if (id == kCompareCamera) {
    if (text == kKept) return true;
    format.camera = text;
    if (text.empty()) {
      state.kept.reset();
      state.format.reset();
    } else if (camera_of(app, format) != nullptr) {
      follow(state, settled(app, std::move(format)));
    }
  } else if (id == kCompareMode || id == kCompareRecording) {
    if (state.kept || !state.format) return true;
    (id == kCompareMode ? format.mode : format.recording) = text;
    follow(state, settled(app, std::move(format)));
  } else if (id == kSideBySide) {
    state.side_by_side = text == "true";
  } else {
    return false;
  }
  ++state.version;
  return true;
}

namespace {

/// The compared format takes the place of the plan's, which is what is compared with then.
void use_compared(const App& app, ComparisonState& state, Commands& commands) {
  const auto plan = second_plan(app, state);
  if (!plan) return;
  if (state.kept) {
    state.kept = app.plan();
    commands.emplace_back(ReplacePlan{*plan});
  } else {
    follow(state, app.plan().format);
    commands.emplace_back(ChooseFormat{plan->format});
  }
}

}  // namespace

bool run_comparison_action(std::string_view id, const App& app, ComparisonState& state,
                           Commands& commands) {
  if (id == kUseCompared) {
    use_compared(app, state, commands);
  } else if (id == kKeepToCompare && app.report().problems.empty()) {
    state.kept = app.plan();
    state.format.reset();
  } else if (id == kStopComparing) {
    state.kept.reset();
    state.format.reset();
  } else {
    return false;
  }
  ++state.version;
  return true;
}

void keep_comparison(const ComparisonState& state, Platform& platform) {
  std::string text;
  if (state.kept) {
    text = plan_to_json(*state.kept);
  } else if (state.format) {
    text = std::string(kFormatMark) + id_of_format(*state.format);
  }
  platform.store(kStoreKey, text);
}

void load_comparison(ComparisonState& state, const Platform& platform, const Catalogue& library) {
  const auto text = platform.stored(kStoreKey);
  if (!text || text->empty()) return;
  if (text->starts_with(kFormatMark)) {
    state.format = format_from_id(std::string_view(*text).substr(kFormatMark.size()));
  } else if (auto plan = plan_from_json(*text, library)) {
    state.kept = std::move(*plan);
  }
}

}  // namespace widegate
