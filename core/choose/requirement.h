// What a format has to fulfil before it is ranked: one table of requirements, what was found for
// each, and its words. Which figures are compared is format_figures.h's.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace widegate {

/// In the order in which reasons are listed. Every one asks for at least so much of something.
enum class Requirement : std::uint8_t {
  cover,           ///< Image circle against the area the plan wants covered.
  mandate,         ///< Photosites inside the main frame line.
  mandate_across,  ///< Photosites across its width.
  push_in,         ///< Room around it.
  squeeze,         ///< In-camera de-squeeze not beyond the lens's squeeze.
  mode_rate,       ///< Highest rate of the sensor mode.
  recording_rate,  ///< Highest rate of the recording option.
  frame_size,      ///< The codec has a frame size for raster and rate, and one fits the card.
  card_speed,      ///< Write headroom with the larger bound of the data rate.
  card_minutes,    ///< Minutes on a card with the larger bound.
};
inline constexpr std::size_t kRequirementCount = 10;

/// What one requirement comes to for one format.
struct Finding {
  double have = 0;
  double need = 0;
  bool applies = false;  ///< The plan asks for it and the format has the figure.
  bool met = true;       ///< Decided exactly where the figures are exact; true when not applying.
  friend bool operator==(const Finding&, const Finding&) = default;
};

using Findings = std::array<Finding, kRequirementCount>;

/// The words of one requirement.
struct RequirementInfo {
  Requirement requirement;
  std::string_view key;       ///< In JSON and CSV: "cover".
  std::string_view label;     ///< For people: "Image circle".
  std::string_view unit;      ///< Of have, need and margin; empty for plain numbers.
  std::string_view unit_key;  ///< The unit as the end of a key: "mm", "fps"; may be empty.
  int decimals;               ///< When shown to people.
  double margin_per_unit;     ///< Margin over have - need.
};

/// The table's row; `kRequirementCount` rows in the order of the enumeration.
[[nodiscard]] const RequirementInfo& requirement_info(Requirement requirement);

/// What there is to spare in the requirement's unit: not negative when met, below zero when not.
/// For the image circle it is the distance at the corner, half the difference of the diameters.
/// Where the doubles of an exact comparison are equal, a failure still shows one part in 2^52.
/// Not negative when the finding does not apply.
[[nodiscard]] double margin(Requirement requirement, const Finding& finding);

/// "Image circle: 28.20 mm, 31.10 mm needed; 1.45 mm short at the corner", for a finding that is
/// not met.
[[nodiscard]] std::string reason_text(Requirement requirement, const Finding& finding);

/// True when every requirement that applies is met.
[[nodiscard]] bool all_met(const Findings& findings);

}  // namespace widegate
