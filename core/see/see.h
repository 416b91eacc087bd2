// See: field of view, what is in frame at a distance and the way back, the same view elsewhere,
// depth of field. Distances are from the lens; breathing and distortion are not modelled.
#pragma once

#include <optional>

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"
#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"
#include "core/see/report.h"

namespace widegate {

/// Angle across one dimension of the picture, lens focused at infinity: 2 atan(extent / 2f).
/// @param extent  on the sensor times squeeze across the width; positive.
/// @param focal   marked focal length, positive.
/// @return more than 0, less than 180.
/// @source pinhole geometry; checked against OpenCV calibrationMatrixValues in the tests.
/// @example 24.892 mm, 25 mm -> 52.9319 degrees
[[nodiscard]] Degrees field_of_view(Millimetres extent, Millimetres focal);

/// A focal length and the distance it is focused at; distance exceeds focal length.
struct Focused {
  Millimetres focal;
  Metres distance;
};

/// Image size over object size for a thin lens: f / (d - f).
[[nodiscard]] double magnification(Focused lens);

/// Length in the scene that fills `extent` on the sensor: extent / magnification, at every
/// distance. d extent / f, as tables print it, is larger by one focal length's worth: 1 % at 100
/// focal lengths.
[[nodiscard]] Metres scene_extent(Millimetres extent, Focused lens);

/// The way back: how far away `wanted` fills `extent`.
[[nodiscard]] Metres distance_for(Metres wanted, Millimetres extent, Millimetres focal);

/// The way back: which focal length shows `wanted` across `extent` from this distance.
[[nodiscard]] Millimetres focal_for(Metres wanted, Millimetres extent, Metres distance);

/// Circle of confusion by convention: 0.025 mm on a 35 mm full aperture (diagonal 31.115 mm),
/// scaled with the diagonal of the de-squeezed frame, so that the blur is the same on the screen
/// whatever the squeeze. common practice, no source; every plan can override it.
[[nodiscard]] Millimetres conventional_circle_of_confusion(Millimetres desqueezed_diagonal);

/// What depth of field depends on. f_number is the geometric one, not the T-stop.
struct DepthInput {
  Focused lens;
  double f_number = 1;
  Millimetres circle_of_confusion;
};

/// Exact thin lens: H = f^2/(N c) + f, near = d(H-f)/(H+d-2f), far = d(H-f)/(H-d), infinite from H
/// on (less one part in 10^12: focused at the hyperfocal distance means infinity).
/// @source the thin lens equation; worked examples of published manuals in the tests.
[[nodiscard]] DepthOfField depth_of_field(const DepthInput& input);

/// Everything of the See question. `equivalent_focal` lists the modes of `cameras` (ids; all when
/// empty) of both catalogues, without the plan's own mode.
/// @param set  the plan's lens set, or nullptr.
[[nodiscard]] SeeReport see_report(const Plan& plan, const LensSet* set, const Geometry& geometry,
                                   const FrameReport& frame, const Catalogue& library);

}  // namespace widegate
