// A framing decision list as the ASC FDL 2.0.1 specification and its JSON Schema define it: plain
// data, one struct per object. Reading is in read.h, the rules between objects in check.h, writing
// in write.h. Every object keeps its custom fields (keys that start with '_').
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/handover/fdl/boxes.h"
#include "core/handover/fdl/rounding.h"

namespace widegate::fdl {

/// A field the standard leaves to its users; `json` is the value as JSON text.
struct CustomField {
  std::string key;  ///< Starts with '_'.
  std::string json;
  friend bool operator==(const CustomField&, const CustomField&) = default;
};
using CustomFields = std::vector<CustomField>;

/// A value type with the custom fields found on its JSON object.
template <class Value>
struct Noted : Value {
  CustomFields custom;
  friend bool operator==(const Noted&, const Noted&) = default;
};
using WholeSizeField = Noted<WholeSize>;
using SizeField = Noted<Size>;
using PointField = Noted<Point>;
using RoundField = Noted<RoundRule>;

enum class FitMethod { width, height, fit_all, fill };

/// Left or top, centre, right or bottom.
enum class Alignment { start, center, end };

struct FramingIntent {
  std::optional<std::string> label;
  std::string id;
  WholeSizeField aspect_ratio;
  std::optional<double> protection;  ///< Linear share taken inward off the protected area, 0 to <1.
  CustomFields custom;
  friend bool operator==(const FramingIntent&, const FramingIntent&) = default;
};

struct ClipSequence {
  std::string value;
  std::string idx;  ///< One character; its runs in `value` mark the frame number's digits.
  std::int64_t min = 0;
  std::int64_t max = 0;
  CustomFields custom;
  friend bool operator==(const ClipSequence&, const ClipSequence&) = default;
};

struct ClipId {
  std::string clip_name;
  std::optional<std::string> file;  ///< Never together with sequence.
  std::optional<ClipSequence> sequence;
  CustomFields custom;
  friend bool operator==(const ClipId&, const ClipId&) = default;
};

struct FramingDecision {
  std::optional<std::string> label;
  std::string id;  ///< Canvas id, '-', framing intent id.
  std::string framing_intent_id;
  SizeField dimensions;     ///< Pixels; holds even where it differs from the intent's ratio.
  PointField anchor_point;  ///< Pixels from the canvas's top left corner.
  std::optional<SizeField> protection_dimensions;
  std::optional<PointField> protection_anchor_point;
  CustomFields custom;
  friend bool operator==(const FramingDecision&, const FramingDecision&) = default;
};

struct Canvas {
  std::optional<std::string> label;
  std::string id;                ///< Unique in the document.
  std::string source_canvas_id;  ///< The canvas it was derived from, or its own id.
  WholeSizeField dimensions;     ///< Pixels of the whole stored raster.
  std::optional<WholeSizeField> effective_dimensions;  ///< The usable part, pixels.
  std::optional<PointField> effective_anchor_point;
  std::optional<WholeSizeField> photosite_dimensions;
  std::optional<SizeField> physical_dimensions;  ///< Millimetres.
  std::optional<double> anamorphic_squeeze;      ///< Horizontal, above 0; 1 when left out.
  std::optional<std::vector<FramingDecision>> framing_decisions;
  CustomFields custom;
  friend bool operator==(const Canvas&, const Canvas&) = default;
};

struct Context {
  std::optional<std::string> label;
  std::optional<std::string> context_creator;
  std::optional<ClipId> clip_id;
  std::optional<std::vector<Canvas>> canvases;
  CustomFields custom;
  friend bool operator==(const Context&, const Context&) = default;
};

struct CanvasTemplate {
  std::optional<std::string> label;
  std::string id;
  WholeSizeField target_dimensions;  ///< Output pixels; 0 on an axis the fit method does not use.
  double target_anamorphic_squeeze = 1;  ///< 0 keeps the source's.
  Layer fit_source = Layer::framing;
  FitMethod fit_method = FitMethod::width;
  std::optional<Alignment> alignment_method_vertical;    ///< Centre when left out.
  std::optional<Alignment> alignment_method_horizontal;  ///< Centre when left out.
  std::optional<Layer> preserve_from_source_canvas;
  std::optional<WholeSizeField> maximum_dimensions;
  std::optional<bool> pad_to_maximum;  ///< False when left out; needs maximum_dimensions.
  std::optional<RoundField> round;     ///< Even and up when left out.
  CustomFields custom;
  friend bool operator==(const CanvasTemplate&, const CanvasTemplate&) = default;
};

/// The version object is always 2.0, the only one this reader and the schema accept.
struct Document {
  std::string uuid;
  CustomFields version_custom;
  std::optional<std::string> fdl_creator;
  std::optional<std::string> default_framing_intent;
  std::optional<std::vector<FramingIntent>> framing_intents;
  std::optional<std::vector<Context>> contexts;
  std::optional<std::vector<CanvasTemplate>> canvas_templates;
  CustomFields custom;
  friend bool operator==(const Document&, const Document&) = default;
};

/// The rows of a list that may be missing; a missing list has none. The list outlives the result.
template <class T>
[[nodiscard]] std::span<const T> rows(const std::optional<std::vector<T>>& list) {
  return list ? std::span<const T>(*list) : std::span<const T>();
}

/// The id the standard gives the decision of this intent on this canvas.
[[nodiscard]] std::string decision_id(std::string_view canvas_id, std::string_view intent_id);

/// The canvas with this id anywhere in the document, or nullptr.
[[nodiscard]] const Canvas* find_canvas(const Document& document, std::string_view id);

/// The squeeze of the canvas: 1 when the document leaves it out.
[[nodiscard]] double squeeze_of(const Canvas& canvas);

/// The layers of a canvas and one of its decisions; what the document leaves out is absent.
[[nodiscard]] Layers layers_of(const Canvas& canvas, const FramingDecision& decision);

}  // namespace widegate::fdl
