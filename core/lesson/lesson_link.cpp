#include "core/lesson/lesson_link.h"

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/encode/base64url.h"
#include "core/handover/link/link.h"
#include "core/handover/link/link_catalogue.h"
#include "core/handover/link/link_coder.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/link_rows.h"
#include "core/handover/link/link_tags.h"
#include "core/lesson/built_in_lessons.h"
#include "core/lesson/lesson_fields.h"
#include "core/lesson/lesson_json.h"
#include "core/plan/carried_rows.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kVersion = "1";
constexpr std::string_view kNamed = "id.";

// The numbers that stand for fields: links live for ever, so these lists only grow at their ends.
constexpr std::string_view kLessonTags[] = {"/title", "/aim"};
constexpr std::string_view kStepTags[] = {"/title",   "/words",    "/control", "/picture",
                                          "/against", "/question", "/answer"};
constexpr std::string_view kFigureTags[] = {"/figure", "/does",   "/times", "/value",
                                            "/says",   "/within", "/since"};

LinkTable<Lesson> lesson_table() { return {.fields = lesson_fields(), .tags = kLessonTags}; }
LinkTable<LessonStep> step_table() { return {.fields = lesson_step_fields(), .tags = kStepTags}; }
LinkTable<LessonFigure> figure_table() {
  return {.fields = lesson_figure_fields(), .tags = kFigureTags};
}
LinkTable<Plan> plan_table() { return {.fields = plan_fields(), .tags = kPlanTags}; }
LinkTable<Plan> line_table() { return {.fields = plan_fields(), .tags = kFrameLineTags}; }

/// A plan by what differs from the step before: fields; how many frame lines (0: as before) and
/// those that are there whole; whether cameras and own rows are others, and which.
void write_plan(LinkWriter& writer, const Plan& plan, const Plan& before) {
  write_row(writer, plan_table(), plan, before);
  const auto& lines = plan.deliverable.frame_lines;
  const bool same_lines = lines == before.deliverable.frame_lines;
  writer.count(same_lines ? 0 : lines.size());
  const Plan plain;
  for (std::size_t line = 0; !same_lines && line < lines.size(); ++line) {
    write_row(writer, line_table(), plan, plain, line);
  }
  const bool same_cameras = plan.choose.cameras == before.choose.cameras;
  writer.count(same_cameras ? 0 : plan.choose.cameras.size() + 1);
  if (!same_cameras) {
    for (const std::string& camera : plan.choose.cameras) writer.text(camera);
  }
  const bool same_own = plan.own == before.own;
  writer.count(same_own ? 0 : 1);
  if (!same_own) write_catalogue(writer, plan.own);
}

void read_plan(LinkReader& reader, Plan& plan) {
  read_row(reader, plan_table(), plan);
  if (const std::size_t lines = reader.count()) {
    if (lines > kMaxFrameLines) return reader.fail();
    plan.deliverable.frame_lines.assign(lines, FrameLine{});
    for (std::size_t line = 0; line < lines && reader.ok(); ++line) {
      read_row(reader, line_table(), plan, line);
    }
  }
  if (const std::size_t cameras = reader.count()) {
    plan.choose.cameras.clear();
    for (std::size_t left = cameras - 1; left > 0 && reader.ok(); --left) {
      plan.choose.cameras.push_back(reader.text());
    }
  }
  const std::size_t own = reader.count();
  if (own > 1) return reader.fail();
  if (own == 1) plan.own = read_catalogue(reader);
}

Bytes bytes_of(const Lesson& lesson) {
  LinkWriter writer;
  write_row(writer, lesson_table(), lesson, Lesson{});
  writer.count(lesson.steps.size());
  Plan before;
  for (const LessonStep& step : lesson.steps) {
    write_row(writer, step_table(), step, LessonStep{});
    writer.count(step.figures.size());
    for (const LessonFigure& figure : step.figures) {
      write_row(writer, figure_table(), figure, LessonFigure{});
    }
    write_plan(writer, step.plan, before);
    before = step.plan;
  }
  writer.checksum();
  return writer.take();
}

LessonStep read_step(LinkReader& reader, Plan& plan) {
  LessonStep step;
  read_row(reader, step_table(), step);
  const std::size_t figures = reader.count();
  if (figures > kMaxLessonFigures) reader.fail();
  for (std::size_t i = 0; i < figures && reader.ok(); ++i) {
    read_row(reader, figure_table(), step.figures.emplace_back());
  }
  if (reader.ok()) read_plan(reader, plan);
  step.plan = plan;
  return step;
}

