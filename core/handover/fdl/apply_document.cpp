#include "core/handover/fdl/apply_document.h"

#include <algorithm>

#include "core/base/plain_text.h"
#include "core/encode/json_text.h"
#include "core/handover/fdl/identity.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/write.h"

namespace widegate::fdl {
namespace {

/// What a template is applied to.
struct Chosen {
  const Context* context = nullptr;
  const Canvas* canvas = nullptr;
  const FramingDecision* decision = nullptr;
};

bool matches(const std::string& wanted, const std::string& have) {
  return wanted.empty() || wanted == have;
}

const FramingDecision* choose_decision(const Document& source, const Canvas& canvas,
                                       const std::string& wanted) {
  const FramingDecision* first = nullptr;
  for (const FramingDecision& decision : rows(canvas.framing_decisions)) {
    if (!wanted.empty() && wanted != decision.id && wanted != decision.framing_intent_id) continue;
    if (source.default_framing_intent == decision.framing_intent_id) return &decision;
    if (first == nullptr) first = &decision;
  }
  return first;
}

Chosen choose_source(const Document& source, const ApplyChoice& choice) {
  for (const Context& context : rows(source.contexts)) {
    if (!matches(choice.context, context.label.value_or(""))) continue;
    for (const Canvas& canvas : rows(context.canvases)) {
      if (!matches(choice.canvas, canvas.id)) continue;
      const FramingDecision* decision = choose_decision(source, canvas, choice.decision);
      if (decision != nullptr) return {&context, &canvas, decision};
    }
  }
  return {};
}

std::string described(const ApplyChoice& choice) {
  std::string text = "no framing decision";
  if (!choice.decision.empty()) text += " \"" + choice.decision + '"';
  if (!choice.canvas.empty()) text += " on canvas \"" + choice.canvas + '"';
  if (!choice.context.empty()) text += " in context \"" + choice.context + '"';
  return text;
}

/// Index of the template meant, or nothing.
std::optional<std::size_t> choose_template(const Document& templates, const std::string& wanted) {
  const auto& list = rows(templates.canvas_templates);
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (matches(wanted, list[i].id)) return i;
  }
  return std::nullopt;
}

/// The chosen canvas after all canvases it was derived from, oldest first.
std::vector<Canvas> lineage(const Document& source, const Canvas& canvas) {
  std::vector<Canvas> result = {canvas};
  const auto seen = [&](const Canvas& candidate) {
    return std::any_of(result.begin(), result.end(),
                       [&](const Canvas& known) { return known.id == candidate.id; });
  };
  const Canvas* parent = find_canvas(source, canvas.source_canvas_id);
  while (parent != nullptr && !seen(*parent)) {
    result.insert(result.begin(), *parent);
    parent = find_canvas(source, parent->source_canvas_id);
  }
  return result;
}

std::string name_of(const std::optional<std::string>& label, const std::string& id) {
  return label && !label->empty() ? *label : id;
}

FramingDecision new_decision(const AppliedTemplate& applied, const FramingDecision& from,
                             const std::string& canvas_id) {
  FramingDecision decision;
  decision.label = from.label;
  decision.id = decision_id(canvas_id, from.framing_intent_id);
  decision.framing_intent_id = from.framing_intent_id;
  decision.dimensions = {applied.layers.framing.size, {}};
  decision.anchor_point = {applied.layers.framing.anchor, {}};
  if (!absent(applied.layers.protection.size)) {
    decision.protection_dimensions = SizeField{applied.layers.protection.size, {}};
    decision.protection_anchor_point = PointField{applied.layers.protection.anchor, {}};
  }
  return decision;
}

/// Custom fields that let a renderer place the picture without repeating the arithmetic.
CustomFields placement_fields(const AppliedTemplate& applied) {
  const Json shift = {{"x", applied.translation.x}, {"y", applied.translation.y}};
  const Json box = {{"width", applied.bounding_box.width}, {"height", applied.bounding_box.height}};
  return {{"_scale_factor", Json(applied.scale.value()).dump()},
          {"_content_translation", shift.dump()},
          {"_scaled_bounding_box", box.dump()}};
}

Canvas new_canvas(const AppliedTemplate& applied, const Chosen& chosen, const CanvasTemplate& entry,
                  const std::string& id) {
  Canvas canvas;
  const Context& context = *chosen.context;
  canvas.label = name_of(entry.label, entry.id) + ": " +
                 (context.label ? *context.label + " " : std::string()) +
                 name_of(chosen.canvas->label, chosen.canvas->id);
  canvas.id = id;
  canvas.source_canvas_id = chosen.canvas->id;
  canvas.dimensions = {to_whole(applied.layers.canvas), {}};
  canvas.effective_dimensions = WholeSizeField{to_whole(applied.layers.effective.size), {}};
  canvas.effective_anchor_point = PointField{applied.layers.effective.anchor, {}};
  canvas.anamorphic_squeeze = applied.squeeze;
  canvas.framing_decisions = {new_decision(applied, *chosen.decision, id)};
  canvas.custom = placement_fields(applied);
  return canvas;
}

bool is_id(const std::string& text) {
  constexpr std::string_view kAllowed =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_";
  return !text.empty() && text.size() <= 32 &&
         text.find_first_not_of(kAllowed) == std::string::npos;
}

bool taken(const std::vector<Canvas>& canvases, const std::string& id) {
  return std::any_of(canvases.begin(), canvases.end(),
                     [&](const Canvas& canvas) { return canvas.id == id; });
}

/// The id asked for, or a free one made from the content; empty when the one asked for cannot be.
std::string new_id(const ApplyChoice& choice, const CanvasTemplate& entry, std::string content,
                   const std::vector<Canvas>& canvases) {
  if (!choice.new_canvas_id.empty()) {
    const bool usable = is_id(choice.new_canvas_id) && !taken(canvases, choice.new_canvas_id);
    return usable ? choice.new_canvas_id : std::string();
  }
  std::string id = id_from(entry.id, content);
  while (taken(canvases, id)) id = id_from(entry.id, content += '+');
  return id;
}

Document new_document(const Document& source, const Chosen& chosen, const CanvasTemplate& entry,
                      std::vector<Canvas> canvases) {
  Document document;
  document.fdl_creator = std::string(kCreator);
  document.default_framing_intent = chosen.decision->framing_intent_id;
  document.framing_intents = source.framing_intents;
  Context context;
  context.label = name_of(entry.label, entry.id);
  context.context_creator = std::string(kCreator);
  context.canvases = std::move(canvases);
  document.contexts = {std::move(context)};
  document.canvas_templates = {entry};
  return document;
}

/// Problems of a template, pointed into the document it stands in.
Problems below_template(Problems problems, std::size_t index) {
  for (Problem& problem : problems) {
    problem.pointer.insert(0, "/canvas_templates/" + std::to_string(index));
  }
  return problems;
}

}  // namespace

