// The words the ASC FDL schema uses for its choices, each beside the enumerator it stands for.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "core/handover/fdl/document.h"

namespace widegate::fdl {

template <class Value, std::size_t kCount>
using Words = std::array<std::pair<std::string_view, Value>, kCount>;

inline constexpr Words<Layer, 4> kLayerWords = {{
    {"canvas.dimensions", Layer::canvas},
    {"canvas.effective_dimensions", Layer::effective},
    {"framing_decision.protection_dimensions", Layer::protection},
    {"framing_decision.dimensions", Layer::framing},
}};
inline constexpr Words<FitMethod, 4> kFitMethodWords = {{
    {"width", FitMethod::width},
    {"height", FitMethod::height},
    {"fit_all", FitMethod::fit_all},
    {"fill", FitMethod::fill},
}};
inline constexpr Words<Alignment, 3> kVerticalWords = {{
    {"top", Alignment::start},
    {"center", Alignment::center},
    {"bottom", Alignment::end},
}};
inline constexpr Words<Alignment, 3> kHorizontalWords = {{
    {"left", Alignment::start},
    {"center", Alignment::center},
    {"right", Alignment::end},
}};
inline constexpr Words<Parity, 2> kParityWords = {{
    {"whole", Parity::whole},
    {"even", Parity::even},
}};
inline constexpr Words<RoundMode, 3> kRoundModeWords = {{
    {"up", RoundMode::up},
    {"down", RoundMode::down},
    {"round", RoundMode::round},
}};

/// The word of an enumerator; every enumerator has one.
template <class Value, std::size_t kCount>
[[nodiscard]] constexpr std::string_view word_of(const Words<Value, kCount>& words, Value value) {
  for (const auto& [word, candidate] : words) {
    if (candidate == value) return word;
  }
  return {};
}

/// Sets `value` to what `text` stands for; false, and `value` untouched, when it is no such word.
template <class Value, std::size_t kCount>
[[nodiscard]] bool read_word(const Words<Value, kCount>& words, std::string_view text,
                             Value& value) {
  for (const auto& [word, candidate] : words) {
    if (word == text) {
      value = candidate;
      return true;
    }
  }
  return false;
}

/// "one of a, b, c".
template <class Value, std::size_t kCount>
[[nodiscard]] std::string list_of(const Words<Value, kCount>& words) {
  std::string text = "one of ";
  for (std::size_t i = 0; i < kCount; ++i) {
    if (i > 0) text += ", ";
    text += words[i].first;
  }
  return text;
}

}  // namespace widegate::fdl
