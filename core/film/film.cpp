#include "core/film/film.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace widegate {
namespace {

constexpr double kMetresPerFoot = 0.3048;
constexpr double kMinutesPerHour = 60;
/// Lengths that stock is sold in. common practice, no source
constexpr auto kMagazinesFeet = std::to_array<std::int64_t>({100, 200, 400, 1000});

void set_magazines(FilmReport& film, const Filming& filming) {
  film.magazine_feet = filming.magazine_feet;
  film.magazine_minutes = static_cast<double>(filming.magazine_feet) / film.feet_per_minute;
  film.magazines.reserve(kMagazinesFeet.size());
  for (const std::int64_t feet : kMagazinesFeet) {
    film.magazines.push_back(
        {.feet = feet, .minutes = static_cast<double>(feet) / film.feet_per_minute});
  }
}

void set_lengths(FilmReport& film, const Shooting& shooting, double recorded_hours_per_day) {
  film.feet_per_day = recorded_hours_per_day * kMinutesPerHour * film.feet_per_minute;
  film.magazines_per_day = static_cast<std::int64_t>(
      std::ceil(film.feet_per_day / static_cast<double>(film.magazine_feet) - 1e-9));
  const auto camera_days =
      static_cast<double>(shooting.days * shooting.units * shooting.cameras_per_unit);
  film.feet = film.feet_per_day * camera_days;
  film.metres = film.feet * kMetresPerFoot;
}

void set_costs(FilmReport& film, const Filming& filming) {
  film.stock_cost = film.feet * filming.stock_price_per_foot;
  film.processing_cost = film.feet * filming.processing_price_per_foot;
  film.scanning_cost = film.feet * filming.scanning_price_per_foot;
  film.cost = film.stock_cost + film.processing_cost + film.scanning_cost;
}

}  // namespace

bool is_film(const Camera& camera) { return camera.medium == Medium::film; }

Rational feet_per_minute(Rational rate, Rational frames_per_foot) {
  constexpr std::int64_t kSecondsPerMinute = 60;
  return rate * Rational(kSecondsPerMinute) / frames_per_foot;
}

double picture_pixels(double pixels, double area_mm2, double pixels_per_mm) {
  return std::min(pixels, area_mm2 * pixels_per_mm * pixels_per_mm);
}

std::optional<FilmReport> film_report(const Plan& plan, const Camera& camera,
                                      const Geometry& geometry, const FrameReport& frame,
                                      double recorded_hours_per_day) {
  if (!is_film(camera)) return std::nullopt;
  FilmReport film;
  const double per_mm = plan.commission.film_pixels_per_mm;
  film.scan_pixels_per_mm = per_mm;
  film.frame_picture_pixels =
      picture_pixels(frame.photosites.width.to_double() * frame.photosites.height.to_double(),
                     frame.width_mm * frame.height_mm, per_mm);
  film.mode_picture_pixels =
      picture_pixels(static_cast<double>(geometry.width_photosites * geometry.height_photosites),
                     geometry.width.value * geometry.height.value, per_mm);
  film.gauge_mm = camera.film.gauge_mm;
  film.perforations = camera.film.perforations_per_frame;
  film.frames_per_foot = camera.film.frames_per_foot;
  if (!film.frames_per_foot) return film;
  film.feet_per_minute = feet_per_minute(plan.run.sensor_rate, *film.frames_per_foot).to_double();
  film.metres_per_minute = film.feet_per_minute * kMetresPerFoot;
  set_magazines(film, plan.film);
  set_lengths(film, plan.shooting, recorded_hours_per_day);
  set_costs(film, plan.film);
  return film;
}

}  // namespace widegate
