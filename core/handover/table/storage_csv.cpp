#include "core/handover/table/storage_csv.h"

#include <string_view>

#include "core/encode/csv.h"

namespace widegate {
namespace {

void figure(CsvWriter& csv, std::string_view name, Span value, std::string_view unit) {
  csv.text(name).number(value.least).number(value.most).text(unit).end_row();
}

void count(CsvWriter& csv, std::string_view name, ByteRange value, std::string_view unit) {
  csv.text(name).whole(value.least).whole(value.most).text(unit).end_row();
}

void word(CsvWriter& csv, std::string_view name, std::string_view value) {
  csv.text(name).text(value).empty().empty().end_row();
}

template <class Row>
std::string_view name_of(const std::vector<Row>& own, const std::vector<Row>& library,
                         std::string_view id) {
  const Row* row = find_row(own, library, std::string(id));
  return row == nullptr ? id : std::string_view(row->name);
}

void add_costs(CsvWriter& csv, const StoreReport& store, std::string_view currency) {
  figure(csv, "cost of cards", store.card_cost, currency);
  figure(csv, "cost of drives", store.drive_cost, currency);
  figure(csv, "cost of tapes", store.tape_cost, currency);
  figure(csv, "cost of data wrangling", store.wrangler_cost, currency);
  figure(csv, "cost of upload", store.upload_cost, currency);
  figure(csv, "cost", store.cost, currency);
}

void add_rates(CsvWriter& csv, const StoreReport& store) {
  count(csv, "frame as coded", store.bytes_per_frame, "B");
  count(csv, "frame as stored", store.bytes_per_frame_stored, "B");
  figure(csv, "data rate", store.bytes_per_s, "B/s");
  figure(csv, "data of a minute", store.bytes_per_minute, "B");
}

void add_cards(CsvWriter& csv, const StoreReport& store) {
  count(csv, "usable card", {store.usable_card_bytes, store.usable_card_bytes}, "B");
  count(csv, "frames on a card", store.frames_per_card, "frames");
  figure(csv, "minutes on a card", store.minutes_per_card, "min");
  figure(csv, "card speed over data rate", store.write_headroom, "");
  count(csv, "cards a day for each camera", store.cards_per_day, "cards");
  if (store.rotation_sustainable) {
    count(csv, "cards in rotation for each camera", store.cards_in_rotation, "cards");
  } else {
    word(csv, "cards in rotation for each camera", "never enough");
  }
  figure(csv, "copying a full card", store.offload_minutes_per_card, "min");
  figure(csv, "copying a day of each unit", store.offload_hours_per_day, "h");
  word(csv, "copying is limited by", store.offload_limited_by);
}

void add_shoot(CsvWriter& csv, const StoreReport& store) {
  figure(csv, "whole shoot", store.shoot_total_bytes, "B");
  figure(csv, "all copies", store.copies_total_bytes, "B");
  count(csv, "drives", store.drives, "drives");
  count(csv, "tapes", store.tapes, "tapes");
  figure(csv, "upload", store.upload_hours, "h");
}

}  // namespace

std::string storage_to_csv(const Plan& plan, const Report& report, const Catalogue& catalogue) {
  CsvWriter csv;
  csv.text("figure").text("least").text("most").text("unit").end_row();
  word(csv, "plan", plan.title);
  word(csv, "camera", name_of(plan.own.cameras, catalogue.cameras, plan.format.camera));
  word(csv, "codec", name_of(plan.own.codecs, catalogue.codecs, plan.format.codec));
  word(csv, "card", name_of(plan.own.cards, catalogue.cards, plan.store.card));
  add_rates(csv, report.store);
  add_cards(csv, report.store);
  add_shoot(csv, report.store);
  add_costs(csv, report.store, plan.store.currency);
  return csv.str();
}

std::string cover_to_csv(const Report& report) {
  const CoverReport& cover = report.cover;
  CsvWriter csv;
  for (const std::string_view name :
       {"focal_mm", "image_circle_mm", "covers_frame", "covers_protected", "covers_mode",
        "frame_needs_mm", "protected_needs_mm", "mode_needs_mm"}) {
    csv.text(name);
  }
  csv.end_row();
  const auto yes_or_no = [](bool covers) { return covers ? "yes" : "no"; };
  for (const LensCover& lens : cover.lens_set) {
    csv.number(lens.focal_mm).number(lens.image_circle_mm);
    csv.text(yes_or_no(lens.covers_frame)).text(yes_or_no(lens.covers_protected));
    csv.text(yes_or_no(lens.covers_mode)).number(cover.frame.diagonal_mm);
    csv.number(cover.protected_area.diagonal_mm).number(cover.mode.diagonal_mm).end_row();
  }
  return csv.str();
}

}  // namespace widegate
