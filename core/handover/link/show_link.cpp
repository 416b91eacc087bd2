#include "core/handover/link/show_link.h"

#include "core/base/plain_text.h"
#include "core/encode/base64url.h"
#include "core/handover/link/link.h"
#include "core/handover/link/link_catalogue.h"
#include "core/handover/link/link_coder.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/link_rows.h"
#include "core/handover/link/link_tags.h"
#include "core/handover/link/show_link_tags.h"
#include "core/plan/carried_rows.h"
#include "core/plan/plan_fields.h"
#include "core/show/show_check.h"
#include "core/show/show_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kVersion = "1";

LinkTable<Plan> plan_table() { return {.fields = plan_fields(), .tags = kPlanTags}; }
LinkTable<Plan> line_table() { return {.fields = plan_fields(), .tags = kFrameLineTags}; }

template <class Row>
LinkTable<Row> table_of() {
  return {.fields = show_fields<Row>(), .tags = show_link_tags<Row>()};
}

/// A new row; its price is that of the row before it, since most are alike.
template <class Row>
Row fresh_row(const Price& before) {
  Row row;
  if constexpr (requires { row.price; }) row.price = before;
  return row;
}
template <class Row>
void remember(Price& before, const Row& row) {
  if constexpr (requires { row.price; }) before = row.price;
}

/// What distinguishes a plan from another one.
void write_plan(LinkWriter& writer, const Plan& plan, const Plan& base) {
  write_row(writer, plan_table(), plan, base);
  const auto& lines = plan.deliverable.frame_lines;
  const bool same_lines = lines == base.deliverable.frame_lines;
  writer.count(same_lines ? 0 : lines.size());
  const Plan plain;
  for (std::size_t line = 0; line < lines.size() && !same_lines; ++line) {
    write_row(writer, line_table(), plan, plain, line);
  }
  const auto& cameras = plan.choose.cameras;
  const bool same_cameras = cameras == base.choose.cameras;
  writer.count(same_cameras ? 0 : cameras.size() + 1);
  if (!same_cameras) {
    for (const std::string& camera : cameras) writer.text(camera);
  }
  const bool same_own = plan.own == base.own;
  writer.count(same_own ? 0 : 1);
  if (!same_own) write_catalogue(writer, plan.own);
}

Plan read_plan(LinkReader& reader, const Plan& base) {
  Plan plan = base;
  read_row(reader, plan_table(), plan);
  if (const std::size_t lines = reader.count(); lines > 0) {
    if (lines > kMaxFrameLines) reader.fail();
    if (!reader.ok()) return plan;
    plan.deliverable.frame_lines.assign(lines, FrameLine{});
    for (std::size_t line = 0; line < lines && reader.ok(); ++line) {
      read_row(reader, line_table(), plan, line);
    }
  }
  if (const std::size_t cameras = reader.count(); cameras > 0) {
    plan.choose.cameras.clear();
    for (std::size_t left = cameras - 1; left > 0 && reader.ok(); --left) {
      plan.choose.cameras.push_back(reader.text());
    }
  }
  if (reader.count() > 0) plan.own = read_catalogue(reader);
  return plan;
}

/// The plan that number `base` stands for: 0 is a new plan, the others are earlier parts.
const Plan& base_plan(const std::vector<ShowPart>& parts, std::size_t base) {
  static const Plan kNew;
  return base == 0 ? kNew : parts[base - 1].plan;
}

/// The first of the plans before part `i` with which it takes the fewest bytes.
std::size_t best_base(const LinkWriter& writer, const std::vector<ShowPart>& parts, std::size_t i) {
  std::size_t best = 0;
  std::size_t fewest = SIZE_MAX;
  for (std::size_t base = 0; base <= i; ++base) {
    LinkWriter tried = writer;
    write_plan(tried, parts[i].plan, base_plan(parts, base));
    const std::size_t bytes = tried.take().size();
    if (bytes >= fewest) continue;
    fewest = bytes;
    best = base;
  }
  return best;
}

void write_parts(LinkWriter& writer, const std::vector<ShowPart>& parts) {
  writer.count(parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i) {
    write_row(writer, table_of<ShowPart>(), parts[i], ShowPart{});
    const std::size_t base = best_base(writer, parts, i);
    writer.count(base);
    write_plan(writer, parts[i].plan, base_plan(parts, base));
  }
}

void read_parts(LinkReader& reader, std::vector<ShowPart>& parts) {
  const std::size_t count = reader.count();
  if (count > kMaxShowParts) return reader.fail();
  for (std::size_t i = 0; i < count && reader.ok(); ++i) {
    ShowPart part;
    read_row(reader, table_of<ShowPart>(), part);
    const std::size_t base = reader.count();
    if (base > i) return reader.fail();
    part.plan = read_plan(reader, base_plan(parts, base));
    parts.push_back(std::move(part));
  }
}

/// Days off by their distance from the one before.
void write_calendar(LinkWriter& writer, const ShowCalendar& calendar) {
  std::size_t weekdays = 0;
  for (const Weekday day : calendar.weekdays_off)
    weekdays |= std::size_t{1} << static_cast<int>(day);
  writer.count(weekdays);
  writer.count(calendar.days_off.size());
  std::int64_t before = 0;
  for (const std::string& text : calendar.days_off) {
    const std::int64_t number = parse_day(text).value_or(CalendarDay{}).number;
    writer.whole(number - before);
    before = number;
  }
}

