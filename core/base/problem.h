// What is wrong with an input and what would be accepted instead. Every boundary of the core
// (JSON documents, links, typed values) reports in these; formulas never see a rejected value.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace widegate {

/// One rejected value.
struct Problem {
  std::string pointer;   ///< RFC 6901 JSON pointer of the value, "" for the whole document.
  std::string value;     ///< The value as it was found, shortened to at most 80 bytes.
  std::string accepted;  ///< What would have been accepted, as a noun phrase.

  friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

/// A value, or every problem that kept it from being made (never an empty list).
template <class T>
using Checked = tl::expected<T, Problems>;

/// "POINTER: VALUE is not accepted; expected ACCEPTED" on one line; the root pointer prints as "/".
[[nodiscard]] std::string to_line(const Problem& problem);

}  // namespace widegate
