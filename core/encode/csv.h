// Tables as comma-separated text for spreadsheets (RFC 4180). Only writing; what is in a table is
// its owner's.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace widegate {

/// Collects cells and rows. Cells are quoted where RFC 4180 asks for it; rows end in CR LF.
class CsvWriter {
 public:
  /// A text. One that a spreadsheet would take for a formula (it starts with = + - @, a tab or a
  /// carriage return) gets an apostrophe in front, so that a name in somebody's camera file stays a
  /// name.
  CsvWriter& text(std::string_view value);
  /// A number as print_number; empty for NaN and infinities. Never altered: a number is no formula.
  CsvWriter& number(double value);
  CsvWriter& whole(std::int64_t value);
  CsvWriter& empty();
  CsvWriter& end_row();

  [[nodiscard]] const std::string& str() const { return text_; }

 private:
  void separate();

  std::string text_;
  bool row_started_ = false;
};

}  // namespace widegate
