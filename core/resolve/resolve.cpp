#include "core/resolve/resolve.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr Millimetres kGreenLight{0.00055};

/// width x height >= required, exactly: 2^44 x 2^44 terms stay within 128 bits.
bool holds_photosites(const ExactRect& rect, std::int64_t required) {
  const Int128 have = Int128{rect.width.num()} * rect.height.num();
  const Int128 unit = Int128{rect.width.den()} * rect.height.den();
  return have >= unit * required;
}

double photosites_inside(const FrameReport& frame) {
  return frame.photosites.width.to_double() * frame.photosites.height.to_double();
}

MandateFigures photosite_mandate(const Mandate& mandate, const Geometry& geometry,
                                 const FrameReport& frame) {
  const std::int64_t mode = geometry.width_photosites * geometry.height_photosites;
  return {.required = mandate.photosites,
          .have = photosites_inside(frame),
          .mode_have = static_cast<double>(mode),
          .met = holds_photosites(frame.photosites, mandate.photosites),
          .mode_meets = mode >= mandate.photosites};
}

MandateFigures across_mandate(const Mandate& mandate, const Geometry& geometry,
                              const FrameReport& frame) {
  return {.required = mandate.photosites_across,
          .have = frame.photosites.width.to_double(),
          .mode_have = static_cast<double>(geometry.width_photosites),
          .met = frame.photosites.width >= Rational(mandate.photosites_across),
          .mode_meets = geometry.width_photosites >= mandate.photosites_across};
}

void set_scales(ResolveReport& resolve, const Deliverable& deliverable,
                const std::vector<FrameReport>& frames) {
  const FrameReport& main = frames.front();
  resolve.deliverable_width_pixels = deliverable.width_pixels;
  resolve.deliverable_height_pixels = deliverable.height_pixels;
  resolve.picture_width_pixels = main.picture_width_pixels;
  resolve.picture_height_pixels = main.picture_height_pixels;
  resolve.horizontal_scale = main.nominal_horizontal_scale;
  resolve.vertical_scale = main.nominal_vertical_scale;
  for (const FrameReport& frame : frames) {
    resolve.nominal_scale = std::max(resolve.nominal_scale, frame.nominal_scale);
  }
  const double sampled_width = std::min(main.pixels.width, main.photosites.width.to_double());
  const double sampled_height = std::min(main.pixels.height, main.photosites.height.to_double());
  resolve.horizontal_sampled_scale = resolve.picture_width_pixels / sampled_width;
  resolve.vertical_sampled_scale = resolve.picture_height_pixels / sampled_height;
}

}  // namespace

LineRaster line_raster(const Deliverable& deliverable, const FrameLine& line) {
  const Rational raster_width = deliverable.width_pixels;
  const Rational width_at_full_height = Rational(deliverable.height_pixels) * line.aspect;
  if (raster_width < width_at_full_height) {
    return {.width_pixels = raster_width, .height_pixels = raster_width / line.aspect};
  }
  return {.width_pixels = width_at_full_height, .height_pixels = deliverable.height_pixels};
}

void set_nominal_scale(FrameReport& frame, const LineRaster& raster, const Geometry& geometry) {
  const double recorded_squeeze = (geometry.squeeze / geometry.in_camera_desqueeze).to_double();
  frame.picture_width_pixels = raster.width_pixels.to_double();
  frame.picture_height_pixels = raster.height_pixels.to_double();
  frame.nominal_horizontal_scale =
      frame.picture_width_pixels / (frame.pixels.width * recorded_squeeze);
  frame.nominal_vertical_scale = frame.picture_height_pixels / frame.pixels.height;
  frame.nominal_scale = std::max(frame.nominal_horizontal_scale, frame.nominal_vertical_scale);
  frame.push_in_percent = std::max(0.0, 100 * (1 - frame.nominal_scale));
}

PixelMandates pixel_mandates(const Mandate& mandate, const Geometry& geometry,
                             const FrameReport& frame) {
  return {.photosites = photosite_mandate(mandate, geometry, frame),
          .across = across_mandate(mandate, geometry, frame)};
}

ResolveReport resolve_report(const Plan& plan, const Geometry& geometry,
                             const std::vector<FrameReport>& frames) {
  const FrameReport& frame = frames.front();
  ResolveReport resolve;
  resolve.recorded_width_pixels = geometry.recorded_width_pixels;
  resolve.recorded_height_pixels = geometry.recorded_height_pixels;
  resolve.horizontal_resample = static_cast<double>(geometry.recorded_width_pixels) /
                                static_cast<double>(geometry.width_photosites);
  resolve.vertical_resample = static_cast<double>(geometry.recorded_height_pixels) /
                              static_cast<double>(geometry.height_photosites);
  resolve.in_camera_desqueeze = geometry.in_camera_desqueeze.to_double();
  resolve.recorded_squeeze = (geometry.squeeze / geometry.in_camera_desqueeze).to_double();
  resolve.mode_photosites = geometry.width_photosites * geometry.height_photosites;
  resolve.frame_photosites = photosites_inside(frame);
  set_scales(resolve, plan.deliverable, frames);
  const PixelMandates mandates = pixel_mandates(plan.mandate, geometry, frame);
  resolve.mandate = mandates.photosites;
  resolve.mandate_across = mandates.across;
  const Millimetres pitch{geometry.mm_per_photosite_x()};
  resolve.nyquist_cycles_per_mm = 1 / (2 * pitch.value);
  resolve.diffraction_limit_f_number = 2 * pitch / kGreenLight;
  return resolve;
}

}  // namespace widegate
