// Sections of labelled lines for a terminal, wrapped at 80 columns. What the lines say is their
// owner's.
#pragma once

#include <string>
#include <string_view>

namespace widegate::cli {

class TextTable {
 public:
  /// A paragraph of its own.
  void paragraph(std::string_view text);
  /// A line as it is, for figures in columns; its owner keeps it within 80.
  void line(std::string_view text);
  /// A heading with an empty line above.
  void section(std::string_view title);
  /// A label and its value; both wrap. Blanks in front of a label set it in.
  void row(std::string_view label, std::string_view value);
  /// A short mark in a column of its own, and a sentence.
  void marked(std::string_view mark, std::string_view text);

  [[nodiscard]] const std::string& str() const { return text_; }

 private:
  void columns(std::string_view left, std::string_view right, std::size_t left_width);

  std::string text_;
};

}  // namespace widegate::cli
