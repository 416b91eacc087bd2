// What a plan's commission comes to: the row it names, what it asks for in the row's place, and the
// sizes that follow from the deliverable. Judging a format by it is core/choose's.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// Every requirement with its number; 0, nothing, false and `either` are not asked for.
struct TermsInForce {
  std::string_view name;  ///< Of the commission, for people.
  std::int64_t photosites = 0;
  CountedOn counted_on = CountedOn::mode;
  /// Recorded raster after de-squeeze: on each axis the largest that a frame line asks for.
  Rational width_pixels = 0;
  Rational height_pixels = 0;
  Rational largest_upscaling = 0;
  std::int64_t bit_depth = 0;
  std::optional<Chroma> chroma;
  Wish sensor_raw = Wish::either;
  Rational compression = 0;
  bool lossless = false;
  bool intra = false;
  bool plays_at_once = false;  ///< Also when what matters is the soonest edit.
  Wish in_camera_desqueeze = Wish::either;
  Rational protection = 0;
  const std::vector<Rational>* rates = nullptr;  ///< Project rates allowed; null: any.
};

/// @param plan  checked against the catalogue; both must outlive the result.
[[nodiscard]] TermsInForce terms_in_force(const Plan& plan, const Catalogue& library);

}  // namespace widegate
