#include "web/view/see_rows.h"

#include "core/report/figure_text.h"
#include "web/view/choice_items.h"

namespace widegate {
namespace {

constexpr int kDecimals = 1;

/// A lens of another squeeze than the one in use is named.
ResultRow row_of(const Camera& camera, const EquivalentFocal& focal, std::size_t place,
                 double squeeze_here) {
  const SensorMode* mode = find_row(camera.modes, focal.mode);
  ResultRow row;
  row.section = "see";
  row.key = "see.equivalent_focal_mm." + std::to_string(place) + ".focal_mm";
  row.label = mode != nullptr ? mode->name : std::string(focal.mode);
  if (focal.squeeze != squeeze_here) {
    row.label +=
        focal.squeeze == 1 ? ", spherical lens" : ", " + short_number(focal.squeeze, 2) + "× lens";
  }
  row.value_text = short_number(focal.focal_mm, kDecimals);
  row.unit = "mm";
  row.working = row.key;
  row.main = true;
  return row;
}

std::string_view covered_words(const LensCover& lens) {
  if (lens.covers_mode) return "covers the mode";
  if (lens.covers_protected) return "protected area only";
  if (lens.covers_frame) return "frame line only";
  return "does not cover";
}

}  // namespace

Control same_view_control(const App& app, std::string_view camera) {
  Control control;
  control.id = kSameView;
  control.kind = ControlKind::choice;
  control.section = "see";
  control.label = "The same view on";
  control.edit_text = camera;
  control.value_text = "No other camera";
  control.choices.push_back({"", control.value_text, {}});
  for (const Camera* each : cameras_to_choose(app)) {
    put_item(control, each->id, each->name, each->id == camera);
  }
  return control;
}

std::vector<ResultRow> same_view_rows(const App& app, std::string_view camera) {
  std::vector<ResultRow> rows;
  const Camera* row = find_row(app.plan().own.cameras, app.library().cameras, camera);
  if (row == nullptr) return rows;
  const EquivalentFocals& focals = app.report().see.equivalent_focal;
  for (std::size_t i = 0; i < focals.size(); ++i) {
    if (focals[i].camera == camera)
      rows.push_back(row_of(*row, focals[i], i, app.report().mode.squeeze));
  }
  return rows;
}

std::vector<ResultRow> lens_cover_rows(const Report& report) {
  std::vector<ResultRow> rows;
  for (const LensCover& lens : report.cover.lens_set) {
    ResultRow& row = rows.emplace_back();
    row.section = "cover";
    row.key = "cover.lens_set." + std::to_string(rows.size() - 1) + ".image_circle_mm";
    row.working = row.key;
    row.label = short_number(lens.focal_mm, kDecimals) + " mm, circle " +
                short_number(lens.image_circle_mm, kDecimals) + " mm";
    row.value_text = covered_words(lens);
  }
  return rows;
}

}  // namespace widegate
