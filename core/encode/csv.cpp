#include "core/encode/csv.h"

#include <cmath>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr std::string_view kFormulaStarts = "=+-@\t\r";
constexpr std::string_view kNeedsQuotes = ",\"\r\n";

}  // namespace

void CsvWriter::separate() {
  if (row_started_) text_ += ',';
  row_started_ = true;
}

CsvWriter& CsvWriter::text(std::string_view value) {
  separate();
  const bool formula = !value.empty() && kFormulaStarts.find(value.front()) != kFormulaStarts.npos;
  const bool quoted = value.find_first_of(kNeedsQuotes) != value.npos;
  if (quoted) text_ += '"';
  if (formula) text_ += '\'';
  for (const char c : value) {
    if (c == '"') text_ += '"';
    text_ += c;
  }
  if (quoted) text_ += '"';
  return *this;
}

CsvWriter& CsvWriter::number(double value) {
  separate();
  if (std::isfinite(value)) text_ += print_number(value);
  return *this;
}

CsvWriter& CsvWriter::whole(std::int64_t value) {
  separate();
  text_ += std::to_string(value);
  return *this;
}

CsvWriter& CsvWriter::empty() {
  separate();
  return *this;
}

CsvWriter& CsvWriter::end_row() {
  text_ += "\r\n";
  row_started_ = false;
  return *this;
}

}  // namespace widegate
