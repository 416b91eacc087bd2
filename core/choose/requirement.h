// What a format has to fulfil: one table of requirements, what was found for each, and its words.
// The plan's own format and every format of a ranking are judged by the same rows. Which figures
// are compared is format_figures.h's.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace widegate {

/// In the order in which reasons are listed.
enum class Requirement : std::uint8_t {
  cover,         ///< Image circle against the area the plan wants covered, of the worst line.
  photosites,    ///< Read by the mode, or inside the main frame line.
  raster_width,  ///< Recorded after de-squeeze; half a per cent is rounding.
  raster_height,
  raster_count,    ///< Pixels in the file, before de-squeeze; a per cent is rounding.
  upscaling,       ///< Of the worst frame line.
  push_in,         ///< Enlarging in post without upscaling, of the worst frame line.
  room,            ///< Around the worst frame line, to the edge of the mode.
  protection,      ///< Of the frame line with the least. Of the plan, the same for every format.
  desqueeze,       ///< What is de-squeezed in camera is what the lens squeezes.
  desqueeze_wish,  ///< Whether it is de-squeezed in camera at all.
  mode_rate,       ///< Highest rate of the sensor mode and the camera.
  recording_rate,  ///< Highest rate of the recording option.
  frame_size,      ///< The codec has a frame size for raster and rate, and one fits the card.
  card_speed,      ///< Write headroom with the larger bound of the data rate.
  media,           ///< The camera takes this kind of card.
  card_minutes,    ///< Minutes on a card with the larger bound.
  bit_depth,
  chroma,
  sensor_raw,
  compression,
  lossless,
  intra,
  plays_at_once,
  project_rate,  ///< One of the commission's. Of the plan, the same for every format.
  stop,          ///< The lens opens so far. Of the plan; a ranking does not ask.
  focus,         ///< The lens focuses so near. Of the plan; a ranking does not ask.
  copies,        ///< At least two. Of the plan; a ranking does not ask.
};
inline constexpr std::size_t kRequirementCount = 28;

/// The requirements of size, which bind together: a small raster misses all of them.
[[nodiscard]] constexpr bool is_of_size(Requirement requirement) {
  return (requirement >= Requirement::photosites && requirement <= Requirement::push_in);
}

/// What a commission asks of the recording itself, beside its size.
[[nodiscard]] constexpr bool is_of_recording(Requirement requirement) {
  return requirement == Requirement::protection || requirement == Requirement::desqueeze_wish ||
         (requirement >= Requirement::bit_depth && requirement <= Requirement::project_rate);
}

/// True for what a plan asks for whatever its format: judged in a report, not in a ranking.
[[nodiscard]] constexpr bool is_of_the_plan(Requirement requirement) {
  return requirement >= Requirement::stop;
}

enum class Met : std::uint8_t {
  not_asked,  ///< The plan does not ask for it, or the format has no such figure.
  met,
  missed,
  not_known,  ///< Asked for, but the library does not say. Neither met nor missed: a caution.
};

/// What one requirement comes to for one format.
struct Finding {
  double have = 0;
  double need = 0;
  Met met = Met::not_asked;  ///< Decided exactly where the figures are exact.
  std::uint8_t line = 0;     ///< Frame line that is worst off, where it is a line's.

  [[nodiscard]] bool asked() const { return met != Met::not_asked; }
  [[nodiscard]] bool missed() const { return met == Met::missed; }
  friend bool operator==(const Finding&, const Finding&) = default;
};

/// One finding for each requirement, packed: there may be a million of these.
class Findings {
 public:
  [[nodiscard]] Finding operator[](Requirement requirement) const {
    const auto i = static_cast<std::size_t>(requirement);
    return {have_[i], need_[i], met_[i], line_[i]};
  }
  void set(Requirement requirement, const Finding& finding) {
    const auto i = static_cast<std::size_t>(requirement);
    have_[i] = finding.have;
    need_[i] = finding.need;
    met_[i] = finding.met;
    line_[i] = finding.line;
  }
  [[nodiscard]] bool missed(Requirement requirement) const {
    return met_[static_cast<std::size_t>(requirement)] == Met::missed;
  }
  /// How many are missed, or not known.
  [[nodiscard]] std::size_t count(Met met) const;
  friend bool operator==(const Findings&, const Findings&) = default;

 private:
  std::array<double, kRequirementCount> have_{};
  std::array<double, kRequirementCount> need_{};
  std::array<Met, kRequirementCount> met_{};
  std::array<std::uint8_t, kRequirementCount> line_{};
};

/// How what there is compares with what is needed.
enum class RequirementKind : std::uint8_t {
  at_least,
  at_most,
  exactly,
  yes_or_no,  ///< 1 or 0, told in words.
  at_least_in_words,
};

/// The words of one requirement.
struct RequirementInfo {
  Requirement requirement;
  std::string_view key;            ///< In JSON and CSV: "cover".
  std::string_view label;          ///< For people: "Image circle".
  std::string_view unit = {};      ///< Of have, need and margin; empty for plain numbers.
  std::string_view unit_key = {};  ///< The unit as the end of a key: "mm", "fps"; may be empty.
  int decimals = 0;                ///< When shown to people.
  RequirementKind kind = RequirementKind::at_least;
  double margin_per_unit = 1;  ///< Margin over have - need.
  bool of_a_line = false;      ///< Finding::line says which.
  /// Of yes_or_no: what a format is called that has it, and one that has not. Of words: nothing.
  std::string_view yes = {};
  std::string_view no = {};
  bool one_sense = false;  ///< Of yes_or_no: only having it can be asked for.
};

/// The table's row; `kRequirementCount` rows in the order of the enumeration.
[[nodiscard]] const RequirementInfo& requirement_info(Requirement requirement);

/// What there is to spare in the requirement's unit: not negative when met, below zero when not.
/// For the image circle it is the distance at the corner, half the difference of the diameters.
/// Where the doubles of an exact comparison are equal, a failure still shows one part in 2^52.
/// Not negative when the finding is not asked for or not known.
[[nodiscard]] double margin(Requirement requirement, const Finding& finding);

/// "28.20 mm", "4:2:2", "a picture": what there is, or what is needed, for people.
[[nodiscard]] std::string have_text(Requirement requirement, const Finding& finding);
[[nodiscard]] std::string need_text(Requirement requirement, const Finding& finding);

/// "Image circle: 28.20 mm, 31.10 mm needed; 1.45 mm short at the corner", for a finding that is
/// missed or not known.
[[nodiscard]] std::string reason_text(Requirement requirement, const Finding& finding);

/// "met: 4.35 x, at least 1.00 x; 3.35 x to spare", "missed: a picture, not raw", "not known: raw
/// is asked for": a finding that is asked for, told beside the label.
[[nodiscard]] std::string finding_text(Requirement requirement, const Finding& finding);

/// True when no requirement is missed.
[[nodiscard]] bool all_met(const Findings& findings);

/// Calls visit(requirement, finding) for every requirement that is asked for.
template <class Visit>
void for_each_asked(const Findings& findings, Visit visit) {
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    const Finding finding = findings[requirement];
    if (finding.asked()) visit(requirement, finding);
  }
}

}  // namespace widegate
