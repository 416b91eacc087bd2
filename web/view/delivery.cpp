#include "web/view/delivery.h"

#include <array>
#include <utility>

#include "core/base/number_text.h"
#include "core/handover/fdl/template_fields.h"
#include "core/handover/fdl/template_library.h"
#include "core/report/figure_text.h"
#include "web/view/named_control.h"

namespace widegate {
namespace {

Control named(std::string_view id, ControlKind kind, std::string_view label) {
  return named_control(id, kind, kDeliverySection, label);
}

bool own_chosen(const DeliveryState& state) {
  return state.choice.canvas_template == fdl::kOwnTemplate;
}

Control template_control(const DeliveryState& state) {
  Control control = named(kDeliveryTemplate, ControlKind::choice, "Canvas template");
  for (const fdl::CanvasTemplate& entry : fdl::delivery_templates({})) {
    control.choices.push_back({entry.id, entry.label.value_or(entry.id), {}});
  }
  control.choices.push_back({std::string(fdl::kOwnTemplate), "Own template", {}});
  choose_item(control, state.choice.canvas_template);
  return control;
}

Control source_control(const DeliveryState& state) {
  Control control = named(kDeliverySource, ControlKind::choice, "Source canvas");
  control.choices = {{"recorded", "Recorded file", {}}, {"sensor", "Sensor mode", {}}};
  const bool recorded = state.choice.source == fdl::DeliverySource::recorded;
  choose_item(control, recorded ? "recorded" : "sensor");
  return control;
}

Control line_control(const App& app, const DeliveryState& state) {
  Control control = named(kDeliveryLine, ControlKind::choice, "Framing decision");
  const auto& lines = app.plan().deliverable.frame_lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string ratio = short_number(lines[i].aspect.to_double(), 3) + "∶1";
    control.choices.push_back(
        {std::to_string(i), lines[i].name.empty() ? ratio : lines[i].name + " · " + ratio, {}});
  }
  choose_item(control,
              std::to_string(state.choice.frame_line < lines.size() ? state.choice.frame_line : 0));
  return control;
}

void put_number(Control& control, const fdl::TemplateField& field) {
  control.kind = ControlKind::slider;
  control.min = field.usual_low;
  control.max = field.usual_high;
  control.step = field.step;
  control.unit = field.unit;
  const auto value = parse_rational(control.edit_text);
  control.value = value ? value->to_double() : field.usual_low;
  control.value_text = short_number(control.value, 4);
  for (const fdl::TemplateOption& option : field.options) {
    control.choices.push_back({std::string(option.value), std::string(option.label), {}});
  }
}

Control field_control(const fdl::TemplateField& field, const DeliveryState& state) {
  Control control =
      named(std::string(kOwnField) + std::string(field.key), ControlKind::choice, field.label);
  control.edit_text = field.read(state.choice.own);
  switch (field.kind) {
    case fdl::TemplateFieldKind::count:
    case fdl::TemplateFieldKind::ratio:
      put_number(control, field);
      break;
    case fdl::TemplateFieldKind::choice:
      for (const fdl::TemplateOption& option : field.options) {
        control.choices.push_back({std::string(option.value), std::string(option.label), {}});
      }
      choose_item(control, control.edit_text);
      break;
    case fdl::TemplateFieldKind::flag:
      control.kind = ControlKind::flag;
      control.value = control.edit_text == "true" ? 1 : 0;
      control.value_text = control.value != 0 ? "yes" : "no";
      break;
  }
  const std::string usual = field.read(fdl::usual_own_template());
  control.changed = !usual.empty() && control.edit_text != usual;
  if (state.rejected == control.id) control.problem = "Expected " + state.accepted;
  return control;
}

void add_buttons(std::vector<Control>& controls, const App& app, const DeliveryState& state) {
  const bool works = app.report().problems.empty();
  const auto add = [&](std::string_view id, std::string_view label, bool enabled) {
    controls.push_back(named(id, ControlKind::action, label));
    controls.back().enabled = enabled;
  };
  if (!own_chosen(state)) add(kOwnFromThis, "Make this my own template", works);
  add(kSaveDelivery, "Save the result document", works);
  add(kSaveDeliverySource, "Save the source document", works);
  add(kSaveTemplate, "Save the canvas template", works);
  add(kOpenFraming, "Open a framing decision list", true);
  if (!state.import_notes.empty()) add(kClearImport, "Put the list's notes away", true);
}

std::string severity_word(Severity severity) {
  return severity == Severity::ok ? "Fine: "
                                  : (severity == Severity::caution ? "Caution: " : "Fails: ");
}

}  // namespace

std::optional<fdl::Delivery> make_delivery(const App& app, const DeliveryState& state) {
  auto made = fdl::deliver(app.plan(), app.library(), app.report(), state.choice);
  if (!made) return std::nullopt;
  return std::move(*made);
}

std::vector<Control> delivery_controls(const App& app, const DeliveryState& state) {
  std::vector<Control> controls = {template_control(state), source_control(state)};
  if (app.plan().deliverable.frame_lines.size() > 1) controls.push_back(line_control(app, state));
  if (own_chosen(state)) {
    for (const fdl::TemplateField& field : fdl::template_fields()) {
      if (field.wanted != nullptr && !field.wanted(state.choice.own)) continue;
      controls.push_back(field_control(field, state));
    }
  }
  add_buttons(controls, app, state);
  return controls;
}

std::vector<ResultRow> delivery_rows(const std::optional<fdl::Delivery>& delivery) {
  std::vector<ResultRow> rows;
  if (!delivery) return rows;
  for (const fdl::DeliveryFigure& figure : delivery->figures) {
    rows.push_back({.section = std::string(kDeliverySection),
                    .key = std::string(figure.key),
                    .label = std::string(figure.label),
                    .value_text = figure.text,
                    .unit = std::string(figure.unit),
                    .working = {},
                    .main = true});
  }
  return rows;
}

std::vector<std::string> delivery_notes(const std::optional<fdl::Delivery>& delivery,
                                        const DeliveryState& state) {
  std::vector<std::string> notes = state.import_notes;
  if (!delivery) return notes;
  for (const Problem& problem : delivery->problems) {
    notes.push_back("Fails: the template cannot be applied: " + to_line(problem));
  }
  for (const fdl::DeliveryNote& note : delivery->notes) {
    notes.push_back(severity_word(note.severity) + note.text);
  }
  return notes;
}

}  // namespace widegate
