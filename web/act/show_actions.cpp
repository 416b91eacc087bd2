#include "web/act/show_actions.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "core/base/number_text.h"
#include "core/encode/qr_svg.h"
#include "core/handover/link/link.h"
#include "core/handover/link/link_kind.h"
#include "core/handover/link/show_link.h"
#include "core/handover/sheet/show_sheet.h"
#include "core/handover/table/show_csv.h"
#include "core/show/evaluate_show.h"
#include "core/show/show_edit.h"
#include "core/show/show_json.h"
#include "web/act/device_memory.h"
#include "web/act/handover_actions.h"
#include "web/act/kept_plan_actions.h"
#include "web/act/lesson_actions.h"
#include "web/view/show.h"

namespace widegate {
namespace {

/// Puts a changed show in the place of the open one. One that cannot be evaluated changes nothing.
Problems replace(Show show, const App& app, PanelState& state) {
  if (show.parts.empty()) {
    state.show.open.reset();
    ++state.show.version;
    return {};
  }
  ShowReport report = evaluate_show(show, app.library());
  if (!report.problems.empty()) return report.problems;
  std::vector<ShowDifference> more = differences_of_one_more(show, report, app.library());
  state.show.part = std::min(state.show.part, show.parts.size() - 1);
  state.show.open = std::make_shared<const OpenShow>(
      OpenShow{std::move(show), std::move(report), std::move(more)});
  ++state.show.version;
  return {};
}

void reject(PanelState& state, std::string_view id, std::string accepted) {
  state.show.rejected = id;
  state.show.accepted = std::move(accepted);
  ++state.show.version;
}

/// As replace(), told beside the control that was set.
void replace_by(std::string_view id, Show show, const App& app, PanelState& state) {
  const Problems problems = replace(std::move(show), app, state);
  if (!problems.empty()) reject(state, id, problems.front().accepted);
}

/// The open show, or a new one.
Show now(const PanelState& state) {
  if (state.show.open) return state.show.open->show;
  Show fresh;
  fresh.title = "";
  return fresh;
}

/// A first part gives the show its name, up to the first comma: "The Salt Ferry, main unit".
void name_by_first(Show& show) {
  if (!show.title.empty() || show.parts.empty()) return;
  const std::string& title = show.parts.front().plan.title;
  show.title = title.substr(0, title.find(','));
}

void add_plan_to_show(Show& show, Plan plan, PanelState& state) {
  if (!add_part(show, std::move(plan))) state.message = "A show has at most 24 parts.";
  name_by_first(show);
}

void tick(std::string_view id, bool on, const App& app, PanelState& state) {
  const auto number = parse_rational(id.substr(kShowTick.size()));
  const KeptPlan* kept = number ? find_plan(state.shelf.shelf, number->num()) : nullptr;
  if (kept == nullptr) return;
  Show show = now(state);
  if (on) {
    auto plan = plan_from_link(kept->link, app.library());
    if (!plan) {
      state.message =
          "“" + kept->title + "” cannot be opened: expected " + plan.error().front().accepted + ".";
      return;
    }
    add_plan_to_show(show, std::move(*plan), state);
  } else {
    for (std::size_t i = show.parts.size(); i > 0; --i) {
      if (plan_to_link(show.parts[i - 1].plan) == kept->link) remove_part(show, i - 1);
    }
  }
  replace_by(id, std::move(show), app, state);
}

/// Every link in a text: plans become parts, a show is opened.
void take_links(std::string_view text, const App& app, PanelState& state) {
  Show show = now(state);
  std::size_t taken = 0;
  constexpr std::string_view kBlanks = " \t\r\n";
  while (!text.empty()) {
    const std::size_t start = std::min(text.find_first_not_of(kBlanks), text.size());
    text.remove_prefix(start);
    const std::string_view word = text.substr(0, text.find_first_of(kBlanks));
    text.remove_prefix(word.size());
    if (word.empty()) break;
    if (is_show_link(word)) {
      auto opened = show_from_link(word, app.library());
      if (!opened) return reject(state, kShowLinks, opened.error().front().accepted);
      for (ShowPart& part : opened->parts) part.name = free_part_name(show, part.name, SIZE_MAX);
      if (show.parts.empty()) {
        show = std::move(*opened);
      } else {
        for (ShowPart& part : opened->parts) add_plan_to_show(show, std::move(part.plan), state);
      }
    } else {
      auto plan = plan_from_link(word, app.library());
      if (!plan) return reject(state, kShowLinks, plan.error().front().accepted);
      add_plan_to_show(show, std::move(*plan), state);
    }
    ++taken;
  }
  if (taken == 0) return;
  replace_by(kShowLinks, std::move(show), app, state);
  if (state.show.rejected.empty()) {
    state.message =
        std::to_string(taken) + (taken == 1 ? " link" : " links") + " taken into the show.";
  }
}

/// By its place; a text that is the place of none picks nothing.
void pick_part(std::string_view text, PanelState& state) {
  const auto place = parse_rational(text);
  const std::size_t parts = state.show.open ? state.show.open->show.parts.size() : 0;
  const bool known = place && place->whole() && place->num() >= 0 &&
                     static_cast<std::size_t>(place->num()) < parts;
  if (known) state.show.part = static_cast<std::size_t>(place->num());
}

void set_weekend(Show& show, std::string_view text) {
  std::vector<Weekday>& off = show.calendar.weekdays_off;
  if (text == "none") off.clear();
  if (text == "sunday") off = {Weekday::sunday};
  if (text == "weekend") off = {Weekday::saturday, Weekday::sunday};
}

const PricedThing* picked_thing(const std::vector<PricedThing>& things, const PanelState& state) {
  for (const PricedThing& thing : things) {
    if (std::to_string(static_cast<int>(thing.what)) + "/" + thing.id == state.show.thing) {
      return &thing;
    }
  }
  return things.empty() ? nullptr : &things.front();
}

/// One value of the picked price.
void set_price_part(std::string_view id, std::string_view text, const App& app, PanelState& state) {
  Show show = now(state);
  const std::vector<PricedThing> things = things_to_price(show, app.library());
  const PricedThing* thing = picked_thing(things, state);
  if (thing == nullptr) return;
  Price price = price_of(show, *thing);
  if (id == kShowPrice && !read_price(text, price)) {
    return reject(state, id, "an amount with its currency, such as 1350 EUR");
  }
  if (id == kShowPriceDate) price.date = text;
  if (id == kShowPriceSource) price.source = text;
  if (id == kShowPriceInvented) price.invented = text == "true";
  set_price(show, *thing, std::move(price));
  replace_by(id, std::move(show), app, state);
}

/// A value of the show itself, or of its picked part.
void set_value(std::string_view id, std::string_view text, const App& app, PanelState& state) {
  Show show = now(state);
  if (show.parts.empty()) return;
  const std::size_t part = std::min(state.show.part, show.parts.size() - 1);
  const Keeping keeping = text == "shared" ? Keeping::shared : Keeping::separate;
  if (id == kShowTitle) show.title = text;
  if (id == kShowStart) show.calendar.start = text;
  if (id == kShowWeekend) set_weekend(show, text);
  if (id == kShowDrives) show.archive.drives = keeping;
  if (id == kShowTapes) show.archive.tapes = keeping;
  if (id == kShowStation) {
    const auto hours = parse_decimal(text);
    if (!hours) return reject(state, id, "hours, above 0 to 24");
    show.archive.station_hours_per_day = *hours;
  }
  if (id == kShowPartName) {
    if (text.empty() || text.size() > 60) return reject(state, id, "a name of 1 to 60 letters");
    rename_part(show, part, text);
  }
  if (id == kShowPartDay) {
    const auto day = parse_rational(text);
    if (!day || !day->whole()) return reject(state, id, "a whole number from 1");
    show.parts[part].first_day = day->num();
  }
  replace_by(id, std::move(show), app, state);
}

/// Everything a button may use; a show is open.
struct Desk {
  const App& app;
  PanelState& state;
  Platform& platform;
  Commands& commands;
  const OpenShow& open;
};

void put_on_screen(Desk& desk, Plan plan) {
  leave_lesson(desk.state);
  leave_shelf(desk.state);
  desk.commands.emplace_back(ReplacePlan{std::move(plan)});
}

void open_part(Desk& desk) {
  ShowState& show = desk.state.show;
  if (show.before) return;
  show.before = desk.app.plan();
  show.part_on_screen = show.part;
  ++show.version;
  const ShowPart& part = desk.open.show.parts[show.part];
  put_on_screen(desk, part.plan);
  desk.state.message =
      "“" + part.name +
      "” is on the screen as a plan. Take it back into the show, or leave it as it "
      "was.";
}

void bring_back(Desk& desk) {
  put_on_screen(desk, *std::exchange(desk.state.show.before, std::nullopt));
  ++desk.state.show.version;
}

void take_part(Desk& desk) {
  ShowState& state = desk.state.show;
  if (!state.before || state.part_on_screen >= desk.open.show.parts.size()) return;
  Show show = desk.open.show;
  ShowPart& part = show.parts[state.part_on_screen];
  const std::string name = part.name;
  part.plan = desk.app.whole_plan();
  const Problems problems = replace(std::move(show), desk.app, desk.state);
  if (!problems.empty()) {
    desk.state.message = "This plan cannot be a part: expected " + problems.front().accepted + ".";
    return;
  }
  bring_back(desk);
  desk.state.message = "“" + name + "” is as it was on the screen.";
}

void leave_part(Desk& desk) {
  if (desk.state.show.before) bring_back(desk);
}

void take_out(Desk& desk) {
  Show show = desk.open.show;
  remove_part(show, desk.state.show.part);
  desk.state.show.before.reset();
  (void)replace(std::move(show), desk.app, desk.state);
}

void library_prices(Desk& desk) {
  Show show = desk.open.show;
  take_library_prices(show, desk.app.library());
  if (replace(std::move(show), desk.app, desk.state).empty()) {
    desk.state.message = "The library's prices stand where none was entered. They are invented.";
  }
}

std::optional<std::string> address_of(Desk& desk) {
  const auto link = show_to_opening_link(desk.open.show);
  if (link) return desk.platform.page_address() + "#" + *link;
  desk.state.message = "No link: " + link.error().front().accepted + ".";
  return std::nullopt;
}

void copy_link(Desk& desk) {
  const auto address = address_of(desk);
  if (!address) return;
  desk.state.message = desk.platform.copy_text(*address)
                           ? "The link is on the clipboard. It holds the whole show."
                           : "The clipboard was refused.";
}

void share(Desk& desk) {
  if (!desk.platform.can_share()) return copy_link(desk);
  if (const auto address = address_of(desk)) {
    desk.platform.share(desk.open.show.title, *address);
  }
}

void show_qr(Desk& desk) {
  const auto address = address_of(desk);
  if (!address) return;
  if (const auto qr = make_qr(*address)) {
    desk.platform.show_picture(qr_svg(*qr), *address);
  } else {
    desk.state.message = "This show is too long for a QR code. Copy the link or save the show.";
  }
}

void print(Desk& desk) {
  const auto link = show_to_opening_link(desk.open.show);
  const std::string address = link ? desk.platform.page_address() + "#" + *link : std::string();
  desk.platform.print_document(
      show_sheet_html(desk.open.show, desk.open.report, {.link = address, .date = {}}));
}

void save(Desk& desk, std::string_view end, std::string_view mime, std::string_view text) {
  Plan named;
  named.title = desk.open.show.title;
  const std::string name = file_name(named, end);
  desk.platform.save_file(name, mime, text);
  desk.state.message = "Handed to the device as " + name + ".";
}

constexpr std::string_view kCsvType = "text/csv;charset=utf-8";

void save_show(Desk& desk) {
  save(desk, ".show.json", "application/json", show_to_json(desk.open.show));
}
void save_table(Desk& desk) {
  save(desk, "-show.csv", kCsvType, show_to_csv(desk.open.show, desk.open.report));
}
void save_days(Desk& desk) {
  save(desk, "-calendar.csv", kCsvType, show_days_to_csv(desk.open.report));
}

void close(Desk& desk) {
  desk.state.show.before.reset();
  desk.state.show.open.reset();
  ++desk.state.show.version;
  desk.state.message = "The show is put away. Its plans in the list are as they were.";
}

struct ActionRow {
  std::string_view id;
  void (*run)(Desk&);
};
constexpr auto kActions = std::to_array<ActionRow>({
    {kShowOpenPart, open_part},
    {kShowTakePart, take_part},
    {kShowLeavePart, leave_part},
    {kShowRemovePart, take_out},
    {kShowLibraryPrices, library_prices},
    {kShowCopyLink, copy_link},
    {kShowShare, share},
    {kShowQrCode, show_qr},
    {kShowPrint, print},
    {kShowSave, save_show},
    {kShowSaveTable, save_table},
    {kShowSaveDays, save_days},
    {kShowClose, close},
});

}  // namespace

void set_show_control(std::string_view id, std::string_view text, const App& app,
                      PanelState& state) {
  state.show.rejected.clear();
  if (id.starts_with(kShowTick)) return tick(id, text == "true", app, state);
  if (id == kShowLinks) return take_links(text, app, state);
  if (id == kShowPart || id == kShowThing) {
    if (id == kShowThing) state.show.thing = text;
    if (id == kShowPart) pick_part(text, state);
    ++state.show.version;
    return;
  }
  if (id.starts_with(kShowPrice)) return set_price_part(id, text, app, state);
  set_value(id, text, app, state);
}

void run_show_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                     Commands& commands) {
  state.message.clear();
  if (id == kShowAddCurrent) {
    Show show = now(state);
    add_plan_to_show(show, app.whole_plan(), state);
    const Problems problems = replace(std::move(show), app, state);
    if (!problems.empty()) {
      state.message = "This plan cannot be a part: expected " + problems.front().accepted + ".";
    }
  }
  if (id == kShowOpenFile) platform.open_file(kShowFile, ".json,application/json");
  if (!state.show.open) return;
  // The show may be replaced while the button works.
  const std::shared_ptr<const OpenShow> open = state.show.open;
  Desk desk{app, state, platform, commands, *open};
  for (const ActionRow& row : kActions) {
    if (row.id == id) row.run(desk);
  }
}

