#include "core/choose/requirement.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr std::array kRequirements = {
    RequirementInfo{Requirement::cover, "cover", "Image circle", "mm", "mm", 2, 0.5},
    RequirementInfo{Requirement::mandate, "mandate", "Photosites in the frame", "", "photosites", 0,
                    1},
    RequirementInfo{Requirement::mandate_across, "mandate_across", "Photosites across the frame",
                    "", "photosites", 0, 1},
    RequirementInfo{Requirement::push_in, "push_in", "Push-in", "%", "percent", 2, 1},
    RequirementInfo{Requirement::squeeze, "squeeze", "Squeeze of the lens", "x", "times", 2, 1},
    RequirementInfo{Requirement::mode_rate, "mode_rate", "Rate of the sensor mode", "fps", "fps", 3,
                    1},
    RequirementInfo{Requirement::recording_rate, "recording_rate", "Rate of the recording option",
                    "fps", "fps", 3, 1},
    RequirementInfo{Requirement::frame_size, "frame_size", "Frame sizes for this raster and rate",
                    "", "", 0, 1},
    RequirementInfo{Requirement::card_speed, "card_speed", "Card speed over data rate", "x",
                    "times", 3, 1},
    RequirementInfo{Requirement::card_minutes, "running_time", "Minutes on a card", "min",
                    "minutes", 2, 1},
};
static_assert(kRequirements.size() == kRequirementCount);

constexpr bool in_order() {
  for (std::size_t i = 0; i < kRequirements.size(); ++i) {
    if (static_cast<std::size_t>(kRequirements[i].requirement) != i) return false;
  }
  return true;
}
static_assert(in_order(), "a row stands at its enumerator's place");

constexpr int kMostDecimals = 9;
constexpr double kStepRounding = 1e-6;  // of a step: 0.5 short is not 0.51

/// At least the row's decimals, and as many as tell what there is from what is needed.
int telling_decimals(const RequirementInfo& info, const Finding& finding) {
  if (info.decimals == 0) return 0;
  for (int decimals = info.decimals; decimals <= kMostDecimals; ++decimals) {
    if (print_fixed(finding.have, decimals) != print_fixed(finding.need, decimals)) return decimals;
  }
  return info.decimals;
}

std::string with_unit(const RequirementInfo& info, std::string text) {
  if (!info.unit.empty()) (text += ' ') += info.unit;
  return text;
}

/// Counts are cut down: what is there is never shown as more.
std::string shown(const RequirementInfo& info, double value, int decimals) {
  if (decimals > 0) return with_unit(info, print_fixed(value, decimals));
  return with_unit(info, print_grouped(static_cast<std::int64_t>(std::floor(value))));
}

/// Rounded up, so that what is short is never shown as less.
std::string shown_shortfall(const RequirementInfo& info, double shortfall, int decimals) {
  const double steps = std::pow(10, decimals);
  return shown(info, std::ceil(shortfall * steps - kStepRounding) / steps, decimals);
}

}  // namespace

const RequirementInfo& requirement_info(Requirement requirement) {
  return kRequirements[static_cast<std::size_t>(requirement)];
}

double margin(Requirement requirement, const Finding& finding) {
  const double spare =
      requirement_info(requirement).margin_per_unit * (finding.have - finding.need);
  if (finding.met) return std::max(0.0, spare);
  const double least = std::max(1.0, finding.need) * std::numeric_limits<double>::epsilon();
  return std::min(spare, -least);
}

std::string reason_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  std::string text(info.label);
  const int decimals = telling_decimals(info, finding);
  text += ": " + shown(info, finding.have, decimals) + ", " + shown(info, finding.need, decimals) +
          " needed; " + shown_shortfall(info, -margin(requirement, finding), decimals) + " short";
  if (requirement == Requirement::cover) text += " at the corner";
  return text;
}

bool all_met(const Findings& findings) {
  return std::all_of(findings.begin(), findings.end(),
                     [](const Finding& finding) { return finding.met; });
}

}  // namespace widegate
