// Text that people typed or a file brought: whether it can be shown as it stands, and how it is put
// into a message.
#pragma once

#include <string>
#include <string_view>

namespace widegate {

/// True for printable UTF-8: no control characters, no malformed or overlong sequences.
[[nodiscard]] bool is_plain_text(std::string_view text);

/// True for an id: 1 to 48 of a-z, 0-9, '-' and '.', starting with a letter or digit.
[[nodiscard]] bool is_id(std::string_view text);

/// Text in double quotes, fit for one line of a message: control and malformed characters become
/// '?', and it is cut to at most 80 bytes at a character boundary.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace widegate
