#include "tests/core/plan_changes.h"

#include <array>
#include <string>

#include "core/plan_check.h"
#include "core/plan_fields.h"

namespace widegate::testing {
namespace {

constexpr auto kLetters = std::to_array<std::string_view>(
    {"a", "Z", "0", " ",  "-",    "\"", "\\", "/", "~",      "<",
     "'", "é", "∶", "漢", "🎞", "=",  "&",  "%", "\u00a0", "\u202e"});

std::string draw_text(Dice& dice, const FieldSpec& spec) {
  const auto least = static_cast<std::size_t>(spec.low.num());
  const auto most = static_cast<std::size_t>(spec.high.num());
  const auto wanted = static_cast<std::size_t>(
      dice.whole(spec.low.num(), dice.one_in(3) ? spec.high.num() : spec.low.num() + 12));
  std::string text;
  while (text.size() < wanted) {
    const std::string_view letter = dice.pick(kLetters);
    if (text.size() + letter.size() > most) break;
    text += letter;
  }
  while (text.size() < least) text += "x";
  return text;
}

double draw_decimal(Dice& dice, const FieldSpec& spec) {
  const double low = spec.low.to_double();
  const double high = spec.high.to_double();
  while (true) {
    const double share = static_cast<double>(dice.whole(0, 1'000'000'007)) / 1'000'000'007;
    const double value =
        dice.one_in(2) ? dice.between(low, high) : low + (high - low) * share * share * share;
    if (value_accepted(spec, value)) return value;
  }
}

/// A value of any kind but id and text (these need something to point at).
FieldValue draw_value(Dice& dice, const FieldSpec& spec) {
  if (spec.optional && dice.one_in(3)) return {};
  switch (spec.kind) {
    case FieldKind::decimal:
      return draw_decimal(dice, spec);
    case FieldKind::fraction:
    case FieldKind::rate:
      return draw_fraction(dice, spec);
    case FieldKind::whole:
      return dice.one_in(6) ? spec.high.num() : dice.whole(spec.low.num(), spec.high.num());
    case FieldKind::choice:
      return dice.whole(0, static_cast<std::int64_t>(spec.choices.size()) - 1);
    case FieldKind::flag:
      return dice.one_in(2);
    case FieldKind::text:
    case FieldKind::id:
      break;
  }
  return std::string_view();
}

/// Adds, removes or moves a frame line, or changes the list of cameras.
void change_list(Dice& dice, Plan& plan, const Catalogue& catalogue) {
  auto& lines = plan.deliverable.frame_lines;
  if (dice.one_in(2)) {
    if (lines.size() < kMaxFrameLines && dice.one_in(2)) {
      lines.push_back(draw_frame_line(dice));
    } else if (lines.size() > 1) {
      lines.erase(lines.begin());
    }
    return;
  }
  plan.choose.cameras.clear();
  for (const Camera& camera : catalogue.cameras) {
    if (dice.one_in(4)) plan.choose.cameras.push_back(camera.id);
  }
}

}  // namespace

void change_something(Dice& dice, Plan& plan, const Catalogue& catalogue) {
  Plan changed = plan;
  if (dice.one_in(12)) {
    change_list(dice, changed, catalogue);
  } else {
    const FieldInfo& info = dice.pick(plan_fields());
    const auto line = static_cast<std::size_t>(
        dice.whole(0, static_cast<std::int64_t>(plan.deliverable.frame_lines.size()) - 1));
    const auto options = field_options(plan, catalogue, info);
    if (info.kind == FieldKind::id || info.kind == FieldKind::choice) {
      const auto next =
          with_field(plan, pointer_of(info, line), dice.pick(options).value, catalogue);
      if (next) plan = *next;
      return;
    }
    if (info.kind == FieldKind::text) {
      const std::string text = draw_text(dice, info);
      info.write(changed, line, std::string_view(text));
    } else {
      info.write(changed, line, draw_value(dice, info));
    }
  }
  if (check_plan(changed, catalogue).empty()) plan = changed;
}

}  // namespace widegate::testing
