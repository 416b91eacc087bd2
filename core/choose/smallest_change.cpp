#include "core/choose/smallest_change.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <utility>

#include "core/base/number_text.h"
#include "core/choose/change_inputs.h"
#include "core/optics/lens_squeeze.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

const Lever& lever_of(Input input) { return change_levers()[static_cast<std::size_t>(input)]; }

Findings judged(const RejectedFormat& format, const Conditions& conditions) {
  return format_figures(conditions, mode_figures(conditions, format.camera, format.mode), format.mode,
                        format.recording, format.codec)
      .findings;
}

/// What failed is met, whatever else no longer is.
bool cures(const RejectedFormat& format, const Conditions& changed) {
  const Findings findings = judged(format, changed);
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (!format.findings[i].met && !findings[i].met) return false;
  }
  return true;
}

/// The relations of plan_check.h that a changed input could break.
bool is_possible(const Conditions& changed) {
  constexpr double kMmPerMetre = 1000;
  const Running& run = changed.run;
  const bool shutter_fits =
      run.shutter_kind == ShutterKind::angle || run.shutter_time_s * run.sensor_rate <= Rational(1);
  return shutter_fits && focal_length_mm(changed.lens) < changed.lens.focus_m * kMmPerMetre;
}

bool passes(const RejectedFormat& format, const Conditions& changed) {
  return is_possible(changed) && all_met(judged(format, changed));
}

/// The steps a field's limits leave.
std::int64_t lowest_step(const FieldSpec& spec, std::int64_t per_unit) {
  const std::int64_t step = ceil_scaled(spec.low, per_unit, 1, 1);
  return spec.low_excluded && Rational(step, per_unit) == spec.low ? step + 1 : step;
}
std::int64_t highest_step(const FieldSpec& spec, std::int64_t per_unit) {
  const std::int64_t step = floor_scaled(spec.high, per_unit, 1, 1);
  return spec.high_excluded && Rational(step, per_unit) == spec.high ? step - 1 : step;
}

/// Halves the way between a step that does not cure and one that does until they are neighbours.
/// Nothing when the far end does not cure, or when what cures breaks another requirement: further
/// along it would only break more.
std::optional<Conditions> nearest_step(const RejectedFormat& format, const Dial& dial,
                                       std::int64_t failing, std::int64_t curing) {
  const auto at = [&](std::int64_t step) {
    Conditions changed = format.conditions;
    dial.set(changed, step, dial.steps_per_unit);
    return changed;
  };
  if (!cures(format, at(curing))) return std::nullopt;
  while (std::abs(curing - failing) > 1) {
    const std::int64_t middle = failing + (curing - failing) / 2;
    (cures(format, at(middle)) ? curing : failing) = middle;
  }
  Conditions nearest = at(curing);
  if (!passes(format, nearest)) return std::nullopt;
  return nearest;
}

std::optional<Conditions> turned(const RejectedFormat& format, const Lever& lever) {
  if (lever.limits == nullptr) return std::nullopt;
  const Dial& dial = lever.dial;
  const double now = dial.now(format.conditions) * static_cast<double>(dial.steps_per_unit);
  const std::int64_t lowest = lowest_step(*lever.limits(), dial.steps_per_unit);
  const std::int64_t highest = highest_step(*lever.limits(), dial.steps_per_unit);
  std::optional<Conditions> found;
  const auto below = static_cast<std::int64_t>(std::floor(now));
  const auto above = static_cast<std::int64_t>(std::ceil(now));
  if (dial.down && lowest < above) found = nearest_step(format, dial, above, lowest);
  if (!found && dial.up && below < highest) found = nearest_step(format, dial, below, highest);
  return found;
}

/// The first that passes; the smallest change stands first.
std::optional<Conditions> first_setting(const RejectedFormat& format, const Lever& lever) {
  if (lever.settings == nullptr) return std::nullopt;
  for (const Conditions& setting : lever.settings(format)) {
    if (passes(format, setting)) return setting;
  }
  return std::nullopt;
}

/// The plan with everything that conditions hold written back.
Plan plan_under(const Plan& plan, const Conditions& conditions) {
  Plan changed = plan;
  changed.deliverable.frame_lines.front() = conditions.main;
  changed.lens = conditions.lens;
  changed.run = conditions.run;
  changed.mandate = conditions.mandate;
  changed.choose = conditions.choose;
  changed.choose.cameras = plan.choose.cameras;
  changed.store.card = conditions.card.id;
  return changed;
}

std::string value_under(const RejectedFormat& format, const Lever& lever,
                        const Conditions& conditions) {
  if (lever.pointer.empty()) return std::to_string(std::llround(lever.dial.now(conditions)));
  std::string text = field_text(plan_under(format.plan, conditions), lever.pointer);
  // One that the plan leaves to the lens set.
  if (text.empty() && lever.limits != nullptr) text = print_number(lever.dial.now(conditions));
  return text;
}