void open_asked_show(const App& app, PanelState& state) {
  if (state.show.asked_link.empty()) return;
  const std::string link = std::exchange(state.show.asked_link, {});
  auto show = show_from_link(link, app.library());
  Problems problems = show ? replace(std::move(*show), app, state) : show.error();
  if (!problems.empty()) {
    state.message = "This link does not hold a show that can be read: expected " +
                    problems.front().accepted + ". Everything else is as it was.";
    return;
  }
  state.message = "Opened “" + state.show.open->show.title + "”, a show of " +
                  std::to_string(state.show.open->show.parts.size()) + " parts.";
  state.jump = kShowSection;
}

void show_file_opened(std::string_view name, std::string_view text, const App& app,
                      PanelState& state) {
  auto show = show_from_json(text, app.library());
  const Problems problems = show ? replace(std::move(*show), app, state) : show.error();
  state.message = problems.empty()
                      ? "Opened " + std::string(name) + "."
                      : std::string(name) + " is not a show: " + to_line(problems.front());
}

void keep_show(PanelState& state, Platform& platform) {
  keep_on_device(state, platform, kShowKey,
                 state.show.open ? show_to_json(state.show.open->show) : std::string());
}

void load_show(const App& app, PanelState& state, Platform& platform) {
  const auto text = platform.stored(kShowKey);
  if (!text || state.show.open) return;
  auto show = show_from_json(*text, app.library());
  if (show && replace(std::move(*show), app, state).empty()) return;
  set_aside(state, platform, *text);
  state.message =
      "The show on this device could not be read and was set aside, to be saved under Plan.";
}

}  // namespace widegate
