// A codec known only by what its files weigh: one clip of a camera test, its size, its running time
// and its raster. The arithmetic from there to a row of the catalogue, and back to a data rate.
#pragma once

#include <cstdint>

#include "core/base/problem.h"
#include "core/base/rational.h"
#include "core/catalogue/codec.h"

namespace widegate {

/// One recorded clip as a file browser and a slate tell it.
struct MeasuredClip {
  std::int64_t bytes = 0;         ///< Size of the file, 1 or more; "one minute was 11.2 GB".
  Rational seconds;               ///< Running time as recorded, above 0.
  Rational rate;                  ///< Frames recorded each second (the sensor rate), above 0.
  std::int64_t width_pixels = 0;  ///< Recorded raster, 16 to 65535.
  std::int64_t height_pixels = 0;
};

/// Whole frames of a running time: seconds times rate, to the nearest whole frame (halves up),
/// because a clip has a whole number of them; 60 s at 24000/1001 are 1439.
/// @return 0 when the time is shorter than half a frame, or does not fit.
[[nodiscard]] std::int64_t frames_in(Rational seconds, Rational rate);

/// The clip as the form of a codec: bytes for a count of frames of a raster. Sound and container
/// are in the file's size and stay in it: a few thousandths.
/// @return the form, or problems at /bytes, /seconds, /rate, /width_pixels, /height_pixels.
[[nodiscard]] Checked<MeasuredForm> measured_form(const MeasuredClip& clip);

/// Bits each second that frames of `bytes_per_frame` make at `rate`, exactly: 8 * bytes * rate.
[[nodiscard]] Rational bits_per_second(std::int64_t bytes_per_frame, Rational rate);

}  // namespace widegate
