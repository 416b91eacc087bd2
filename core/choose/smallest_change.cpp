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

namespace widegate {
namespace {

const ChangeInput& input_row(Input input) {
  return change_inputs()[static_cast<std::size_t>(input)];
}

/// The format judged as a ranking of this plan would.
Findings judged(const RejectedFormat& format, const Plan& plan) {
  const RankingConditions judged_by(plan, format.library);
  const Conditions& conditions = judged_by.conditions();
  const auto frames = frames_on(conditions, *format.rows.mode);
  const ModeFigures mode_part =
      mode_figures(conditions, *format.rows.camera, *format.rows.mode, frames);
  return format_figures(conditions, mode_part, format.rows, frames,
                        data_figures(conditions, format.rows))
      .findings;
}

/// What is missed by `findings` and not by `others`.
bool cures(const RejectedFormat& format, const Plan& changed) {
  const Findings findings = judged(format, changed);
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    if (format.findings.missed(requirement) && findings.missed(requirement)) return false;
  }
  return true;
}

bool passes(const RejectedFormat& format, const Plan& changed) {
  return check_plan(changed, format.library).empty() && all_met(judged(format, changed));
}

// ---- turning a dial ----------------------------------------------------------------------------

std::string pointer_on(const ChangeInput& input, const RejectedFormat& format) {
  const auto mark = input.pointer.find('#');
  std::string pointer(input.pointer);
  if (mark != std::string::npos) pointer.replace(mark, 1, std::to_string(format.line));
  return pointer;
}

/// A step of a field as the value of its kind.
FieldValue value_at(const FieldSpec& spec, std::int64_t step, std::int64_t steps_per_unit) {
  if (spec.kind == FieldKind::whole) return step;
  if (spec.kind == FieldKind::decimal) {
    return static_cast<double>(step) / static_cast<double>(steps_per_unit);
  }
  return Rational(step, steps_per_unit);
}

double number_of(const FieldValue& value) {
  if (const auto* whole = std::get_if<std::int64_t>(&value)) return static_cast<double>(*whole);
  if (const auto* decimal = std::get_if<double>(&value)) return *decimal;
  if (const auto* fraction = std::get_if<Rational>(&value)) return fraction->to_double();
  return 0;
}

/// One's own copy of the chosen card, put in its place.
Card& own_card(Plan& plan, const Catalogue& library) {
  for (Card& card : plan.own.cards) {
    if (card.id == plan.store.card) return card;
  }
  plan.own.cards.push_back(*find_row(library.cards, plan.store.card));
  return plan.own.cards.back();
}

/// An input with its field at hand.
class Turned {
 public:
  Turned(const RejectedFormat& format, const ChangeInput& input)
      : format_(format), input_(input), pointer_(pointer_on(input, format)), plan_(format.plan) {
    if (input.card_field != nullptr) {
      card_ = input.card_field();
    } else {
      const auto place = find_field(pointer_);
      plan_field_ = place->info;
      line_ = place->line;
    }
  }

  [[nodiscard]] const FieldSpec& spec() const {
    return card_ != nullptr ? static_cast<const FieldSpec&>(*card_) : *plan_field_;
  }
  [[nodiscard]] double now() const {
    if (input_.dial.now != nullptr) return input_.dial.now(format_.plan, format_.library);
    if (card_ == nullptr) return number_of(plan_field_->read(format_.plan, line_));
    Plan plan = format_.plan;
    return number_of(card_->read(own_card(plan, format_.library), 0));
  }
  /// The plan at a step of the dial.
  [[nodiscard]] const Plan& at(std::int64_t step) {
    const FieldValue value = value_at(spec(), step, input_.dial.steps_per_unit);
    if (card_ != nullptr) {
      card_->write(own_card(plan_, format_.library), 0, value);
    } else {
      plan_field_->write(plan_, line_, value);
    }
    return plan_;
  }
  [[nodiscard]] std::string text_at(std::int64_t step) const {
    return value_text(spec(), value_at(spec(), step, input_.dial.steps_per_unit));
  }
  [[nodiscard]] const std::string& pointer() const { return pointer_; }

