// Reading and writing whole files, and telling people what is wrong with them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/problem.h"

namespace widegate::cli {

/// The text of a file, or of standard input for "-". When it cannot be read, says so on standard
/// error and gives nothing.
[[nodiscard]] std::optional<std::string> read_text(const std::string& file);

/// Writes a file, or standard output for "-". When it cannot be written, says so on standard error.
[[nodiscard]] bool write_text(const std::string& file, std::string_view text);

/// One line a problem on standard error: "FILE: POINTER: VALUE is not accepted; expected ...".
void print_problems(const std::string& file, const Problems& problems);

/// The same for what was taken all the same: "FILE: caution: POINTER: VALUE; expected ...".
void print_cautions(const std::string& file, const Problems& warnings);

}  // namespace widegate::cli
