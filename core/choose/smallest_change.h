// What would have to change for a rejected format to pass: for each input, the smallest change of
// that one input alone. Judging is format_figures.h's; this file turns one dial at a time.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate {

/// The inputs that are tried, in this order.
enum class Input : std::uint8_t {
  image_circle,       ///< A lens with a larger circle, to a hundredth of a millimetre.
  focal_length,       ///< Another lens of the set; the nearest in proportion.
  lens_set,           ///< Another set with this focal length; the one with the smallest circle.
  squeeze,            ///< More squeeze, to a hundredth.
  must_cover,         ///< A smaller area to be covered.
  protection,         ///< Less or more of it, to a thousandth.
  sensor_rate,        ///< A lower rate, exact where the limit is a rate that can be set, otherwise
                      ///< to a thousandth; for a codec with a table of rates the nearest of these.
  audio_channels,     ///< Fewer.
  card,               ///< Another card of the library; the slowest that serves.
  card_speed,         ///< The same card, but writing faster.
  card_capacity,      ///< The same card, but larger.
  mandate,            ///< Fewer photosites required.
  mandate_across,     ///< Fewer required across.
  must_meet_mandate,  ///< No mandate, where lowering one figure is not enough.
  min_minutes,        ///< Fewer minutes wanted on a card, to a hundredth.
  min_push_in,        ///< Less push-in wanted, to a hundredth of a percent.
};

/// One change that alone makes the format pass; no smaller step of this input does.
struct Change {
  Input input = Input::image_circle;
  std::string value;  ///< As with_field() reads it; a whole number for the card's own figures.
  std::string now;    ///< What it is now, likewise.
  friend bool operator==(const Change&, const Change&) = default;
};

/// Every input that can make a rejected format pass by itself, each verified by judging the format
/// again with the change made. Empty when no single change is enough, when the format already
/// passes, and when the catalogue has no such format.
/// @param plan  checked against the catalogue.
[[nodiscard]] std::vector<Change> smallest_changes(const Plan& plan, const Catalogue& catalogue,
                                                   const FormatChoice& format);

/// The plan with this format chosen and the change made, checked as a whole. A change of the card's
/// own figures puts a card of one's own, with the same id, into the plan.
[[nodiscard]] Checked<Plan> with_change(const Plan& plan, const Catalogue& catalogue,
                                        const FormatChoice& format, const Change& change);

/// Stable key of the input ("image_circle"), its unit ("mm", "" for none), and the pointer of the
/// plan's field ("" for the card's own figures).
[[nodiscard]] std::string_view input_key(Input input);
[[nodiscard]] std::string_view input_unit(Input input);
[[nodiscard]] std::string_view input_pointer(Input input);

/// "Image circle: 31.12 mm instead of 28.2 mm".
[[nodiscard]] std::string change_text(const Change& change);

}  // namespace widegate
