#include "web/view/outlines.h"

#include "core/report/figure_text.h"

namespace widegate {
namespace {

std::string size_in_mm(double width, double height) {
  return short_number(width, 2) + " × " + short_number(height, 2) + " mm";
}

std::string size_in_photosites(double width, double height) {
  return short_number(width, 1) + " × " + short_number(height, 1);
}

/// A centred outline, then its words.
Outline centred(std::string key, OutlineKind kind, double width_mm, double height_mm) {
  Outline outline;
  outline.key = std::move(key);
  outline.kind = kind;
  outline.left_mm = -width_mm / 2;
  outline.top_mm = -height_mm / 2;
  outline.width_mm = width_mm;
  outline.height_mm = height_mm;
  return outline;
}

void add_sensor(PictureData& data, const Plan& plan, const Report& report,
                const Catalogue& library) {
  const Camera* camera = find_row(plan.own.cameras, library.cameras, plan.format.camera);
  if (camera == nullptr) return;
  const ModeReport& mode = report.mode;
  const bool whole = camera->width_photosites == mode.width_photosites &&
                     camera->height_photosites == mode.height_photosites;
  if (whole) return;
  Outline outline = centred("sensor", OutlineKind::sensor, camera->width_mm, camera->height_mm);
  outline.label = "Sensor";
  outline.detail = size_in_mm(camera->width_mm, camera->height_mm);
  outline.reading = "Whole sensor: " +
                    size_in_photosites(static_cast<double>(camera->width_photosites),
                                       static_cast<double>(camera->height_photosites)) +
                    " photosites, " + outline.detail;
  data.outlines.push_back(std::move(outline));
}

void add_mode(PictureData& data, const ModeReport& mode) {
  Outline outline = centred("mode", OutlineKind::mode, mode.width_mm, mode.height_mm);
  const std::string size = size_in_photosites(static_cast<double>(mode.width_photosites),
                                              static_cast<double>(mode.height_photosites));
  outline.label = "Mode";
  outline.detail = size;
  outline.reading =
      "Sensor mode: " + size + " photosites, " + size_in_mm(mode.width_mm, mode.height_mm);
  data.outlines.push_back(std::move(outline));
}

void place(Outline& outline, const ExactRect& rect, const ModeReport& mode) {
  const double mm_x = mode.width_mm / static_cast<double>(mode.width_photosites);
  const double mm_y = mode.height_mm / static_cast<double>(mode.height_photosites);
  outline.left_mm = rect.left.to_double() * mm_x - mode.width_mm / 2;
  outline.top_mm = rect.top.to_double() * mm_y - mode.height_mm / 2;
  outline.width_mm = rect.width.to_double() * mm_x;
  outline.height_mm = rect.height.to_double() * mm_y;
}

std::string photosite_size(const ExactRect& rect) {
  return size_in_photosites(rect.width.to_double(), rect.height.to_double());
}

void add_frame(PictureData& data, const FrameReport& frame, const ModeReport& mode,
               std::size_t number, bool alone) {
  const std::string aspect = short_number(frame.aspect, 3) + "∶1";
  if (frame.protection > 0) {
    Outline outline;
    outline.key = "protection-" + std::to_string(number);
    outline.kind = OutlineKind::protection;
    place(outline, frame.protected_photosites, mode);
    outline.label = "Protected";
    outline.detail = "by " + short_number(frame.protection * 100, 1) + " %";
    outline.reading = "Protected area: " + photosite_size(frame.protected_photosites) +
                      " photosites, " + size_in_mm(outline.width_mm, outline.height_mm);
    data.outlines.push_back(std::move(outline));
  }
  Outline outline;
  outline.key = "frame-" + std::to_string(number);
  outline.kind = number == 0 ? OutlineKind::frame : OutlineKind::other_frame;
  place(outline, frame.photosites, mode);
  outline.label = alone || frame.name.empty() ? "Frame line" : frame.name;
  outline.detail = aspect;
  outline.reading = "Frame line " + aspect + ": " + photosite_size(frame.photosites) +
                    " photosites, " + size_in_mm(outline.width_mm, outline.height_mm);
  data.outlines.push_back(std::move(outline));
}

void add_circle(PictureData& data, const CoverReport& cover) {
  if (!cover.known) return;
  data.circle_mm = cover.image_circle_mm;
  data.uncovered = !cover.mode.covered;
  Outline outline =
      centred("circle", OutlineKind::circle, cover.image_circle_mm, cover.image_circle_mm);
  outline.label = "Image circle";
  outline.detail = short_number(cover.image_circle_mm, 2) + " mm";
  outline.reading = "Image circle: " + outline.detail + " across; the mode needs " +
                    short_number(cover.mode.diagonal_mm, 2) + " mm, the frame line " +
                    short_number(cover.frame.diagonal_mm, 2) + " mm";
  data.outlines.push_back(std::move(outline));
}

}  // namespace

PictureData picture_data(const App& app) {
  return picture_data(app.plan(), app.report(), app.library());
}

PictureData picture_data(const Plan& plan, const Report& report, const Catalogue& library) {
  PictureData data;
  if (!report.problems.empty() || report.frames.empty()) return data;
  data.squeeze = report.mode.squeeze;
  add_sensor(data, plan, report, library);
  add_mode(data, report.mode);
  for (std::size_t i = 0; i < report.frames.size(); ++i) {
    add_frame(data, report.frames[i], report.mode, i, report.frames.size() == 1);
  }
  add_circle(data, report.cover);
  return data;
}

}  // namespace widegate