/// Between a step of the dial and a listed setting, the one nearer to what is now.
std::optional<Conditions> smallest(const RejectedFormat& format, const Lever& lever) {
  std::optional<Conditions> step = turned(format, lever);
  std::optional<Conditions> setting = first_setting(format, lever);
  if (!step || !setting) return step ? step : setting;
  const double now = lever.dial.now(format.conditions);
  const auto distance = [&](const Conditions& of) { return std::abs(lever.dial.now(of) - now); };
  return distance(*setting) <= distance(*step) ? setting : step;
}

bool may_help(const Lever& lever, const Findings& findings) {
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const bool helped = (lever.helps >> i & 1U) != 0;
    if (!findings[i].met && !helped) return false;
  }
  return true;
}

std::vector<Change> changes_for(const RejectedFormat& format) {
  std::vector<Change> changes;
  for (const Lever& lever : change_levers()) {
    if (!may_help(lever, format.findings)) continue;
    const auto changed = smallest(format, lever);
    if (!changed) continue;
    changes.push_back({.input = lever.input,
                       .value = value_under(format, lever, *changed),
                       .now = value_under(format, lever, format.conditions)});
  }
  return changes;
}

/// One's own copy of the chosen card with one figure changed.
void put_own_card(Plan& plan, const Catalogue& catalogue, const Change& change) {
  Card card = *find_row(plan.own.cards, catalogue.cards, plan.store.card);
  const auto figure = parse_rational(change.value).value_or(0).floor();
  (change.input == Input::card_speed ? card.write_bytes_per_s : card.capacity_bytes) = figure;
  std::erase_if(plan.own.cards, [&](const Card& own) { return own.id == card.id; });
  plan.own.cards.push_back(std::move(card));
}

/// Thousandths read better as decimals; other rates only have their exact fraction.
std::string number_shown(const FieldSpec& spec, Rational number) {
  if (spec.kind == FieldKind::whole) return print_grouped(number.num());
  const bool decimal =
      spec.kind != FieldKind::rate || (Rational(1000) / Rational(number.den())).whole();
  return decimal ? print_number(number.to_double()) : print_rational(number);
}

/// The value as people read it, without its unit.
std::string shown(const Lever& lever, const std::string& value) {
  if (value.empty()) return "none";
  const auto number = parse_rational(value);
  const FieldSpec& spec =
      lever.limits != nullptr ? *lever.limits() : *find_field(lever.pointer)->info;
  if (number && lever.limits != nullptr) return number_shown(spec, *number);
  if (spec.kind == FieldKind::flag) return value == "true" ? "yes" : "no";
  for (const ChoiceName& choice : spec.choices) {
    if (choice.token == value) return std::string(choice.label);
  }
  return value;
}

}  // namespace

std::vector<Change> smallest_changes(const Plan& plan, const Catalogue& catalogue,
                                     const FormatChoice& format) {
  const Camera* camera = find_row(plan.own.cameras, catalogue.cameras, format.camera);
  const SensorMode* mode = camera == nullptr ? nullptr : find_row(camera->modes, format.mode);
  const Recording* recording =
      mode == nullptr ? nullptr : find_row(mode->recordings, format.recording);
  const Codec* codec = find_row(plan.own.codecs, catalogue.codecs, format.codec);
  if (recording == nullptr || codec == nullptr) return {};
  RejectedFormat rejected{.plan = plan,
                          .library = catalogue,
                          .camera = *camera,
                          .mode = *mode,
                          .recording = *recording,
                          .codec = *codec,
                          .conditions = conditions_of(plan, catalogue),
                          .findings = {}};
  rejected.findings = judged(rejected, rejected.conditions);
  if (all_met(rejected.findings)) return {};
  return changes_for(rejected);
}

Checked<Plan> with_change(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                          const Change& change) {
  Plan changed = plan;
  changed.format = format;
  const std::string_view pointer = lever_of(change.input).pointer;
  if (pointer.empty()) {
    put_own_card(changed, catalogue, change);
  } else {
    const auto place = find_field(pointer);
    if (const auto value = value_from_text(*place->info, change.value)) {
      place->info->write(changed, place->line, *value);
    }
  }
  Problems problems = check_plan(changed, catalogue);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return changed;
}

std::string_view input_key(Input input) { return lever_of(input).key; }
std::string_view input_unit(Input input) { return lever_of(input).unit; }
std::string_view input_pointer(Input input) { return lever_of(input).pointer; }

std::string change_text(const Change& change) {
  const Lever& lever = lever_of(change.input);
  const std::string unit = lever.unit.empty() ? "" : " " + std::string(lever.unit);
  return std::string(lever.label) + ": " + shown(lever, change.value) + unit + " instead of " +
         shown(lever, change.now) + unit;
}

}  // namespace widegate
