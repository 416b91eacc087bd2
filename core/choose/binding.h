// What binds: for each requirement, how many more formats would pass without it.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/choose/ranking.h"

namespace widegate {

/// One requirement that some format misses, or all those of size together.
struct Binding {
  std::optional<Requirement> requirement;  ///< Nothing: those of size, as one.
  std::size_t missed_by = 0;               ///< Formats that miss it (any of them).
  std::size_t would_pass = 0;              ///< Formats that miss nothing else.

  [[nodiscard]] std::string_view key() const;    ///< "cover"; "size".
  [[nodiscard]] std::string_view label() const;  ///< "Image circle".
};

/// The one that binds most first: by formats that would pass, then by formats that miss it, then in
/// the order of the requirements. The group stands among them when it would let pass more than any
/// of its own alone.
[[nodiscard]] std::vector<Binding> what_binds(std::span<const RankedFormat> formats);

}  // namespace widegate
