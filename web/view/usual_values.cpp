#include "web/view/usual_values.h"

#include <array>

namespace widegate {
namespace {

constexpr auto kAspects = std::to_array<UsualValue>({
    {"4/3", "1.33"},
    {"11/8", "1.37"},
    {"5/3", "1.66"},
    {"16/9", "1.78"},
    {"1.85", "1.85"},
    {"2", "2.00"},
    {"2.2", "2.20"},
    {"2.39", "2.39"},
});
constexpr auto kRates = std::to_array<UsualValue>({
    {"24000/1001", "23.976"},
    {"24", "24"},
    {"25", "25"},
    {"30000/1001", "29.97"},
    {"30", "30"},
    {"48", "48"},
    {"50", "50"},
    {"60", "60"},
    {"96", "96"},
    {"120", "120"},
});
constexpr auto kSqueezes = std::to_array<UsualValue>({
    {"1", "1"},
    {"4/3", "1.33"},
    {"1.5", "1.5"},
    {"1.8", "1.8"},
    {"2", "2"},
});
constexpr auto kStops = std::to_array<UsualValue>({
    {"1.4", ""},
    {"2", ""},
    {"2.8", ""},
    {"4", ""},
    {"5.6", ""},
    {"8", ""},
    {"11", ""},
    {"16", ""},
    {"22", ""},
});
constexpr auto kAngles = std::to_array<UsualValue>({
    {"45", "45"},
    {"90", "90"},
    {"144", "144"},
    {"172.8", "172.8"},
    {"180", "180"},
    {"270", "270"},
    {"360", "360"},
});
constexpr auto kTimes = std::to_array<UsualValue>({
    {"1/1000", "1/1000"},
    {"1/250", "1/250"},
    {"1/100", "1/100"},
    {"1/60", "1/60"},
    {"1/50", "1/50"},
    {"1/48", "1/48"},
    {"1/25", "1/25"},
});
constexpr auto kMains = std::to_array<UsualValue>({{"50", "50"}, {"60", "60"}});
constexpr auto kExtenders = std::to_array<UsualValue>({
    {"0.71", "0.71"},
    {"1", "none"},
    {"1.4", "1.4"},
    {"2", "2"},
});
constexpr auto kFeet = std::to_array<UsualValue>({
    {"100", "100"},
    {"200", "200"},
    {"400", "400"},
    {"1000", "1000"},
});
constexpr auto kPhotosites = std::to_array<UsualValue>({
    {"0", "none"},
    {"2073600", "1920 × 1080"},
    {"8294400", "3840 × 2160"},
    {"8847360", "4096 × 2160"},
});
constexpr auto kAcross = std::to_array<UsualValue>({
    {"0", "none"},
    {"1920", "1920"},
    {"3840", "3840"},
    {"4096", "4096"},
});
constexpr auto kWidths = std::to_array<UsualValue>({
    {"1920", "1920"},
    {"2048", "2048"},
    {"3840", "3840"},
    {"4096", "4096"},
});
constexpr auto kHeights = std::to_array<UsualValue>({
    {"1080", "1080"},
    {"2160", "2160"},
});

struct FieldRow {
  std::string_view pointer;
  std::span<const UsualValue> values;
};
constexpr auto kFields = std::to_array<FieldRow>({
    {"/deliverable/frame_lines/0/aspect", kAspects},
    {"/run/project_rate", kRates},
    {"/run/sensor_rate", kRates},
    {"/lens/squeeze", kSqueezes},
    {"/lens/f_number", kStops},
    {"/run/shutter_angle_deg", kAngles},
    {"/run/base_angle_deg", kAngles},
    {"/run/shutter_time_s", kTimes},
    {"/run/mains_hz", kMains},
    {"/lens/extender", kExtenders},
    {"/film/magazine_feet", kFeet},
    {"/commission/photosites", kPhotosites},
    {"/commission/recorded_width_pixels", kAcross},
    {"/deliverable/width_pixels", kWidths},
    {"/deliverable/height_pixels", kHeights},
});

}  // namespace

std::span<const UsualValue> usual_values(std::string_view pointer) {
  for (const FieldRow& row : kFields) {
    if (row.pointer == pointer) return row.values;
  }
  return {};
}

}  // namespace widegate
