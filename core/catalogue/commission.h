// What a commissioner asks for, as a row of the catalogue: every requirement may be left out. What
// a plan's commission comes to is core/commission/terms_in_force.h's.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/catalogue/codec.h"

namespace widegate {

/// Where photosites are counted: commissioners usually count those that are read.
enum class CountedOn { mode, frame };

/// What is said of something that a format has or has not.
enum class Wish { either, wanted, refused };

/// The requirements. One that holds nothing is not asked for; in a plan, it is as the commission's
/// row has it. Nought, "either", a squeezing limit and the like say expressly that nothing is
/// asked.
struct CommissionTerms {
  std::optional<std::int64_t> photosites;  ///< At least; 0: none asked for.
  std::optional<CountedOn> counted_on;     ///< On the mode when nothing is said.
  /// Of the whole file after de-squeeze, at least. Both together are a raster that each frame line
  /// is fitted into: what the aspect leaves empty is not asked for. 0: none.
  std::optional<std::int64_t> recorded_width_pixels;
  std::optional<std::int64_t> recorded_height_pixels;
  std::optional<Rational> largest_upscaling;  ///< Of the picture inside a frame line, 1 to 100.
  std::optional<std::int64_t> bit_depth;      ///< At least; 0: none.
  std::optional<Chroma> chroma;               ///< At least, in the order of the enumeration.
  std::optional<Wish> sensor_raw;
  std::optional<Rational> compression;  ///< Uncompressed bits over stored ones, at most.
  std::optional<bool> lossless;         ///< True: lossless only.
  std::optional<bool> intra;            ///< True: every frame coded by itself.
  std::optional<bool> plays_at_once;    ///< True: an edit suite plays it as it is.
  std::optional<Wish> in_camera_desqueeze;
  std::optional<Rational> protection;  ///< Of every frame line, at least; as FrameLine::protection.
  friend bool operator==(const CommissionTerms&, const CommissionTerms&) = default;
};

/// A commission by name. Built-in ones are common practice, no source: the written requirements of
/// the commissioner decide.
struct Commission {
  std::string id;
  std::string name;
  std::string source;
  /// Sizes that the terms leave open are those of the plan's deliverable: as many photosites as it
  /// has pixels, its raster, at most kUsualUpscaling.
  bool follows_deliverable = false;
  CommissionTerms terms;
  std::vector<Rational> rates;  ///< Project rates allowed; empty: any.
  friend bool operator==(const Commission&, const Commission&) = default;
};

/// Largest upscaling of a commission that follows the deliverable. A tenth of protection in a file
/// as wide as the deliverable makes 1.111.
/// @source common practice, no source.
inline constexpr Rational kUsualUpscaling = Rational(28, 25);

}  // namespace widegate
