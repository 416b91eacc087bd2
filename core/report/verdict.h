// One line of words for each question: what a person would say aloud, with its severity. Built from
// the report's notes and figures; the standing cautions, which hold for every plan, do not colour
// it.
#pragma once

#include <string>

#include "core/plan/plan.h"
#include "core/report/notes.h"
#include "core/report/report.h"

namespace widegate {

struct Verdict {
  Severity severity = Severity::ok;
  std::string text;  ///< One short sentence without a full stop.
};

/// The verdict on a question. A report with problems has one and the same verdict for all: fail.
/// `choose` says only which requirements this plan's own format meets; the ranking is elsewhere.
[[nodiscard]] Verdict verdict(const Plan& plan, const Report& report, Question question);

}  // namespace widegate