 private:
  const RejectedFormat& format_;
  const ChangeInput& input_;
  std::string pointer_;
  Plan plan_;
  const Field<Card>* card_ = nullptr;
  const FieldInfo* plan_field_ = nullptr;
  std::size_t line_ = 0;
};

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
std::optional<std::int64_t> nearest_step(const RejectedFormat& format, Turned& turned,
                                         std::int64_t failing, std::int64_t curing) {
  if (!cures(format, turned.at(curing))) return std::nullopt;
  while (std::abs(curing - failing) > 1) {
    const std::int64_t middle = failing + (curing - failing) / 2;
    (cures(format, turned.at(middle)) ? curing : failing) = middle;
  }
  if (!passes(format, turned.at(curing))) return std::nullopt;
  return curing;
}

std::string now_text(const Turned& turned, const RejectedFormat& format, const ChangeInput& input) {
  if (input.card_field != nullptr) return std::to_string(std::llround(turned.now()));
  std::string text = field_text(format.plan, turned.pointer());
  if (text.empty() && input.dial.now != nullptr) text = print_number(turned.now());
  return text;
}

/// A change with how far it is from what is now, in the dial's unit.
struct Candidate {
  Change change;
  double distance = 0;
};

std::optional<Candidate> turned_change(const RejectedFormat& format, const ChangeInput& input) {
  const Dial& dial = input.dial;
  if (dial.steps_per_unit == 0) return std::nullopt;
  Turned turned(format, input);
  const double steps = turned.now() * static_cast<double>(dial.steps_per_unit);
  const std::int64_t lowest = lowest_step(turned.spec(), dial.steps_per_unit);
  const std::int64_t highest = highest_step(turned.spec(), dial.steps_per_unit);
  const auto below = static_cast<std::int64_t>(std::floor(steps));
  const auto above = static_cast<std::int64_t>(std::ceil(steps));
  std::optional<std::int64_t> found;
  if (dial.down && lowest < above) found = nearest_step(format, turned, above, lowest);
  if (!found && dial.up && below < highest) found = nearest_step(format, turned, below, highest);
  if (!found) return std::nullopt;
  Change change{.input = input.input,
                .value = turned.text_at(*found),
                .now = now_text(turned, format, input)};
  if (input.card_field == nullptr) change.patch = {{turned.pointer(), change.value}};
  return Candidate{std::move(change), std::abs(static_cast<double>(*found) - steps)};
}

// ---- trying settings ---------------------------------------------------------------------------

/// Writes the fields; nothing is checked here.
void write_patch(Plan& plan, const Patch& patch) {
  for (const TypedField& field : patch) {
    const auto place = find_field(field.pointer);
    if (const auto value = value_from_text(*place->info, field.text)) {
      place->info->write(plan, place->line, *value);
    }
  }
}

/// The first that passes; the smallest change stands first.
std::optional<Candidate> setting_change(const RejectedFormat& format, const ChangeInput& input) {
  if (input.settings == nullptr) return std::nullopt;
  for (Patch& patch : input.settings(format)) {
    Plan changed = format.plan;
    write_patch(changed, patch);
    if (changed == format.plan || !passes(format, changed)) continue;
    Change change{.input = input.input,
                  .value = patch.front().text,
                  .now = field_text(format.plan, patch.front().pointer)};
    const auto value = parse_rational(change.value);
    const auto now = parse_rational(change.now);
    const double distance = value && now ? std::abs(value->to_double() - now->to_double()) : 0;
    change.patch = std::move(patch);
    return Candidate{std::move(change), distance * static_cast<double>(std::max<std::int64_t>(
                                                       1, input.dial.steps_per_unit))};
  }
  return std::nullopt;
}

/// Between a step of the dial and a listed setting, the one nearer to what is now.
std::optional<Candidate> smallest(const RejectedFormat& format, const ChangeInput& input) {
  std::optional<Candidate> step = turned_change(format, input);
  std::optional<Candidate> setting = setting_change(format, input);
  if (!step || !setting) return step ? step : setting;
  return setting->distance <= step->distance ? setting : step;
}

bool may_help(const ChangeInput& input, const Findings& findings) {
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const bool helped = (input.helps >> i & 1U) != 0;
    if (findings.missed(static_cast<Requirement>(i)) && !helped) return false;
  }
  return true;
}

std::size_t worst_line(const Findings& findings) {
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    if (!findings.missed(requirement) || !requirement_info(requirement).of_a_line) continue;
    return findings[requirement].line;
  }
  return 0;
}

/// The format by its ids; nothing when the catalogue has no such rows.
std::optional<FormatRows> rows_of(const Plan& plan, const Catalogue& catalogue,
                                  const FormatChoice& format) {
  FormatRows rows;
  rows.camera = find_row(plan.own.cameras, catalogue.cameras, format.camera);
  if (rows.camera != nullptr) rows.mode = find_row(rows.camera->modes, format.mode);
  if (rows.mode != nullptr) rows.recording = find_row(rows.mode->recordings, format.recording);
  rows.codec = find_row(plan.own.codecs, catalogue.codecs, format.codec);
  if (rows.recording == nullptr || rows.codec == nullptr) return std::nullopt;
  return rows;
}

std::optional<RejectedFormat> rejected(const Plan& plan, const Catalogue& catalogue,
                                       const FormatChoice& format) {
  const auto rows = rows_of(plan, catalogue, format);
  if (!rows) return std::nullopt;
  RejectedFormat result{.plan = plan, .library = catalogue, .rows = *rows, .findings = {}};
  result.findings = judged(result, plan);
  result.line = worst_line(result.findings);
  if (all_met(result.findings)) return std::nullopt;
  return result;
}

// ---- ways out of an empty list -----------------------------------------------------------------

/// The best of what the changed plan accepts.
std::optional<WayOut> way_out(const Plan& plan, const Catalogue& catalogue, const Change& change) {
  const auto changed = with_change(plan, catalogue, change);
  if (!changed) return std::nullopt;
  const Ranking ranking = rank(*changed, catalogue);
  if (ranking.accepted == 0) return std::nullopt;
  return WayOut{ranking.formats.front().format, change, ranking.accepted};
}

