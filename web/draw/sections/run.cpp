// Run: frame rate, slow or fast motion, shutter, exposure, lights that flicker.
#include <algorithm>
#include <array>

#include "core/report/light_drawing.h"
#include "web/draw/widgets/draw_context.h"
#include "web/draw/widgets/parts.h"
#include "web/draw/widgets/working.h"
#include "web/view/sections.h"

namespace widegate {
namespace {

bool by_angle(const Plan& plan, std::size_t /*line*/) {
  return plan.run.shutter_kind == ShutterKind::angle;
}
bool by_time(const Plan& plan, std::size_t /*line*/) {
  return plan.run.shutter_kind == ShutterKind::time;
}
bool on_mains(const Plan& plan, std::size_t /*line*/) {
  return plan.run.lights == Lights::not_said || plan.run.lights == Lights::mains;
}
bool own_frequency(const Plan& plan, std::size_t /*line*/) {
  return plan.run.lights == Lights::frequency;
}

/// A few frames: the light as it pulses, and what each exposure collects of it.
void draw_lights(DrawContext& context) {
  constexpr float kHeight = 72;
  constexpr float kCaptionGap = 1;
  constexpr float kExposureOpacity = 0.28F;
  const Report& report = context.app.report();
  if (!report.problems.empty() || !report.run.flicker.pulses_hz) return;
  const LightDrawing drawing = light_drawing(report.run);
  const Paint paint = context.paint();
  const Palette& colour = context.theme.colour;
  const RectPx box = take_row(kHeight * context.theme.scale);
  const auto x = [&](float share) { return box.x + share * box.width; };
  const auto y = [&](float share) { return bottom(box) - share * box.height; };
  for (const LightDrawing::Exposure& frame : drawing.frames) {
    const float width = x(std::min(frame.to, 1.0F)) - x(frame.from);
    paint.fill({x(frame.from), box.y, width, box.height}, colour.accent, 0, kExposureOpacity);
    const float level = y(frame.collected);
    paint.line({x(frame.from), level}, {x(frame.from) + width, level}, colour.accent,
               3 * context.theme.line_width);
  }
  const auto steps = static_cast<float>(drawing.light.size() - 1);
  for (std::size_t i = 1; i < drawing.light.size(); ++i) {
    const auto at = static_cast<float>(i);
    paint.line({x((at - 1) / steps), y(drawing.light[i - 1])}, {x(at / steps), y(drawing.light[i])},
               colour.text, context.theme.line_width);
  }
  paint.line({box.x, bottom(box)}, {right(box), bottom(box)}, colour.edge,
             context.theme.line_width);
  take_space(context, kCaptionGap);
  draw_paragraph(context, TextStyle::caption, colour.quiet,
                 "Four frames: the light as it pulses, each exposure, and how bright it comes out.",
                 0);
  take_space(context, 3);
}

}  // namespace

Panel run_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/run/sensor_rate"},
      {"/run/project_rate"},
      {"/run/shutter_angle_deg", false, by_angle},
      {"/run/shutter_time_s", false, by_time},
      {"/run/lights"},
      {"/run/mains_hz", false, on_mains},
      {"/run/pulses_hz", false, own_frequency},
      {"/run/shutter_kind", true},
      {"/run/base_angle_deg", true},
      {"/run/audio_channels", true},
  });
  return {.id = "run",
          .title = "Run",
          .question = "How fast, and does the light agree?",
          .topic = Question::run,
          .fields = kFields,
          .draw_extra = draw_lights};
}

}  // namespace widegate