void read_calendar(LinkReader& reader, ShowCalendar& calendar) {
  constexpr std::int64_t kFarthest = 1'000'000;
  const std::size_t weekdays = reader.count();
  for (int day = 0; day < 7; ++day) {
    if ((weekdays >> day & 1U) != 0) calendar.weekdays_off.push_back(static_cast<Weekday>(day));
  }
  const std::size_t count = reader.count();
  if (count > kMaxShowDaysOff) return reader.fail();
  std::int64_t number = 0;
  for (std::size_t left = count; left > 0 && reader.ok(); --left) {
    const std::int64_t step = reader.whole();
    if (step < -kFarthest || step > kFarthest) return reader.fail();
    number += step;
    if (number < -kFarthest || number > kFarthest) return reader.fail();
    calendar.days_off.push_back(print_day({number}));
  }
}

void write_show(LinkWriter& writer, const Show& show) {
  write_row(writer, table_of<Show>(), show, Show{});
  write_parts(writer, show.parts);
  Price before;
  for_show_lists(show, [&](std::string_view, const auto& rows) {
    using Row = typename std::remove_cvref_t<decltype(rows)>::value_type;
    writer.count(rows.size());
    for (const Row& row : rows) {
      write_row(writer, table_of<Row>(), row, fresh_row<Row>(before));
      remember(before, row);
    }
  });
  write_calendar(writer, show.calendar);
}

Show read_show(LinkReader& reader) {
  Show show;
  read_row(reader, table_of<Show>(), show);
  if (reader.ok()) read_parts(reader, show.parts);
  Price before;
  for_show_lists(show, [&](std::string_view, auto& rows) {
    using Row = typename std::remove_cvref_t<decltype(rows)>::value_type;
    const std::size_t count = reader.count();
    if (count > kMaxShowRows) reader.fail();
    for (std::size_t left = count; left > 0 && reader.ok(); --left) {
      Row& row = rows.emplace_back(fresh_row<Row>(before));
      read_row(reader, table_of<Row>(), row);
      remember(before, row);
    }
  });
  if (reader.ok()) read_calendar(reader, show.calendar);
  return show;
}

Bytes bytes_of(const Show& show) {
  LinkWriter writer;
  write_show(writer, show);
  writer.checksum();
  return writer.take();
}

std::string link_of(const Bytes& bytes) {
  return std::string(kShowLinkMark) + std::string(kVersion) + "." + to_base64url(squeezed(bytes));
}

tl::unexpected<Problems> too_long(std::string have, std::size_t most, std::string_view unit) {
  Problem problem{.pointer = "",
                  .value = "a show of " + std::move(have),
                  .accepted = "at most " + std::to_string(most) + " " + std::string(unit) +
                              " in a link; hand it over as a file"};
  return tl::unexpected<Problems>(Problems{std::move(problem)});
}

}  // namespace

std::string show_to_link(const Show& show) { return link_of(bytes_of(show)); }

Checked<std::string> show_to_opening_link(const Show& show) {
  const Bytes bytes = bytes_of(show);
  if (bytes.size() > kMaxLinkBytes) {
    return too_long(std::to_string(bytes.size()) + " bytes", kMaxLinkBytes, "bytes");
  }
  std::string link = link_of(bytes);
  if (link.size() <= kMaxLinkLength) return link;
  return too_long(std::to_string(link.size()) + " characters", kMaxLinkLength, "characters");
}

Checked<Show> show_from_link(std::string_view link, const Catalogue& catalogue) {
  const std::string_view fragment = link_fragment(link);
  if (fragment.size() > kMaxLinkLength) {
    return refused_link(link,
                        "a link of at most " + std::to_string(kMaxLinkLength) + " characters");
  }
  const std::string_view version = link_version(fragment, kShowLinkMark);
  if (version.empty()) return refused_link(link, "a link to a show, which this one is not");
  if (version != kVersion) {
    return refused_link(link, "a show's link of version " + std::string(kVersion) +
                                  "; this one was made by a newer Widegate, reload to update");
  }
  const auto coded = from_base64url(fragment.substr(kShowLinkMark.size() + version.size() + 1));
  const auto bytes = coded ? unsqueezed(*coded) : coded;
  constexpr std::string_view kWhole =
      "the whole link as it was copied; this one is damaged or cut short";
  if (!bytes) return refused_link(link, std::string(kWhole));
  LinkReader reader(*bytes);
  if (!reader.checksum()) return refused_link(link, std::string(kWhole));
  Show show = read_show(reader);
  if (!reader.ok() || !reader.at_end() || show_to_link(show) != fragment) {
    return refused_link(link, "a link to a show, which this one is not");
  }
  for (ShowPart& part : show.parts) use_current_ids(part.plan);
  if (Problems problems = check_show(show, catalogue); !problems.empty()) {
    return tl::unexpected<Problems>(std::move(problems));
  }
  return show;
}

}  // namespace widegate
