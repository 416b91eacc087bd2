#include "core/handover/fdl/plan_delivery.h"

#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/delivery_words.h"
#include "core/handover/fdl/plan_export.h"
#include "core/handover/fdl/template_library.h"

namespace widegate::fdl {
namespace {

std::vector<CanvasTemplate> templates_for(const Canvas& canvas, const CanvasTemplate& own) {
  std::vector<CanvasTemplate> all = delivery_templates(canvas);
  all.push_back(own);
  return all;
}

const CanvasTemplate& chosen_of(const std::vector<CanvasTemplate>& all, const std::string& id) {
  for (const CanvasTemplate& entry : all) {
    if (entry.id == id) return entry;
  }
  return all.front();
}

}  // namespace

CanvasTemplate usual_own_template() {
  CanvasTemplate entry;
  entry.label = std::string("Own template");
  entry.id = kOwnTemplate;
  entry.target_dimensions = {{3840, 2160}, {}};
  entry.fit_method = FitMethod::fit_all;
  entry.alignment_method_vertical = Alignment::center;
  entry.alignment_method_horizontal = Alignment::center;
  entry.round = RoundField{};
  return entry;
}

Checked<Delivery> deliver(const Plan& plan, const Catalogue& catalogue, const Report& report,
                          const DeliveryChoice& choice) {
  auto exported = export_plan(plan, catalogue, report);
  if (!exported) return tl::make_unexpected(std::move(exported.error()));
  Delivery result;
  result.source = std::move(exported->document);
  const bool recorded = choice.source == DeliverySource::recorded;
  result.canvas_id = recorded ? exported->recorded_canvas : exported->mode_canvas;
  const Canvas& canvas = *find_canvas(result.source, result.canvas_id);
  result.canvas_name = canvas.label.value_or(canvas.id);
  const auto& decisions = rows(canvas.framing_decisions);
  const FramingDecision& decision =
      decisions[choice.frame_line < decisions.size() ? choice.frame_line : 0];
  result.decision_id = decision.id;
  result.all = templates_for(canvas, choice.own);
  result.chosen = chosen_of(result.all, choice.canvas_template);
  for (const std::string& remark : exported->remarks) {
    result.notes.push_back({Severity::caution, remark});
  }
  auto applied = apply_template(result.chosen, canvas, decision);
  if (!applied) {
    result.problems = std::move(applied.error());
    return result;
  }
  result.applied = *applied;
  result.picture = picture_on_canvas(*applied);
  result.figures = delivery_figures(result);
  add_delivery_notes(result, layers_of(canvas, decision));
  return result;
}

Checked<Document> delivered_document(const Delivery& delivery) {
  ApplyChoice choice;
  choice.canvas = delivery.canvas_id;
  choice.decision = delivery.decision_id;
  auto applied = apply_to_document(delivery.source, template_document({delivery.chosen}), choice);
  if (applied) return std::move(applied->document);
  Problems problems = std::move(applied.error().source);
  for (Problem& problem : applied.error().templates) problems.push_back(std::move(problem));
  return tl::make_unexpected(std::move(problems));
}

}  // namespace widegate::fdl
