#include "core/handover/link/link.h"

#include "core/base/plain_text.h"
#include "core/base/version.h"
#include "core/encode/base64url.h"
#include "core/field/field.h"
#include "core/handover/link/link_catalogue.h"
#include "core/handover/link/link_coder.h"
#include "core/handover/link/link_rows.h"
#include "core/handover/link/link_tags.h"
#include "core/plan/carried_rows.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

LinkTable<Plan> plan_table() { return {.fields = plan_fields(), .tags = kPlanTags}; }
LinkTable<Plan> line_table() { return {.fields = plan_fields(), .tags = kFrameLineTags}; }

void write_plan(LinkWriter& writer, const Plan& plan) {
  const Plan plain;
  write_row(writer, plan_table(), plan, plain);
  writer.count(plan.deliverable.frame_lines.size());
  for (std::size_t line = 0; line < plan.deliverable.frame_lines.size(); ++line) {
    write_row(writer, line_table(), plan, plain, line);
  }
  writer.count(plan.choose.cameras.size());
  for (const std::string& camera : plan.choose.cameras) writer.text(camera);
  write_catalogue(writer, plan.own);
}

void read_frame_lines(LinkReader& reader, Plan& plan) {
  auto& lines = plan.deliverable.frame_lines;
  const std::size_t count = reader.count();
  if (count == 0 || count > kMaxFrameLines) return reader.fail();
  lines.assign(count, FrameLine{});
  for (std::size_t line = 0; line < count && reader.ok(); ++line) {
    read_row(reader, line_table(), plan, line);
  }
}

Plan read_plan(LinkReader& reader) {
  Plan plan;
  read_row(reader, plan_table(), plan);
  if (reader.ok()) read_frame_lines(reader, plan);
  for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
    plan.choose.cameras.push_back(reader.text());
  }
  plan.own = read_catalogue(reader);
  return plan;
}

tl::unexpected<Problems> refused(std::string_view link, std::string accepted) {
  Problem problem{.pointer = "", .value = in_quotes(link), .accepted = std::move(accepted)};
  return tl::unexpected<Problems>(Problems{std::move(problem)});
}

std::string_view fragment_of(std::string_view link) {
  const std::size_t hash = link.rfind('#');
  return hash == std::string_view::npos ? link : link.substr(hash + 1);
}

/// Digits before the first point, or nothing.
std::string_view version_of(std::string_view fragment) {
  const std::size_t point = fragment.find('.');
  if (point == 0 || point == std::string_view::npos || point > 4) return {};
  const std::string_view version = fragment.substr(0, point);
  return version.find_first_not_of("0123456789") == version.npos ? version : std::string_view();
}

}  // namespace

std::string plan_to_link(const Plan& plan) {
  LinkWriter writer;
  write_plan(writer, plan);
  writer.checksum();
  return std::string(kLinkVersion) + "." + to_base64url(squeezed(writer.take()));
}

Checked<Plan> plan_from_link(std::string_view link, const Catalogue& catalogue) {
  const std::string_view fragment = fragment_of(link);
  if (fragment.size() > kMaxLinkLength) {
    return refused(link, "a link of at most " + std::to_string(kMaxLinkLength) + " characters");
  }
  const std::string_view version = version_of(fragment);
  if (version.empty()) return refused(link, "a link made by Widegate, which this one is not");
  if (version != kLinkVersion) {
    return refused(link, "a link of version " + std::string(kLinkVersion) +
                             "; this one was made by a newer Widegate, reload to update");
  }
  const auto coded = from_base64url(fragment.substr(version.size() + 1));
  const std::string_view whole =
      "the whole link as it was copied; this one is damaged or cut short";
  const auto bytes = coded ? unsqueezed(*coded) : coded;
  if (!bytes) return refused(link, std::string(whole));
  LinkReader reader(*bytes);
  if (!reader.checksum()) return refused(link, std::string(whole));
  Plan plan = read_plan(reader);
  if (!reader.ok() || !reader.at_end() || plan_to_link(plan) != fragment) {
    return refused(link, "a link made by Widegate, which this one is not");
  }
  use_current_ids(plan);
  if (Problems problems = check_plan(plan, catalogue); !problems.empty()) {
    return tl::unexpected<Problems>(std::move(problems));
  }
  return plan;
}

}  // namespace widegate
