// A quantity known as one value, or as a range with two ends.
#pragma once

namespace widegate {

/// A quantity that is a range when the codec is one.
struct Span {
  double least = 0;
  double most = 0;
  friend bool operator==(Span, Span) = default;
};

}  // namespace widegate
