// The plan's own model is in frame.h: the protected area is the largest rectangle of the aspect
// ratio in the mode, the frame line its share (1 - protection), centred in it. Here it is turned
// round.
#include "core/handover/fdl/frame_line_import.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"

namespace widegate::fdl {
namespace {

constexpr std::int64_t kAspectDenominator = 1000;  // the plan's limits, plan_fields.h
constexpr std::int64_t kProtectionDenominator = 1000;
constexpr std::int64_t kAnchorDenominator = 100;
constexpr double kSmallestAspect = 0.1;
constexpr double kLargestAspect = 10;
constexpr Rational kLargestProtection = Rational(499, 999);  // below 1/2
constexpr std::size_t kNameBytes = 60;

constexpr double kRoundingPixels = 2;   // even rounding of a decision's box
constexpr double kSamePixels = 1e-6;    // nothing but arithmetic
constexpr double kUnnoticedPixels = 1;  // an anchor this near needs no remark

/// The protected area the plan would draw.
Size largest_box(Rational aspect, const LineCanvas& canvas) {
  const double on_canvas = aspect.to_double() / canvas.squeeze;
  const double width = std::min(canvas.size.width, canvas.size.height * on_canvas);
  return {width, std::min(canvas.size.height, width / on_canvas)};
}

Size shrunk(Size size, Rational protection) {
  const double kept = 1 - protection.to_double();
  return {size.width * kept, size.height * kept};
}

bool near(Size a, Size b, double pixels) {
  return std::fabs(a.width - b.width) <= pixels && std::fabs(a.height - b.height) <= pixels;
}

std::string shown(Size size) {
  return print_number(size.width) + " x " + print_number(size.height);
}

/// Cuts at a character; a plan's names have at most 60 bytes and no control characters.
std::string name_of(const FramingIntent& intent) {
  std::string name;
  for (const char c : intent.label.value_or("")) {
    const bool control = static_cast<unsigned char>(c) < 0x20 || c == 0x7f;
    name += control ? ' ' : c;
  }
  if (name.find_first_not_of(' ') == std::string::npos) name = intent.id;
  if (name.size() <= kNameBytes) return name;
  std::size_t end = kNameBytes;
  while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0U) == 0x80U) --end;
  return name.substr(0, end);
}

std::optional<Rational> aspect_from(double value) {
  if (!(value >= kSmallestAspect && value <= kLargestAspect)) return std::nullopt;
  return nearest_fraction(value, kAspectDenominator);
}

Rational protection_from(double value) {
  const Rational share = nearest_fraction(std::clamp(value, 0.0, 0.5), kProtectionDenominator);
  return share < Rational(1, 2) ? share : kLargestProtection;
}

double intent_ratio(const FramingIntent& intent) {
  return static_cast<double>(intent.aspect_ratio.width) /
         static_cast<double>(intent.aspect_ratio.height);
}

/// Sets aspect ratio and protection from the intent, or where they do not give it from the box.
bool set_shape(ImportedLine& result, const FramingIntent& intent, Size framing,
               const LineCanvas& canvas) {
  const double box_ratio = framing.width * canvas.squeeze / framing.height;
  const auto wanted = aspect_from(intent_ratio(intent));
  const bool shape_holds =
      wanted && near(framing, {framing.width, framing.width * canvas.squeeze / wanted->to_double()},
                     kRoundingPixels);
  const auto aspect = shape_holds ? wanted : aspect_from(box_ratio);
  if (!aspect) return false;
  if (!shape_holds) {
    result.remarks.push_back("its box has the ratio " + print_number(box_ratio) +
                             " and not its intent's; the box holds");
  }
  FrameLine& line = result.line;
  line.aspect = *aspect;
  const Size largest = largest_box(line.aspect, canvas);
  line.protection = protection_from(intent.protection.value_or(0));
  if (near(shrunk(largest, line.protection), framing, kRoundingPixels)) return true;
  const bool across = largest.width >= canvas.size.width;
  line.protection = protection_from(across ? 1 - framing.width / largest.width
                                           : 1 - framing.height / largest.height);
  result.remarks.push_back("its box is " + shown(framing) + " and not its intent's share of the " +
                           "canvas; the plan reaches it with a protection of " +
                           print_rational(line.protection));
  return true;
}

/// A way to place the line, and how far from the decision's middle it ends.
struct Candidate {
  Anchor anchor;
  Point middle;
};

/// Middle of something `size` long in `room`, at -1 (start) to 1 (end).
double middle_at(double room, double size, double at) { return room / 2 + (room - size) * at / 2; }

double place_in(double room, double size, double middle) {
  const double spare = room - size;
  if (spare <= kSamePixels) return 0;
  return std::clamp((2 * middle - room) / spare, -1.0, 1.0);
}

