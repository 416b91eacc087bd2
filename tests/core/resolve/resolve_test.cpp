// Photosites, scales, and what is really sampled.
#include "core/resolve/resolve.h"

#include <doctest/doctest.h>

#include <array>

#include "core/frame/frame.h"
#include "tests/core/support/draws.h"
#include "tests/core/support/tables.h"

namespace widegate {
namespace {

using testing::Dice;
using testing::plain_geometry;

ResolveReport resolve_of(const Plan& plan, const Geometry& geometry) {
  std::vector<FrameReport> frames;
  for (const FrameLine& line : plan.deliverable.frame_lines) {
    frames.push_back(frame_report(line, geometry, frames.empty() ? nullptr : &frames.front()));
    set_nominal_scale(frames.back(), line_raster(plan.deliverable, line), geometry);
  }
  return resolve_report(plan, geometry, frames);
}

Plan plan_with(Rational aspect, std::int64_t width, std::int64_t height) {
  Plan plan;
  plan.deliverable.width_pixels = width;
  plan.deliverable.height_pixels = height;
  plan.deliverable.frame_lines.front().aspect = aspect;
  return plan;
}

TEST_CASE("A standard raster read and delivered photosite for pixel") {
  for (const testing::RasterRow& row : testing::kRasters) {
    CAPTURE(row.name);
    const ResolveReport resolve = resolve_of(plan_with(row.aspect, row.width, row.height),
                                             plain_geometry(row.width, row.height));
    CHECK(resolve.mode_photosites == row.photosites);
    CHECK(resolve.frame_photosites == static_cast<double>(row.photosites));
    CHECK(resolve.picture_width_pixels == static_cast<double>(row.width));
    CHECK(resolve.picture_height_pixels == static_cast<double>(row.height));
    CHECK(resolve.horizontal_scale == 1);
    CHECK(resolve.vertical_scale == 1);
  }
}

TEST_CASE("Trade facts: common practice, no source") {
  // 3840 x 2160 is 8.29 megapixels; a 3.8K-wide 6:5 frame is about 12.
  const ResolveReport uhd =
      resolve_of(plan_with(Rational(16, 9), 3840, 2160), plain_geometry(3840, 2160));
  CHECK(uhd.frame_photosites / 1e6 == doctest::Approx(8.29).epsilon(0.001));
  const ResolveReport tall =
      resolve_of(plan_with(Rational(6, 5), 3840, 3200), plain_geometry(3840, 3200));
  CHECK(tall.frame_photosites / 1e6 == doctest::Approx(12).epsilon(0.03));
}

TEST_CASE("Scales never overflow") {
  const std::uint64_t seed = 20261115;
  CAPTURE(seed);
  Dice dice(seed);
  for (int round = 0; round < 5000; ++round) {
    const Geometry geometry = testing::draw_geometry(dice);
    Plan plan;
    plan.deliverable.frame_lines.front() = testing::draw_frame_line(dice);
    plan.deliverable.width_pixels = dice.whole(16, 65535);
    plan.deliverable.height_pixels = dice.whole(16, 65535);
    const ResolveReport resolve = resolve_of(plan, geometry);
    REQUIRE(resolve.picture_width_pixels <= static_cast<double>(plan.deliverable.width_pixels));
    REQUIRE(resolve.picture_height_pixels <=
            static_cast<double>(plan.deliverable.height_pixels) * (1 + 1e-12));
    REQUIRE(resolve.horizontal_scale > 0);
    REQUIRE(resolve.vertical_scale > 0);
    REQUIRE(resolve.horizontal_sampled_scale > 0);
  }
}

TEST_CASE("A squeezed recording stretches sideways: what is really sampled") {
  // 2x on 3200 x 3600, delivered as 16:9 in 3840 x 2160: 3200 photosites make 3840 pixels across,
  // 3600 make 2160 down. De-squeezed the file is 6400 wide, which alone would look oversampled.
  const ResolveReport resolve =
      resolve_of(plan_with(Rational(16, 9), 3840, 2160), plain_geometry(3200, 3600, 2));
  CHECK(resolve.recorded_squeeze == 2);
  CHECK(resolve.horizontal_scale == doctest::Approx(0.6).epsilon(1e-14));
  CHECK(resolve.vertical_scale == doctest::Approx(0.6).epsilon(1e-14));
  CHECK(resolve.horizontal_sampled_scale == doctest::Approx(1.2).epsilon(1e-14));
  CHECK(resolve.vertical_sampled_scale == doctest::Approx(0.6).epsilon(1e-14));
}

TEST_CASE("In-camera de-squeeze leaves the file plain and adds no photosites") {
  Geometry geometry = plain_geometry(3200, 3600, 2);
  geometry.recorded_width_pixels = 3840;
  geometry.recorded_height_pixels = 2160;
  geometry.in_camera_desqueeze = 2;
  const ResolveReport resolve = resolve_of(plan_with(Rational(16, 9), 3840, 2160), geometry);
  CHECK(resolve.recorded_squeeze == 1);
  CHECK(resolve.horizontal_resample == doctest::Approx(1.2).epsilon(1e-14));
  CHECK(resolve.vertical_resample == doctest::Approx(0.6).epsilon(1e-14));
  CHECK(resolve.horizontal_scale == doctest::Approx(1).epsilon(1e-14));
  CHECK(resolve.vertical_scale == doctest::Approx(1).epsilon(1e-14));
  CHECK(resolve.horizontal_sampled_scale == doctest::Approx(1.2).epsilon(1e-14));
  CHECK(resolve.vertical_sampled_scale == doctest::Approx(1).epsilon(1e-14));
}

TEST_CASE("Resampling in camera samples no more than the smaller of the two rasters") {
  Geometry geometry = plain_geometry(6240, 3510);
  geometry.recorded_width_pixels = 1920;
  geometry.recorded_height_pixels = 1080;
  const ResolveReport resolve = resolve_of(plan_with(Rational(16, 9), 3840, 2160), geometry);
  CHECK(resolve.horizontal_sampled_scale == doctest::Approx(2).epsilon(1e-14));
  CHECK(resolve.frame_photosites == 6240.0 * 3510);
}

TEST_CASE("A wide picture is fitted inside the raster of the deliverable") {
  const ResolveReport wide = resolve_of(plan_with(2, 3840, 2160), plain_geometry(4000, 3000));
  CHECK(wide.picture_width_pixels == 3840);
  CHECK(wide.picture_height_pixels == 1920);
  const ResolveReport tall = resolve_of(plan_with(1, 3840, 2160), plain_geometry(4000, 3000));
  CHECK(tall.picture_width_pixels == 2160);
  CHECK(tall.picture_height_pixels == 2160);
}

TEST_CASE("Each frame line is enlarged to its own raster, and the worst of them counts") {
  // 3840 x 2160 read as it is. 16:9 fills the deliverable. 9:16 of the full height is 1215 wide,
  // and so is its raster. A tenth of protection leaves 3456 x 1944 pixels: 1.111 times.
  Plan plan = plan_with(Rational(16, 9), 3840, 2160);
  plan.deliverable.frame_lines.emplace_back().aspect = Rational(9, 16);
  FrameLine& safe = plan.deliverable.frame_lines.emplace_back();
  safe.aspect = Rational(16, 9);
  safe.protection = Rational(1, 10);
  const Geometry geometry = plain_geometry(3840, 2160);
  CHECK(resolve_of(plan, geometry).nominal_scale == doctest::Approx(1 / 0.9).epsilon(1e-12));
  const LineRaster tall = line_raster(plan.deliverable, plan.deliverable.frame_lines[1]);
  CHECK(tall.width_pixels == Rational(1215));
  CHECK(tall.height_pixels == Rational(2160));
  plan.deliverable.frame_lines.pop_back();
  CHECK(resolve_of(plan, geometry).nominal_scale == 1);
}

TEST_CASE("Push-in is what can be enlarged inside the line before anything is upscaled") {
  // 4992 photosites for 3840 pixels: 0.769, 23.1 % to spare. A file resampled to 2048 has none.
  const Plan plan = plan_with(Rational(16, 9), 3840, 2160);
  Geometry geometry = plain_geometry(4992, 2808);
  FrameReport frame = frame_report(plan.deliverable.frame_lines.front(), geometry, nullptr);
  const LineRaster raster = line_raster(plan.deliverable, plan.deliverable.frame_lines.front());
  set_nominal_scale(frame, raster, geometry);
  CHECK(frame.push_in_percent == doctest::Approx(100 * (1 - 3840.0 / 4992)).epsilon(1e-12));
  CHECK(frame.room_protected_percent == 0);
  geometry.recorded_width_pixels = 2048;
  geometry.recorded_height_pixels = 1152;
  frame = frame_report(plan.deliverable.frame_lines.front(), geometry, nullptr);
  set_nominal_scale(frame, raster, geometry);
  CHECK(frame.nominal_scale == doctest::Approx(1.875).epsilon(1e-12));
  CHECK(frame.push_in_percent == 0);
}

TEST_CASE("Nyquist limit and the f-number where diffraction reaches it") {
  // 5 micrometres apart: 100 cycles a millimetre; 550 nm light is cut off there at
  // N = 1 / (100 * 0.00055) = 18.18.
  const ResolveReport resolve = resolve_of(Plan{}, plain_geometry(4000, 3000));
  CHECK(resolve.nyquist_cycles_per_mm == doctest::Approx(100).epsilon(1e-12));
  CHECK(resolve.diffraction_limit_f_number == doctest::Approx(18.1818181818).epsilon(1e-10));
}

}  // namespace
}  // namespace widegate
