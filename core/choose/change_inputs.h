// The inputs that could make a rejected format pass, as one table: which requirements each can
// help, how it is turned or what it can be set to. Turning and verifying is smallest_change.cpp's;
// nobody else needs this header.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "core/choose/format_figures.h"
#include "core/choose/smallest_change.h"
#include "core/field/field.h"

namespace widegate {

/// One rejected format, ready to be judged again under changed conditions.
struct RejectedFormat {
  const Plan& plan;
  const Catalogue& library;
  const Camera& camera;
  const SensorMode& mode;
  const Recording& recording;
  const Codec& codec;
  Conditions conditions;
  Findings findings;  ///< As judged under `conditions`.

  [[nodiscard]] bool fails(Requirement requirement) const {
    return !findings[static_cast<std::size_t>(requirement)].met;
  }
};

/// An input that moves in whole steps of 1 / steps_per_unit. What fails and is helped by it is met
/// from some step on and stays met beyond.
struct Dial {
  std::int64_t steps_per_unit = 1;
  bool up = false;    ///< Turning it up can help.
  bool down = false;  ///< Turning it down can help.
  double (*now)(const Conditions& conditions) = nullptr;
  void (*set)(Conditions& conditions, std::int64_t step, std::int64_t steps_per_unit) = nullptr;
};

/// One input.
struct Lever {
  Input input;
  std::string_view key;
  std::string_view label;
  std::string_view unit;
  std::string_view pointer;                ///< Of the plan's field; empty for a figure of the card.
  std::uint32_t helps = 0;                 ///< One bit for each requirement, by its number.
  const FieldSpec* (*limits)() = nullptr;  ///< Of a dial.
  Dial dial = {};                          ///< When it has limits.
  /// What it can be set to, the smallest change first; beside the dial's steps.
  std::vector<Conditions> (*settings)(const RejectedFormat& format) = nullptr;
};

/// In the order of the enumeration.
[[nodiscard]] std::span<const Lever> change_levers();

}  // namespace widegate
