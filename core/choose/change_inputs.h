// The inputs that could make a rejected format pass, as one table: which requirements each can
// help, how it is turned or what it can be set to. Turning and verifying is smallest_change.cpp's;
// nobody else needs this header.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/choose/format_figures.h"
#include "core/choose/smallest_change.h"
#include "core/field/field.h"

namespace widegate {

/// One rejected format, ready to be judged again under a changed plan.
struct RejectedFormat {
  const Plan& plan;
  const Catalogue& library;
  FormatRows rows;
  Findings findings;     ///< As judged under `plan`.
  std::size_t line = 0;  ///< Frame line that misses most, where a line misses something.
};

/// Fields to set together.
using Patch = std::vector<TypedField>;

/// An input that moves in whole steps of 1 / steps_per_unit. What fails and is helped by it is met
/// from some step on and stays met beyond.
struct Dial {
  std::int64_t steps_per_unit = 0;  ///< 0: no dial.
  bool up = false;                  ///< Turning it up can help.
  bool down = false;                ///< Turning it down can help.
  /// What is in force; nothing: the field's own value.
  double (*now)(const Plan& plan, const Catalogue& library) = nullptr;
};

/// One input.
struct ChangeInput {
  Input input;
  std::string_view key;
  std::string_view label;
  std::string_view unit;
  std::string_view pointer;  ///< Of the plan's field; empty for a figure of the card.
  std::uint32_t helps = 0;   ///< One bit for each requirement, by its number.
  Dial dial = {};
  /// Of a figure of the card: its field.
  const Field<Card>* (*card_field)() = nullptr;
  /// What it can be set to, the smallest change first; beside the dial's steps.
  std::vector<Patch> (*settings)(const RejectedFormat& format) = nullptr;
};

/// In the order of the enumeration.
[[nodiscard]] std::span<const ChangeInput> change_inputs();

}  // namespace widegate
