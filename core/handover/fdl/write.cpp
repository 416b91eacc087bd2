#include "core/handover/fdl/write.h"

#include "core/encode/json_text.h"
#include "core/handover/fdl/vocabulary.h"

namespace widegate::fdl {
namespace {

void put_custom(Json& json, const CustomFields& fields) {
  for (const CustomField& field : fields) {
    Json value = Json::parse(field.json, nullptr, false);
    if (!value.is_discarded()) json[field.key] = std::move(value);
  }
}

Json to_json(const std::string& text) { return text; }
Json to_json(double number) { return number; }

Json to_json(const WholeSizeField& size);
Json to_json(const SizeField& size);
Json to_json(const PointField& point);
Json to_json(const RoundField& rule);
Json to_json(const ClipSequence& sequence);
Json to_json(const ClipId& clip);
Json to_json(const FramingIntent& intent);
Json to_json(const FramingDecision& decision);
Json to_json(const Canvas& canvas);
Json to_json(const Context& context);
Json to_json(const CanvasTemplate& entry);

template <class T>
void put(Json& json, const char* key, const std::optional<T>& value) {
  if (value) json[key] = to_json(*value);
}

template <class T>
void put_list(Json& json, const char* key, const std::optional<std::vector<T>>& list) {
  if (!list) return;
  Json& array = json[key] = Json::array();
  for (const T& row : *list) array.push_back(to_json(row));
}

template <class Value, std::size_t kCount>
void put_word(Json& json, const char* key, const Words<Value, kCount>& words,
              const std::optional<Value>& value) {
  if (value) json[key] = word_of(words, *value);
}

Json to_json(const WholeSizeField& size) {
  Json json = {{"width", size.width}, {"height", size.height}};
  put_custom(json, size.custom);
  return json;
}

Json to_json(const SizeField& size) {
  Json json = {{"width", size.width}, {"height", size.height}};
  put_custom(json, size.custom);
  return json;
}

Json to_json(const PointField& point) {
  Json json = {{"x", point.x}, {"y", point.y}};
  put_custom(json, point.custom);
  return json;
}

Json to_json(const RoundField& rule) {
  Json json = {{"even", word_of(kParityWords, rule.parity)},
               {"mode", word_of(kRoundModeWords, rule.mode)}};
  put_custom(json, rule.custom);
  return json;
}

Json to_json(const ClipSequence& sequence) {
  Json json = {{"value", sequence.value},
               {"idx", sequence.idx},
               {"min", sequence.min},
               {"max", sequence.max}};
  put_custom(json, sequence.custom);
  return json;
}

Json to_json(const ClipId& clip) {
  Json json = {{"clip_name", clip.clip_name}};
  put(json, "file", clip.file);
  put(json, "sequence", clip.sequence);
  put_custom(json, clip.custom);
  return json;
}

Json to_json(const FramingIntent& intent) {
  Json json = Json::object();
  put(json, "label", intent.label);
  json["id"] = intent.id;
  json["aspect_ratio"] = to_json(intent.aspect_ratio);
  put(json, "protection", intent.protection);
  put_custom(json, intent.custom);
  return json;
}

Json to_json(const FramingDecision& decision) {
  Json json = Json::object();
  put(json, "label", decision.label);
  json["id"] = decision.id;
  json["framing_intent_id"] = decision.framing_intent_id;
  json["dimensions"] = to_json(decision.dimensions);
  json["anchor_point"] = to_json(decision.anchor_point);
  put(json, "protection_dimensions", decision.protection_dimensions);
  put(json, "protection_anchor_point", decision.protection_anchor_point);
  put_custom(json, decision.custom);
  return json;
}

Json to_json(const Canvas& canvas) {
  Json json = Json::object();
  put(json, "label", canvas.label);
  json["id"] = canvas.id;
  json["source_canvas_id"] = canvas.source_canvas_id;
  json["dimensions"] = to_json(canvas.dimensions);
  put(json, "effective_dimensions", canvas.effective_dimensions);
  put(json, "effective_anchor_point", canvas.effective_anchor_point);
  put(json, "photosite_dimensions", canvas.photosite_dimensions);
  put(json, "physical_dimensions", canvas.physical_dimensions);
  put(json, "anamorphic_squeeze", canvas.anamorphic_squeeze);
  put_list(json, "framing_decisions", canvas.framing_decisions);
  put_custom(json, canvas.custom);
  return json;
}

Json to_json(const Context& context) {
  Json json = Json::object();
  put(json, "label", context.label);
  put(json, "context_creator", context.context_creator);
  put(json, "clip_id", context.clip_id);
  put_list(json, "canvases", context.canvases);
  put_custom(json, context.custom);
  return json;
}

Json to_json(const CanvasTemplate& entry) {
  Json json = Json::object();
  put(json, "label", entry.label);
  json["id"] = entry.id;
  json["target_dimensions"] = to_json(entry.target_dimensions);
  json["target_anamorphic_squeeze"] = entry.target_anamorphic_squeeze;
  json["fit_source"] = word_of(kLayerWords, entry.fit_source);
  json["fit_method"] = word_of(kFitMethodWords, entry.fit_method);
  put_word(json, "alignment_method_vertical", kVerticalWords, entry.alignment_method_vertical);
  put_word(json, "alignment_method_horizontal", kHorizontalWords,
           entry.alignment_method_horizontal);
  put_word(json, "preserve_from_source_canvas", kLayerWords, entry.preserve_from_source_canvas);
  put(json, "maximum_dimensions", entry.maximum_dimensions);
  if (entry.pad_to_maximum.value_or(false)) json["pad_to_maximum"] = true;
  put(json, "round", entry.round);
  put_custom(json, entry.custom);
  return json;
}

Json to_json(const Document& document) {
  Json json = Json::object();
  json["uuid"] = document.uuid;
  json["version"] = {{"major", 2}, {"minor", 0}};
  put_custom(json["version"], document.version_custom);
  put(json, "fdl_creator", document.fdl_creator);
  put(json, "default_framing_intent", document.default_framing_intent);
  put_list(json, "framing_intents", document.framing_intents);
  put_list(json, "contexts", document.contexts);
  put_list(json, "canvas_templates", document.canvas_templates);
  put_custom(json, document.custom);
  return json;
}

}  // namespace

std::string write_document(const Document& document) {
  return print_json(to_json(document)) + '\n';
}

}  // namespace widegate::fdl
