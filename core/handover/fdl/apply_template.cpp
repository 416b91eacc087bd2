#include "core/handover/fdl/apply_template.h"

#include <cmath>
#include <string>

#include "core/base/number_text.h"
#include "core/handover/fdl/field_limits.h"
#include "core/handover/fdl/placement.h"
#include "core/handover/fdl/vocabulary.h"

namespace widegate::fdl {
namespace {

/// The template with every default filled in.
struct Settings {
  double squeeze = 1;
  Layer fit = Layer::framing;
  Layer outermost = Layer::framing;  ///< Layers outside this one are left behind.
  Size target;
  Size maximum;  ///< 0 x 0 when there is none.
  bool pad = false;
  Alignment across = Alignment::center;
  Alignment down = Alignment::center;
  RoundRule rule;
};

Settings settings_of(const CanvasTemplate& entry, const Canvas& canvas) {
  Settings settings;
  const double wanted = entry.target_anamorphic_squeeze;
  settings.squeeze = wanted > 0 ? wanted : squeeze_of(canvas);
  settings.fit = entry.fit_source;
  settings.outermost = entry.fit_source;
  // Preserving something inside the fit source would drop what is being fitted (7.4.9).
  const auto& preserve = entry.preserve_from_source_canvas;
  if (preserve && *preserve < entry.fit_source) settings.outermost = *preserve;
  settings.target = to_size(entry.target_dimensions);
  if (entry.maximum_dimensions) settings.maximum = to_size(*entry.maximum_dimensions);
  settings.pad = entry.pad_to_maximum.value_or(false) && !absent(settings.maximum);
  settings.across = entry.alignment_method_horizontal.value_or(Alignment::center);
  settings.down = entry.alignment_method_vertical.value_or(Alignment::center);
  if (entry.round) settings.rule = *entry.round;
  return settings;
}

Problem missing_layer(const char* pointer, Layer layer) {
  const char* need = layer == Layer::effective
                         ? "a layer the source has; its canvas has no effective dimensions"
                         : "a layer the source has; its decision has no protection dimensions";
  return {pointer, '"' + std::string(word_of(kLayerWords, layer)) + '"', need};
}

void check_layers(const CanvasTemplate& entry, const Layers& source, Problems& problems) {
  if (absent(layer_box(source, entry.fit_source).size)) {
    problems.push_back(missing_layer("/fit_source", entry.fit_source));
  }
  const auto& preserve = entry.preserve_from_source_canvas;
  if (preserve && absent(layer_box(source, *preserve).size)) {
    problems.push_back(missing_layer("/preserve_from_source_canvas", *preserve));
  }
}

void check_target(const CanvasTemplate& entry, Problems& problems) {
  const FitMethod method = entry.fit_method;
  const WholeSize target = entry.target_dimensions;
  if (target.width == 0 && method != FitMethod::height) {
    problems.push_back({"/target_dimensions/width", "0", "a width above 0 for this fit method"});
  }
  if (target.height == 0 && method != FitMethod::width) {
    problems.push_back({"/target_dimensions/height", "0", "a height above 0 for this fit method"});
  }
}

/// The layers that take part: the outermost chosen one and all inside it.
Layers chosen_layers(const Layers& source, Layer outermost) {
  Layers layers;
  layers.framing = source.framing;
  if (outermost <= Layer::protection) layers.protection = source.protection;
  if (outermost <= Layer::effective) layers.effective = source.effective;
  if (outermost <= Layer::canvas) layers.canvas = source.canvas;
  return layers;
}

void check_order(const Layers& layers, Problems& problems) {
  const Size outer = layers.effective.size;
  const Size inner = layers.protection.size;
  if (absent(outer) || absent(inner)) return;
  if (inner.width > outer.width || inner.height > outer.height) {
    problems.push_back(
        {"/fit_source",
         "a protection of " + print_number(inner.width) + " x " + print_number(inner.height),
         "a source whose protection lies within its effective area"});
  }
}

bool writable(Size size) {
  return size.width > 0 && size.height > 0 && size.width <= kLargest && size.height <= kLargest;
}

/// Comparisons are written so that a NaN fails them.
bool writable(const Layers& layers) {
  return writable(layers.canvas) && writable(layers.effective.size) &&
         writable(layers.framing.size) &&
         (absent(layers.protection.size) || writable(layers.protection.size));
}

Problem not_a_canvas(const CanvasTemplate& entry) {
  const WholeSize target = entry.target_dimensions;
  return {"/target_dimensions",
          std::to_string(target.width) + " x " + std::to_string(target.height),
          "a template that leaves some of the framing on the canvas, which has 1 to 2147483647 "
          "pixels a side"};
}

struct Placements {
  AxisPlacement across;
  AxisPlacement down;
};

Placements place(const Settings& settings, const Layers& layers) {
  const Box fit = layer_box(layers, settings.fit);
  return {place_axis({layers.canvas.width, fit.size.width, fit.anchor.x, settings.target.width,
                      settings.maximum.width, settings.pad, settings.across}),
          place_axis({layers.canvas.height, fit.size.height, fit.anchor.y, settings.target.height,
                      settings.maximum.height, settings.pad, settings.down})};
}

/// Steps 7 to 10: output size, shift, crop, round.
void finish(const Settings& settings, Layers layers, AppliedTemplate& applied) {
  const Placements placed = place(settings, layers);
  const Point shift{placed.across.shift, placed.down.shift};
  layers.canvas = {placed.across.output, placed.down.output};
  const Layers cut = cropped(shifted(layers, shift));
  const RoundedLayers whole =
      rounded(cut, settings.rule, {placed.across.set_to_maximum, settings.maximum.width},
              {placed.down.set_to_maximum, settings.maximum.height});
  applied.layers = whole.layers;
  applied.translation = {shift.x + whole.shift.x, shift.y + whole.shift.y};
}

}  // namespace

Ratio fit_scale(FitMethod method, Size fit, double squeeze, Size target, double target_squeeze) {
  const Ratio across{target.width * target_squeeze, fit.width * squeeze};
  const Ratio down{target.height, fit.height};
  switch (method) {
    case FitMethod::width:
      return across;
    case FitMethod::height:
      return down;
    case FitMethod::fit_all:
      return across.value() <= down.value() ? across : down;
    case FitMethod::fill:
      break;
  }
  return across.value() >= down.value() ? across : down;
}

Checked<AppliedTemplate> apply_template(const CanvasTemplate& entry, const Canvas& canvas,
                                        const FramingDecision& decision) {
  const Layers source = layers_of(canvas, decision);
  const Settings settings = settings_of(entry, canvas);
  Problems problems;
  check_layers(entry, source, problems);
  check_target(entry, problems);
  const Layers chosen = chosen_layers(source, settings.outermost);
  check_order(chosen, problems);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));

  AppliedTemplate applied;
  applied.squeeze = settings.squeeze;
  applied.source_squeeze = squeeze_of(canvas);
  applied.origin = layer_box(source, settings.outermost).anchor;
  const Size fit = layer_box(source, settings.fit).size;
  applied.scale =
      fit_scale(entry.fit_method, fit, applied.source_squeeze, settings.target, settings.squeeze);
  const Layers layers = scaled(fill_gaps(chosen, applied.origin), applied.source_squeeze,
                               applied.scale, settings.squeeze);
  applied.bounding_box = layers.canvas;
  if (writable(layers)) finish(settings, layers, applied);
  if (!writable(applied.layers)) return tl::make_unexpected(Problems{not_a_canvas(entry)});
  return applied;
}

Point landing(const AppliedTemplate& applied, Point source) {
  const Ratio scale = applied.scale;
  return {
      (source.x - applied.origin.x) * applied.source_squeeze * scale.numerator /
              (scale.denominator * applied.squeeze) +
          applied.translation.x,
      (source.y - applied.origin.y) * scale.numerator / scale.denominator + applied.translation.y};
}

}  // namespace widegate::fdl
