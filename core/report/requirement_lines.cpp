#include "core/report/requirement_lines.h"

namespace widegate {
namespace {

Severity severity_of(Met met) {
  if (met == Met::missed) return Severity::fail;
  return met == Met::not_known ? Severity::caution : Severity::ok;
}

}  // namespace

std::vector<RequirementLine> requirement_lines(const Report& report) {
  std::vector<RequirementLine> lines;
  if (!report.problems.empty()) return lines;
  for_each_asked(report.commission.findings, [&](Requirement requirement, const Finding& finding) {
    const RequirementInfo& info = requirement_info(requirement);
    const bool several = report.frames.size() > 1 && info.of_a_line;
    std::string label(info.label);
    if (several) label += " (" + report.frames[finding.line].name + ")";
    lines.push_back({.label = std::move(label),
                     .text = finding_text(requirement, finding),
                     .severity = severity_of(finding.met)});
  });
  return lines;
}

}  // namespace widegate
