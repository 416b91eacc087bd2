#include "core/see/see.h"

#include <algorithm>
#include <cmath>

#include "core/optics/lens_squeeze.h"

namespace widegate {
namespace {

constexpr double kRounding = 1e-12;
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
      for (const SensorMode& mode : camera.modes) {
        const std::size_t answers = mode.squeeze ? 2 : 1;
        modes += answers;
        id_bytes += answers * (camera.id.size() + mode.id.size());
      }
    }
  }
  rows.reserve(modes, id_bytes);
}

/// The squeezes of the lenses that would be used on a mode: the plan's, but on a mode made for
/// another a spherical lens and one of that squeeze.
struct SqueezesThere {
  double first = 1;
  std::optional<double> second;
};

SqueezesThere squeezes_there(const SensorMode& mode, Rational squeeze) {
  if (!mode.squeeze || *mode.squeeze == squeeze)
    return {.first = squeeze.to_double(), .second = {}};
  if (*mode.squeeze == Rational(1)) return {.first = 1, .second = {}};
  return {.first = 1, .second = mode.squeeze->to_double()};
}

void add_equivalents(SeeReport& see, const Plan& plan, const Geometry& geometry,
                     const std::vector<Camera>& cameras) {
  for (const Camera& camera : cameras) {
    if (!considered(plan, camera)) continue;
    const bool chosen = camera.id == plan.format.camera;
    for (const SensorMode& mode : camera.modes) {
      if (chosen && mode.id == plan.format.mode) continue;
      const auto add = [&](double squeeze) {
        const double extent =
            matched_extent(plan.lens.match, squeeze * mode.width_mm, mode.height_mm);
        see.equivalent_focal.add({.camera = camera.id,
                                  .mode = mode.id,
                                  .squeeze = squeeze,
                                  .matched_extent_mm = extent,
                                  .focal_mm = see.focal_mm * extent / see.matched_extent_mm});
      };
      const SqueezesThere squeezes = squeezes_there(mode, geometry.squeeze);
      add(squeezes.first);
      if (squeezes.second) add(*squeezes.second);
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
  const Focused focused{.focal = {see.focal_mm}, .distance = {lens.focus_m}};
  const Millimetres width{squeeze * frame.width_mm};
  const Millimetres height{frame.height_mm};
  see.magnification = magnification(focused);
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
  const double desqueezed_diagonal = diagonal_of(squeeze * frame.width_mm, frame.height_mm);
  const Millimetres circle = lens.circle_of_confusion_mm
                                 ? Millimetres{*lens.circle_of_confusion_mm}
                                 : conventional_circle_of_confusion({desqueezed_diagonal});
  see.circle_chosen = lens.circle_of_confusion_mm.has_value();
  see.circle_of_confusion_mm = circle.value;
  DepthInput input{.lens = {.focal = {see.focal_mm}, .distance = {lens.focus_m}},
                   .f_number = see.f_number,
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

Metres scene_extent(Millimetres extent, Focused lens) {
  return to_metres(extent / magnification(lens));
}

Metres distance_for(Metres wanted, Millimetres extent, Millimetres focal) {
  return to_metres(focal * (to_millimetres(wanted) / extent) + focal);
}

Millimetres focal_for(Metres wanted, Millimetres extent, Metres distance) {
  const double size_ratio = extent / to_millimetres(wanted);
  return to_millimetres(distance) * (size_ratio / (1 + size_ratio));
}

Millimetres conventional_circle_of_confusion(Millimetres desqueezed_diagonal) {
  return kReferenceCircle * (desqueezed_diagonal / kReferenceDiagonal);
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

namespace {

void set_lens(SeeReport& see, const LensChoice& lens, const LensSet* set) {
  see.marked_focal_mm = lens.focal_mm;
  see.marked_f_number = lens.f_number;
  see.extender = lens.extender.to_double();
  see.focal_mm = focal_length_mm(lens);
  see.f_number = working_f_number(lens);
  see.focus_m = lens.focus_m;
  const Lens* listed = listed_lens(set, lens.focal_mm);
  if (listed == nullptr) return;
  if (listed->widest_t_stop > 0) see.widest_stop = listed->widest_t_stop;
  if (listed->close_focus_m > 0) see.close_focus_m = listed->close_focus_m;
}

}  // namespace

SeeReport see_report(const Plan& plan, const LensSet* set, const Geometry& geometry,
                     const FrameReport& frame, const Catalogue& library) {
  SeeReport see;
  set_lens(see, plan.lens, set);
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
