// What the See question answers, as plain data; filled by see.h.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"

namespace widegate {

/// The same view in another mode, with a lens of this squeeze. Both ids are views into the list
/// they come from. A mode made for another squeeze than the plan's lens has two rows: for a
/// spherical lens and for one of its own squeeze.
struct EquivalentFocal {
  std::string_view camera;
  std::string_view mode;
  double squeeze = 1;
  double matched_extent_mm = 0;  ///< Width (times squeeze), height or diagonal of that mode.
  double focal_mm = 0;
};

/// The rows of EquivalentFocal. The ids of all of them stand in one text: there is a row for nearly
/// every mode of the library in each report, and a report for each frame of a drag.
class EquivalentFocals {
 public:
  void reserve(std::size_t rows, std::size_t id_bytes) {
    rows_.reserve(rows);
    ids_.reserve(id_bytes);
  }
  void add(const EquivalentFocal& row) {
    rows_.push_back({row.squeeze, row.matched_extent_mm, row.focal_mm, ids_.size(),
                     row.camera.size(), row.mode.size()});
    ids_ += row.camera;
    ids_ += row.mode;
  }
  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  /// Row i, below size().
  [[nodiscard]] EquivalentFocal operator[](std::size_t i) const {
    const Row& row = rows_[i];
    const std::string_view ids = ids_;
    return {ids.substr(row.at, row.camera_bytes),
            ids.substr(row.at + row.camera_bytes, row.mode_bytes), row.squeeze,
            row.matched_extent_mm, row.focal_mm};
  }

 private:
  struct Row {
    double squeeze, matched_extent_mm, focal_mm;
    std::size_t at, camera_bytes, mode_bytes;
  };
  std::vector<Row> rows_;
  std::string ids_;
};

/// Depth of field for one circle of confusion and focal length.
struct DepthOfField {
  double hyperfocal_m = 0;
  double near_m = 0;
  std::optional<double> far_m;  ///< Nothing when it reaches infinity.
};

/// What the lens sees.
struct SeeReport {
  /// As marked on the lens, and what the extender or reducer behind it makes of that.
  double marked_focal_mm = 0;
  double marked_f_number = 0;
  double extender = 1;
  double focal_mm = 0;
  double f_number = 0;
  double focus_m = 0;
  std::optional<double> widest_stop;    ///< Mark of the listed lens; nothing when not known.
  std::optional<double> close_focus_m;  ///< Likewise.
  double horizontal_fov_deg = 0, vertical_fov_deg = 0, diagonal_fov_deg = 0;  ///< Of the mode.
  double frame_horizontal_fov_deg = 0, frame_vertical_fov_deg = 0, frame_diagonal_fov_deg = 0;
  double magnification = 0;
  double width_at_focus_m = 0;  ///< Of the main frame line, in the scene.
  double height_at_focus_m = 0;
  double mode_width_at_focus_m = 0;  ///< Of the whole sensor mode.
  double mode_height_at_focus_m = 0;
  std::optional<double> wanted_width_m, wanted_height_m;
  /// For the plan's wanted scene width or height: how far to stand, or which focal length from
  /// here.
  std::optional<double> distance_for_wanted_width_m, focal_for_wanted_width_mm;
  std::optional<double> distance_for_wanted_height_m, focal_for_wanted_height_mm;
  bool circle_chosen = false;  ///< The plan overrides the conventional circle of confusion.
  double circle_of_confusion_mm = 0;
  DepthOfField depth;             ///< Vertical (marked) focal length; used for the verdict.
  DepthOfField horizontal_depth;  ///< For an anamorphic lens: focal length over squeeze.
  double matched_extent_mm = 0;   ///< Of this mode; see EquivalentFocal.
  EquivalentFocals equivalent_focal;
  MatchBy match = MatchBy::width;
};

}  // namespace widegate
