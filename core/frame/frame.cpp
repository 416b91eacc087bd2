#include "core/frame/frame.h"

#include <algorithm>
#include <cmath>

namespace widegate {
namespace {

constexpr std::int64_t kEven = 2;
constexpr std::int64_t kLevelSteps = 4096;

/// The largest rectangle of the wanted aspect in the mode: the protected area's size.
ExactRect largest_in_mode(Rational aspect, const Geometry& geometry) {
  const Rational on_sensor = aspect / geometry.squeeze;
  const Rational width = geometry.width_photosites;
  const Rational height = geometry.height_photosites;
  const Rational width_at_full_height = height * on_sensor;
  ExactRect rect;
  if (width <= width_at_full_height) {
    rect.width = width;
    rect.height = width / on_sensor;
  } else {
    rect.width = width_at_full_height;
    rect.height = height;
  }
  return rect;
}

/// Left or top edge of something `size` long in `room`, at -1 (start) to 1 (end).
Rational placed(Rational room, Rational size, Rational at) {
  return (room - size) * (at + Rational(1)) / Rational(2);
}

/// The main frame line's top as far as this line's edges can still be written exactly from there.
Rational level_with(Rational main_top, Rational padding, Rational size) {
  const Rational top = main_top - padding;
  const Rational bottom = main_top + size - padding;
  if (top.ok() && bottom.ok() && (bottom - padding).ok()) return main_top;
  return {ceil_scaled(main_top, kLevelSteps, 1, 1), kLevelSteps};
}

/// Top edge of the protected area that brings the frame line level with the main one, kept inside
/// the mode; `limited` tells that the mode's edge was in the way.
Rational common_top(Rational main_top, Rational padding, Rational room, Rational size,
                    bool& limited) {
  const Rational lowest = room - size;
  limited = main_top < padding || main_top > lowest + padding;
  const Rational wanted = level_with(main_top, padding, size) - padding;
  if (wanted < Rational(0)) return 0;
  return wanted > lowest ? lowest : wanted;
}

Rational protected_top(const FrameLine& line, const Geometry& geometry, Rational size,
                       Rational padding, const FrameReport* main, bool& limited) {
  const Rational room = geometry.height_photosites;
  switch (line.anchor.kind) {
    case AnchorKind::centre:
      return placed(room, size, 0);
    case AnchorKind::top:
      return 0;
    case AnchorKind::common_top:
      return main == nullptr ? Rational(0)
                             : common_top(main->photosites.top, padding, room, size, limited);
    case AnchorKind::free:
      return placed(room, size, line.anchor.y);
  }
  return 0;
}

/// length * recorded / read; multiplying first keeps whole results whole.
double in_pixels(Rational length, std::int64_t recorded, std::int64_t read) {
  return length.to_double() * static_cast<double>(recorded) / static_cast<double>(read);
}

PixelRect in_recorded_pixels(const ExactRect& rect, const Geometry& geometry) {
  const std::int64_t width = geometry.width_photosites;
  const std::int64_t height = geometry.height_photosites;
  const std::int64_t recorded_width = geometry.recorded_width_pixels;
  const std::int64_t recorded_height = geometry.recorded_height_pixels;
  PixelRect pixels{.left = in_pixels(rect.left, recorded_width, width),
                   .top = in_pixels(rect.top, recorded_height, height),
                   .width = in_pixels(rect.width, recorded_width, width),
                   .height = in_pixels(rect.height, recorded_height, height)};
  pixels.even_left = ceil_scaled(rect.left, recorded_width, width, kEven);
  pixels.even_top = ceil_scaled(rect.top, recorded_height, height, kEven);
  const Rational right = rect.left + rect.width;
  const Rational bottom = rect.top + rect.height;
  const std::int64_t even_right = floor_scaled(right, recorded_width, width, kEven);
  const std::int64_t even_bottom = floor_scaled(bottom, recorded_height, height, kEven);
  pixels.even_width = std::max<std::int64_t>(0, even_right - pixels.even_left);
  pixels.even_height = std::max<std::int64_t>(0, even_bottom - pixels.even_top);
  return pixels;
}

/// Tangent of half the angle at which the rectangle's corner first reaches a side that is `gap`
/// beyond its own; 1 (a quarter turn) when it never does.
double first_contact(double along, double across, double gap) {
  const double beyond = gap * (2 * along + gap);
  const double corner = across * across;
  return beyond >= corner ? 1 : gap / (across + std::sqrt(corner - beyond));
}

/// From something `size` long that starts at `start` to the nearer end of the room.
Rational nearer_gap(std::int64_t room, Rational start, Rational size) {
  const Rational behind = Rational(room) - (start + size);
  return behind < start ? behind : start;
}

/// The room around the frame line: to the sides, and for a roll in de-squeezed space.
void set_room(FrameReport& report, const Geometry& geometry) {
  const ExactRect& rect = report.photosites;
  const double gap_x = geometry.mm_per_photosite_x() *
                       nearer_gap(geometry.width_photosites, rect.left, rect.width).to_double();
  const double gap_y = geometry.mm_per_photosite_y() *
                       nearer_gap(geometry.height_photosites, rect.top, rect.height).to_double();
  const double squeeze = geometry.squeeze.to_double();
  report.room_horizontal_mm = report.width_mm / 2 + gap_x;
  report.room_vertical_mm = report.height_mm / 2 + gap_y;
  report.max_rotation_deg =
      largest_rotation(squeeze * report.width_mm / 2, report.height_mm / 2, squeeze * gap_x, gap_y)
          .value;
}

/// What is left around the frame line, in percent of the protected area's and the mode's sides.
void set_room_shares(FrameReport& report, const Geometry& geometry) {
  const ExactRect& rect = report.photosites;
  const auto width = static_cast<double>(geometry.width_photosites);
  const auto height = static_cast<double>(geometry.height_photosites);
  report.room_protected_percent = 100 * report.protection;
  report.room_horizontal_percent = 100 * (1 - rect.width.to_double() / width);
  report.room_vertical_percent = 100 * (1 - rect.height.to_double() / height);
  report.room_left_percent = 100 * rect.left.to_double() / width;
  report.room_top_percent = 100 * rect.top.to_double() / height;
  report.room_right_percent = report.room_horizontal_percent - report.room_left_percent;
  report.room_bottom_percent = report.room_vertical_percent - report.room_top_percent;
}

/// Share of the room in front of something `size` long that starts at `start`; half when tight.
double share_of_room(std::int64_t room, Rational size, Rational start) {
  const double spare = (Rational(room) - size).to_double();
  return spare > 0 ? start.to_double() / spare : 0.5;
}

/// Room on each side over the size, in percent.
double shift_percent(std::int64_t room, Rational size) {
  const double length = size.to_double();
  return 100 * (static_cast<double>(room) - length) / 2 / length;
}

}  // namespace

Degrees largest_rotation(double half_width, double half_height, double gap_x, double gap_y) {
  const double to_the_side = first_contact(half_width, half_height, gap_x);
  const double to_the_top = first_contact(half_height, half_width, gap_y);
  const double half_tangent = std::min(to_the_side, to_the_top);
  return half_tangent < 1 ? from_radians(2 * std::atan(half_tangent)) : Degrees{90};
}

RectMm to_mm(const ExactRect& rect, const Geometry& geometry) {
  const double x = geometry.mm_per_photosite_x();
  const double y = geometry.mm_per_photosite_y();
  const double left = rect.left.to_double() * x - geometry.width.value / 2;
  const double top = rect.top.to_double() * y - geometry.height.value / 2;
  return {.left = left,
          .top = top,
          .right = left + rect.width.to_double() * x,
          .bottom = top + rect.height.to_double() * y};
}

FrameReport frame_report(const FrameLine& line, const Geometry& geometry, const FrameReport* main) {
  FrameReport report;
  report.name = line.name;
  report.aspect = line.aspect.to_double();
  report.protection = line.protection.to_double();

  ExactRect outer = largest_in_mode(line.aspect, geometry);
  const Rational kept = Rational(1) - line.protection;
  ExactRect inner{.left = 0, .top = 0, .width = outer.width * kept, .height = outer.height * kept};
  const Rational padding_x = (outer.width - inner.width) / Rational(2);
  const Rational padding_y = (outer.height - inner.height) / Rational(2);
  const bool free = line.anchor.kind == AnchorKind::free;
  outer.left = placed(geometry.width_photosites, outer.width, free ? line.anchor.x : Rational(0));
  outer.top = protected_top(line, geometry, outer.height, padding_y, main, report.anchor_limited);
  inner.left = outer.left + padding_x;
  inner.top = outer.top + padding_y;

  report.photosites = inner;
  report.protected_photosites = outer;
  report.pixels = in_recorded_pixels(inner, geometry);
  report.protected_pixels = in_recorded_pixels(outer, geometry);
  report.width_mm = inner.width.to_double() * geometry.mm_per_photosite_x();
  report.height_mm = inner.height.to_double() * geometry.mm_per_photosite_y();
  report.diagonal_mm = diagonal_of(report.width_mm, report.height_mm);
  set_room_shares(report, geometry);
  report.shift_horizontal_percent = shift_percent(geometry.width_photosites, inner.width);
  report.shift_vertical_percent = shift_percent(geometry.height_photosites, inner.height);
  report.left_share = share_of_room(geometry.width_photosites, outer.width, outer.left);
  report.top_share = share_of_room(geometry.height_photosites, outer.height, outer.top);
  set_room(report, geometry);
  return report;
}

}  // namespace widegate