/// Formats are tried from the nearest to passing on; more than these would take too long.
constexpr std::size_t kFormatsTried = 24;

std::optional<Change> smallest_over(const Plan& plan, const Catalogue& catalogue,
                                    std::span<const RankedFormat> formats,
                                    const ChangeInput& input) {
  std::optional<Candidate> least;
  std::size_t tried = 0;
  for (const RankedFormat& format : formats) {
    if (tried == kFormatsTried) break;
    if (!may_help(input, format.figures.findings)) continue;
    const auto judged = rejected(plan, catalogue, format.format);
    if (!judged) continue;
    ++tried;
    auto found = smallest(*judged, input);
    if (found && (!least || found->distance < least->distance)) least = std::move(found);
    if (least && input.dial.steps_per_unit == 0 && least->distance == 0) break;
  }
  return least ? std::optional(least->change) : std::nullopt;
}

/// Thousandths read better as decimals; other rates only have their exact fraction.
std::string number_shown(const FieldSpec& spec, Rational number) {
  if (spec.kind == FieldKind::whole) return print_grouped(number.num());
  const bool decimal =
      spec.kind != FieldKind::rate || (Rational(1000) / Rational(number.den())).whole();
  return decimal ? print_number(number.to_double()) : print_rational(number);
}

const FieldSpec& spec_of(const ChangeInput& input) {
  if (input.card_field != nullptr) return *input.card_field();
  std::string pointer(input.pointer);
  const auto mark = pointer.find('#');
  if (mark != std::string::npos) pointer.replace(mark, 1, "0");
  return *find_field(pointer)->info;
}

/// The value as people read it, without its unit.
std::string shown(const ChangeInput& input, const std::string& value) {
  const FieldSpec& spec = spec_of(input);
  if (value.empty()) return spec.ids == IdList::commission ? "as the deliverable asks" : "none";
  if (spec.kind == FieldKind::flag) return value == "true" ? "yes" : "no";
  for (const ChoiceName& choice : spec.choices) {
    if (choice.token == value) return std::string(choice.label);
  }
  const auto number = parse_rational(value);
  return number && spec.kind != FieldKind::id ? number_shown(spec, *number) : value;
}

/// One's own copy of the chosen card with one figure changed.
void put_own_card(Plan& plan, const Catalogue& catalogue, const Change& change) {
  const Field<Card>& field = *input_row(change.input).card_field();
  if (const auto value = value_from_text(field, change.value)) {
    field.write(own_card(plan, catalogue), 0, *value);
  }
}

/// What the production changes by itself before what the commissioner has to agree to, and a
/// commission given up last.
int consent_needed(Input input) {
  if (input == Input::commission) return 2;
  return input >= Input::deliverable && input <= Input::protection_asked ? 1 : 0;
}

}  // namespace

std::vector<Change> smallest_changes(const Plan& plan, const Catalogue& catalogue,
                                     const FormatChoice& format) {
  const auto judged = rejected(plan, catalogue, format);
  std::vector<Change> changes;
  if (!judged) return changes;
  for (const ChangeInput& input : change_inputs()) {
    if (!may_help(input, judged->findings)) continue;
    if (auto found = smallest(*judged, input)) changes.push_back(std::move(found->change));
  }
  return changes;
}

std::vector<WayOut> ways_out(const Plan& plan, const Catalogue& catalogue, const Ranking& ranking) {
  std::vector<WayOut> ways;
  if (ranking.accepted > 0) return ways;
  for (const ChangeInput& input : change_inputs()) {
    const auto change = smallest_over(plan, catalogue, ranking.formats, input);
    if (!change) continue;
    if (auto way = way_out(plan, catalogue, *change)) ways.push_back(std::move(*way));
  }
  std::stable_sort(ways.begin(), ways.end(), [](const WayOut& a, const WayOut& b) {
    const int consent = consent_needed(a.change.input) - consent_needed(b.change.input);
    if (consent != 0) return consent < 0;
    return a.would_pass > b.would_pass;
  });
  return ways;
}

Checked<Plan> with_change(const Plan& plan, const Catalogue& catalogue, const Change& change) {
  Plan changed = plan;
  if (change.patch.empty()) {
    put_own_card(changed, catalogue, change);
  } else {
    write_patch(changed, change.patch);
  }
  Problems problems = check_plan(changed, catalogue);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  return changed;
}

Checked<Plan> with_change(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                          const Change& change) {
  Plan chosen = plan;
  chosen.format = format;
  return with_change(chosen, catalogue, change);
}

std::string_view input_key(Input input) { return input_row(input).key; }
std::string_view input_unit(Input input) { return input_row(input).unit; }
std::string_view input_pointer(Input input) { return input_row(input).pointer; }

std::string change_text(const Change& change) {
  const ChangeInput& input = input_row(change.input);
  const std::string unit = input.unit.empty() ? "" : " " + std::string(input.unit);
  const std::string now = shown(input, change.now);
  return std::string(input.label) + ": " + shown(input, change.value) + unit + " instead of " +
         now + (change.now.empty() ? "" : unit);
}

}  // namespace widegate
