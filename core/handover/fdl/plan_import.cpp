#include "core/handover/fdl/plan_import.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/handover/fdl/frame_line_import.h"
#include "core/optics/lens_squeeze.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate::fdl {
namespace {

constexpr double kSameMillimetres = 0.01;  // share of the width or height
constexpr std::int64_t kSqueezeDenominator = 100;

/// The canvas that is read, and where it stands.
struct Place {
  const Canvas* canvas = nullptr;
  std::string pointer;
};

int rank_of(const Canvas& canvas) {
  if (rows(canvas.framing_decisions).empty()) return 0;
  if (canvas.photosite_dimensions) return 3;
  return canvas.source_canvas_id == canvas.id ? 2 : 1;
}

Place choose_canvas(const Document& document) {
  Place best;
  const auto& contexts = rows(document.contexts);
  for (std::size_t i = 0; i < contexts.size(); ++i) {
    const auto& canvases = rows(contexts[i].canvases);
    for (std::size_t j = 0; j < canvases.size(); ++j) {
      if (best.canvas != nullptr && rank_of(canvases[j]) <= rank_of(*best.canvas)) continue;
      best = {&canvases[j], "/contexts/" + std::to_string(i) + "/canvases/" + std::to_string(j)};
    }
  }
  return best;
}

/// An intent with its index in the document.
struct Indexed {
  const FramingIntent* intent;
  std::size_t index;
};

/// The default intent first, the others in their order.
std::vector<Indexed> intents_in_order(const Document& document) {
  std::vector<Indexed> list;
  const auto& intents = rows(document.framing_intents);
  for (std::size_t i = 0; i < intents.size(); ++i) list.push_back({&intents[i], i});
  std::stable_partition(list.begin(), list.end(), [&](const Indexed& entry) {
    return document.default_framing_intent == entry.intent->id;
  });
  return list;
}

/// The decision for an intent and its index, or nothing.
std::optional<std::size_t> decision_for(const Canvas& canvas, const std::string& intent) {
  const auto& decisions = rows(canvas.framing_decisions);
  for (std::size_t i = 0; i < decisions.size(); ++i) {
    if (decisions[i].framing_intent_id == intent) return i;
  }
  return std::nullopt;
}

/// A sensor mode that may be the one a canvas was recorded with.
struct ModeMatch {
  const Camera* camera = nullptr;
  const SensorMode* mode = nullptr;
  int rank = 0;  ///< Higher is better.
};

class Import {
 public:
  Import(const Document& document, const Plan& current, const Catalogue& catalogue)
      : document_(document), catalogue_(catalogue), place_(choose_canvas(document)) {
    result_.plan = current;
  }

  Checked<PlanImport> run() {
    if (rows(document_.framing_intents).empty()) {
      return tl::make_unexpected(
          Problems{{"/framing_intents", "no framing intent", "at least one framing intent"}});
    }
    if (place_.canvas != nullptr) {
      take_mode();
      take_squeeze();
    }
    if (!take_lines()) {
      return tl::make_unexpected(
          Problems{{"/framing_intents", "no usable ratio", "an aspect ratio from 1/10 to 10"}});
    }
    list_unused();
    Problems problems = check_plan(result_.plan, catalogue_);
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    return std::move(result_);
  }

 private:
  void taken(std::string pointer, std::string text) {
    result_.taken.push_back({std::move(pointer), std::move(text)});
  }
  void left(std::string pointer, std::string text) {
    result_.left.push_back({std::move(pointer), std::move(text)});
  }

  // ---- sensor mode and squeeze

  /// 0 when the mode cannot be the canvas's; else how well it fits.
  int rank_of_mode(const Camera& camera, const SensorMode& mode) const {
    const Canvas& canvas = *place_.canvas;
    const WholeSize sites{mode.width_photosites, mode.height_photosites};
    if (!canvas.photosite_dimensions || WholeSize(*canvas.photosite_dimensions) != sites) return 0;
    int rank = 1;
    if (canvas.physical_dimensions) {
      const Size mm = *canvas.physical_dimensions;
      const bool same = std::fabs(mm.width - mode.width_mm) <= kSameMillimetres * mode.width_mm &&
                        std::fabs(mm.height - mode.height_mm) <= kSameMillimetres * mode.height_mm;
      if (!same) return 0;
      rank += 4;
    }
    const FormatChoice& format = result_.plan.format;
    if (camera.id == format.camera) rank += mode.id == format.mode ? 3 : 2;
    return rank;
  }

  ModeMatch find_mode() const {
    ModeMatch best;
    for (const auto* cameras : {&result_.plan.own.cameras, &catalogue_.cameras}) {
      for (const Camera& camera : *cameras) {
        for (const SensorMode& mode : camera.modes) {
          const int rank = rank_of_mode(camera, mode);
          if (rank > best.rank) best = {&camera, &mode, rank};
        }
      }
    }
    return best;
  }

  void take_mode() {
    const Canvas& canvas = *place_.canvas;
    const std::string pointer = place_.pointer + "/photosite_dimensions";
    if (!canvas.photosite_dimensions) {
      left(place_.pointer, "No photosite dimensions: the sensor mode is kept.");
      return;
    }
    const ModeMatch match = find_mode();
    if (match.mode == nullptr) {
      left(pointer,
           "No sensor mode of the library has these photosites and millimetres: the "
           "sensor mode is kept. Add the camera to your library.");
      return;
    }
    if (!canvas.physical_dimensions) {
      left(pointer, "Matched by photosites only: another camera may have the same count.");
    }
    choose_mode(match, pointer);
  }

