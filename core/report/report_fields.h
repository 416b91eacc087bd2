// The one list of everything in a Report, with the keys other tools rely on. JSON, tables, the
// front end's figures and the workings all walk it; a new number is added here once.
#pragma once

#include <string_view>

#include "core/report/report.h"

namespace widegate {

/// Receives a Report value by value. Keys carry the unit; objects and lists nest.
class ReportVisitor {
 public:
  ReportVisitor() = default;
  ReportVisitor(const ReportVisitor&) = delete;
  ReportVisitor& operator=(const ReportVisitor&) = delete;
  virtual ~ReportVisitor() = default;

  /// An object: a section, or an item of a list (then the key is empty).
  virtual void begin_object(std::string_view key) = 0;
  virtual void end_object() = 0;
  virtual void begin_list(std::string_view key) = 0;
  virtual void end_list() = 0;

  virtual void number(std::string_view key, double value) = 0;
  virtual void whole(std::string_view key, std::int64_t value) = 0;
  /// least == most: a plain number.
  virtual void span(std::string_view key, Span value) = 0;
  virtual void counts(std::string_view key, ByteRange value) = 0;
  /// An exact fraction, as text.
  virtual void fraction(std::string_view key, Rational value) = 0;
  virtual void flag(std::string_view key, bool value) = 0;
  virtual void text(std::string_view key, std::string_view value) = 0;
  /// A figure that does not exist here: depth to infinity, no limit.
  virtual void nothing(std::string_view key) = 0;
};

/// "none", "mode", "recording", "card".
[[nodiscard]] std::string_view rate_limit_key(RateLimit limit);

/// Walks a valid report in the order of the questions. A report with problems has only these.
void visit_report(const Report& report, ReportVisitor& visitor);

}  // namespace widegate
