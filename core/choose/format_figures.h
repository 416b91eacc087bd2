// What one format comes to under one plan: the figures a ranking compares and what every
// requirement finds. The same functions as evaluate()'s, in stages: what the sensor mode decides is
// computed once for all its recording options and codecs.
#pragma once

#include <optional>

#include "core/base/span.h"
#include "core/catalogue/catalogue.h"
#include "core/choose/requirement.h"
#include "core/plan/plan.h"
#include "core/run/report.h"

namespace widegate {

/// What of a plan every format is judged by; the rows it names are resolved.
struct Conditions {
  FrameLine main;
  LensChoice lens;
  const LensSet* lens_set = nullptr;  ///< Null for a lens that is not in the library.
  Running run;
  Mandate mandate;
  Choosing choose;  ///< Without the list of cameras.
  Container container;
  Card card;
};

/// @param plan  checked against the catalogue; both must outlive the result.
[[nodiscard]] Conditions conditions_of(const Plan& plan, const Catalogue& catalogue);

/// What the sensor mode alone decides.
struct ModeFigures {
  double frame_area_mm2 = 0;    ///< Inside the main frame line, on the sensor.
  double frame_photosites = 0;  ///< Inside the main frame line.
  Findings findings;            ///< Those that only need the mode; the others do not apply yet.
  bool film = false;            ///< No card limits it.
  std::optional<Rational> camera_rate = std::nullopt;  ///< The camera's own ceiling.
};

[[nodiscard]] ModeFigures mode_figures(const Conditions& conditions, const Camera& camera,
                                       const SensorMode& mode);

/// Everything a ranking knows of one format.
struct FormatFigures {
  double frame_area_mm2 = 0;
  double frame_photosites = 0;
  /// What of them reaches the file: the smaller of photosites and recorded pixels inside the main
  /// frame line.
  double frame_pixels = 0;
  /// Highest whole-system rate; nothing when unlimited, or when only the card could limit it and
  /// the codec has no frame size here.
  std::optional<Rational> rate_ceiling;
  RateLimit rate_limited_by = RateLimit::none;
  std::optional<Span> bytes_per_s;  ///< Nothing when the codec has no frame size here.
  std::optional<Span> minutes_per_card;
  Findings findings;
};

/// @param mode_part  mode_figures() of its camera and mode.
/// @param codec      one of the recording option's.
[[nodiscard]] FormatFigures format_figures(const Conditions& conditions,
                                           const ModeFigures& mode_part, const SensorMode& mode,
                                           const Recording& recording, const Codec& codec);

}  // namespace widegate
