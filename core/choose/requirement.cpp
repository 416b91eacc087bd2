#include "core/choose/requirement.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/number_text.h"

namespace widegate {
namespace {

using enum RequirementKind;

constexpr auto kRequirements = std::to_array<RequirementInfo>({
    {Requirement::cover, "cover", "Image circle", "mm", "mm", 2, at_least, 0.5, true},
    {Requirement::photosites, "photosites", "Photosites", "", "photosites", 0, at_least},
    {Requirement::raster_width, "raster_width", "Recorded width after de-squeeze", "px", "pixels",
     0, at_least},
    {Requirement::raster_height, "raster_height", "Recorded height", "px", "pixels", 0, at_least},
    {Requirement::raster_count, "raster_count", "Pixels in the file", "px", "pixels", 0, at_least},
    {Requirement::upscaling, "upscaling", "Upscaling", "x", "times", 3, at_most, 1, true},
    {Requirement::push_in, "push_in", "Push-in without upscaling", "%", "percent", 2, at_least, 1,
     true},
    {Requirement::room, "room", "Room around the frame line", "%", "percent", 2, at_least, 1, true},
    {Requirement::protection, "protection", "Protection", "%", "percent", 1, at_least, 1, true},
    {Requirement::desqueeze, "desqueeze", "De-squeeze in camera by the lens's squeeze", "x",
     "times", 2, exactly},
    {.requirement = Requirement::desqueeze_wish,
     .key = "desqueeze_wish",
     .label = "De-squeeze",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "in camera",
     .no = "in post"},
    {Requirement::mode_rate, "mode_rate", "Highest rate of the mode", "fps", "fps", 3, at_least},
    {Requirement::recording_rate, "recording_rate", "Highest rate of the recording option", "fps",
     "fps", 3, at_least},
    {.requirement = Requirement::frame_size,
     .key = "frame_size",
     .label = "Frame size of the codec",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "there is one",
     .no = "none for this raster, rate or card",
     .one_sense = true},
    {Requirement::card_speed, "card_speed", "Card speed over data rate", "x", "times", 3, at_least},
    {.requirement = Requirement::media,
     .key = "media",
     .label = "Card",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "the camera takes it",
     .no = "of a kind that the camera does not take",
     .one_sense = true},
    {Requirement::card_minutes, "running_time", "Minutes on a card", "min", "minutes", 2, at_least},
    {Requirement::bit_depth, "bit_depth", "Bit depth", "bit", "bits", 0, at_least},
    {.requirement = Requirement::chroma,
     .key = "chroma",
     .label = "Chroma",
     .decimals = 0,
     .kind = at_least_in_words},
    {.requirement = Requirement::sensor_raw,
     .key = "sensor_raw",
     .label = "Raw of the sensor",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "raw",
     .no = "a picture"},
    {Requirement::compression, "compression", "Compression ratio", "", "", 2, at_most},
    {.requirement = Requirement::lossless,
     .key = "lossless",
     .label = "Lossless",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "lossless",
     .no = "compressed with losses"},
    {.requirement = Requirement::intra,
     .key = "intra",
     .label = "Every frame coded by itself",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "by itself",
     .no = "from its neighbours"},
    {.requirement = Requirement::plays_at_once,
     .key = "plays_at_once",
     .label = "Played in the edit",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "at once",
     .no = "after converting"},
    {.requirement = Requirement::project_rate,
     .key = "project_rate",
     .label = "Project rate",
     .decimals = 0,
     .kind = yes_or_no,
     .yes = "one that the commission allows",
     .no = "not one that the commission allows",
     .one_sense = true},
    {Requirement::stop, "stop", "Stop no wider than the lens's", "", "f_number", 2, at_least},
    {Requirement::focus, "focus", "Focus no nearer than the lens's", "m", "m", 2, at_least},
    {Requirement::copies, "copies", "Copies", "", "copies", 0, at_least},
});
static_assert(kRequirements.size() == kRequirementCount);

constexpr bool in_order() {
  for (std::size_t i = 0; i < kRequirements.size(); ++i) {
    if (static_cast<std::size_t>(kRequirements[i].requirement) != i) return false;
  }
  return true;
}
static_assert(in_order(), "a row stands at its enumerator's place");

/// In the order of Chroma.
constexpr std::string_view kChromas[] = {"4:2:0", "4:2:2", "4:4:4", "raw"};

constexpr int kMostDecimals = 9;
constexpr double kStepRounding = 1e-6;  // of a step: 0.5 short is not 0.51

bool is_worded(const RequirementInfo& info) {
  return info.kind == yes_or_no || info.kind == at_least_in_words;
}

/// At least the row's decimals, and as many as tell what there is from what is needed.
int telling_decimals(const RequirementInfo& info, const Finding& finding) {
  if (info.decimals == 0 || finding.met == Met::not_known) return info.decimals;
  for (int decimals = info.decimals; decimals <= kMostDecimals; ++decimals) {
    if (print_fixed(finding.have, decimals) != print_fixed(finding.need, decimals)) return decimals;
  }
  return info.decimals;
}

std::string with_unit(const RequirementInfo& info, std::string text) {
  if (!info.unit.empty()) (text += ' ') += info.unit;
  return text;
}

/// A count that is there is cut down, one that is needed goes up: neither looks better than it is.
std::string shown(const RequirementInfo& info, double value, int decimals) {
  if (decimals > 0) return with_unit(info, print_fixed(value, decimals));
  return with_unit(info, print_grouped(static_cast<std::int64_t>(std::floor(value))));
}

std::string in_words(const RequirementInfo& info, double value) {
  if (info.kind == yes_or_no) return std::string(value > 0 ? info.yes : info.no);
  const auto number = static_cast<std::size_t>(value);
  return std::string(kChromas[std::min(number, std::size(kChromas) - 1)]);
}

/// Rounded up, so that what is short is never shown as less.
std::string shown_shortfall(const RequirementInfo& info, double shortfall, int decimals) {
  const double steps = std::pow(10, decimals);
  return shown(info, std::ceil(shortfall * steps - kStepRounding) / steps, decimals);
}

/// What is wrong, behind what there is and what is needed.
std::string gap_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  if (info.kind == exactly) return "";
  const int decimals = telling_decimals(info, finding);
  const std::string gap = shown_shortfall(info, -margin(requirement, finding), decimals);
  if (info.kind == at_most) return "; " + gap + " too much";
  return "; " + gap + (requirement == Requirement::cover ? " short at the corner" : " short");
}

/// What is to spare, behind what there is and what is needed.
std::string spare_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  return "; " + shown(info, margin(requirement, finding), info.decimals) + " to spare";
}

}  // namespace

