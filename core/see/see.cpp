#include "core/see/see.h"

#include <algorithm>
#include <cmath>

namespace widegate {
namespace {

constexpr double kRounding = 1e-12;
constexpr double kCloseRangeFocals = 100;
constexpr Millimetres kReferenceCircle{0.025};
constexpr Millimetres kReferenceDiagonal{31.115};

/// The three fields of view of a rectangle on the sensor.
struct Views {
  double horizontal_deg = 0;
  double vertical_deg = 0;
  double diagonal_deg = 0;
};

Views views(Millimetres width, Millimetres height, double squeeze, Millimetres focal) {
  const Millimetres seen_width = squeeze * width;
  const Millimetres diagonal{diagonal_of(seen_width.value, height.value)};
  return {.horizontal_deg = field_of_view(seen_width, focal).value,
          .vertical_deg = field_of_view(height, focal).value,
          .diagonal_deg = field_of_view(diagonal, focal).value};
}

double matched_extent(MatchBy match, double seen_width, double height) {
  switch (match) {
    case MatchBy::width:
      return seen_width;
    case MatchBy::height:
      return height;
    case MatchBy::diagonal:
      return diagonal_of(seen_width, height);
  }
  return seen_width;
}

/// Whether a camera's modes are listed; the library's is hidden by one's own of the same id.
bool considered(const Plan& plan, const Camera& camera) {
  const Camera* own = find_row(plan.own.cameras, camera.id);
  if (own != nullptr && own != &camera) return false;
  const auto& chosen = plan.choose.cameras;
  return chosen.empty() || camera.id == plan.format.camera ||
         std::find(chosen.begin(), chosen.end(), camera.id) != chosen.end();
}

void reserve_equivalents(EquivalentFocals& rows, const std::vector<Camera>& own,
                         const std::vector<Camera>& library) {
  std::size_t modes = 0;
  std::size_t id_bytes = 0;
  for (const auto* cameras : {&own, &library}) {
    for (const Camera& camera : *cameras) {
      modes += camera.modes.size();
      for (const SensorMode& mode : camera.modes) id_bytes += camera.id.size() + mode.id.size();
    }
  }
  rows.reserve(modes, id_bytes);
}

void add_equivalents(SeeReport& see, const Plan& plan, const Geometry& geometry,
                     const std::vector<Camera>& cameras) {
  const double squeeze = geometry.squeeze.to_double();
  for (const Camera& camera : cameras) {
    if (!considered(plan, camera)) continue;
    const bool chosen = camera.id == plan.format.camera;
    for (const SensorMode& mode : camera.modes) {
      if (chosen && mode.id == plan.format.mode) continue;
      const double extent =
          matched_extent(plan.lens.match, squeeze * mode.width_mm, mode.height_mm);
      see.equivalent_focal.add({.camera = camera.id,
                                .mode = mode.id,
                                .matched_extent_mm = extent,
                                .focal_mm = plan.lens.focal_mm * extent / see.matched_extent_mm});
    }
  }
}

void set_fields_of_view(SeeReport& see, const Geometry& geometry, const FrameReport& frame) {
  const double squeeze = geometry.squeeze.to_double();
  const Millimetres focal{see.focal_mm};
  const Views mode = views(geometry.width, geometry.height, squeeze, focal);
  const Views line = views({frame.width_mm}, {frame.height_mm}, squeeze, focal);
  see.horizontal_fov_deg = mode.horizontal_deg;
  see.vertical_fov_deg = mode.vertical_deg;
  see.diagonal_fov_deg = mode.diagonal_deg;
  see.frame_horizontal_fov_deg = line.horizontal_deg;
  see.frame_vertical_fov_deg = line.vertical_deg;
  see.frame_diagonal_fov_deg = line.diagonal_deg;
}

void set_scene_sizes(SeeReport& see, const LensChoice& lens, const Geometry& geometry,
                     const FrameReport& frame) {
  const double squeeze = geometry.squeeze.to_double();
  const Focused focused{.focal = {lens.focal_mm}, .distance = {lens.focus_m}};
  const Millimetres width{squeeze * frame.width_mm};
  const Millimetres height{frame.height_mm};
  see.magnification = magnification(focused);
  see.close_range = is_close_range(focused);
  see.width_at_focus_m = scene_extent(width, focused).value;
  see.height_at_focus_m = scene_extent(height, focused).value;
  see.mode_width_at_focus_m = scene_extent(squeeze * geometry.width, focused).value;
  see.mode_height_at_focus_m = scene_extent(geometry.height, focused).value;
  see.wanted_width_m = lens.wanted_width_m;
  see.wanted_height_m = lens.wanted_height_m;
  if (lens.wanted_width_m) {
    const Metres wanted{*lens.wanted_width_m};
    see.distance_for_wanted_width_m = distance_for(wanted, width, focused.focal).value;
    see.focal_for_wanted_width_mm = focal_for(wanted, width, focused.distance).value;
  }
  if (lens.wanted_height_m) {
    const Metres wanted{*lens.wanted_height_m};
    see.distance_for_wanted_height_m = distance_for(wanted, height, focused.focal).value;
    see.focal_for_wanted_height_mm = focal_for(wanted, height, focused.distance).value;
  }
}

/// An anamorphic lens is s times shorter across the width, and de-squeezing magnifies the blur s
/// times there, so both the focal length and the tolerable circle are divided by s.
/// common practice, no source.
void set_depth(SeeReport& see, const LensChoice& lens, const Geometry& geometry,
               const FrameReport& frame) {
  const double squeeze = geometry.squeeze.to_double();
  const Millimetres circle = lens.circle_of_confusion_mm
                                 ? Millimetres{*lens.circle_of_confusion_mm}
                                 : conventional_circle_of_confusion({frame.diagonal_mm});
  see.circle_chosen = lens.circle_of_confusion_mm.has_value();
  see.circle_of_confusion_mm = circle.value;
  DepthInput input{.lens = {.focal = {lens.focal_mm}, .distance = {lens.focus_m}},
                   .f_number = lens.f_number,
                   .circle_of_confusion = circle};
  see.depth = depth_of_field(input);
  input.lens.focal = input.lens.focal / squeeze;
  input.circle_of_confusion = circle / squeeze;
  see.horizontal_depth = depth_of_field(input);
}

}  // namespace

Degrees field_of_view(Millimetres extent, Millimetres focal) {
  return from_radians(2 * std::atan(extent / (2 * focal)));
}

double magnification(Focused lens) {
  return lens.focal / (to_millimetres(lens.distance) - lens.focal);
}

bool is_close_range(Focused lens) {
  return to_millimetres(lens.distance) < kCloseRangeFocals * lens.focal;
}

Metres scene_extent(Millimetres extent, Focused lens) {
  if (is_close_range(lens)) return to_metres(extent / magnification(lens));
  return to_metres(extent * (to_millimetres(lens.distance) / lens.focal));
}

Metres distance_for(Metres wanted, Millimetres extent, Millimetres focal) {
  const Metres far = to_metres(focal * (to_millimetres(wanted) / extent));
  if (!is_close_range({.focal = focal, .distance = far})) return far;
  return far + to_metres(focal);
}

Millimetres focal_for(Metres wanted, Millimetres extent, Metres distance) {
  const double size_ratio = extent / to_millimetres(wanted);
  const Millimetres far = to_millimetres(distance) * size_ratio;
  if (!is_close_range({.focal = far, .distance = distance})) return far;
  return to_millimetres(distance) * (size_ratio / (1 + size_ratio));
}

Millimetres conventional_circle_of_confusion(Millimetres frame_diagonal) {
  return kReferenceCircle * (frame_diagonal / kReferenceDiagonal);
}

DepthOfField depth_of_field(const DepthInput& input) {
  const double f = input.lens.focal.value;
  const double d = to_millimetres(input.lens.distance).value;
  const double hyperfocal = f * f / (input.f_number * input.circle_of_confusion.value) + f;
  DepthOfField depth;
  depth.hyperfocal_m = to_metres(Millimetres{hyperfocal}).value;
  depth.near_m = to_metres(Millimetres{d * (hyperfocal - f) / (hyperfocal + d - 2 * f)}).value;
  if (hyperfocal - d > kRounding * hyperfocal) {
    depth.far_m = to_metres(Millimetres{d * (hyperfocal - f) / (hyperfocal - d)}).value;
  }
  return depth;
}

SeeReport see_report(const Plan& plan, const Geometry& geometry, const FrameReport& frame,
                     const Catalogue& library) {
  SeeReport see;
  see.focal_mm = plan.lens.focal_mm;
  see.f_number = plan.lens.f_number;
  see.focus_m = plan.lens.focus_m;
  set_fields_of_view(see, geometry, frame);
  set_scene_sizes(see, plan.lens, geometry, frame);
  set_depth(see, plan.lens, geometry, frame);
  see.match = plan.lens.match;
  see.matched_extent_mm = matched_extent(
      plan.lens.match, geometry.squeeze.to_double() * geometry.width.value, geometry.height.value);
  reserve_equivalents(see.equivalent_focal, plan.own.cameras, library.cameras);
  add_equivalents(see, plan, geometry, plan.own.cameras);
  add_equivalents(see, plan, geometry, library.cameras);
  return see;
}

}  // namespace widegate
