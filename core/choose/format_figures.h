// What one format comes to under one plan: the figures a ranking compares, its cautions, and what
// every requirement finds. evaluate() judges the plan's own format through the same functions. In
// stages: what the sensor mode decides is worked out once for all its recording options and codecs.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/base/span.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/codec.h"
#include "core/choose/caution.h"
#include "core/choose/requirement.h"
#include "core/commission/terms_in_force.h"
#include "core/frame/report.h"
#include "core/plan/plan.h"
#include "core/resolve/resolve.h"
#include "core/run/report.h"

namespace widegate {

/// The view that every format is given with the focal length of the set that comes nearest.
struct WantedView {
  double width_mm = 0;  ///< Of the main frame line on the plan's own mode.
  double focal_mm = 0;  ///< The plan's.
};

/// What of a plan every format is judged by; the rows it names are resolved. Refers to the plan and
/// the library, which must outlive it.
struct Conditions {
  const Plan* plan = nullptr;
  std::array<LineRaster, 8> pictures;  ///< Of each frame line, as delivered.
  const LensSet* lens_set = nullptr;   ///< Null for a lens that is not in the library.
  const Container* container = nullptr;
  const Card* card = nullptr;
  Rational squeeze = 1;
  TermsInForce terms;
  std::optional<WantedView> view = {};  ///< Nothing: every format has the plan's lens.

  [[nodiscard]] std::span<const FrameLine> lines() const { return plan->deliverable.frame_lines; }
};

/// With the plan's own lens for every format.
/// @param plan  checked against the catalogue.
[[nodiscard]] Conditions conditions_of(const Plan& plan, const Catalogue& library);

/// The rows of one format.
struct FormatRows {
  const Camera* camera = nullptr;
  const SensorMode* mode = nullptr;
  const Recording* recording = nullptr;
  const Codec* codec = nullptr;
};

/// The lens that a sensor mode is judged with.
struct LensThere {
  double focal_mm = 0;
  std::optional<double> image_circle_mm = {};
  double view_ratio = 1;  ///< Width seen over the width wanted.
};

/// What the sensor mode alone decides.
struct ModeFigures {
  LensThere lens;
  Cautions cautions;
  Findings findings;  ///< Those that only need the mode; the others are not asked for yet.
};

/// Every frame line on a sensor mode.
[[nodiscard]] std::vector<FrameReport> frames_on(const Conditions& conditions,
                                                 const SensorMode& mode);

/// @param frames  frames_on(conditions, mode), or those of the report.
[[nodiscard]] ModeFigures mode_figures(const Conditions& conditions, const Camera& camera,
                                       const SensorMode& mode, std::span<const FrameReport> frames);

/// What a stream of frames comes to; the larger bound is the one that has to fit.
struct DataFigures {
  ByteRange frame_bytes;   ///< Coded.
  ByteRange stored_bytes;  ///< With the container's share.
  Span bytes_per_s;        ///< At the sensor rate, sound and container included.
  Span minutes_per_card;   ///< Nothing of this and the next on film.
  double write_headroom = 0;
};

/// Nothing when the codec has no frame size here or, where a card is used, not one frame fits it.
[[nodiscard]] std::optional<DataFigures> data_figures(const Conditions& conditions,
                                                      const FormatRows& format);

/// The largest enlargement of a picture that is recorded in so many pixels: over the frame lines
/// and both axes, delivered over recorded after de-squeeze.
struct Upscaling {
  double scale = 0;
  std::uint8_t line = 0;
};

/// What a ranking shows of one format and what it is judged by.
struct FormatFigures {
  std::int32_t recorded_width_pixels = 0;
  std::int32_t recorded_height_pixels = 0;
  Upscaling upscaling;
  LensThere lens;
  /// Highest whole-system rate; nothing when unlimited, or when only the card could limit it and
  /// the codec has no frame size here.
  std::optional<Rational> rate_ceiling;
  RateLimit rate_limited_by = RateLimit::none;
  std::optional<Span> bytes_per_s;  ///< Nothing when the codec has no frame size here.
  std::optional<Span> minutes_per_card;
  std::optional<double> compression;  ///< Uncompressed bits over stored ones; 1 when lossless.
  double raster_stretch = 1;          ///< See raster_stretch() of mode_geometry.h.
  Cautions cautions;
  Findings findings;
};

/// @param mode_part  mode_figures() of the format's mode.
/// @param frames     what mode_part was made of.
/// @param data       data_figures() of the format, or the report's.
[[nodiscard]] FormatFigures format_figures(const Conditions& conditions,
                                           const ModeFigures& mode_part, const FormatRows& format,
                                           std::span<const FrameReport> frames,
                                           const std::optional<DataFigures>& data);

/// Adds what is asked of the plan whatever its format: stop and distance of the lens, copies.
void add_plan_findings(Findings& findings, const Conditions& conditions);

/// Photosites of a mode as a commissioner counts them: on film, no more than the stock holds.
[[nodiscard]] double photosites_counted(const Conditions& conditions, const Camera& camera,
                                        const SensorMode& mode);

}  // namespace widegate
