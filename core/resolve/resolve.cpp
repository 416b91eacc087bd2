#include "core/resolve/resolve.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr Millimetres kGreenLight{0.00055};

double photosites_inside(const FrameReport& frame) {
  return frame.photosites.width.to_double() * frame.photosites.height.to_double();
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

LineRaster fitted(Rational aspect, std::int64_t width_pixels, std::int64_t height_pixels) {
  const Rational width_at_full_height = Rational(height_pixels) * aspect;
  if (Rational(width_pixels) < width_at_full_height) {
    return {.width_pixels = width_pixels, .height_pixels = Rational(width_pixels) / aspect};
  }
  return {.width_pixels = width_at_full_height, .height_pixels = height_pixels};
}

LineRaster line_raster(const Deliverable& deliverable, const FrameLine& line) {
  return fitted(line.aspect, line.width_pixels.value_or(deliverable.width_pixels),
                line.height_pixels.value_or(deliverable.height_pixels));
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
  const Millimetres pitch{geometry.mm_per_photosite_x()};
  resolve.nyquist_cycles_per_mm = 1 / (2 * pitch.value);
  resolve.diffraction_limit_f_number = 2 * pitch / kGreenLight;
  return resolve;
}

}  // namespace widegate
