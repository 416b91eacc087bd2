#include "core/show/show_report_fields.h"

#include "core/report/notes.h"

namespace widegate {
namespace {

using Visitor = ReportVisitor;

void visit_part(const PartReport& part, Visitor& v) {
  v.begin_object("");
  v.text("name", part.name);
  v.text("format", part.format);
  v.whole("first_day", part.first_day);
  v.whole("last_day", part.last_day);
  v.whole("days", part.days);
  v.whole("units", part.units);
  v.whole("cameras", part.cameras);
  v.number("recorded_hours_per_day", part.recorded_hours_per_day);
  v.flag("no_cards", part.no_cards);
  v.text("card", part.card);
  v.span("bytes_per_day", part.bytes_per_day);
  v.span("total_bytes", part.total_bytes);
  v.whole("copies", part.copies);
  v.span("copies_total_bytes", part.copies_total_bytes);
  v.counts("cards_per_day", part.cards_per_day);
  v.counts("cards_in_rotation", part.cards_in_rotation);
  v.whole("spare_cards", part.spare_cards);
  v.number("hold_hours", part.hold_hours);
  v.counts("cards_to_have", part.cards_to_have);
  v.flag("rotation_sustainable", part.rotation_sustainable);
  v.span("copy_hours_per_day", part.copy_hours_per_day);
  v.span("copy_hours_per_day_all_units", part.copy_hours_per_day_all_units);
  v.counts("drives", part.drives);
  v.counts("tapes", part.tapes);
  v.span("tape_hours", part.tape_hours);
  v.span("upload_total_bytes", part.upload_total_bytes);
  v.span("upload_hours_per_day", part.upload_hours_per_day);
  v.number("film_feet", part.film_feet);
  v.flag("accepted", part.accepted);
  v.end_object();
}

void visit_totals(const ShowTotals& totals, Visitor& v) {
  v.begin_object("totals");
  v.whole("shooting_days", totals.shooting_days);
  v.span("total_bytes", totals.total_bytes);
  v.span("copies_total_bytes", totals.copies_total_bytes);
  v.span("average_day_bytes", totals.average_day_bytes);
  v.span("least_day_bytes", totals.least_day_bytes);
  v.span("largest_day_bytes", totals.largest_day_bytes);
  v.whole("largest_day", totals.largest_day);
  v.counts("cards_to_have", totals.cards_to_have);
  v.counts("drives", totals.drives);
  v.counts("fewest_drives", totals.fewest_drives);
  v.counts("tapes", totals.tapes);
  v.counts("fewest_tapes", totals.fewest_tapes);
  v.span("copy_hours_per_day", totals.copy_hours_per_day);
  v.counts("stations", totals.stations);
  v.number("station_hours_per_day", totals.station_hours_per_day);
  v.span("tape_hours", totals.tape_hours);
  v.span("upload_total_bytes", totals.upload_total_bytes);
  v.span("upload_hours_per_day", totals.upload_hours_per_day);
  v.number("film_feet", totals.film_feet);
  v.end_object();
}

void optional_count(Visitor& v, std::string_view key, const std::optional<std::int64_t>& count) {
  if (count) {
    v.whole(key, *count);
  } else {
    v.nothing(key);
  }
}

void visit_cards(const std::vector<CardKind>& kinds, Visitor& v) {
  v.begin_list("cards");
  for (const CardKind& kind : kinds) {
    v.begin_object("");
    v.text("id", kind.id);
    v.text("name", kind.name);
    v.counts("to_have", kind.to_have);
    v.counts("at_once", kind.at_once);
    optional_count(v, "at_hand", kind.at_hand);
    optional_count(v, "short_day", kind.short_day);
    v.end_object();
  }
  v.end_list();
}

void visit_media(const std::vector<MediaSet>& sets, Visitor& v) {
  v.begin_list("media");
  for (const MediaSet& set : sets) {
    v.begin_object("");
    v.text("kind", set.tape ? "tape" : "drive");
    v.text("id", set.id);
    v.text("name", set.name);
    v.text("parts", set.parts);
    v.counts("media", set.media);
    v.counts("fewest", set.fewest);
    v.begin_list("full_days");
    for (const std::int64_t day : set.full_days) v.whole("", day);
    v.end_list();
    v.end_object();
  }
  v.end_list();
}

void visit_line(const MoneyLine& line, Visitor& v) {
  v.begin_object("");
  v.text("name", line.name);
  v.text("part", line.part);
  v.span("quantity", line.quantity);
  v.text("unit", line.unit);
  if (line.price.amount) {
    v.number("price", *line.price.amount);
    v.text("currency", line.price.currency);
    v.text("date", line.price.date);
    v.text("source", line.price.source);
    v.flag("invented", line.price.invented);
    v.span("cost", line.cost);
  } else {
    v.nothing("price");
  }
  v.end_object();
}

void visit_money(const MoneyReport& money, Visitor& v) {
  v.begin_object("money");
  v.begin_list("lines");
  for (const MoneyLine& line : money.lines) visit_line(line, v);
  v.end_list();
  v.begin_list("sums");
  for (const MoneySum& sum : money.sums) {
    v.begin_object("");
    v.text("currency", sum.currency);
    v.span("cost", sum.cost);
    v.flag("invented", sum.invented);
    v.end_object();
  }
  v.end_list();
  v.begin_list("missing");
  for (const std::string& name : money.missing) v.text("", name);
  v.end_list();
  v.end_object();
}

void visit_day(const ShowDay& day, std::int64_t number, Visitor& v) {
  v.begin_object("");
  v.whole("day", number);
  v.text("date", day.date);
  v.span("bytes", day.bytes);
  v.span("bytes_so_far", day.bytes_so_far);
  v.span("copies_so_far_bytes", day.copies_so_far_bytes);
  v.span("copy_hours", day.copy_hours);
  v.span("upload_hours", day.upload_hours);
  v.counts("drives_so_far", day.drives_so_far);
  v.counts("tapes_so_far", day.tapes_so_far);
  v.begin_list("part_bytes");
  for (const Span& bytes : day.part_bytes) v.span("", bytes);
  v.end_list();
  v.begin_list("money_so_far");
  for (const Span& money : day.money_so_far) v.span("", money);
  v.end_list();
  v.end_object();
}

}  // namespace

void visit_show(const ShowReport& report, ReportVisitor& v) {
  v.text("title", report.title);
  v.begin_list("parts");
  for (const PartReport& part : report.parts) visit_part(part, v);
  v.end_list();
  visit_totals(report.totals, v);
  visit_cards(report.cards, v);
  visit_media(report.media, v);
  visit_money(report.money, v);
  v.begin_list("days");
  for (std::size_t i = 0; i < report.days.size(); ++i) {
    visit_day(report.days[i], static_cast<std::int64_t>(i) + 1, v);
  }
  v.end_list();
  v.begin_list("notes");
  for (const ShowNote& note : report.notes) {
    v.begin_object("");
    v.text("severity", severity_key(note.severity));
    v.text("text", note.text);
    v.end_object();
  }
  v.end_list();
}

}  // namespace widegate
