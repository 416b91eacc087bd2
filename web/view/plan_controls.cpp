#include "web/view/plan_controls.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/plan/frame_line_pointer.h"
#include "core/report/figure_text.h"
#include "web/view/usual_values.h"

namespace widegate {
namespace {

constexpr auto kPercentFields = std::to_array<std::string_view>({
    "/deliverable/frame_lines/0/protection",
    "/store/upload_share",
});

/// Units as they are drawn.
constexpr auto kUnits = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"deg", "°"},
    {"x", "×"},
});

std::string shown_unit(const FieldSpec& spec, std::string_view pointer) {
  if (shown_in_percent(pointer)) return "%";
  for (const auto& [plain, drawn] : kUnits) {
    if (spec.unit == plain) return std::string(drawn);
  }
  return std::string(spec.unit);
}

/// What stands in for an optional value that the plan leaves open.
std::optional<double> value_left_open(const Report& report, std::string_view pointer) {
  if (!report.problems.empty()) return std::nullopt;
  if (pointer == "/lens/squeeze") return report.mode.squeeze;
  if (pointer == "/lens/circle_of_confusion_mm") return report.see.circle_of_confusion_mm;
  if (pointer == "/lens/image_circle_mm" && report.cover.known) return report.cover.image_circle_mm;
  return std::nullopt;
}

std::optional<double> number_of(const FieldValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return *number;
  if (const auto* number = std::get_if<Rational>(&value)) return number->to_double();
  if (const auto* number = std::get_if<std::int64_t>(&value)) return static_cast<double>(*number);
  return std::nullopt;
}

/// Fractions of a second stay fractions, everything else is a decimal; long counts are grouped.
std::string number_words(const FieldSpec& spec, const FieldValue& value, double number) {
  constexpr double kGroupFrom = 10'000;
  const auto* fraction = std::get_if<Rational>(&value);
  if (fraction != nullptr && spec.unit == "s") return print_rational(*fraction);
  if (spec.kind == FieldKind::whole && number >= kGroupFrom) {
    return print_grouped(static_cast<std::int64_t>(number));
  }
  return short_number(number, spec.unit == "mm" ? 4 : 3);
}

void put_number(Control& control, const App& app, const FieldSpec& spec, const FieldValue& value) {
  const double factor = shown_in_percent(control.id) ? 100 : 1;
  const bool usual = spec.usual_low < spec.usual_high;
  control.kind = ControlKind::slider;
  control.min = factor * (usual ? spec.usual_low : spec.low).to_double();
  control.max = factor * (usual ? spec.usual_high : spec.high).to_double();
  control.step = factor * spec.step.to_double();
  control.signs =
      spec.kind == FieldKind::fraction && (spec.unit == "s" || control.id.ends_with("/aspect"));
  if (const auto number = number_of(value)) {
    control.value = factor * *number;
    control.value_text = number_words(spec, value, control.value);
    control.edit_text = factor == 1 ? value_text(spec, value) : short_number(control.value, 3);
    return;
  }
  const auto open = value_left_open(app.report(), control.id);
  control.value = open.value_or(control.min);
  control.value_text = open ? short_number(*open, spec.unit == "mm" ? 4 : 3) : "not set";
  if (!open) control.unit.clear();
}

/// The slider reaches as far as the equipment; what was typed beyond it is on it too.
void reach(Control& control, double low, double high) {
  control.min = std::min(low, control.value);
  control.max = std::max(high, control.value);
}

/// From the set's shortest lens to its longest, one lens after the other.
void reach_over_lenses(Control& control, const LensSet& set) {
  if (set.lenses.size() < 2) return;
  reach(control, set.lenses.front().focal_mm, set.lenses.back().focal_mm);
  control.stops = true;
}

/// Up to what mode, recording option and card allow.
void reach_to_ceiling(Control& control, const Report& report) {
  if (!report.problems.empty() || !report.run.rate_ceiling) return;
  control.ceiling = report.run.rate_ceiling->to_double();
  reach(control, control.min, std::max(control.min + control.step, control.ceiling));
}

void put_usual_values(Control& control, const App& app) {
  for (const UsualValue& usual : usual_values(on_first_line(control.id))) {
    control.choices.push_back({std::string(usual.text), std::string(usual.label), {}});
  }
  if (control.id == "/run/sensor_rate") reach_to_ceiling(control, app.report());
  if (control.id != "/lens/focal_mm") return;
  const LensSet* set =
      find_row(app.plan().own.lens_sets, app.library().lens_sets, app.plan().lens.set);
  if (set == nullptr) return;
  for (const Lens& lens : set->lenses) {
    control.choices.push_back({print_number(lens.focal_mm), {}, {}});
  }
  reach_over_lenses(control, *set);
}

std::string size_words(std::int64_t width, std::int64_t height) {
  return std::to_string(width) + " × " + std::to_string(height);
}

std::string mode_detail(const Camera& camera, std::string_view id) {
  const SensorMode* mode = find_row(camera.modes, id);
  if (mode == nullptr) return {};
  return size_words(mode->width_photosites, mode->height_photosites) + " · " +
         short_number(mode->width_mm, 2) + " × " + short_number(mode->height_mm, 2) + " mm";
}

std::string recording_detail(const Camera& camera, const FormatChoice& format,
                             std::string_view id) {
  const SensorMode* mode = find_row(camera.modes, format.mode);
  const Recording* recording = mode == nullptr ? nullptr : find_row(mode->recordings, id);
  if (recording == nullptr) return {};
  const bool as_read = recording->width_pixels == 0;
  return size_words(as_read ? mode->width_photosites : recording->width_pixels,
                    as_read ? mode->height_photosites : recording->height_pixels) +
         " px";
}

