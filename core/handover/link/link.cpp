#include "core/handover/link/link.h"

#include "core/base/plain_text.h"
#include "core/base/version.h"
#include "core/encode/base64url.h"
#include "core/field/field.h"
#include "core/handover/link/link_catalogue.h"
#include "core/handover/link/link_coder.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/link_rows.h"
#include "core/handover/link/link_tags.h"
#include "core/plan/carried_rows.h"
#include "core/plan/carry_over.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

LinkTable<Plan> plan_table() { return {.fields = plan_fields(), .tags = kPlanTags}; }
LinkTable<Plan> line_table() { return {.fields = plan_fields(), .tags = kFrameLineTags}; }

constexpr std::string_view kWeightsPointer = "/choose/weights";

/// A plan as a link has it: what it says in fields that are no more is not carried over yet.
struct LinkedPlan {
  Plan plan;
  RetiredChoices retired;
  RetiredSeen seen;
  bool weights_said = false;
};

/// The values that need no room in the link of this plan. Weights without their set are one's own
/// (carry_over_weights), so another set is written beside them.
Plan plain_plan(const Plan& plan) {
  Plan plain;
  plain.choose.weights = WeightSet::balanced;
  Plan weights;
  weights.choose = plan.choose;
  weights.choose.weights = WeightSet::balanced;
  carry_over_weights(weights, false);
  plain.choose.weights = weights.choose.weights;
  return plain;
}

void write_plan(LinkWriter& writer, const Plan& plan, const RetiredChoices& retired) {
  const auto write_retired = [&](std::size_t tag, std::string_view pointer) {
    const auto* field = retired_field(pointer);
    if (field == nullptr) return;
    const FieldValue value = field->read(retired, 0);
    if (value == field->read(RetiredChoices{}, 0)) return;
    writer.count(tag);
    write_value(writer, *field, value);
  };
  write_row(writer, plan_table(), plan, plain_plan(plan), 0, write_retired);
  const Plan plain;
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

LinkedPlan read_plan(LinkReader& reader) {
  LinkedPlan linked;
  Plan& plan = linked.plan;
  const auto seen = [&](std::string_view pointer) {
    linked.weights_said = linked.weights_said || pointer == kWeightsPointer;
  };
  const auto read_retired = [&](std::string_view pointer) {
    const auto* field = retired_field(pointer);
    if (field == nullptr) return false;
    std::string storage;
    field->write(linked.retired, 0, read_value(reader, *field, storage));
    linked.seen.add(*field);
    return reader.ok();
  };
  read_row(reader, plan_table(), plan, 0, seen, read_retired);
  if (reader.ok()) read_frame_lines(reader, plan);
  for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
    plan.choose.cameras.push_back(reader.text());
  }
  plan.own = read_catalogue(reader);
  carry_over_weights(plan, linked.weights_said);
  return linked;
}

tl::unexpected<Problems> too_long(std::string has, std::size_t most, std::string_view unit) {
  std::string accepted = "at most " + std::to_string(most) + " ";
  accepted.append(unit).append(" in a link: hand this plan over as a file");
  Problem problem{.pointer = "", .value = std::move(has), .accepted = std::move(accepted)};
  return tl::unexpected<Problems>(Problems{std::move(problem)});
}

}  // namespace

namespace {

Bytes bytes_of(const Plan& plan, const RetiredChoices& retired) {
  LinkWriter writer;
  write_plan(writer, plan, retired);
  writer.checksum();
  return writer.take();
}

std::string link_of(const Bytes& bytes) {
  return std::string(kLinkVersion) + "." + to_base64url(squeezed(bytes));
}

}  // namespace

std::string plan_to_link(const Plan& plan) { return link_of(bytes_of(plan, RetiredChoices{})); }

Checked<std::string> plan_to_opening_link(const Plan& plan) {
  const Bytes bytes = bytes_of(plan, RetiredChoices{});
  if (bytes.size() > kMaxLinkBytes) {
    return too_long(std::to_string(bytes.size()) + " bytes", kMaxLinkBytes, "bytes");
  }
  std::string link = link_of(bytes);
  if (link.size() <= kMaxLinkLength) return link;
  return too_long(std::to_string(link.size()) + " characters", kMaxLinkLength, "characters");
}

Checked<Plan> plan_from_link(std::string_view link, const Catalogue& catalogue) {
  const std::string_view fragment = link_fragment(link);
  if (fragment.size() > kMaxLinkLength) {
    return refused_link(link,
                        "a link of at most " + std::to_string(kMaxLinkLength) + " characters");
  }
  const std::string_view version = link_version(fragment);
  if (version.empty()) return refused_link(link, "a link made by Widegate, which this one is not");
  if (version != kLinkVersion) {
    return refused_link(link, "a link of version " + std::string(kLinkVersion) +
                                  "; this one was made by a newer Widegate, reload to update");
  }
  const auto coded = from_base64url(fragment.substr(version.size() + 1));
  const std::string_view whole =
      "the whole link as it was copied; this one is damaged or cut short";
  const auto bytes = coded ? unsqueezed(*coded) : coded;
  if (!bytes) return refused_link(link, std::string(whole));
  LinkReader reader(*bytes);
  if (!reader.checksum()) return refused_link(link, std::string(whole));
  LinkedPlan linked = read_plan(reader);
  Plan& plan = linked.plan;
  if (!reader.ok() || !reader.at_end() || link_of(bytes_of(plan, linked.retired)) != fragment) {
    return refused_link(link, "a link made by Widegate, which this one is not");
  }
  carry_over(plan, linked.retired, linked.seen);
  use_current_ids(plan);
  if (Problems problems = check_plan(plan, catalogue); !problems.empty()) {
    return tl::unexpected<Problems>(std::move(problems));
  }
  return plan;
}

}  // namespace widegate
