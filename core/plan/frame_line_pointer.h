// Every frame line has the same fields: those of the first stand for all, and a pointer goes from
// one line to another.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace widegate {

/// The pointer of a field of the first line as that of another; any other pointer as it is.
[[nodiscard]] std::string on_line(std::string_view pointer, std::size_t line);

/// The way back: the pointer of the same field of the first line.
[[nodiscard]] std::string on_first_line(std::string_view pointer);

}  // namespace widegate
