// A part of a show beside its report and the rows it names: what every sum of the show starts from.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/report/report.h"
#include "core/show/show.h"

namespace widegate {

/// One part; the pointers are null only for `tape` (the plan has none).
struct EvaluatedPart {
  const ShowPart* part = nullptr;
  Report report;
  const Card* card = nullptr;
  const Drive* drive = nullptr;
  const Tape* tape = nullptr;

  [[nodiscard]] const Plan& plan() const { return part->plan; }
  [[nodiscard]] std::int64_t cameras() const {
    return plan().shooting.units * plan().shooting.cameras_per_unit;
  }
  [[nodiscard]] std::int64_t tape_copies() const {
    return tape == nullptr ? 0 : plan().store.tape_copies;
  }
  /// Days it has shot by the end of a shooting day of the show.
  [[nodiscard]] std::int64_t days_by(std::int64_t day) const {
    const std::int64_t past = day - part->first_day + 1;
    return past < 0 ? 0 : past < plan().shooting.days ? past : plan().shooting.days;
  }
  [[nodiscard]] bool shoots_on(std::int64_t day) const { return days_by(day) > days_by(day - 1); }
};

/// Which end of the codecs' ranges.
enum class End { light, heavy };

/// Sums for both ends, in the order of the parts; rounded once, so that the order changes nothing
/// within the 15 digits that a double holds.
[[nodiscard]] constexpr Span plus(Span a, Span b) { return {a.least + b.least, a.most + b.most}; }
[[nodiscard]] constexpr Span times(Span a, double k) { return {a.least * k, a.most * k}; }
[[nodiscard]] constexpr ByteRange plus(ByteRange a, ByteRange b) {
  return {a.least + b.least, a.most + b.most};
}

}  // namespace widegate
