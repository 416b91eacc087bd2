#include "core/handover/fdl/plan_export.h"

#include <algorithm>
#include <cmath>

#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/effective_area.h"
#include "core/handover/fdl/identity.h"
#include "core/handover/fdl/write.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"

namespace widegate::fdl {
namespace {

/// One canvas to write: a raster of the mode's picture.
struct Raster {
  std::string id;
  std::string label;
  std::int64_t width = 0;
  std::int64_t height = 0;
  Rational squeeze = 1;
};

/// What every canvas is made from.
struct Source {
  const Plan& plan;
  const Report& report;
  const Camera& camera;
  const SensorMode& mode;
  Rational squeeze = 1;           ///< Of the lens.
  std::optional<Size> lit_share;  ///< Of the mode; nothing when there is no effective area.
  Size needed_photosites;         ///< About the optical axis, by all protected areas.
};

bool is_word_character(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
}

/// An id of the standard's characters, at most 32, that is not among `taken`.
std::string free_id(std::string_view wish, std::vector<std::string>& taken) {
  constexpr std::size_t kStem = 28;  // leaves room for "_" and a count
  std::string stem;
  for (const char c : wish.substr(0, kStem)) stem += is_word_character(c) ? c : '_';
  std::string id = stem;
  for (int count = 2; std::find(taken.begin(), taken.end(), id) != taken.end(); ++count) {
    id = stem + '_' + std::to_string(count);
  }
  taken.push_back(id);
  return id;
}

std::string intent_id(std::size_t index) { return "line_" + std::to_string(index + 1); }

FramingIntent intent_of(const FrameLine& line, std::size_t index) {
  FramingIntent intent;
  intent.label = line.name;
  intent.id = intent_id(index);
  intent.aspect_ratio = {{line.aspect.num(), line.aspect.den()}, {}};
  intent.protection = line.protection.to_double();
  return intent;
}

/// Exact photosites times recorded over mode, to the nearest double.
double on_raster(Rational photosites, std::int64_t recorded, std::int64_t mode) {
  const Rational exact = photosites * Rational(recorded, mode);
  if (exact.ok()) return exact.to_double();
  return photosites.to_double() * static_cast<double>(recorded) / static_cast<double>(mode);
}

Box box_on(const ExactRect& rect, const Raster& raster, const SensorMode& mode) {
  const auto across = [&](Rational x) { return on_raster(x, raster.width, mode.width_photosites); };
  const auto down = [&](Rational y) { return on_raster(y, raster.height, mode.height_photosites); };
  return {{across(rect.left), down(rect.top)}, {across(rect.width), down(rect.height)}};
}

FramingDecision decision_on(const Raster& raster, const Source& source, std::size_t index) {
  const FrameReport& frame = source.report.frames[index];
  const FrameLine& line = source.plan.deliverable.frame_lines[index];
  const Box framing = box_on(frame.photosites, raster, source.mode);
  FramingDecision decision;
  decision.label = line.name;
  decision.framing_intent_id = intent_id(index);
  decision.id = decision_id(raster.id, decision.framing_intent_id);
  decision.dimensions = {framing.size, {}};
  decision.anchor_point = {framing.anchor, {}};
  if (line.protection > Rational(0)) {
    const Box outer = box_on(frame.protected_photosites, raster, source.mode);
    decision.protection_dimensions = SizeField{outer.size, {}};
    decision.protection_anchor_point = PointField{outer.anchor, {}};
  }
  return decision;
}

void add_effective(Canvas& canvas, const Raster& raster, const Source& source) {
  if (!source.lit_share) return;
  const double across =
      static_cast<double>(raster.width) / static_cast<double>(source.mode.width_photosites);
  const double down =
      static_cast<double>(raster.height) / static_cast<double>(source.mode.height_photosites);
  const WholeSize size{effective_side(source.lit_share->width, raster.width,
                                      source.needed_photosites.width * across),
                       effective_side(source.lit_share->height, raster.height,
                                      source.needed_photosites.height * down)};
  canvas.effective_dimensions = WholeSizeField{size, {}};
  canvas.effective_anchor_point = PointField{{static_cast<double>(raster.width - size.width) / 2,
                                              static_cast<double>(raster.height - size.height) / 2},
                                             {}};
}

Canvas canvas_of(const Raster& raster, const Source& source, const std::string& source_id) {
  Canvas canvas;
  canvas.label = raster.label;
  canvas.id = raster.id;
  canvas.source_canvas_id = source_id;
  canvas.dimensions = {{raster.width, raster.height}, {}};
  add_effective(canvas, raster, source);
  canvas.anamorphic_squeeze = raster.squeeze.to_double();
  auto& decisions = canvas.framing_decisions.emplace();
  for (std::size_t i = 0; i < source.report.frames.size(); ++i) {
    decisions.push_back(decision_on(raster, source, i));
  }
  return canvas;
}

double four_decimals(double mm) { return std::round(mm * 10'000) / 10'000; }

/// Photosites and millimetres belong to the camera's own canvas only (7.3.4.7 and .8).
void add_sensor(Canvas& canvas, const SensorMode& mode) {
  canvas.photosite_dimensions = WholeSizeField{{mode.width_photosites, mode.height_photosites}, {}};
  canvas.physical_dimensions =
      SizeField{{four_decimals(mode.width_mm), four_decimals(mode.height_mm)}, {}};
}

Raster recorded_raster(const Recording& recording, const SensorMode& mode, Rational squeeze) {
  const Geometry geometry = make_geometry(mode, recording, squeeze);
  return {{},
          recording.name,
          geometry.recorded_width_pixels,
          geometry.recorded_height_pixels,
          squeeze / recording.desqueeze};
}

bool same_picture(const Raster& a, const Raster& b) {
  return a.width == b.width && a.height == b.height && a.squeeze == b.squeeze;
}

/// The mode's own raster, then every other raster it can be recorded in, the plan's choice first.
std::vector<Raster> rasters_of(const Source& source) {
  std::vector<std::string> taken;
  std::vector<Raster> rasters = {{free_id(source.camera.id + "_" + source.mode.id, taken),
                                  source.mode.name, source.mode.width_photosites,
                                  source.mode.height_photosites, source.squeeze}};
  const auto add = [&](const Recording& recording) {
    Raster raster = recorded_raster(recording, source.mode, source.squeeze);
    const auto known = [&](const Raster& other) { return same_picture(raster, other); };
    if (std::any_of(rasters.begin(), rasters.end(), known)) return;
    raster.id = free_id(recording.id, taken);
    rasters.push_back(std::move(raster));
  };
  const Recording* chosen = find_row(source.mode.recordings, source.plan.format.recording);
  if (chosen != nullptr) add(*chosen);
  for (const Recording& recording : source.mode.recordings) add(recording);
  return rasters;
}

/// Photosites about the optical axis (the middle of the mode) that hold every protected area.
Size needed_photosites(const Report& report, const SensorMode& mode) {
  const double middle_x = static_cast<double>(mode.width_photosites) / 2;
  const double middle_y = static_cast<double>(mode.height_photosites) / 2;
  Size needed;
  for (const FrameReport& frame : report.frames) {
    const ExactRect& rect = frame.protected_photosites;
    const double left = middle_x - rect.left.to_double();
    const double top = middle_y - rect.top.to_double();
    const double right = rect.width.to_double() - left;
    const double bottom = rect.height.to_double() - top;
    needed.width = std::max({needed.width, 2 * left, 2 * right});
    needed.height = std::max({needed.height, 2 * top, 2 * bottom});
  }
  return needed;
}

/// Sets the lit share when the circle is known and the mode is not covered.
void find_lit_share(Source& source, std::vector<std::string>& remarks) {
  const CoverReport& cover = source.report.cover;
  const SensorMode& mode = source.mode;
  if (!cover.known || cover.mode.covered) return;
  const Size needed = source.needed_photosites;
  source.lit_share = effective_share(
      {.width_mm = mode.width_mm,
       .height_mm = mode.height_mm,
       .circle_mm = cover.image_circle_mm,
       .needed_width_mm = needed.width * mode.width_mm / static_cast<double>(mode.width_photosites),
       .needed_height_mm =
           needed.height * mode.height_mm / static_cast<double>(mode.height_photosites)});
  if (!source.lit_share) {
    remarks.emplace_back(
        "The lens does not cover every protected area; effective dimensions are left out, because "
        "they may not be smaller than what they hold.");
  }
}

Problems unknown_mode(const Plan& plan) {
  return {{"/format/mode", '"' + plan.format.camera + "\", \"" + plan.format.mode + '"',
           "a camera and sensor mode of the catalogue"}};
}

/// The canvas that holds what the plan's recording option writes.
std::string recorded_canvas(const Source& source, const std::vector<Raster>& rasters) {
  const Recording* chosen = find_row(source.mode.recordings, source.plan.format.recording);
  if (chosen == nullptr) return rasters.front().id;
  const Raster wanted = recorded_raster(*chosen, source.mode, source.squeeze);
  const auto found = std::find_if(rasters.begin(), rasters.end(), [&](const Raster& raster) {
    return same_picture(raster, wanted);
  });
  return found == rasters.end() ? rasters.front().id : found->id;
}

Context context_of(const Source& source, const std::vector<Raster>& rasters) {
  const std::string& mode_id = rasters.front().id;
  Context context;
  context.label = source.camera.name;
  context.context_creator = std::string(kCreator);
  auto& canvases = context.canvases.emplace();
  for (const Raster& raster : rasters) canvases.push_back(canvas_of(raster, source, mode_id));
  add_sensor(canvases.front(), source.mode);
  return context;
}

}  // namespace

Checked<PlanExport> export_plan(const Plan& plan, const Catalogue& catalogue,
                                const Report& report) {
  if (!report.problems.empty()) return tl::make_unexpected(report.problems);
  const Camera* camera = find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  const SensorMode* mode = camera == nullptr ? nullptr : find_row(camera->modes, plan.format.mode);
  if (mode == nullptr) return tl::make_unexpected(unknown_mode(plan));
  PlanExport result;
  const LensSet* set = find_row(plan.own.lens_sets, catalogue.lens_sets, plan.lens.set);
  Source source{plan,
                report,
                *camera,
                *mode,
                lens_squeeze(plan.lens, set),
                std::nullopt,
                needed_photosites(report, *mode)};
  find_lit_share(source, result.remarks);

  Document& document = result.document;
  document.fdl_creator = std::string(kCreator);
  document.default_framing_intent = intent_id(0);
  auto& intents = document.framing_intents.emplace();
  for (std::size_t i = 0; i < plan.deliverable.frame_lines.size(); ++i) {
    intents.push_back(intent_of(plan.deliverable.frame_lines[i], i));
  }
  const std::vector<Raster> rasters = rasters_of(source);
  result.mode_canvas = rasters.front().id;
  result.recorded_canvas = recorded_canvas(source, rasters);
  document.contexts = {context_of(source, rasters)};
  document.uuid = uuid_from(write_document(document));
  return result;
}

}  // namespace widegate::fdl
