#include "web/view/show.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/number_text.h"
#include "core/handover/link/link.h"
#include "core/show/show_edit.h"
#include "core/show/show_figures.h"
#include "core/show/show_notes.h"
#include "web/view/named_control.h"

namespace widegate {
namespace {

constexpr double kTerabyte = 1e12;

Control named(std::string_view id, ControlKind kind, std::string_view label) {
  return named_control(id, kind, kShowSection, label);
}

Control text_control(const PanelState& state, std::string_view id, std::string_view label,
                     std::string text, std::string_view empty) {
  Control control = named(id, ControlKind::text, label);
  control.value_text = text.empty() ? std::string(empty) : text;
  control.edit_text = std::move(text);
  if (state.show.rejected == id) control.problem = "Expected " + state.show.accepted + ".";
  return control;
}

Control action(std::string_view id, std::string_view label, bool enabled = true) {
  Control control = named(id, ControlKind::action, label);
  control.enabled = enabled;
  return control;
}

Control flag(std::string_view id, std::string_view label, bool on) {
  Control control = named(id, ControlKind::flag, label);
  control.value = on ? 1 : 0;
  control.edit_text = on ? "true" : "false";
  control.value_text = on ? "yes" : "no";
  return control;
}

/// A tick for each kept plan; one is ticked when a part has the same plan.
void add_ticks(std::vector<Control>& controls, const PanelState& state) {
  std::vector<std::string> links;
  if (state.show.open) {
    for (const ShowPart& part : state.show.open->show.parts) {
      links.push_back(plan_to_link(part.plan));
    }
  }
  for (const KeptPlan& plan : state.shelf.shelf.plans) {
    const bool on = std::find(links.begin(), links.end(), plan.link) != links.end();
    controls.push_back(flag(std::string(kShowTick) + std::to_string(plan.id), plan.title, on));
  }
}

std::string weekend_of(const ShowCalendar& calendar) {
  const std::vector<Weekday>& off = calendar.weekdays_off;
  if (off.empty()) return "none";
  if (off == std::vector{Weekday::sunday}) return "sunday";
  if (off == std::vector{Weekday::saturday, Weekday::sunday}) return "weekend";
  return "own";
}

void add_calendar(std::vector<Control>& controls, const PanelState& state, const Show& show) {
  controls.push_back(text_control(state, kShowStart, "First shooting day", show.calendar.start,
                                  "Not said: YYYY-MM-DD"));
  Control weekend = named(kShowWeekend, ControlKind::choice, "Days off each week");
  weekend.choices = {
      {"none", "None", {}}, {"sunday", "Sunday", {}}, {"weekend", "Saturday and Sunday", {}}};
  const std::string now = weekend_of(show.calendar);
  if (now == "own") weekend.choices.push_back({"own", "As the show's file says", {}});
  choose_item(weekend, now);
  controls.push_back(std::move(weekend));
}

Control keeping(std::string_view id, std::string_view label, Keeping now) {
  Control control = named(id, ControlKind::choice, label);
  control.choices = {{"separate", "Each part on its own", {}},
                     {"shared", "All parts together", {}}};
  choose_item(control, now == Keeping::shared ? "shared" : "separate");
  return control;
}

void add_part(std::vector<Control>& controls, const PanelState& state, const Show& show) {
  const std::size_t picked = std::min(state.show.part, show.parts.size() - 1);
  Control part = named(kShowPart, ControlKind::choice, "Part");
  for (std::size_t i = 0; i < show.parts.size(); ++i) {
    part.choices.push_back({std::to_string(i), show.parts[i].name, show.parts[i].plan.title});
  }
  choose_item(part, std::to_string(picked));
  controls.push_back(std::move(part));
  controls.push_back(
      text_control(state, kShowPartName, "Name of the part", show.parts[picked].name, ""));
  Control day = text_control(state, kShowPartDay, "Shooting day it begins on",
                             std::to_string(show.parts[picked].first_day), "");
  day.numeric = true;
  controls.push_back(std::move(day));
  const bool out = state.show.before.has_value();
  controls.push_back(action(kShowOpenPart, "Open this part as a plan", !out));
  controls.push_back(action(kShowTakePart, "Take the plan on the screen back into its part", out));
  controls.push_back(action(kShowLeavePart, "Leave the part as it was", out));
  controls.push_back(action(kShowRemovePart, "Take this part out of the show"));
}

std::string thing_value(const PricedThing& thing) {
  return std::to_string(static_cast<int>(thing.what)) + "/" + thing.id;
}

void add_prices(std::vector<Control>& controls, const App& app, const PanelState& state,
                const Show& show) {
  const std::vector<PricedThing> things = things_to_price(show, app.library());
  if (things.empty()) return;
  Control what = named(kShowThing, ControlKind::choice, "A price for");
  const PricedThing* picked = &things.front();
  for (const PricedThing& thing : things) {
    what.choices.push_back({thing_value(thing), thing.name, price_text(price_of(show, thing))});
    if (thing_value(thing) == state.show.thing) picked = &thing;
  }
  choose_item(what, thing_value(*picked));
  controls.push_back(std::move(what));
  const Price price = price_of(show, *picked);
  controls.push_back(text_control(state, kShowPrice, "Price, with its currency", typed_price(price),
                                  "Not entered: 1350 EUR"));
  if (price.amount) {
    controls.push_back(
        text_control(state, kShowPriceDate, "Day it was given", price.date, "Not said"));
    controls.push_back(
        text_control(state, kShowPriceSource, "Who gave it", price.source, "Not said"));
    controls.push_back(flag(kShowPriceInvented, "Invented", price.invented));
  }
  controls.push_back(action(kShowLibraryPrices, "Take the library's prices, which are invented"));
}

void add_handover(std::vector<Control>& controls) {
  struct Row {
    std::string_view id, label;
  };
  constexpr auto kRows = std::to_array<Row>({
      {kShowPrint, "Print the sheet of the show"},
      {kShowCopyLink, "Copy the link of the show"},
      {kShowShare, "Share the link of the show"},
      {kShowQrCode, "Show the QR code of the show"},
      {kShowSaveTable, "Save the show as a table"},
      {kShowSaveDays, "Save its calendar as a table"},
      {kShowSave, "Save the show as a file"},
      {kShowClose, "Put the show away"},
  });
  for (const Row& row : kRows) controls.push_back(action(row.id, row.label));
}

ShowLine line_of(const PartReport& part) {
  std::string text;
  for (const ShowFigure& figure : part_figures(part)) {
    for (const std::string_view key : {"bytes_per_day", "total_bytes", "cards_to_have"}) {
      if (figure.key != key || figure.value.most == 0) continue;
      text += (text.empty() ? "" : ", ") + with_unit(figure);
      if (key == "bytes_per_day") text += " a day";
      if (key == "total_bytes") text += " in all";
    }
  }
  if (!part.accepted) text += "; misses its commission";
  return {part.name, text};
}

void add_money(ShowView& view, const MoneyReport& money) {
  for (const MoneyLine& line : money.lines) {
    if (!line.price.amount || line.quantity.most == 0) continue;
    const std::string name = line.part.empty() ? line.name : line.name + ", " + line.part;
    view.money.push_back(
        {name + ", " + short_quantity(line), money_text(line.cost, line.price.currency)});
  }
  for (const MoneySum& sum : money.sums) {
    view.money.push_back(
        {sum.invented ? "Sum, with invented prices" : "Sum", money_text(sum.cost, sum.currency)});
  }
  if (money.sums.empty()) view.money.push_back({"Sum", "no prices yet"});
  for (const std::string& name : money.missing) view.money.push_back({name, "no price"});
}

std::string day_in_words(const ShowDay& day, std::size_t number) {
  const auto date = parse_day(day.date);
  return date ? day_words(*date) : "day " + std::to_string(number);
}

void add_days(ShowView& view, const ShowReport& report) {
  view.first_day = day_in_words(report.days.front(), 1);
  view.last_day = day_in_words(report.days.back(), report.days.size());
  view.most_terabytes = static_cast<float>(report.totals.total_bytes.most / kTerabyte);
  for (std::size_t part = 0; part < report.parts.size(); ++part) {
    view.part_names.push_back(report.parts[part].name);
    std::vector<float>& stack = view.stacks.emplace_back();
    float so_far = 0;
    for (const ShowDay& day : report.days) {
      so_far += static_cast<float>(day.part_bytes[part].most / kTerabyte);
      stack.push_back(so_far);
    }
  }
  if (report.money.sums.size() == 1) {
    const MoneySum& sum = report.money.sums.front();
    view.currency = sum.currency + (sum.invented ? ", invented" : "");
    for (const ShowDay& day : report.days) {
      view.money_so_far.push_back(static_cast<float>(day.money_so_far.front().most));
    }
  }
  for (const MediaSet& set : report.media) {
    for (const std::int64_t day : set.full_days) {
      (set.tape ? view.tapes_full : view.drives_full).push_back(static_cast<std::size_t>(day - 1));
    }
    view.full_words.push_back(set.name + " (" + set.parts + "): full on " +
                              full_days_text(report, set));
  }
}

std::string_view opening_of(Severity severity) {
  switch (severity) {
    case Severity::fail:
      return "Fails: ";
    case Severity::caution:
      return "Caution: ";
    case Severity::ok:
      break;
  }
  return "Fine: ";
}

}  // namespace

std::vector<Control> show_controls(const App& app, const PanelState& state) {
  std::vector<Control> controls;
  add_ticks(controls, state);
  controls.push_back(action(kShowAddCurrent, "Add the plan on the screen"));
  controls.push_back(
      text_control(state, kShowLinks, "Links to plans, or to a show", "", "Paste one or several"));
  controls.push_back(action(kShowOpenFile, "Open a show from a file"));
  if (!state.show.open) return controls;
  const Show& show = state.show.open->show;
  controls.push_back(text_control(state, kShowTitle, "Title of the show", show.title, "No title"));
  add_calendar(controls, state, show);
  controls.push_back(keeping(kShowDrives, "Drives", show.archive.drives));
  controls.push_back(keeping(kShowTapes, "Tapes", show.archive.tapes));
  Control station = text_control(state, kShowStation, "A copying station works",
                                 print_number(show.archive.station_hours_per_day), "");
  station.unit = "h a day";
  station.numeric = true;
  controls.push_back(std::move(station));
  add_part(controls, state, show);
  add_prices(controls, app, state, show);
  add_handover(controls);
  return controls;
}

ShowView show_view(const PanelState& state) {
  ShowView view;
  if (!state.show.open) return view;
  const OpenShow& open = *state.show.open;
  const ShowReport& report = open.report;
  for (const ShowFigure& figure : show_figures(report)) {
    view.totals.push_back({std::string(figure.label), with_unit(figure)});
  }
  for (const PartReport& part : report.parts) view.parts.push_back(line_of(part));
  add_money(view, report.money);
  for (const ShowDifference& one : open.more) {
    view.more.push_back(
        {report.parts[one.part].name + ": " + std::string(one_more_words(one.change)),
         difference_text(one)});
  }
  add_days(view, report);
  return view;
}

std::vector<ResultRow> show_rows(const ShowView& view) {
  std::vector<ResultRow> rows;
  const auto add = [&](std::string_view group, const std::vector<ShowLine>& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
      rows.push_back({.section = std::string(kShowSection),
                      .key = "show." + std::string(group) + "." + std::to_string(i),
                      .label = lines[i].label,
                      .value_text = lines[i].text,
                      .unit = {},
                      .working = {}});
    }
  };
  add("totals", view.totals);
  add("parts", view.parts);
  add("money", view.money);
  add("more", view.more);
  return rows;
}

std::vector<std::string> show_notes_of(const PanelState& state) {
  std::vector<std::string> notes;
  if (!state.show.open) return notes;
  for (const ShowNote& note : state.show.open->report.notes) {
    notes.push_back(std::string(opening_of(note.severity)) + note.text);
  }
  notes.emplace_back(show_standing_text());
  return notes;
}

}  // namespace widegate
