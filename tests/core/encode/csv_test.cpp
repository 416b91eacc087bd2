// Cells as RFC 4180 writes them, and text that must not become a spreadsheet's formula.
#include "core/encode/csv.h"

#include <doctest/doctest.h>

#include <array>
#include <limits>
#include <string_view>

namespace widegate {
namespace {

TEST_CASE("a text cell is quoted where RFC 4180 asks for it, and never read as a formula") {
  struct Row {
    std::string_view text;
    std::string_view cell;
  };
  constexpr auto kRows = std::to_array<Row>({
      {"alder", "alder"},
      {"", ""},
      {"open gate, 2x", "\"open gate, 2x\""},
      {"the \"long\" end", "\"the \"\"long\"\" end\""},
      {"two\r\nlines", "\"two\r\nlines\""},
      {"=1+1", "'=1+1"},
      {"+44", "'+44"},
      {"-1", "'-1"},
      {"@sum", "'@sum"},
      {"\tname", "'\tname"},
      {"=HYPERLINK(\"x\",1)", "\"'=HYPERLINK(\"\"x\"\",1)\""},
      {"a=b", "a=b"},
  });
  for (const Row& row : kRows) {
    CAPTURE(row.text);
    CsvWriter csv;
    CHECK(csv.text(row.text).str() == row.cell);
  }
}

TEST_CASE("numbers stay numbers, and what does not exist is an empty cell") {
  CsvWriter csv;
  csv.number(-1.5).whole(-7).empty().number(std::numeric_limits<double>::infinity()).end_row();
  csv.empty().text("x").end_row();
  CHECK(csv.str() == "-1.5,-7,,\r\n,x\r\n");
}

}  // namespace
}  // namespace widegate
