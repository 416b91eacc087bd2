#include "web/draw/widgets/paint.h"

#include <algorithm>
#include <array>
#include <cfloat>
#include <cmath>
#include <string>

namespace widegate {
namespace {

constexpr std::string_view kEllipsis = "…";

ImVec2 low(const RectPx& box) { return {box.x, box.y}; }
ImVec2 high(const RectPx& box) { return {right(box), bottom(box)}; }
ImVec2 moved(ImVec2 at, float dx, float dy) { return {at.x + dx, at.y + dy}; }

// First byte of the character that starts before `at`.
std::size_t character_before(std::string_view text, std::size_t at) {
  while (at > 0 && (static_cast<unsigned char>(text[at - 1]) & 0xC0) == 0x80) --at;
  return at > 0 ? at - 1 : 0;
}

/// Whether a line that ends at this space would take a number apart: "2.6" from "m", "16 ×" from
/// "9".
bool parts_number(std::string_view text, std::size_t space) {
  constexpr std::size_t kLongestUnit = 3;
  const std::string_view before = text.substr(0, space);
  if (before.ends_with("×")) return true;
  if (before.empty() || before.back() < '0' || before.back() > '9') return false;
  const std::string_view after = text.substr(space + 1);
  return std::min(after.find_first_of(" ,;."), after.size()) <= kLongestUnit;
}

// The next space at or after `from` where a line may end.
std::size_t break_after(std::string_view text, std::size_t from) {
  std::size_t space = text.find(' ', from);
  while (space != std::string_view::npos && parts_number(text, space)) {
    space = text.find(' ', space + 1);
  }
  return std::min(space, text.size());
}

}  // namespace

ImU32 ink(Colour colour, float opacity) {
  return IM_COL32(colour.red, colour.green, colour.blue,
                  static_cast<int>(std::lround(std::clamp(opacity, 0.0F, 1.0F) * 255)));
}

RectPx inset(const RectPx& box, float by) {
  return {box.x + by, box.y + by, std::max(0.0F, box.width - 2 * by),
          std::max(0.0F, box.height - 2 * by)};
}

bool contains(const RectPx& box, ImVec2 point) {
  return point.x >= box.x && point.x < right(box) && point.y >= box.y && point.y < bottom(box);
}

Colour severity_colour(const Palette& palette, Severity severity) {
  switch (severity) {
    case Severity::ok:
      return palette.ok;
    case Severity::caution:
      return palette.caution;
    case Severity::fail:
      return palette.fail;
  }
  return palette.fail;
}

ImFont* Paint::font(TextStyle style) const {
  return theme_.type(style).semibold ? fonts_.semibold : fonts_.regular;
}

float Paint::width(TextStyle style, std::string_view text) const {
  if (text.empty()) return 0;
  return font(style)
      ->CalcTextSizeA(theme_.type(style).px, FLT_MAX, 0, text.data(), text.data() + text.size())
      .x;
}

float Paint::line_height(TextStyle style) const { return theme_.type(style).px * 1.32F; }

float Paint::wrapped_height(TextStyle style, std::string_view text, float width) const {
  return lines({0, 0, width, 0}, style, nullptr, text);
}

float Paint::wrapped(const RectPx& box, TextStyle style, Colour colour,
                     std::string_view text) const {
  return lines(box, style, &colour, text);
}

void Paint::text(const RectPx& box, Align align, TextStyle style, Colour colour,
                 std::string_view text) const {
  if (text.empty()) return;
  const float size = theme_.type(style).px;
  float used = width(style, text);
  std::string cut;
  if (used > box.width + 0.5F) {
    std::size_t end = text.size();
    const float room = box.width - width(style, kEllipsis);
    while (end > 0 && width(style, text.substr(0, end)) > room) end = character_before(text, end);
    cut = std::string(text.substr(0, end)).append(kEllipsis);
    text = cut;
    used = width(style, text);
    if (used > box.width + 0.5F) return;
  }
  float x = box.x;
  if (align == Align::centre) x += (box.width - used) / 2;
  if (align == Align::right) x += box.width - used;
  list_.AddText(font(style), size, {x, box.y + (box.height - size) / 2}, ink(colour), text.data(),
                text.data() + text.size());
}

// Where the line that starts at `from` ends: at the last space that leaves it short enough. Only
// spaces part lines (Dear ImGui also breaks after a decimal point); a longer word is cut.
std::size_t Paint::line_end(TextStyle style, std::string_view text, std::size_t from,
                            float room) const {
  std::size_t end = from;
  while (end < text.size()) {
    const std::size_t space = break_after(text, end + 1);
    if (width(style, text.substr(from, space - from)) > room) break;
    end = space;
  }
  if (end > from) return end;
  end = break_after(text, from);
  while (end > from + 1 && width(style, text.substr(from, end - from)) > room) {
    end = character_before(text, end);
  }
  return std::max(end, from + 1);
}

float Paint::lines(const RectPx& box, TextStyle style, const Colour* colour,
                   std::string_view text) const {
  const float size = theme_.type(style).px;
  const float step = line_height(style);
  float y = box.y;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = line_end(style, text, at, std::max(box.width, 1.0F));
    if (colour != nullptr) {
      list_.AddText(font(style), size, {box.x, y + (step - size) / 2}, ink(*colour),
                    text.data() + at, text.data() + end);
    }
    y += step;
    at = end;
    while (at < text.size() && text[at] == ' ') ++at;
  }
  return y - box.y;
}

