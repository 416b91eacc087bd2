// What a format that passes is warned of, as data. Which formats are, is format_figures.h's.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace widegate {

/// What a format is warned of; it then stands below every one that has none of these.
enum class Caution : std::uint8_t {
  other_squeeze,    ///< The mode is shaped for another squeeze than the lens's.
  outside_circle,   ///< The line is inside the circle, the mode is not.
  tight_circle,     ///< Less than 0.3 mm of the circle to spare: a promise, not a measurement.
  upscaled,         ///< By more than half a per cent.
  slow_card,        ///< Under 1.2 times the data rate.
  few_bits,         ///< Under 10.
  much_compressed,  ///< More than 11:1.
  binned,           ///< Photosites joined before they are read.
  other_view,       ///< No focal length of the set comes within a tenth of the view.
  not_known,        ///< Something that is asked for is not in the library.
  claimed_card,     ///< The card's speed is only claimed, and under 3 times the data rate.
  other_shape,      ///< The file's raster has not the mode's shape: it stretches the picture.
};
inline constexpr std::size_t kCautionCount = 12;

/// A set of cautions.
class Cautions {
 public:
  void add(Caution caution) { bits_ |= bit(caution); }
  void add(Cautions other) { bits_ |= other.bits_; }
  [[nodiscard]] bool has(Caution caution) const { return (bits_ & bit(caution)) != 0; }
  [[nodiscard]] bool none() const { return bits_ == 0; }
  friend bool operator==(Cautions, Cautions) = default;

 private:
  static std::uint16_t bit(Caution caution) {
    return static_cast<std::uint16_t>(1U << static_cast<unsigned>(caution));
  }
  std::uint16_t bits_ = 0;
};

/// Stable key ("upscaled") and words for people ("upscaled in post").
struct CautionInfo {
  std::string_view key;
  std::string_view words;
};
[[nodiscard]] const CautionInfo& caution_info(Caution caution);

/// Calls visit(caution) for each that the set has.
template <class Visit>
void for_each_caution(Cautions cautions, Visit visit) {
  for (std::size_t i = 0; i < kCautionCount; ++i) {
    const auto caution = static_cast<Caution>(i);
    if (cautions.has(caution)) visit(caution);
  }
}

/// "upscaled in post, binned": the words of all of them; empty for none.
[[nodiscard]] std::string caution_words(Cautions cautions);

}  // namespace widegate
