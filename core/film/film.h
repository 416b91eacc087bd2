// Film as a medium: how fast it runs, how long a magazine lasts, how much stock a shoot takes and
// what that costs, and how much of a scan is picture. The data of the scan are store.h's.
#pragma once

#include <optional>

#include "core/base/rational.h"
#include "core/catalogue/catalogue.h"
#include "core/film/report.h"
#include "core/frame/report.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan.h"

namespace widegate {

/// True for a camera that records on film.
[[nodiscard]] bool is_film(const Camera& camera);

/// Length of film that runs through in a minute: 60 rate / frames per foot.
/// @param frames_per_foot  16 for 35 mm film with four perforations a frame, 40 for 16 mm.
/// @source definition; a foot is 0.3048 m.
[[nodiscard]] Rational feet_per_minute(Rational rate, Rational frames_per_foot);

/// What of `pixels` of a scan holds picture: no more than so many on each millimetre of the gate.
/// 165 are common practice, no source (35 mm is scanned at 4K, 16 mm at 2K); a test of stock, lens
/// and scanner decides.
[[nodiscard]] double picture_pixels(double pixels, double area_mm2, double pixels_per_mm);

/// Everything of the film part; nothing for a digital camera. Where the frames of a foot are not
/// known, only the pixels of the scan hold.
/// @param frame                   the main frame line.
/// @param recorded_hours_per_day  running time of a camera.
[[nodiscard]] std::optional<FilmReport> film_report(const Plan& plan, const Camera& camera,
                                                    const Geometry& geometry,
                                                    const FrameReport& frame,
                                                    double recorded_hours_per_day);

}  // namespace widegate
