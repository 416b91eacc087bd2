#include "core/cover/cover.h"

#include <algorithm>
#include <cmath>

#include "core/frame/frame.h"
#include "core/optics/lens_squeeze.h"

namespace widegate {
namespace {

constexpr double kRounding = 1e-12;
constexpr double kAreaSteps = 1099511627776.0;  // 2^40

/// Area of [0,x] x [0,y] inside the circle about the origin, for x, y >= 0. Below x0 the
/// rectangle's top edge bounds the region, from x0 to x1 the circle does.
double quarter_mm2(double x, double y, double radius) {
  const double squared = radius * radius;
  const double x1 = std::min(x, radius);
  const double x0 = std::min(x1, std::sqrt(std::max(0.0, squared - y * y)));
  const auto under_arc = [&](double at) {
    const double ratio = radius > 0 ? std::min(1.0, at / radius) : 0;
    const double chord = std::sqrt(std::max(0.0, squared - at * at));
    return (at * chord + squared * std::asin(ratio)) / 2;
  };
  return std::min(x, x0) * y + under_arc(x1) - under_arc(x0);
}

/// The same with signed sides, so that rectangles are sums of corners.
double signed_quarter_mm2(double x, double y, double radius) {
  const double area = quarter_mm2(std::abs(x), std::abs(y), radius);
  return (x < 0) == (y < 0) ? area : -area;
}

double farthest_corner_mm(const RectMm& rect) {
  return diagonal_of(std::max(std::abs(rect.left), std::abs(rect.right)),
                     std::max(std::abs(rect.top), std::abs(rect.bottom)));
}

/// Of the part of the mode outside the frame line, the percentage that stays dark.
double lost_padding_percent(const CoverReport& cover) {
  const double padding = cover.mode.area_mm2 - cover.frame.area_mm2;
  if (padding <= kRounding * cover.mode.area_mm2) return 0;
  const double dark_mode = cover.mode.area_mm2 - cover.mode.overlap_mm2;
  const double dark_frame = cover.frame.area_mm2 - cover.frame.overlap_mm2;
  return 100 * std::clamp((dark_mode - dark_frame) / padding, 0.0, 1.0);
}

/// The largest centred frame of the wanted shape that is inside the mode and the circle.
void set_largest_frame(CoverReport& cover, const FrameReport& frame) {
  const double width = frame.width_mm / (1 - frame.protection);
  const double height = frame.height_mm / (1 - frame.protection);
  const double scale = std::min(1.0, cover.image_circle_mm / diagonal_of(width, height));
  cover.largest_frame_width_mm = width * scale;
  cover.largest_frame_height_mm = height * scale;
}

bool covers(double circle_mm, const CoverFigures& figures) {
  return circle_mm >= figures.diagonal_mm * (1 - kRounding);
}

void add_lens_set(CoverReport& cover, const LensSet& set, double extender) {
  cover.lens_set.reserve(set.lenses.size());
  for (const Lens& lens : set.lenses) {
    const double circle = lens.image_circle_mm * extender;
    const LensCover row{.focal_mm = lens.focal_mm,
                        .image_circle_mm = circle,
                        .covers_mode = covers(circle, cover.mode),
                        .covers_protected = covers(circle, cover.protected_area),
                        .covers_frame = covers(circle, cover.frame)};
    if (!row.covers_frame) cover.longest_uncovering_focal_mm = lens.focal_mm;  // they rise
    cover.lens_set.push_back(row);
  }
}

}  // namespace

double overlap_mm2(const RectMm& rect, double radius_mm) {
  const double sum = signed_quarter_mm2(rect.right, rect.bottom, radius_mm) -
                     signed_quarter_mm2(rect.left, rect.bottom, radius_mm) -
                     signed_quarter_mm2(rect.right, rect.top, radius_mm) +
                     signed_quarter_mm2(rect.left, rect.top, radius_mm);
  const double area = rect.width() * rect.height();
  return std::clamp(std::round(sum / area * kAreaSteps) / kAreaSteps * area, 0.0, area);
}

double circle_needed_mm(const RectMm& rect) { return 2 * farthest_corner_mm(rect); }

bool circle_covers(double diameter_mm, double needed_mm) {
  return (diameter_mm - needed_mm) / 2 >= -kRounding * needed_mm;
}

CoverFigures cover_figures(const RectMm& rect, Millimetres circle_diameter) {
  CoverFigures figures{
      .left_mm = rect.left, .top_mm = rect.top, .right_mm = rect.right, .bottom_mm = rect.bottom};
  figures.area_mm2 = rect.width() * rect.height();
  figures.diagonal_mm = circle_needed_mm(rect);
  figures.margin_mm = (circle_diameter.value - figures.diagonal_mm) / 2;
  if (std::abs(figures.margin_mm) <= kRounding * figures.diagonal_mm) figures.margin_mm = 0;
  figures.covered = figures.margin_mm >= 0;
  figures.largest_covered_scale = circle_diameter.value / figures.diagonal_mm;
  figures.overlap_mm2 =
      figures.covered ? figures.area_mm2 : overlap_mm2(rect, circle_diameter.value / 2);
  figures.uncovered_area_percent = 100 * (1 - figures.overlap_mm2 / figures.area_mm2);
  return figures;
}

CoverReport cover_report(const LensChoice& lens, const LensSet* set, const Geometry& geometry,
                         const FrameReport& frame) {
  CoverReport cover;
  const auto circle = image_circle(lens, set);
  cover.known = circle.has_value();
  if (circle) {
    cover.image_circle_mm = circle->diameter_mm;
    cover.interpolated = circle->interpolated;
  }
  const Millimetres diameter{cover.image_circle_mm};
  cover.mode = cover_figures(mode_rect(geometry), diameter);
  cover.protected_area = cover_figures(to_mm(frame.protected_photosites, geometry), diameter);
  cover.frame = cover_figures(to_mm(frame.photosites, geometry), diameter);
  cover.lost_padding_percent = lost_padding_percent(cover);
  set_largest_frame(cover, frame);
  if (set != nullptr) add_lens_set(cover, *set, lens.extender.to_double());
  return cover;
}

}  // namespace widegate