std::size_t Findings::count(Met met) const {
  return static_cast<std::size_t>(std::count(met_.begin(), met_.end(), met));
}

const RequirementInfo& requirement_info(Requirement requirement) {
  return kRequirements[static_cast<std::size_t>(requirement)];
}

double margin(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  double spare = info.margin_per_unit * (finding.have - finding.need);
  if (info.kind == at_most) spare = -spare;
  if (info.kind == exactly || info.kind == yes_or_no) spare = -std::abs(spare);
  if (finding.met != Met::missed) return std::max(0.0, spare);
  const double least = std::max(1.0, finding.need) * std::numeric_limits<double>::epsilon();
  return std::min(spare, -least);
}

std::string have_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  if (finding.met == Met::not_known) return "not known";
  if (is_worded(info)) return in_words(info, finding.have);
  return shown(info, finding.have, telling_decimals(info, finding));
}

std::string need_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  if (is_worded(info)) return in_words(info, finding.need);
  const int decimals = telling_decimals(info, finding);
  return shown(info, decimals > 0 ? finding.need : std::ceil(finding.need), decimals);
}

std::string reason_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  const std::string have = have_text(requirement, finding);
  const std::string need = need_text(requirement, finding);
  std::string text = std::string(info.label) + ": " + have;
  if (info.one_sense && finding.met != Met::not_known) return text;
  text += ", ";
  if (info.kind == yes_or_no && finding.met != Met::not_known) return text + "not " + need;
  text += info.kind == at_most ? "at most " + need : need + " needed";
  if (finding.met == Met::not_known || is_worded(info)) return text;
  return text + gap_text(requirement, finding);
}

std::string finding_text(Requirement requirement, const Finding& finding) {
  const RequirementInfo& info = requirement_info(requirement);
  const std::string need = need_text(requirement, finding);
  if (finding.met == Met::not_known) return "not known: " + need + " is asked for";
  const std::string text =
      (finding.missed() ? "missed: " : "met: ") + have_text(requirement, finding);
  const std::string gap =
      finding.missed() ? gap_text(requirement, finding) : spare_text(requirement, finding);
  switch (info.kind) {
    case at_least:
      return text + ", at least " + need + gap;
    case at_most:
      return text + ", at most " + need + gap;
    case at_least_in_words:
      return text + ", at least " + need;
    case exactly:
      return text + ", exactly " + need;
    case yes_or_no:
      return finding.missed() && !info.one_sense ? text + ", not " + need : text;
  }
  return text;
}

bool all_met(const Findings& findings) { return findings.count(Met::missed) == 0; }

}  // namespace widegate
