#include "core/handover/fdl/read.h"

#include "core/handover/fdl/check.h"
#include "core/handover/fdl/field_readers.h"
#include "core/handover/fdl/vocabulary.h"

namespace widegate::fdl {
namespace {

template <class Value, std::size_t kCount>
void read_choice(const Node& node, Value& out, const Words<Value, kCount>& words) {
  if (!node.json.is_string() || !read_word(words, node.json.get_ref<const std::string&>(), out)) {
    refuse(node, list_of(words));
  }
}

void read_layer(const Node& node, Layer& out) { read_choice(node, out, kLayerWords); }
void read_fit_method(const Node& node, FitMethod& out) { read_choice(node, out, kFitMethodWords); }
void read_vertical(const Node& node, Alignment& out) { read_choice(node, out, kVerticalWords); }
void read_horizontal(const Node& node, Alignment& out) { read_choice(node, out, kHorizontalWords); }
void read_parity(const Node& node, Parity& out) { read_choice(node, out, kParityWords); }
void read_mode(const Node& node, RoundMode& out) { read_choice(node, out, kRoundModeWords); }

void read_whole_size(const Node& node, WholeSizeField& out) {
  ObjectReader object(node);
  object.required("width", out.width, read_count_from_one);
  object.required("height", out.height, read_count_from_one);
  object.finish(out.custom);
}

void read_target_size(const Node& node, WholeSizeField& out) {
  ObjectReader object(node);
  object.required("width", out.width, read_count_from_zero);
  object.required("height", out.height, read_count_from_zero);
  object.finish(out.custom);
}

void read_size(const Node& node, SizeField& out) {
  ObjectReader object(node);
  object.required("width", out.width, read_positive);
  object.required("height", out.height, read_positive);
  object.finish(out.custom);
}

void read_point(const Node& node, PointField& out) {
  ObjectReader object(node);
  object.required("x", out.x, read_not_negative);
  object.required("y", out.y, read_not_negative);
  object.finish(out.custom);
}

void read_round(const Node& node, RoundField& out) {
  ObjectReader object(node);
  object.required("even", out.parity, read_parity);
  object.required("mode", out.mode, read_mode);
  object.finish(out.custom);
}

void read_version(const Node& node, CustomFields& out) {
  std::int64_t major = 2;
  std::int64_t minor = 0;
  const std::size_t before = node.findings.problems.size();
  ObjectReader object(node);
  object.required("major", major, read_count_from_zero);
  object.required("minor", minor, read_count_from_zero);
  object.finish(out);
  if (node.findings.problems.size() == before && (major != 2 || minor != 0)) {
    refuse(node, std::to_string(major) + "." + std::to_string(minor),
           "version 2.0 (major 2, minor 0)");
  }
}

void read_intent(const Node& node, FramingIntent& out) {
  ObjectReader object(node);
  object.optional("label", out.label, read_text);
  object.required("id", out.id, read_id);
  object.required("aspect_ratio", out.aspect_ratio, read_whole_size);
  object.optional("protection", out.protection, read_protection);
  object.finish(out.custom);
}

void read_sequence(const Node& node, ClipSequence& out) {
  ObjectReader object(node);
  object.required("value", out.value, read_text);
  object.required("idx", out.idx, read_one_character);
  object.required("min", out.min, read_count_from_zero);
  object.required("max", out.max, read_count_from_zero);
  object.finish(out.custom);
}

void read_clip_id(const Node& node, ClipId& out) {
  ObjectReader object(node);
  object.required("clip_name", out.clip_name, read_text);
  object.optional("file", out.file, read_text);
  object.optional("sequence", out.sequence, read_sequence);
  if (object.has("file") && object.has("sequence")) {
    refuse(node, "an object with file and sequence", "file or sequence, not both");
  }
  object.finish(out.custom);
}

void read_decision(const Node& node, FramingDecision& out) {
  ObjectReader object(node);
  object.optional("label", out.label, read_text);
  object.required("id", out.id, read_decision_id);
  object.required("framing_intent_id", out.framing_intent_id, read_id);
  object.required("dimensions", out.dimensions, read_size);
  object.required("anchor_point", out.anchor_point, read_point);
  object.optional("protection_dimensions", out.protection_dimensions, read_size);
  object.optional("protection_anchor_point", out.protection_anchor_point, read_point);
  if (object.has("protection_dimensions") && !object.has("protection_anchor_point")) {
    object.need("protection_anchor_point");
  }
  object.finish(out.custom);
}

void read_canvas(const Node& node, Canvas& out) {
  ObjectReader object(node);
  object.optional("label", out.label, read_text);
  object.required("id", out.id, read_id);
  object.required("source_canvas_id", out.source_canvas_id, read_id);
  object.required("dimensions", out.dimensions, read_whole_size);
  object.optional("effective_dimensions", out.effective_dimensions, read_whole_size);
  object.optional("effective_anchor_point", out.effective_anchor_point, read_point);
  object.optional("photosite_dimensions", out.photosite_dimensions, read_whole_size);
  object.optional("physical_dimensions", out.physical_dimensions, read_size);
  object.optional("anamorphic_squeeze", out.anamorphic_squeeze, read_positive);
  object.list("framing_decisions", out.framing_decisions, read_decision);
  if (object.has("effective_dimensions") && !object.has("effective_anchor_point")) {
    object.need("effective_anchor_point");
  }
  object.finish(out.custom);
}

void read_context(const Node& node, Context& out) {
  ObjectReader object(node);
  object.optional("label", out.label, read_text);
  object.optional("context_creator", out.context_creator, read_text);
  object.optional("clip_id", out.clip_id, read_clip_id);
  object.list("canvases", out.canvases, read_canvas);
  object.finish(out.custom);
}

void read_target_squeeze(const Node& node, double& out) {
  read_not_negative(node, out);
  if (node.json.is_number() && node.json.get<double>() == 0) {
    warn(node, "a number above 0 (0 keeps the squeeze of the source, as 7.4.5 says)");
  }
}

void read_preserve(ObjectReader& object, CanvasTemplate& out) {
  constexpr std::string_view kKey = "preserve_from_source_canvas";
  const std::optional<Node> node = object.node_of(kKey);
  if (!node) return;
  if (node->json.is_string() && node->json.get_ref<const std::string&>() == "none") {
    return warn(*node, "no such member, which means the same since version 2.0.1");
  }
  read_layer(*node, out.preserve_from_source_canvas.emplace());
}

bool is_zero_size(const Json& json) {
  const auto zero = [&](const char* key) {
    const auto found = json.find(key);
    return found != json.end() && found->is_number() && found->get<double>() == 0;
  };
  return json.is_object() && zero("width") && zero("height");
}

void read_maximum(ObjectReader& object, CanvasTemplate& out) {
  const std::optional<Node> node = object.node_of("maximum_dimensions");
  if (!node) return;
  if (is_zero_size(node->json)) return warn(*node, "no such member, or sizes above 0");
  read_whole_size(*node, out.maximum_dimensions.emplace());
}

void read_template(const Node& node, CanvasTemplate& out) {
  ObjectReader object(node);
  object.optional("label", out.label, read_text);
  object.required("id", out.id, read_id);
  object.required("target_dimensions", out.target_dimensions, read_target_size);
  object.required("target_anamorphic_squeeze", out.target_anamorphic_squeeze, read_target_squeeze);
  object.required("fit_source", out.fit_source, read_layer);
  object.required("fit_method", out.fit_method, read_fit_method);
  object.optional("alignment_method_vertical", out.alignment_method_vertical, read_vertical);
  object.optional("alignment_method_horizontal", out.alignment_method_horizontal, read_horizontal);
  read_preserve(object, out);
  read_maximum(object, out);
  object.optional("pad_to_maximum", out.pad_to_maximum, read_flag);
  object.optional("round", out.round, read_round);
  object.finish(out.custom);
}

void read_default_intent(ObjectReader& object, Document& out) {
  const std::optional<Node> node = object.node_of("default_framing_intent");
  if (!node) return;
  if (node->json.is_null()) return warn(*node, "no such member, or a framing intent id");
  read_id(*node, out.default_framing_intent.emplace());
}

void read_root(const Node& node, Document& out) {
  ObjectReader object(node);
  object.required("uuid", out.uuid, read_uuid);
  object.required("version", out.version_custom, read_version);
  object.optional("fdl_creator", out.fdl_creator, read_text);
  read_default_intent(object, out);
  object.list("framing_intents", out.framing_intents, read_intent);
  object.list("contexts", out.contexts, read_context);
  object.list("canvas_templates", out.canvas_templates, read_template);
  object.finish(out.custom);
}

}  // namespace

Checked<Reading> read_document(std::string_view text) {
  const Checked<Json> json = parse_json(text, {.depth = kDeepest, .members = kMostMembers});
  if (!json) return tl::make_unexpected(json.error());
  Findings findings;
  Reading reading;
  read_root({*json, JsonPath(), findings}, reading.document);
  if (findings.problems.empty()) check_document(reading.document, findings);
  if (!findings.problems.empty()) return tl::make_unexpected(std::move(findings.problems));
  reading.warnings = std::move(findings.warnings);
  return reading;
}

}  // namespace widegate::fdl
