#include "core/commission/terms_in_force.h"

#include "core/plan/weight_sets.h"

namespace widegate {
namespace {

constexpr std::string_view kFollowsName = "Follows the deliverable";

/// The plan's own term, otherwise the row's; nothing when neither says anything.
template <class Value>
std::optional<Value> said(const CommissionTerms& own, const CommissionTerms* row,
                          std::optional<Value> CommissionTerms::* term) {
  if (own.*term || row == nullptr) return own.*term;
  return row->*term;
}

void widen(PictureSize& size, PictureSize other) {
  if (size.width < other.width) size.width = other.width;
  if (size.height < other.height) size.height = other.height;
}

/// Both sides of a raster that somebody asks for.
std::optional<PictureSize> raster_of(const CommissionTerms& terms) {
  if (!terms.recorded_width_pixels || !terms.recorded_height_pixels) return std::nullopt;
  return PictureSize{*terms.recorded_width_pixels, *terms.recorded_height_pixels};
}

/// The largest picture, over the frame lines, inside a raster; 0 x 0 when it asks for nothing.
PictureSize largest_in(const Plan& plan, PictureSize raster) {
  PictureSize largest;
  if (raster.width == Rational(0) || raster.height == Rational(0)) return raster;
  for (const FrameLine& line : plan.deliverable.frame_lines) {
    widen(largest, fitted(line.aspect, raster.width.num(), raster.height.num()));
  }
  return largest;
}

PictureSize largest_delivered(const Deliverable& deliverable) {
  PictureSize largest;
  for (const FrameLine& line : deliverable.frame_lines) {
    widen(largest, delivered_picture(deliverable, line));
  }
  return largest;
}

/// The recorded raster asked for: the plan's two numbers or else the row's as a raster that the
/// lines are fitted into, or else the deliverable's; one number alone stands for its side.
PictureSize raster_asked(const Plan& plan, const CommissionTerms* row, bool follows) {
  const CommissionTerms& own = plan.commission.terms;
  PictureSize asked;
  if (const auto mine = raster_of(own)) {
    asked = largest_in(plan, *mine);
  } else if (const auto theirs = row == nullptr ? std::nullopt : raster_of(*row)) {
    asked = largest_in(plan, *theirs);
  } else if (follows) {
    asked = largest_delivered(plan.deliverable);
  }
  for (const CommissionTerms* terms : {row, &own}) {
    if (terms == nullptr || raster_of(*terms)) continue;
    if (terms->recorded_width_pixels) asked.width = *terms->recorded_width_pixels;
    if (terms->recorded_height_pixels) asked.height = *terms->recorded_height_pixels;
  }
  return asked;
}

}  // namespace

PictureSize fitted(Rational aspect, std::int64_t width_pixels, std::int64_t height_pixels) {
  const Rational width_at_full_height = Rational(height_pixels) * aspect;
  if (Rational(width_pixels) < width_at_full_height) {
    return {.width = width_pixels, .height = Rational(width_pixels) / aspect};
  }
  return {.width = width_at_full_height, .height = height_pixels};
}

PictureSize delivered_picture(const Deliverable& deliverable, const FrameLine& line) {
  return fitted(line.aspect, line.width_pixels.value_or(deliverable.width_pixels),
                line.height_pixels.value_or(deliverable.height_pixels));
}

TermsInForce terms_in_force(const Plan& plan, const Catalogue& library) {
  const Commissioned& asked = plan.commission;
  const Commission* row = asked.id.empty()
                              ? nullptr
                              : find_row(plan.own.commissions, library.commissions, asked.id);
  const CommissionTerms* theirs = row == nullptr ? nullptr : &row->terms;
  const bool follows = row == nullptr || row->follows_deliverable;
  const auto term = [&](auto member) { return said(asked.terms, theirs, member); };
  const std::int64_t delivered =
      plan.deliverable.width_pixels * plan.deliverable.height_pixels;
  const PictureSize raster = raster_asked(plan, theirs, follows);
  TermsInForce terms;
  terms.name = row == nullptr ? kFollowsName : std::string_view(row->name);
  terms.photosites = term(&CommissionTerms::photosites).value_or(follows ? delivered : 0);
  terms.counted_on = term(&CommissionTerms::counted_on).value_or(CountedOn::mode);
  terms.width_pixels = raster.width;
  terms.height_pixels = raster.height;
  terms.largest_upscaling = term(&CommissionTerms::largest_upscaling)
                                .value_or(follows ? kUsualUpscaling : Rational(0));
  terms.bit_depth = term(&CommissionTerms::bit_depth).value_or(0);
  terms.chroma = term(&CommissionTerms::chroma);
  terms.sensor_raw = term(&CommissionTerms::sensor_raw).value_or(Wish::either);
  terms.compression = term(&CommissionTerms::compression).value_or(0);
  terms.lossless = term(&CommissionTerms::lossless).value_or(false);
  terms.intra = term(&CommissionTerms::intra).value_or(false);
  terms.plays_at_once = term(&CommissionTerms::plays_at_once).value_or(false) ||
                        weight_set_row(plan.choose.weights).plays_at_once;
  terms.in_camera_desqueeze =
      term(&CommissionTerms::in_camera_desqueeze).value_or(Wish::either);
  terms.protection = term(&CommissionTerms::protection).value_or(0);
  terms.rates = row == nullptr || row->rates.empty() ? nullptr : &row->rates;
  return terms;
}

}  // namespace widegate
