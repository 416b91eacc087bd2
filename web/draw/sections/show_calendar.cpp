#include "web/draw/sections/show_calendar.h"

#include <algorithm>
#include <array>

#include "core/report/figure_text.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"

namespace widegate {
namespace {

constexpr float kHeight = 150;  ///< Of the stacked drawing, at the usual text size.
constexpr float kMoneyHeight = 80;

/// Parts differ by lightness and by hatching, not by colour alone.
struct Fill {
  float opacity;
  bool hatched;
};
constexpr auto kFills =
    std::to_array<Fill>({{0.9F, false}, {0.35F, false}, {0.6F, true}, {0.15F, true}});

const Fill& fill_of(std::size_t part) { return kFills[part % kFills.size()]; }

void hatch(const Paint& paint, const RectPx& box, Colour colour) {
  constexpr float kStep = 6;
  ImDrawList& list = paint.list();
  list.PushClipRect({box.x, box.y}, {right(box), bottom(box)}, true);
  const int lines = static_cast<int>((box.width + box.height) / kStep) + 1;
  for (int i = 0; i < lines; ++i) {
    const float x = box.x - box.height + kStep * static_cast<float>(i);
    paint.line({x, bottom(box)}, {x + box.height, box.y}, colour, 1);
  }
  list.PopClipRect();
}

void fill_box(const Paint& paint, const RectPx& box, std::size_t part) {
  if (box.height <= 0 || box.width <= 0) return;
  const Palette& colour = paint.theme().colour;
  paint.fill(box, colour.accent, 0, fill_of(part).opacity);
  if (fill_of(part).hatched) hatch(paint, box, colour.text);
}

/// Days are columns; so many that each is at least a pixel wide.
struct Columns {
  RectPx box;
  std::size_t days;

  [[nodiscard]] float x(std::size_t day) const {
    return box.x + box.width * static_cast<float>(day) / static_cast<float>(days);
  }
};

/// A part's area from the tops of those below it, which it then raises.
void draw_stack(const Paint& paint, const Columns& columns, const std::vector<float>& stack,
                std::vector<float>& below, float most, std::size_t part) {
  for (std::size_t day = 0; day < columns.days; ++day) {
    const float top = below[day] + stack[day];
    const float from = bottom(columns.box) - columns.box.height * below[day] / most;
    const float to = bottom(columns.box) - columns.box.height * top / most;
    const float left = columns.x(day);
    fill_box(paint, {left, to, columns.x(day + 1) - left, from - to}, part);
    if (stack[day] > 0) {
      paint.line({left, to}, {columns.x(day + 1), to}, paint.theme().colour.text, 1);
    }
    below[day] = top;
  }
}

/// Triangles below the days on which media are full: filled for drives, open for tapes.
void draw_full(const Paint& paint, const Columns& columns, const std::vector<std::size_t>& days,
               float y, bool filled) {
  const float half = 4 * paint.theme().scale;
  const ImU32 colour = ink(paint.theme().colour.text);
  for (const std::size_t day : days) {
    if (day >= columns.days) continue;
    const float middle = (columns.x(day) + columns.x(day + 1)) / 2;
    const ImVec2 top{middle, y};
    const ImVec2 left{middle - half, y + 2 * half};
    const ImVec2 end{middle + half, y + 2 * half};
    if (filled) {
      paint.list().AddTriangleFilled(top, left, end, colour);
    } else {
      paint.list().AddTriangle(top, left, end, colour, 1.5F);
    }
  }
}

/// First and last day below a drawing, and what its top stands for above it.
void draw_ends(const Paint& paint, const RectPx& row, const ShowView& view) {
  const Colour quiet = paint.theme().colour.quiet;
  paint.text({row.x, row.y, row.width / 2, row.height}, Align::left, TextStyle::caption, quiet,
             view.first_day);
  paint.text({row.x + row.width / 2, row.y, row.width / 2, row.height}, Align::right,
             TextStyle::caption, quiet, view.last_day);
}

void draw_key(DrawContext& context, const ShowView& view) {
  const Paint paint = context.paint();
  const float line = paint.line_height(TextStyle::caption) + context.theme.space(1);
  const float swatch = 22 * context.theme.scale;
  for (std::size_t part = 0; part < view.part_names.size(); ++part) {
    const RectPx row = take_row(line);
    const RectPx box{row.x, row.y + 2, swatch, line - 4};
    fill_box(paint, box, part);
    paint.outline(box, context.theme.colour.edge, 1);
    const float left = swatch + context.theme.space(2);
    paint.text({row.x + left, row.y, row.width - left, line}, Align::left, TextStyle::caption,
               context.theme.colour.text, view.part_names[part]);
  }
  for (const std::string& words : view.full_words) {
    draw_paragraph(context, TextStyle::caption, context.theme.colour.quiet, words, 0.5F);
  }
}

void draw_storage(DrawContext& context, const ShowView& view) {
  const Paint paint = context.paint();
  const ScaledBytes most = scaled_bytes({view.most_terabytes * 1e12, view.most_terabytes * 1e12});
  draw_paragraph(context, TextStyle::strong, context.theme.colour.accent,
                 "Footage so far, to " + most.text + " " + std::string(most.unit) +
                     "; ▲ drives full, △ tapes full",
                 1);
  const RectPx box = take_row(kHeight * context.theme.scale);
  const Columns columns{box, view.stacks.front().size()};
  std::vector<float> below(columns.days, 0);
  for (std::size_t part = 0; part < view.stacks.size(); ++part) {
    draw_stack(paint, columns, view.stacks[part], below, view.most_terabytes, part);
  }
  paint.line({box.x, bottom(box)}, {right(box), bottom(box)}, context.theme.colour.edge, 1);
  const RectPx marks = take_row(24 * context.theme.scale);
  draw_full(paint, columns, view.drives_full, marks.y + 2, true);
  draw_full(paint, columns, view.tapes_full, marks.y + 12 * context.theme.scale, false);
  draw_ends(paint, take_row(paint.line_height(TextStyle::caption)), view);
}

void draw_money(DrawContext& context, const ShowView& view) {
  if (view.money_so_far.empty() || view.money_so_far.back() <= 0) return;
  const Paint paint = context.paint();
  take_space(context, 2);
  draw_paragraph(context, TextStyle::strong, context.theme.colour.accent,
                 "Money so far, " + view.currency, 1);
  const RectPx box = take_row(kMoneyHeight * context.theme.scale);
  const Columns columns{box, view.money_so_far.size()};
  const float most = *std::max_element(view.money_so_far.begin(), view.money_so_far.end());
  float before = bottom(box);
  for (std::size_t day = 0; day < columns.days; ++day) {
    const float y = bottom(box) - box.height * view.money_so_far[day] / most;
    const Colour colour = context.theme.colour.text;
    paint.line({columns.x(day), before}, {columns.x(day), y}, colour, 2);
    paint.line({columns.x(day), y}, {columns.x(day + 1), y}, colour, 2);
    before = y;
  }
  paint.line({box.x, bottom(box)}, {right(box), bottom(box)}, context.theme.colour.edge, 1);
  draw_ends(paint, take_row(paint.line_height(TextStyle::caption)), view);
}

}  // namespace

void draw_show_calendar(DrawContext& context, const ShowView& view) {
  if (view.stacks.empty() || view.stacks.front().empty() || view.most_terabytes <= 0) return;
  draw_storage(context, view);
  draw_key(context, view);
  draw_money(context, view);
}

}  // namespace widegate
