// Choose: what a format must do, what ranks those that do it, and the ranking itself.
#include <algorithm>
#include <array>

#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/view/ranking_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

bool speed_decides(const Plan& plan, std::size_t /*line*/) {
  return plan.choose.weights == WeightSet::highest_speed;
}

/// What is better for a person choosing, as bars from the worst to the best.
void draw_shares(const DrawContext& context, const RankingRow& row, const RectPx& box) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float gap = 2 * context.theme.scale;
  const auto bars = static_cast<float>(row.shares.size());
  const float width = (box.width - gap * (bars - 1)) / bars;
  float x = box.x;
  for (const float share : row.shares) {
    const float height = std::clamp(share, 0.0F, 1.0F) * box.height;
    paint.fill({x, bottom(box) - height, width, height},
               row.chosen ? colour.on_accent : colour.accent, 1);
    paint.line({x, bottom(box)}, {x + width, bottom(box)},
               row.chosen ? colour.on_accent : colour.edge, 1);
    x += width + gap;
  }
}

void draw_row(DrawContext& context, const RankingRow& row) {
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const float pad = context.theme.space(2.5F);
  const float caption = paint.line_height(TextStyle::caption);
  const float title = paint.line_height(TextStyle::strong);
  const float bars = 44 * context.theme.scale;
  const float mark = 20 * context.theme.scale;
  const float left = pad + mark + context.theme.space(2);
  const float room = ImGui::GetContentRegionAvail().x - left - pad;
  const float width = row.accepted ? room - bars - pad : room;
  const float words = paint.wrapped_height(TextStyle::caption, row.words, width);
  const RectPx box = take_row(title + caption + words + 2 * pad);
  context.state.anchor.row(row.id, box.y, box.height);
  if (!ImGui::IsRectVisible({box.x, box.y}, {right(box), bottom(box)})) {
    take_space(context, 0.5F);
    return;
  }
  ImGui::PushID(row.id.data(), row.id.data() + row.id.size());
  const Press press = pressable("format", box);
  note_place(context, "format", row.id, box);
  ImGui::PopID();
  const float radius = 10 * context.theme.scale;
  if (row.chosen || press.held || press.hovered) {
    paint.fill(box, row.chosen ? colour.accent : surface(context.theme, press), radius);
  }
  const Colour text = row.chosen ? colour.on_accent : colour.text;
  const Colour quiet = row.chosen ? colour.on_accent : colour.quiet;
  paint.mark(row.severity, {box.x + pad + mark / 2, box.y + pad + mark / 2}, mark);
  RectPx line = {box.x + left, box.y + pad, width, title};
  paint.text(line, Align::left, TextStyle::strong, text, row.title);
  line.y += title;
  line.height = caption;
  paint.text(line, Align::left, TextStyle::caption, quiet, row.detail);
  line.y += caption;
  paint.wrapped({line.x, line.y, width, words}, TextStyle::caption, quiet, row.words);
  if (row.accepted) {
    draw_shares(context, row, {right(box) - pad - bars, box.y + pad, bars, box.height - 2 * pad});
  }
  if (press.clicked && !row.chosen) context.commands.emplace_back(ChooseFormat{row.format});
  take_space(context, 0.5F);
}

void draw_words(DrawContext& context, TextStyle style, Colour colour, const std::string& words) {
  const Paint paint = context.paint();
  const float width = ImGui::GetContentRegionAvail().x;
  const RectPx box = take_row(paint.wrapped_height(style, words, width) + context.theme.space(1));
  paint.wrapped(box, style, colour, words);
}

/// When nothing passes: what most formats fail by, and each change that would help as a button.
void draw_ways_out(DrawContext& context, const RankingRows& ranking) {
  const Palette& colour = context.theme.colour;
  for (const std::string& words : ranking.binding) {
    draw_words(context, TextStyle::caption, colour.quiet, words);
  }
  if (ranking.ways.empty()) return;
  draw_words(context, TextStyle::strong, colour.text, "Smallest changes that let one pass");
  for (std::size_t i = 0; i < ranking.ways.size(); ++i) {
    const Control* way = context.view.find(ranking_way_id(i));
    if (way == nullptr) continue;
    draw_control(context, way->id);
    draw_words(context, TextStyle::caption, colour.quiet, way->help);
  }
  take_space(context, 2);
}

void draw_ranking(DrawContext& context) {
  const RankingRows& ranking = context.view.ranking;
  if (ranking.total == 0) return;
  const Palette& colour = context.theme.colour;
  draw_words(context, TextStyle::body, colour.text, ranking.lead);
  draw_ways_out(context, ranking);
  for (const std::string_view id :
       {kCamerasConsidered, kRankingPart, kRankingKind, kRankingListing}) {
    draw_control(context, id);
  }
  draw_words(context, TextStyle::caption, colour.quiet,
             "Bars, left to right: area, pixels, fidelity, speed, little data");
  for (const RankingRow& row : ranking.rows) draw_row(context, row);
  take_space(context, 1);
  if (ranking.listed > context.state.formats_shown) draw_control(context, kMoreFormats);
}

}  // namespace

Panel choose_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/choose/min_minutes_per_card"},
      {"/choose/min_push_in_percent"},
      {"/choose/min_room_percent", true},
      {"/choose/compare"},
      {"/choose/weights"},
      {"/choose/fastest_rate", false, speed_decides},
      {"/choose/weight_area", true},
      {"/choose/weight_pixels", true},
      {"/choose/weight_fidelity", true},
      {"/choose/weight_speed", true},
      {"/choose/weight_data", true},
  });
  static constexpr auto kExtra = std::to_array<std::string_view>({kFormat});
  return {.id = "choose",
          .title = "Choose",
          .question = "Which format then?",
          .topic = Question::choose,
          .fields = kFields,
          .extra_controls = kExtra,
          .draw_extra = draw_ranking,
          .comes_later = true};
}

}  // namespace widegate
