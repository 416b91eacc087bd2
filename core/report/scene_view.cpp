#include "core/report/scene_view.h"

#include <cmath>
#include <numbers>

namespace widegate {
namespace {

double half_tangent(double angle_deg) { return std::tan(angle_deg / 360 * std::numbers::pi); }

/// Grid of `pixels` over the share `size` of the mode that begins at the share `start`.
double whole_count(double pixels, double size) { return pixels / size; }
double first_sample(double start, double count) {
  const double samples = start * count;
  return samples - std::floor(samples);
}

/// Per axis the grid with fewer samples.
SampleGrid coarser(const SampleGrid& grid, const SampleGrid& before) {
  SampleGrid result = grid;
  if (before.columns < grid.columns) {
    result.columns = before.columns;
    result.left = before.left;
  }
  if (before.rows < grid.rows) {
    result.rows = before.rows;
    result.top = before.top;
  }
  return result;
}

SampleGrid delivered_grid(const Report& report) {
  const ExactRect& frame = report.frames.front().photosites;
  const auto width = static_cast<double>(report.mode.width_photosites);
  const auto height = static_cast<double>(report.mode.height_photosites);
  SampleGrid grid;
  grid.columns = whole_count(report.resolve.picture_width_pixels, frame.width.to_double() / width);
  grid.rows = whole_count(report.resolve.picture_height_pixels, frame.height.to_double() / height);
  grid.left = first_sample(frame.left.to_double() / width, grid.columns);
  grid.top = first_sample(frame.top.to_double() / height, grid.rows);
  return grid;
}

}  // namespace

SceneView scene_view(const Report& report) {
  SceneView view;
  if (!report.problems.empty() || report.frames.empty()) return view;
  view.half_width_m = report.see.mode_width_at_focus_m / 2;
  view.half_height_m = report.see.mode_height_at_focus_m / 2;
  view.half_tangent_x = half_tangent(report.see.horizontal_fov_deg);
  view.half_tangent_y = half_tangent(report.see.vertical_fov_deg);
  if (report.cover.known) {
    view.circle_x = report.cover.image_circle_mm / report.mode.width_mm;
    view.circle_y = report.cover.image_circle_mm / report.mode.height_mm;
  }
  view.photosites.columns = static_cast<double>(report.mode.width_photosites);
  view.photosites.rows = static_cast<double>(report.mode.height_photosites);
  view.recorded.columns = static_cast<double>(report.resolve.recorded_width_pixels);
  view.recorded.rows = static_cast<double>(report.resolve.recorded_height_pixels);
  view.recorded = coarser(view.recorded, view.photosites);
  view.delivered = coarser(delivered_grid(report), view.recorded);
  return view;
}

}  // namespace widegate
