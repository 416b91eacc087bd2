// Numbers and text as the bytes of a link: variable-length integers, decimals as digits and an
// exponent, text by reference to earlier text. Knows nothing of plans.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/encode/base64url.h"

namespace widegate {

/// Appends values to a byte string.
class LinkWriter {
 public:
  void whole(std::int64_t value);     ///< 7 bits a byte, sign folded into the lowest bit.
  void count(std::size_t value);      ///< 7 bits a byte.
  void decimal(double value);         ///< The digits of the shortest decimal, then its exponent.
  void fraction(Rational value);      ///< Numerator and denominator.
  void text(std::string_view value);  ///< Its number when it was written before.
  void checksum();                    ///< CRC-24 (RFC 4880) of everything so far.
  [[nodiscard]] Bytes take() { return std::move(bytes_); }

 private:
  Bytes bytes_;
  std::vector<std::string> texts_;
};

/// Takes values off a byte string. After the first value that is not there or makes no sense, ok()
/// is false and every further value is zero or empty.
class LinkReader {
 public:
  explicit LinkReader(Bytes bytes) : bytes_(std::move(bytes)) {}

  [[nodiscard]] std::int64_t whole();
  [[nodiscard]] std::size_t count();
  [[nodiscard]] double decimal();
  [[nodiscard]] Rational fraction();
  [[nodiscard]] std::string text();
  /// Checks and removes the checksum at the end.
  [[nodiscard]] bool checksum();
  [[nodiscard]] bool ok() const { return ok_; }
  [[nodiscard]] bool at_end() const { return at_ == bytes_.size(); }
  void fail() { ok_ = false; }

 private:
  Bytes bytes_;
  std::size_t at_ = 0;
  bool ok_ = true;
  std::vector<std::string> texts_;
};

}  // namespace widegate
