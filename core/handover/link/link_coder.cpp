#include "core/handover/link/link_coder.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

namespace widegate {
namespace {

/// What the model has seen before the first byte. Part of version 1 of the layout: never change it.
constexpr std::string_view kSample =
    "The Salt Ferry, unit A\x01\x02\x03"
    "open-gate Whole sensor, as-read As read resample-2048 Resampled to 2048 wide resample-1920 "
    "Resampled to 1920 wide resample-3840 Resampled to 3840 wide resample-4096 Resampled to 4096 "
    "wide desqueeze-2048 De-squeezed, 2048 wide desqueeze-1920 De-squeezed, 1920 wide "
    "desqueeze-3840 De-squeezed, 3840 wide desqueeze-4096 De-squeezed, 4096 wide wide-16x9 Full "
    "width, 16:9 wide-2x1 Full width, 2:1 wide-239 Full width, 2.39:1 squeeze-2-239 2x squeeze for "
    "2.39:1 squeeze-1.5-16x9 1.5x squeeze for 16:9 centre-4096 Centre, 4096 x 2160 fast-2048 High "
    "speed, bayer-12-packed bayer-12-lossless bayer-12-3-1 vc-3-444-12 vc-3-hqx jpeg-xs-422-10-6-1 "
    "packed-422-10 avc-intra-100 spherical, 35 mm size anamorphic 2x published sheet ";

constexpr int kOrders = 3;
constexpr std::uint32_t kHalf = 1U << 15;
constexpr std::uint32_t kTop = 0xFF000000U;
constexpr std::uint32_t kFastest = 2;   ///< First steps of a probability are 1/2, 1/3, ...
constexpr std::uint32_t kSlowest = 30;  ///< ... down to this.

/// The probability of a one in one context, and how often the context was seen.
struct Chance {
  std::uint16_t one = static_cast<std::uint16_t>(kHalf);
  std::uint16_t seen = 0;

  void learn(bool bit) {
    const std::uint32_t pace = std::min(seen + kFastest, kSlowest);
    if (bit) {
      one = static_cast<std::uint16_t>(one + (0xFFFFU - one) / pace);
    } else {
      one = static_cast<std::uint16_t>(one - one / pace);
    }
    if (seen < 0xFFFF) ++seen;
  }
};

/// Predicts bits from the none, one and two bytes before, each weighed by how often it was seen.
class Model {
 public:
  Model() {
    for (auto& chances : chances_) chances.resize(kSlots);
    for (const char c : kSample) {
      for (int bit = 7; bit >= 0; --bit) learn(((static_cast<unsigned>(c) >> bit) & 1U) != 0);
    }
  }

  /// Of a one, in 1/65536; never 0 and never 1.
  [[nodiscard]] std::uint32_t chance() const {
    constexpr std::array<std::uint64_t, kOrders> kTrust = {1, 6, 48};
    std::uint64_t sum = kHalf;
    std::uint64_t weights = 1;
    for (std::size_t order = 0; order < kOrders; ++order) {
      const Chance& chance = chances_[order][slot(order)];
      const std::uint64_t weight = kTrust[order] * std::min<std::uint64_t>(chance.seen, 12);
      sum += weight * chance.one;
      weights += weight;
    }
    return static_cast<std::uint32_t>(std::clamp<std::uint64_t>(sum / weights, 64, 65536 - 64));
  }

  void learn(bool bit) {
    for (std::size_t order = 0; order < kOrders; ++order) chances_[order][slot(order)].learn(bit);
    partial_ = (partial_ << 1) | (bit ? 1U : 0U);
    if (partial_ < 256) return;
    before_ = ((before_ << 8) | (partial_ & 0xFF)) & 0xFFFF;
    partial_ = 1;
  }

 private:
  static constexpr std::size_t kSlots = 1U << 14;

