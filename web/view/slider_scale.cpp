// The place of a value on its slider and back; see view.h.
#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "web/view/view.h"

namespace widegate {
namespace {

/// A range this wide, of positive values, is divided by ratio and not by difference.
constexpr double kRatioScaleFrom = 20;
/// A drag across the slider passes about this many values.
constexpr double kStopsOnSlider = 400;

bool by_ratio(const Control& control) {
  return control.min > 0 && control.max / control.min >= kRatioScaleFrom;
}

/// The field's step, made coarser to 1, 2 or 5 times a power of ten where a finger could not tell.
double drag_step(const Control& control) {
  const double finest = control.step > 0 ? control.step : 0;
  if (by_ratio(control)) return finest;
  const double wanted = (control.max - control.min) / kStopsOnSlider;
  if (finest >= wanted) return finest;
  const double decade = std::pow(10, std::floor(std::log10(wanted)));
  for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
    if (decade * factor >= wanted) return std::max(finest, decade * factor);
  }
  return wanted;
}

double on_step(double value, double step) {
  return step > 0 ? std::round(value / step) * step : value;
}

/// The number behind a usual value ("24000/1001").
double number_in(const ChoiceItem& item) {
  const auto value = parse_rational(item.value);
  return value ? value->to_double() : 0;
}

/// Whether two values are the same for a person's purposes.
bool same(double a, double b) { return std::abs(a - b) <= 1e-9 * std::max(1.0, std::abs(b)); }

}  // namespace

double slider_place(const Control& control, double value) {
  if (!(control.max > control.min)) return 0;
  const double inside = std::clamp(value, control.min, control.max);
  const double place = by_ratio(control)
                           ? std::log(inside / control.min) / std::log(control.max / control.min)
                           : (inside - control.min) / (control.max - control.min);
  return std::clamp(place, 0.0, 1.0);
}

double slider_value(const Control& control, double place) {
  const double inside = std::clamp(place, 0.0, 1.0);
  const double value = by_ratio(control) ? control.min * std::pow(control.max / control.min, inside)
                                         : control.min + inside * (control.max - control.min);
  return std::clamp(on_step(value, drag_step(control)), control.min, control.max);
}

std::string stepped_text(const Control& control, int steps) {
  const bool up = steps > 0;
  if (std::abs(steps) == 1) {
    const ChoiceItem* found = nullptr;
    for (const ChoiceItem& item : control.choices) {
      const double number = number_in(item);
      if (same(number, control.value)) continue;
      if (up && number > control.value && found == nullptr) found = &item;
      if (!up && number < control.value) found = &item;
    }
    if (found != nullptr) return found->value;
  }
  const double step = control.step > 0 ? control.step : drag_step(control);
  const double from = control.value / step;
  const double next = up ? std::floor(from + 1e-9) + steps : std::ceil(from - 1e-9) + steps;
  return value_as_text(control, next * step);
}

std::string value_as_text(const Control& control, double value) {
  const double step = control.step;
  return print_number(step > 0 && step < 1 ? std::round(value * 1e9) / 1e9 : value);
}

}  // namespace widegate
