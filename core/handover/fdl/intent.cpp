#include "core/handover/fdl/intent.h"

#include <algorithm>

namespace widegate::fdl {
namespace {

Size fitted(WholeSize ratio, Size area, double squeeze) {
  const double across = static_cast<double>(ratio.width);
  const double down = static_cast<double>(ratio.height);
  if (across * area.height >= down * squeeze * area.width) {
    return {area.width, area.width * squeeze * down / across};
  }
  return {area.height * across / (down * squeeze), area.height};
}

Size rounded_within(Size size, Size area, std::optional<RoundRule> rule) {
  if (!rule) return size;
  return {std::min(round_value(size.width, *rule), area.width),
          std::min(round_value(size.height, *rule), area.height)};
}

Box centred(Size size, const Box& area) {
  return {{area.anchor.x + (area.size.width - size.width) / 2,
           area.anchor.y + (area.size.height - size.height) / 2},
          size};
}

}  // namespace

DecisionBoxes place_intent(const IntentShape& intent, const Box& area, double squeeze,
                           std::optional<RoundRule> rule) {
  const Size exact = fitted(intent.aspect_ratio, area.size, squeeze);
  const Size outer = rounded_within(exact, area.size, rule);
  if (!(intent.protection > 0)) return {centred(outer, area), std::nullopt};
  const double share = 1 - intent.protection;
  const Size inner = rounded_within({outer.width * share, outer.height * share}, outer, rule);
  return {centred(inner, area), centred(outer, area)};
}

}  // namespace widegate::fdl