/// The lesson of the bytes; the reader is not ok when there is none.
Lesson read_lesson(LinkReader& reader) {
  Lesson lesson;
  if (!reader.checksum()) return lesson;
  read_row(reader, lesson_table(), lesson);
  const std::size_t steps = reader.count();
  if (steps > kMaxLessonSteps) reader.fail();
  Plan plan;
  for (std::size_t i = 0; i < steps && reader.ok(); ++i) {
    lesson.steps.push_back(read_step(reader, plan));
  }
  if (!reader.at_end()) reader.fail();
  return lesson;
}

std::optional<std::string> coded(const Lesson& lesson) {
  const Bytes bytes = bytes_of(lesson);
  if (bytes.size() > kMaxLinkBytes) return std::nullopt;
  return to_base64url(squeezed(bytes));
}

/// What stands before the next point, cut off `text` together with it.
std::string_view take_part(std::string_view& text) {
  const std::size_t point = text.find('.');
  const std::string_view part = text.substr(0, point);
  text.remove_prefix(point == std::string_view::npos ? text.size() : point + 1);
  return part;
}

/// The fields of every plan, as reading a document would have found them.
Problems plan_problems(const Lesson& lesson, const Catalogue& catalogue) {
  for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
    Problems problems = check_plan(lesson.steps[i].plan, catalogue);
    const std::string at = "/steps/" + std::to_string(i) + "/plan";
    for (Problem& problem : problems) problem.pointer.insert(0, at);
    if (!problems.empty()) return problems;
  }
  return {};
}

Checked<Lesson> named_lesson(std::string_view link, std::string_view id,
                             const Catalogue& catalogue) {
  if (auto lesson = built_in_lesson(id, catalogue)) return std::move(*lesson);
  return refused_link(link, "the name of a built-in lesson; reload to update Widegate");
}

/// The id of the built-in lesson that this one is, value for value; empty for none.
std::string built_in_id(const Lesson& lesson, const Catalogue& catalogue) {
  for (const LessonHead& head : built_in_lesson_heads()) {
    if (head.title == lesson.title && built_in_lesson(head.id, catalogue) == lesson) return head.id;
  }
  return {};
}

Checked<Lesson> carried_lesson(std::string_view link, std::string_view text,
                               const Catalogue& catalogue) {
  const auto packed = from_base64url(text);
  const auto bytes = packed ? unsqueezed(*packed) : packed;
  const std::string whole = "the whole link as it was copied; this one is damaged or cut short";
  if (!bytes) return refused_link(link, whole);
  LinkReader reader(*bytes);
  Lesson lesson = read_lesson(reader);
  if (!reader.ok()) return refused_link(link, whole);
  if (coded(lesson) != std::string(text)) {
    return refused_link(link, "a link made by Widegate, which this one is not");
  }
  for (LessonStep& step : lesson.steps) use_current_ids(step.plan);
  Problems problems = plan_problems(lesson, catalogue);
  if (problems.empty()) problems = check_lesson(lesson, catalogue);
  if (!problems.empty()) return tl::unexpected<Problems>(std::move(problems));
  return lesson;
}

}  // namespace

std::optional<std::string> lesson_to_link(const Lesson& lesson, std::int64_t step,
                                          const Catalogue& catalogue) {
  const std::string head =
      std::string(kLessonLinkMark) + std::string(kVersion) + "." + std::to_string(step) + ".";
  const std::string id = built_in_id(lesson, catalogue);
  if (!id.empty()) return head + std::string(kNamed) + id;
  const auto text = coded(lesson);
  if (!text || head.size() + text->size() > kMaxLinkLength) return std::nullopt;
  return head + *text;
}

Checked<LinkedLesson> lesson_from_link(std::string_view link, const Catalogue& catalogue) {
  std::string_view rest = link_fragment(link);
  if (rest.size() > kMaxLinkLength) {
    return refused_link(link,
                        "a link of at most " + std::to_string(kMaxLinkLength) + " characters");
  }
  if (!rest.starts_with(kLessonLinkMark))
    return refused_link(link, "a lesson's link, which this one is not");
  rest.remove_prefix(kLessonLinkMark.size());
  if (take_part(rest) != kVersion) {
    return refused_link(link, "a lesson's link of version " + std::string(kVersion) +
                                  "; this one was made by a newer Widegate, reload to update");
  }
  const std::string step_text(take_part(rest));
  Checked<Lesson> lesson = rest.starts_with(kNamed)
                               ? named_lesson(link, rest.substr(kNamed.size()), catalogue)
                               : carried_lesson(link, rest, catalogue);
  if (!lesson) return tl::unexpected<Problems>(lesson.error());
  const auto step = parse_rational(step_text);
  const auto steps = static_cast<std::int64_t>(lesson->steps.size());
  if (!step || !step->whole() || step->num() < 1 || step->num() > steps) {
    return refused_link(step_text,
                        "the number of a step of this lesson: 1 to " + std::to_string(steps));
  }
  return LinkedLesson{std::move(*lesson), step->num()};
}

}  // namespace widegate
