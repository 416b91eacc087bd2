// What accepted formats are scored by: five shares between fixed end points, so that no format can
// move another one's. The weights are weight_sets.h's, the order ranking.h's.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/choose/format_figures.h"
#include "core/plan/weight_sets.h"

namespace widegate {

/// In this order everywhere.
enum class Criterion : std::uint8_t { area, pixels, fidelity, speed, data };
inline constexpr std::size_t kCriterionCount = 5;

struct CriterionInfo {
  std::string_view key;
  std::string_view label;  ///< "Sensor area".
};
[[nodiscard]] const CriterionInfo& criterion_info(Criterion criterion);

using Shares = std::array<double, kCriterionCount>;

/// What a plan wants of the shares, worked out once.
struct Wants {
  Shares weights{};
  double all_weights = 0;
  double sensor_rate = 0;
  double full_speed = 0;          ///< Rate at which speed is full.
  double target_bytes_per_s = 0;  ///< Data that is no more than wanted.
  /// Data that converting for the edit adds; 0 where nobody waits for it. See handled_data().
  double converted_bytes_per_s = 0;
};

/// Target: the minutes wanted on a card, or so many bits for each pixel of the main frame line as
/// it is delivered, at the project rate; see WeightSetRow. The smaller of both for a set that wants
/// fewer bits than usual: with it the minutes are a need, no allowance.
[[nodiscard]] Wants wants_of(const Conditions& conditions);

/// One frame line on a sensor mode, for the shares. Exact fractions turned into doubles at the end,
/// so that what is equal is equal.
struct LineMerit {
  double area_mm2 = 0;
  double counted_mm2 = 0;  ///< What the share of area counts: see line_merits().
  Rational width;          ///< Photosites.
  Rational height;
};

/// The share of area counts what is inside the line; where room around it is asked for (by the
/// plan, or as protection by the commission) the whole mode, for then what lies outside is used.
/// @source common practice, no source.
[[nodiscard]] std::vector<LineMerit> line_merits(const Conditions& conditions,
                                                 const SensorMode& mode,
                                                 std::span<const FrameReport> frames);

/// True pixels of one format, and what they are worth.
struct PictureFigures {
  double area_mm2 = 0;     ///< Of the main frame line.
  double photosites = 0;   ///< Inside it.
  double true_pixels = 0;  ///< Inside it: a photosite of a mosaic is half a pixel, a joined one a
                           ///< quarter; never more than is recorded, or than film holds.
  double area = 0;         ///< Shares of area and pixels, mean over the frame lines.
  double pixels = 0;
  double served = 0;  ///< True pixels over delivered ones, main line.
  /// Products over the frame lines between the end points: they order as the means do, but without
  /// the rounding of logarithms.
  double area_product = 0;
  double served_product = 0;
};

[[nodiscard]] PictureFigures picture_figures(const Conditions& conditions, const FormatRows& format,
                                             std::span<const LineMerit> merits);

/// What is kept of the picture: 1 for lossless coding, falling with the stored bits of a pixel, and
/// less for few bits and little chroma. What is not known counts as the least that is usual.
/// On film no more than 10 bits count: the grain covers finer steps (common practice, no source).
/// @param stored_bits  of a picture's pixel, sound and container left out.
[[nodiscard]] double fidelity_share(const CodecFacts& facts, double stored_bits, bool film);

/// Stored bits for each pixel of the picture: two photosites of raw make one.
[[nodiscard]] double stored_bits_per_pixel(const FormatRows& format, const FormatFigures& figures,
                                           const DataFigures& data);

/// Data a second that have to be dealt with: what is recorded and, at a rate that only television
/// has (29.97, 50, 59.94, 60; for HD also 25 and 30), the picture codec that has to be made of what
/// does not play at once, taken as the target; elsewhere there is time for it. What is not known is
/// taken to play.
/// @source common practice, no source: such programmes are cut and handed in as pictures.
[[nodiscard]] double handled_data(const Wants& wants, const CodecFacts& facts, double bytes_per_s);

[[nodiscard]] double speed_share(const Wants& wants, const FormatFigures& figures);
/// @param bytes_per_s  handled_data().
[[nodiscard]] double data_share(const Wants& wants, double bytes_per_s);

/// Weighted mean, to nine decimals: rounding in the last places must not decide an order that names
/// should decide. 0 when every weight is 0.
[[nodiscard]] double score_of(const Wants& wants, const Shares& shares);

}  // namespace widegate