/// The second line of an entry of the library, where it helps to choose.
std::string option_detail(const App& app, const FieldSpec& spec, std::string_view id) {
  const Plan& plan = app.plan();
  const Catalogue& library = app.library();
  const Camera* camera = find_row(plan.own.cameras, library.cameras, plan.format.camera);
  if (spec.ids == IdList::camera) {
    const Camera* row = find_row(plan.own.cameras, library.cameras, id);
    return row == nullptr ? std::string()
                          : size_words(row->width_photosites, row->height_photosites) + " · " +
                                short_number(row->width_mm, 2) + " × " +
                                short_number(row->height_mm, 2) + " mm";
  }
  if (spec.ids == IdList::mode && camera != nullptr) return mode_detail(*camera, id);
  if (spec.ids == IdList::recording && camera != nullptr) {
    return recording_detail(*camera, plan.format, id);
  }
  if (spec.ids == IdList::lens_set) {
    const LensSet* row = find_row(plan.own.lens_sets, library.lens_sets, id);
    if (row == nullptr || row->lenses.empty()) return {};
    return short_number(row->lenses.front().focal_mm, 1) + "–" +
           short_number(row->lenses.back().focal_mm, 1) + " mm · squeeze " +
           short_number(row->squeeze.to_double(), 2);
  }
  return {};
}

/// What it means that nothing is chosen.
std::string_view words_for_nothing(std::string_view pointer) {
  if (pointer == "/commission/id") return "What the deliverable asks for";
  if (pointer == "/lens/set") return "A lens of no set";
  return "None";
}

void put_choice(Control& control, const App& app, const FieldInfo& info) {
  control.kind = ControlKind::choice;
  control.edit_text = field_text(app.plan(), control.id);
  for (FieldOption& option : field_options(app.plan(), app.library(), info)) {
    std::string detail = option_detail(app, info, option.value);
    if (option.value == control.edit_text) control.value_text = option.label;
    control.choices.push_back(
        {std::move(option.value), std::move(option.label), std::move(detail)});
  }
  if (info.optional) {
    const std::string nothing(words_for_nothing(control.id));
    const bool none_listed = !control.choices.empty() && control.choices.front().value.empty();
    if (!none_listed) control.choices.push_back({"", nothing, ""});
    if (control.edit_text.empty()) control.value_text = nothing;
  }
}

void put_value(Control& control, const App& app, const FieldPlace& place) {
  const FieldInfo& info = *place.info;
  switch (info.kind) {
    case FieldKind::decimal:
    case FieldKind::fraction:
    case FieldKind::rate:
    case FieldKind::whole:
      put_number(control, app, info, info.read(app.plan(), place.line));
      put_usual_values(control, app);
      return;
    case FieldKind::id:
    case FieldKind::choice:
      put_choice(control, app, info);
      return;
    case FieldKind::text:
      control.kind = ControlKind::text;
      control.value_text = control.edit_text = field_text(app.plan(), control.id);
      return;
    case FieldKind::flag:
      control.kind = ControlKind::flag;
      control.edit_text = field_text(app.plan(), control.id);
      control.value = control.edit_text == "true" ? 1 : 0;
      control.value_text = control.value != 0 ? "yes" : "no";
      return;
  }
}

/// What was not accepted, what would be, and that the value from before stays.
std::string refusal_words(const Control& control, const Rejection& refused) {
  const std::string unit = control.unit.empty() || control.unit == "°" || control.unit == "×"
                               ? control.unit
                               : " " + control.unit;
  const std::string stays = control.value_text + unit + " stays.";
  const std::string expected = "xpected " + refused.problem.accepted + "; " + stays;
  if (refused.text.empty()) return "E" + expected;
  return in_quotes(refused.text) + " is not accepted: e" + expected;
}

}  // namespace

bool shown_in_percent(std::string_view pointer) {
  const std::string first = on_first_line(pointer);
  for (const std::string_view each : kPercentFields) {
    if (each == first) return true;
  }
  return false;
}

std::string field_input(std::string_view pointer, std::string_view typed) {
  std::string text(typed);
  if (!shown_in_percent(pointer)) return text;
  while (!text.empty() && (text.back() == ' ' || text.back() == '%')) text.pop_back();
  if (const auto comma = text.find(','); comma != std::string::npos) text[comma] = '.';
  const auto share = parse_rational(text);
  if (!share) return std::string(typed);
  const Rational stored = *share / Rational(100);
  const auto place = find_field(pointer);
  const bool fraction = place && place->info->kind == FieldKind::fraction;
  return fraction ? print_rational(stored) : print_number(stored.to_double());
}

Control make_control(const App& app, const Panel& panel, const PanelField& field,
                     std::size_t line) {
  Control control;
  control.id = on_line(field.pointer, line);
  control.section = panel.id;
  control.further = field.further;
  const auto place = find_field(control.id);
  if (!place) return control;
  control.label = place->info->label;
  control.unit = shown_unit(*place->info, control.id);
  put_value(control, app, *place);
  control.changed = field_text(app.plan(), control.id) != field_text(app.first(), field.pointer);
  if (app.rejection().pointer == control.id) {
    control.problem = refusal_words(control, app.rejection());
  }
  return control;
}

}  // namespace widegate