std::vector<Candidate> candidates(const FrameLine& line, Point middle, const LineCanvas& canvas,
                                  const ImportedLine* main) {
  const Size outer = largest_box(line.aspect, canvas);
  const Size inner = shrunk(outer, line.protection);
  const double middle_x = canvas.size.width / 2;
  const double middle_y = canvas.size.height / 2;
  std::vector<Candidate> list = {
      {{AnchorKind::centre, 0, 0}, {middle_x, middle_y}},
      {{AnchorKind::top, 0, 0}, {middle_x, outer.height / 2}},
  };
  if (main != nullptr) {
    const double lowest = canvas.size.height - outer.height / 2;
    const double level = main->framing.anchor.y + inner.height / 2;
    list.push_back(
        {{AnchorKind::common_top, 0, 0}, {middle_x, std::clamp(level, outer.height / 2, lowest)}});
  }
  const Rational x =
      nearest_fraction(place_in(canvas.size.width, outer.width, middle.x), kAnchorDenominator);
  const Rational y =
      nearest_fraction(place_in(canvas.size.height, outer.height, middle.y), kAnchorDenominator);
  list.push_back({{AnchorKind::free, x, y},
                  {middle_at(canvas.size.width, outer.width, x.to_double()),
                   middle_at(canvas.size.height, outer.height, y.to_double())}});
  return list;
}

double distance(Point a, Point b) {
  return std::sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
}

/// The first candidate that is exact, else the first that is off by less than a pixel, else the
/// nearest.
Candidate best(const std::vector<Candidate>& list, Point middle) {
  for (const double tolerance : {kSamePixels, kUnnoticedPixels}) {
    for (const Candidate& candidate : list) {
      if (distance(candidate.middle, middle) <= tolerance) return candidate;
    }
  }
  return *std::min_element(list.begin(), list.end(), [&](const Candidate& a, const Candidate& b) {
    return distance(a.middle, middle) < distance(b.middle, middle);
  });
}

Box framing_at(const FrameLine& line, Point middle, const LineCanvas& canvas) {
  const Size size = shrunk(largest_box(line.aspect, canvas), line.protection);
  return {{middle.x - size.width / 2, middle.y - size.height / 2}, size};
}

void set_place(ImportedLine& result, Point middle, const LineCanvas& canvas,
               const ImportedLine* main) {
  const Candidate chosen = best(candidates(result.line, middle, canvas, main), middle);
  result.line.anchor = chosen.anchor;
  result.framing = framing_at(result.line, chosen.middle, canvas);
  if (distance(chosen.middle, middle) <= kUnnoticedPixels) return;
  result.remarks.push_back("a plan cannot place it there; it is moved by " +
                           print_fixed(chosen.middle.x - middle.x, 1) + " pixels across and " +
                           print_fixed(chosen.middle.y - middle.y, 1) + " down");
}

void remark_on_protection(ImportedLine& result, const FramingDecision& decision,
                          const LineCanvas& canvas) {
  if (!decision.protection_dimensions) return;
  const Size largest = largest_box(result.line.aspect, canvas);
  if (near(*decision.protection_dimensions, largest, kRoundingPixels)) return;
  result.remarks.push_back("its protection of " + shown(*decision.protection_dimensions) +
                           " becomes the largest of its shape, " + shown(largest));
}

}  // namespace

Rational nearest_fraction(double value, std::int64_t largest_denominator) {
  Rational best_fraction = 0;
  double best_distance = HUGE_VAL;
  for (std::int64_t den = 1; den <= largest_denominator; ++den) {
    const double num = std::nearbyint(value * static_cast<double>(den));
    const double off = std::fabs(num / static_cast<double>(den) - value);
    if (off < best_distance) {
      best_distance = off;
      best_fraction = Rational(static_cast<std::int64_t>(num), den);
    }
  }
  return best_fraction;
}

std::optional<ImportedLine> line_from_intent(const FramingIntent& intent,
                                             const LineCanvas& canvas) {
  const auto aspect = aspect_from(intent_ratio(intent));
  if (!aspect) return std::nullopt;
  ImportedLine result;
  result.line.name = name_of(intent);
  result.line.aspect = *aspect;
  result.line.protection = protection_from(intent.protection.value_or(0));
  result.framing = framing_at(result.line, {canvas.size.width / 2, canvas.size.height / 2}, canvas);
  return result;
}

std::optional<ImportedLine> line_from_decision(const FramingIntent& intent,
                                               const FramingDecision& decision,
                                               const LineCanvas& canvas, const ImportedLine* main) {
  ImportedLine result;
  result.line.name = name_of(intent);
  if (!set_shape(result, intent, decision.dimensions, canvas)) return std::nullopt;
  const Point middle{decision.anchor_point.x + decision.dimensions.width / 2,
                     decision.anchor_point.y + decision.dimensions.height / 2};
  set_place(result, middle, canvas, main);
  remark_on_protection(result, decision, canvas);
  return result;
}

}  // namespace widegate::fdl
