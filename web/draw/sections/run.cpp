// Run: frame rate, slow or fast motion, shutter, exposure, lights that flicker.
#include <array>

#include "web/view/sections.h"

namespace widegate {
namespace {

bool by_angle(const Plan& plan, std::size_t /*line*/) {
  return plan.run.shutter_kind == ShutterKind::angle;
}
bool by_time(const Plan& plan, std::size_t /*line*/) {
  return plan.run.shutter_kind == ShutterKind::time;
}

}  // namespace

Panel run_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/run/sensor_rate"},
      {"/run/project_rate"},
      {"/run/shutter_angle_deg", false, by_angle},
      {"/run/shutter_time_s", false, by_time},
      {"/run/mains_hz"},
      {"/run/shutter_kind", true},
      {"/run/base_angle_deg", true},
      {"/run/audio_channels", true},
  });
  return {.id = "run",
          .title = "Run",
          .question = "How fast, and does the light agree?",
          .topic = Question::run,
          .fields = kFields};
}

}  // namespace widegate
