// What the drawing of the sensor shows, as data: outlines to scale in millimetres on the sensor,
// with their words. Taken from the report; nothing is computed but the way from photosites to
// millimetres. No drawing here.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/app/app.h"
#include "web/look/theme.h"

namespace widegate {

/// How an outline is drawn; the second ones are those of a format that is compared.
enum class OutlineKind {
  sensor,
  mode,
  protection,
  frame,
  other_frame,
  circle,
  second_mode,
  second_frame
};

/// One outline. Millimetres from the centre of the sensor mode, x to the right, y down.
struct Outline {
  std::string key;  ///< Stable: "sensor", "mode", "frame-0", ...
  OutlineKind kind = OutlineKind::mode;
  std::string label;
  std::string detail;   ///< Size in words.
  std::string reading;  ///< One line when it is selected.
  double left_mm = 0, top_mm = 0, width_mm = 0, height_mm = 0;
};

/// The drawing's content.
struct PictureData {
  std::vector<Outline> outlines;  ///< From the outside inwards, the circle last.
  double circle_mm = 0;           ///< Diameter; 0 when it is not known.
  double squeeze = 1;
  bool uncovered = false;  ///< Part of the mode lies outside the circle.
};

/// Empty for a report with problems.
[[nodiscard]] PictureData picture_data(const Plan& plan, const Report& report,
                                       const Catalogue& library);
[[nodiscard]] PictureData picture_data(const App& app);

}  // namespace widegate
