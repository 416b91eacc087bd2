#include "core/commission/terms_in_force.h"

#include "core/plan/weight_sets.h"
#include "core/resolve/resolve.h"

namespace widegate {
namespace {

constexpr std::string_view kFollowsName = "Follows the deliverable";

/// The plan's own term, otherwise the row's; nothing when neither says anything.
template <class Value>
std::optional<Value> said(const CommissionTerms& own, const CommissionTerms* row,
                          std::optional<Value> CommissionTerms::*term) {
  if (own.*term || row == nullptr) return own.*term;
  return row->*term;
}

void widen(LineRaster& size, LineRaster other) {
  if (size.width_pixels < other.width_pixels) size.width_pixels = other.width_pixels;
  if (size.height_pixels < other.height_pixels) size.height_pixels = other.height_pixels;
}

/// Both sides of a raster that somebody asks for.
std::optional<LineRaster> raster_of(const CommissionTerms& terms) {
  if (!terms.recorded_width_pixels || !terms.recorded_height_pixels) return std::nullopt;
  return LineRaster{*terms.recorded_width_pixels, *terms.recorded_height_pixels};
}

/// The largest picture, over the frame lines, inside a raster; 0 x 0 when it asks for nothing.
LineRaster largest_in(const Plan& plan, LineRaster raster) {
  LineRaster largest;
  if (raster.width_pixels == Rational(0) || raster.height_pixels == Rational(0)) return raster;
  for (const FrameLine& line : plan.deliverable.frame_lines) {
    widen(largest, fitted(line.aspect, raster.width_pixels.num(), raster.height_pixels.num()));
  }
  return largest;
}

LineRaster largest_delivered(const Deliverable& deliverable) {
  LineRaster largest;
  for (const FrameLine& line : deliverable.frame_lines) {
    widen(largest, line_raster(deliverable, line));
  }
  return largest;
}

/// The recorded raster asked for: the plan's two numbers or else the row's as a raster that the
/// lines are fitted into, or else the deliverable's; one number alone stands for its side.
LineRaster raster_asked(const Plan& plan, const CommissionTerms* row, bool follows) {
  const CommissionTerms& own = plan.commission.terms;
  LineRaster asked;
  if (const auto mine = raster_of(own)) {
    asked = largest_in(plan, *mine);
  } else if (const auto theirs = row == nullptr ? std::nullopt : raster_of(*row)) {
    asked = largest_in(plan, *theirs);
  } else if (follows) {
    asked = largest_delivered(plan.deliverable);
  }
  for (const CommissionTerms* terms : {row, &own}) {
    if (terms == nullptr || raster_of(*terms)) continue;
    if (terms->recorded_width_pixels) asked.width_pixels = *terms->recorded_width_pixels;
    if (terms->recorded_height_pixels) asked.height_pixels = *terms->recorded_height_pixels;
  }
  return asked;
}

}  // namespace

TermsInForce terms_in_force(const Plan& plan, const Catalogue& library) {
  const Commissioned& asked = plan.commission;
  const Commission* row =
      asked.id.empty() ? nullptr : find_row(plan.own.commissions, library.commissions, asked.id);
  const CommissionTerms* theirs = row == nullptr ? nullptr : &row->terms;
  const bool follows = row == nullptr || row->follows_deliverable;
  const auto term = [&](auto member) { return said(asked.terms, theirs, member); };
  const std::int64_t delivered = plan.deliverable.width_pixels * plan.deliverable.height_pixels;
  const LineRaster raster = raster_asked(plan, theirs, follows);
  TermsInForce terms;
  terms.name = row == nullptr ? kFollowsName : std::string_view(row->name);
  terms.photosites = term(&CommissionTerms::photosites).value_or(follows ? delivered : 0);
  terms.counted_on = term(&CommissionTerms::counted_on).value_or(CountedOn::mode);
  terms.width_pixels = raster.width_pixels;
  terms.height_pixels = raster.height_pixels;
  terms.largest_upscaling =
      term(&CommissionTerms::largest_upscaling).value_or(follows ? kUsualUpscaling : Rational(0));
  terms.bit_depth = term(&CommissionTerms::bit_depth).value_or(0);
  terms.chroma = term(&CommissionTerms::chroma);
  terms.sensor_raw = term(&CommissionTerms::sensor_raw).value_or(Wish::either);
  terms.compression = term(&CommissionTerms::compression).value_or(0);
  terms.lossless = term(&CommissionTerms::lossless).value_or(false);
  terms.intra = term(&CommissionTerms::intra).value_or(false);
  terms.plays_at_once = term(&CommissionTerms::plays_at_once).value_or(false) ||
                        weight_set_row(plan.choose.weights).plays_at_once;
  terms.in_camera_desqueeze = term(&CommissionTerms::in_camera_desqueeze).value_or(Wish::either);
  terms.protection = term(&CommissionTerms::protection).value_or(0);
  terms.rates = row == nullptr || row->rates.empty() ? nullptr : &row->rates;
  return terms;
}

}  // namespace widegate