void Paint::fill(const RectPx& box, Colour colour, float radius, float opacity) const {
  list_.AddRectFilled(low(box), high(box), ink(colour, opacity), radius);
}

void Paint::outline(const RectPx& box, Colour colour, float width, float radius) const {
  const RectPx middle = inset(box, width / 2);
  list_.AddRect(low(middle), high(middle), ink(colour), radius, 0, width);
}

void Paint::line(ImVec2 from, ImVec2 to, Colour colour, float width) const {
  list_.AddLine(from, to, ink(colour), width);
}

void Paint::focus_ring(const RectPx& box) const {
  outline({box.x - 8, box.y - 3, box.width + 16, box.height + 6}, theme_.colour.focus, 3,
          12 * theme_.scale);
}

void Paint::cross(ImVec2 at, float size, Colour colour, float width) const {
  line(moved(at, -size, -size), moved(at, size, size), colour, width);
  line(moved(at, size, -size), moved(at, -size, size), colour, width);
}

void Paint::tick(ImVec2 at, float size, Colour colour, float width) const {
  const std::array<ImVec2, 3> points = {moved(at, -size, 0), moved(at, -size * 0.25F, size * 0.75F),
                                        moved(at, size, -size * 0.75F)};
  list_.AddPolyline(points.data(), 3, ink(colour), ImDrawFlags_None, width);
}

void Paint::mark(Severity severity, ImVec2 at, float size) const {
  const Colour colour = severity_colour(theme_.colour, severity);
  const Colour sign = theme_.colour.on_verdict;
  const float r = size / 2;
  const float stroke = std::max(1.5F, size * 0.11F);
  switch (severity) {
    case Severity::ok:
      list_.AddCircleFilled(at, r, ink(colour));
      tick(at, r * 0.45F, sign, stroke);
      return;
    case Severity::caution: {
      const float top = r * 1.05F;
      list_.AddTriangleFilled(moved(at, 0, -top), moved(at, r * 1.12F, r * 0.85F),
                              moved(at, -r * 1.12F, r * 0.85F), ink(colour));
      line(moved(at, 0, -r * 0.42F), moved(at, 0, r * 0.2F), sign, stroke);
      list_.AddCircleFilled(moved(at, 0, r * 0.52F), stroke * 0.62F, ink(sign));
      return;
    }
    case Severity::fail:
      fill({at.x - r * 0.92F, at.y - r * 0.92F, r * 1.84F, r * 1.84F}, colour, r * 0.3F);
      cross(at, r * 0.38F, sign, stroke);
      return;
  }
}

// A shaft that turns back in a half circle, with its head pointing left (-1) or right (1).
void Paint::arrow_back(ImVec2 at, float r, float way, Colour colour, float stroke) const {
  const float head = r * 0.42F;
  const float top = -r * 0.34F;
  const float turn = r * 0.48F;
  constexpr float kQuarter = 1.5707963F;
  list_.PathLineTo(moved(at, way * r * 0.8F, top));
  list_.PathLineTo(moved(at, -way * r * 0.3F, top));
  const ImVec2 middle = moved(at, -way * r * 0.3F, top + turn);
  const float start = -kQuarter;
  list_.PathArcTo(middle, turn, start, start - way * 2 * kQuarter, 20);
  list_.PathLineTo(moved(at, way * r * 0.25F, top + 2 * turn));
  list_.PathStroke(ink(colour), ImDrawFlags_None, stroke);
  const ImVec2 tip = moved(at, way * r * 0.86F, top);
  line(tip, moved(tip, -way * head, -head), colour, stroke);
  line(tip, moved(tip, -way * head, head), colour, stroke);
}

