#include "core/plan/example_plans.h"

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr auto kDrama = std::to_array<ExampleEdit>({
    {"/title", "The Salt Ferry, main unit"},
    {"/format/codec", "bayer-12-3-1"},
    {"/run/lights", "mains"},
    {"/run/shutter_angle_deg", "172.8"},
    {"/store/card", "rowan-1"},
});

constexpr auto kHighSpeed = std::to_array<ExampleEdit>({
    {"/title", "The Salt Ferry, second unit at 100 fps"},
    {"/format/camera", "dogwood"},
    {"/format/mode", "wide-16x9"},
    {"/format/codec", "bayer-12-3-1"},
    {"/deliverable/width_pixels", "1920"},
    {"/deliverable/height_pixels", "1080"},
    {"/deliverable/frame_lines/0/aspect", "16/9"},
    {"/lens/set", "dart"},
    {"/lens/focal_mm", "25"},
    {"/lens/focus_m", "5"},
    {"/run/sensor_rate", "100"},
    {"/run/lights", "steady"},
    {"/run/audio_channels", "0"},
    {"/shooting/days", "3"},
    {"/shooting/units", "1"},
    {"/shooting/recorded_hours_per_day", "0.5"},
    {"/store/card", "rowan-2"},
});

constexpr auto kAnamorphic = std::to_array<ExampleEdit>({
    {"/title", "The Salt Ferry, the crossing at 2x"},
    {"/format/camera", "alder"},
    {"/format/mode", "squeeze-2-239"},
    {"/format/codec", "bayer-12-3-1"},
    {"/lens/set", "wye"},
    {"/lens/focal_mm", "50"},
    {"/deliverable/width_pixels", "4096"},
    {"/deliverable/height_pixels", "1716"},
    {"/run/lights", "mains"},
    {"/run/shutter_angle_deg", "172.8"},
    {"/store/card", "rowan-1"},
});

constexpr auto kExamples = std::to_array<ExamplePlan>({
    {"drama", "A drama", "2.39:1 in a UHD file, 24 frames/s, raw", kDrama},
    {"high-speed", "A high-speed day", "100 frames/s in daylight, 16:9 in HD", kHighSpeed},
    {"anamorphic", "An anamorphic film", "2× lenses for 2.39:1 in 4K", kAnamorphic},
});

}  // namespace

std::span<const ExamplePlan> example_plans() { return kExamples; }

Checked<Plan> example_plan(const ExamplePlan& example, const Catalogue& catalogue) {
  std::vector<TypedField> fields;
  for (const ExampleEdit& edit : example.edits) {
    fields.push_back({std::string(edit.pointer), std::string(edit.text)});
  }
  return with_fields(Plan{}, fields, catalogue);
}

Plan first_plan(const Catalogue& catalogue) {
  Checked<Plan> plan = example_plan(kExamples.front(), catalogue);
  if (!plan) return {};
  plan->title = Plan{}.title;
  return *std::move(plan);
}

}  // namespace widegate