  /// Contexts share slots by a hash; mixing makes collisions harmless.
  [[nodiscard]] std::size_t slot(std::size_t order) const {
    if (order == 0) return partial_;
    const std::uint32_t context = order == 1 ? before_ & 0xFF : before_;
    return ((context * 0x9E3779B1U) >> 12 ^ partial_ * 0x85EBCA6BU >> 6) % kSlots;
  }

  std::array<std::vector<Chance>, kOrders> chances_;
  std::uint32_t before_ = 0;   ///< The last two bytes.
  std::uint32_t partial_ = 1;  ///< The bits of the present byte after a leading one.
};

/// Where the interval from low to high splits for a chance in 1/65536.
std::uint32_t split(std::uint32_t low, std::uint32_t high, std::uint32_t chance) {
  const std::uint64_t range = high - low;
  return low + static_cast<std::uint32_t>((range * chance) >> 16);
}

class Encoder {
 public:
  void bit(bool value) {
    const std::uint32_t middle = split(low_, high_, model_.chance());
    model_.learn(value);
    if (value) {
      high_ = middle;
    } else {
      low_ = middle + 1;
    }
    while (((low_ ^ high_) & kTop) == 0) {
      bytes_.push_back(static_cast<std::uint8_t>(high_ >> 24));
      low_ <<= 8;
      high_ = (high_ << 8) | 0xFF;
    }
  }
  void byte(std::uint8_t value) {
    for (int at = 7; at >= 0; --at) bit(((value >> at) & 1) != 0);
  }
  /// As few bytes as point into the interval, a reader taking zeros after them.
  Bytes finish() {
    if (low_ != 0) bytes_.push_back(static_cast<std::uint8_t>((low_ >> 24) + 1));
    return std::move(bytes_);
  }

 private:
  Model model_;
  Bytes bytes_;
  std::uint32_t low_ = 0;
  std::uint32_t high_ = 0xFFFFFFFFU;
};

class Decoder {
 public:
  explicit Decoder(const Bytes& bytes) : bytes_(bytes) {
    for (int i = 0; i < 4; ++i) value_ = (value_ << 8) | next();
  }
  bool bit() {
    const std::uint32_t middle = split(low_, high_, model_.chance());
    const bool value = value_ <= middle;
    model_.learn(value);
    if (value) {
      high_ = middle;
    } else {
      low_ = middle + 1;
    }
    while (((low_ ^ high_) & kTop) == 0) {
      low_ <<= 8;
      high_ = (high_ << 8) | 0xFF;
      value_ = (value_ << 8) | next();
    }
    return value;
  }
  std::uint8_t byte() {
    unsigned value = 0;
    for (int i = 0; i < 8; ++i) value = (value << 1) | (bit() ? 1U : 0U);
    return static_cast<std::uint8_t>(value);
  }

 private:
  std::uint32_t next() { return at_ < bytes_.size() ? bytes_[at_++] : 0; }

  const Bytes& bytes_;
  std::size_t at_ = 0;
  Model model_;
  std::uint32_t low_ = 0;
  std::uint32_t high_ = 0xFFFFFFFFU;
  std::uint32_t value_ = 0;
};

}  // namespace

Bytes squeezed(const Bytes& bytes) {
  Encoder encoder;
  encoder.byte(static_cast<std::uint8_t>(bytes.size() & 0xFF));
  encoder.byte(static_cast<std::uint8_t>(bytes.size() >> 8));
  for (const std::uint8_t byte : bytes) encoder.byte(byte);
  return encoder.finish();
}

std::optional<Bytes> unsqueezed(const Bytes& bytes) {
  Decoder decoder(bytes);
  std::size_t size = decoder.byte();
  size |= static_cast<std::size_t>(decoder.byte()) << 8;
  if (size > kMaxLinkBytes) return std::nullopt;
  Bytes whole(size);
  for (std::uint8_t& byte : whole) byte = decoder.byte();
  return whole;
}

}  // namespace widegate