void Paint::icon(Icon icon, ImVec2 at, float size, Colour colour) const {
  const float r = size / 2;
  const float stroke = std::max(1.6F, size * 0.1F);
  const ImU32 u = ink(colour);
  switch (icon) {
    case Icon::undo:
      return arrow_back(at, r, -1, colour, stroke);
    case Icon::redo:
      return arrow_back(at, r, 1, colour, stroke);
    case Icon::reset: {
      constexpr float kTurn = 6.2831853F;
      list_.PathArcTo(at, r * 0.7F, kTurn * 0.82F, kTurn * 1.62F, 24);
      list_.PathStroke(u, ImDrawFlags_None, stroke);
      const ImVec2 tip = moved(at, r * 0.3F, -r * 0.64F);
      list_.AddTriangleFilled(moved(tip, -r * 0.5F, -r * 0.1F), moved(tip, r * 0.26F, -r * 0.4F),
                              moved(tip, r * 0.16F, r * 0.46F), u);
      return;
    }
    case Icon::sun:
      list_.AddCircleFilled(at, r * 0.42F, u);
      for (int ray = 0; ray < 8; ++ray) {
        constexpr std::array<ImVec2, 8> kWays = {{{1, 0},
                                                  {0.7071F, 0.7071F},
                                                  {0, 1},
                                                  {-0.7071F, 0.7071F},
                                                  {-1, 0},
                                                  {-0.7071F, -0.7071F},
                                                  {0, -1},
                                                  {0.7071F, -0.7071F}}};
        const ImVec2 way = kWays[static_cast<std::size_t>(ray)];
        line(moved(at, way.x * r * 0.64F, way.y * r * 0.64F), moved(at, way.x * r, way.y * r),
             colour, stroke);
      }
      return;
    case Icon::plus:
      line(moved(at, 0, -r * 0.62F), moved(at, 0, r * 0.62F), colour, stroke);
      [[fallthrough]];
    case Icon::minus:
      line(moved(at, -r * 0.62F, 0), moved(at, r * 0.62F, 0), colour, stroke);
      return;
    case Icon::chevron:
      line(moved(at, -r * 0.55F, -r * 0.28F), moved(at, 0, r * 0.32F), colour, stroke);
      line(moved(at, 0, r * 0.32F), moved(at, r * 0.55F, -r * 0.28F), colour, stroke);
      return;
    case Icon::onward:
      line(moved(at, -r * 0.28F, -r * 0.55F), moved(at, r * 0.32F, 0), colour, stroke);
      line(moved(at, r * 0.32F, 0), moved(at, -r * 0.28F, r * 0.55F), colour, stroke);
      return;
    case Icon::close:
      cross(at, r * 0.5F, colour, stroke);
      return;
    case Icon::tick:
      tick(at, r * 0.62F, colour, stroke);
      return;
    case Icon::squeeze:
    case Icon::whole: {
      const float half = icon == Icon::squeeze ? r * 0.5F : r;
      list_.AddEllipse(at, {half, r * 0.72F}, u, 0, 28, stroke);
      return;
    }
    case Icon::scene:
      outline({at.x - r, at.y - r * 0.75F, 2 * r, r * 1.5F}, colour, stroke, r * 0.2F);
      line(moved(at, -r, r * 0.25F), moved(at, r, r * 0.25F), colour, stroke);
      list_.AddCircleFilled(moved(at, -r * 0.3F, -r * 0.1F), r * 0.22F, u);
      return;
    case Icon::beside:
      outline({at.x - r, at.y - r * 0.6F, 0.86F * r, r * 1.2F}, colour, stroke, r * 0.15F);
      outline({at.x + r * 0.14F, at.y - r * 0.6F, 0.86F * r, r * 1.2F}, colour, stroke, r * 0.15F);
      return;
    case Icon::magnifier:
      list_.AddCircle(moved(at, -r * 0.2F, -r * 0.2F), r * 0.58F, u, 24, stroke);
      line(moved(at, r * 0.24F, r * 0.24F), moved(at, r * 0.8F, r * 0.8F), colour, stroke * 1.3F);
      return;
    case Icon::list:
      for (const float y : {-0.6F, 0.0F, 0.6F}) {
        line(moved(at, -r * 0.8F, r * y), moved(at, r * 0.8F, r * y), colour, stroke);
      }
      return;
  }
}

}  // namespace widegate