  /// Keeps recording option and codec where the new mode has them, else takes its first ones.
  void choose_mode(const ModeMatch& match, const std::string& pointer) {
    FormatChoice format = result_.plan.format;
    format.camera = match.camera->id;
    format.mode = match.mode->id;
    const Recording* recording = find_row(match.mode->recordings, format.recording);
    if (recording == nullptr) recording = &match.mode->recordings.front();
    format.recording = recording->id;
    const auto& codecs = recording->codecs;
    if (std::find(codecs.begin(), codecs.end(), format.codec) == codecs.end()) {
      format.codec = codecs.front();
    }
    const FormatChoice before = std::exchange(result_.plan.format, format);
    if (!check_plan(result_.plan, catalogue_).empty()) {
      result_.plan.format = before;
      left(pointer, match.camera->name + ", " + match.mode->name +
                        " cannot be used with the rest of this plan: the sensor mode is kept.");
      return;
    }
    taken(pointer, "Sensor mode: " + match.camera->name + ", " + match.mode->name + ".");
  }

  [[nodiscard]] Rational current_squeeze() const {
    const Plan& plan = result_.plan;
    return lens_squeeze(plan.lens,
                        find_row(plan.own.lens_sets, catalogue_.lens_sets, plan.lens.set));
  }

  void take_squeeze() {
    const std::string pointer = place_.pointer + "/anamorphic_squeeze";
    const double wanted = squeeze_of(*place_.canvas);
    if (!(wanted >= 1 && wanted <= 4)) {
      left(pointer, "A squeeze of " + print_number(wanted) +
                        " is outside 1 to 4: the lens's squeeze is kept.");
      return;
    }
    const Rational squeeze = nearest_fraction(wanted, kSqueezeDenominator);
    if (squeeze == current_squeeze()) return;
    result_.plan.lens.squeeze = squeeze;
    taken(pointer, "Squeeze: " + print_number(squeeze.to_double()) + ".");
  }

  // ---- frame lines

  /// Without a canvas every line is centred, so the plan's own picture size will do.
  [[nodiscard]] LineCanvas line_canvas() const {
    if (place_.canvas == nullptr) return {{1000, 1000}, current_squeeze().to_double()};
    return {to_size(place_.canvas->dimensions), squeeze_of(*place_.canvas)};
  }

  std::optional<ImportedLine> line_of(const FramingIntent& intent, std::string& pointer,
                                      const ImportedLine* main) {
    const LineCanvas canvas = line_canvas();
    if (place_.canvas != nullptr) {
      if (const auto index = decision_for(*place_.canvas, intent.id)) {
        pointer = place_.pointer + "/framing_decisions/" + std::to_string(*index);
        return line_from_decision(intent, rows(place_.canvas->framing_decisions)[*index], canvas,
                                  main);
      }
    }
    auto line = line_from_intent(intent, canvas);
    if (line) line->remarks.emplace_back("it has no decision on the canvas read; it is centred");
    return line;
  }

  /// False when no intent can be used.
  bool take_lines() {
    std::vector<FrameLine> lines;
    std::optional<ImportedLine> main;
    for (const auto& [intent, index] : intents_in_order(document_)) {
      std::string pointer = "/framing_intents/" + std::to_string(index);
      if (lines.size() == kMaxFrameLines) {
        left(pointer, "A plan has at most " + std::to_string(kMaxFrameLines) + " frame lines.");
        continue;
      }
      auto line = line_of(*intent, pointer, main ? &*main : nullptr);
      if (!line) {
        left(pointer, "Its aspect ratio is not from 1/10 to 10.");
        continue;
      }
      for (const std::string& remark : line->remarks)
        left(pointer, line->line.name + ": " + remark + ".");
      taken(pointer, "Frame line: " + line->line.name + ".");
      lines.push_back(line->line);
      if (!main) main = std::move(line);
    }
    if (lines.empty()) return false;
    result_.plan.deliverable.frame_lines = std::move(lines);
    return true;
  }

  // ---- what a plan has no place for

  void list_unused() {
    if (!rows(document_.canvas_templates).empty()) {
      left("/canvas_templates", "Canvas templates are applied, not imported.");
    }
    const auto& contexts = rows(document_.contexts);
    for (std::size_t i = 0; i < contexts.size(); ++i) {
      const std::string pointer = "/contexts/" + std::to_string(i);
      if (contexts[i].clip_id) left(pointer + "/clip_id", "A plan is not about one clip.");
      list_other_canvases(contexts[i], pointer);
    }
    if (place_.canvas != nullptr && place_.canvas->effective_dimensions) {
      left(place_.pointer + "/effective_dimensions",
           "The usable area follows from the lens's image circle in a plan.");
    }
  }

  void list_other_canvases(const Context& context, const std::string& pointer) {
    const auto& canvases = rows(context.canvases);
    for (std::size_t j = 0; j < canvases.size(); ++j) {
      if (&canvases[j] == place_.canvas) continue;
      if (canvases[j].source_canvas_id == place_.canvas->id) continue;
      left(pointer + "/canvases/" + std::to_string(j),
           "Another canvas was read: " + place_.canvas->label.value_or(place_.canvas->id) + ".");
    }
  }

  const Document& document_;
  const Catalogue& catalogue_;
  Place place_;
  PlanImport result_;
};

}  // namespace

Checked<PlanImport> import_plan(const Document& document, const Plan& current,
                                const Catalogue& catalogue) {
  return Import(document, current, catalogue).run();
}

}  // namespace widegate::fdl