tl::expected<AppliedDocument, ApplyProblems> apply_to_document(const Document& source,
                                                               const Document& templates,
                                                               const ApplyChoice& choice) {
  ApplyProblems problems;
  const Chosen chosen = choose_source(source, choice);
  const auto index = choose_template(templates, choice.canvas_template);
  if (chosen.decision == nullptr) {
    problems.source.push_back(
        {"/contexts", described(choice), "a canvas with such a framing decision"});
  }
  if (!index) {
    const bool none = rows(templates.canvas_templates).empty();
    problems.templates.push_back(
        {"/canvas_templates", none ? "no template" : '"' + choice.canvas_template + '"',
         none ? "at least one canvas template" : "the id of a canvas template"});
  }
  if (chosen.decision == nullptr || !index) return tl::make_unexpected(std::move(problems));

  const CanvasTemplate& entry = rows(templates.canvas_templates)[*index];
  auto applied = apply_template(entry, *chosen.canvas, *chosen.decision);
  if (!applied) {
    problems.templates = below_template(std::move(applied.error()), *index);
    return tl::make_unexpected(std::move(problems));
  }
  const std::string content =
      write_document(source) + write_document(templates) + chosen.decision->id + entry.id;
  std::vector<Canvas> canvases = lineage(source, *chosen.canvas);
  const std::string id = new_id(choice, entry, content, canvases);
  if (id.empty()) {
    problems.source.push_back({"/contexts", '"' + choice.new_canvas_id + '"',
                               "a new canvas id of 1 to 32 letters, digits and underscores"});
    return tl::make_unexpected(std::move(problems));
  }
  canvases.push_back(new_canvas(*applied, chosen, entry, id));
  AppliedDocument result{new_document(source, chosen, entry, std::move(canvases)), *applied, id};
  result.document.uuid = uuid_from(content + id);
  return result;
}

tl::expected<AppliedText, ApplyProblems> apply_text(std::string_view source,
                                                    std::string_view templates,
                                                    const ApplyChoice& choice) {
  auto from = read_document(source);
  auto with = read_document(templates);
  ApplyProblems problems;
  if (!from) problems.source = std::move(from.error());
  if (!with) problems.templates = std::move(with.error());
  if (!from || !with) return tl::make_unexpected(std::move(problems));
  auto applied = apply_to_document(from->document, with->document, choice);
  if (!applied) return tl::make_unexpected(std::move(applied.error()));
  return AppliedText{write_document(applied->document), std::move(from->warnings),
                     std::move(with->warnings)};
}

}  // namespace widegate::fdl
