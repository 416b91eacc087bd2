#include "web/act/kept_plan_actions.h"

#include <string>
#include <utility>

#include "core/base/number_text.h"
#include "core/handover/link/link.h"
#include "web/act/device_memory.h"
#include "web/act/lesson_actions.h"
#include "web/view/kept_plan_controls.h"

namespace widegate {
namespace {

/// The list on the device; what is here when it cannot be read.
PlanShelf shelf_now(const PanelState& state, const Platform& platform) {
  const auto text = platform.stored(kShelfKey);
  if (!text) {
    return PlanShelf{.next_id = state.shelf.shelf.next_id, .plans = {}, .unread = {}};
  }
  const auto read = shelf_from_json(*text);
  return read ? *read : state.shelf.shelf;
}

/// Writes the list in the place of the one that is there: never over one that could not be read
/// and is not set aside, and nothing that could not be read again. False when the device refuses.
bool write_shelf(PanelState& state, Platform& platform, PlanShelf shelf) {
  if (!state.shelf.damaged.empty() && !set_aside(state, platform, state.shelf.damaged))
    return false;
  state.shelf.damaged.clear();
  const std::string text = shelf_to_json(shelf);
  if (const auto again = shelf_from_json(text); !again || *again != shelf) return false;
  const bool done = keep_on_device(state, platform, kShelfKey, text);
  state.shelf.shelf = std::move(shelf);
  ++state.shelf.revision;
  return done;
}

void take_place(PanelState& state, Platform& platform, std::int64_t id, std::int64_t edition) {
  state.shelf.current = id;
  state.shelf.edition = edition;
  ++state.shelf.revision;
  const std::string place = std::to_string(id) + "/" + std::to_string(edition);
  keep_on_device(state, platform, kShelfPlaceKey, id == 0 ? std::string() : place);
}

/// Puts a plan into the list; its id, 0 when it could not be kept, which is said.
std::int64_t add_to_shelf(PanelState& state, Platform& platform, const Plan& plan) {
  const auto link = plan_to_opening_link(plan);
  PlanShelf shelf = shelf_now(state, platform);
  const std::int64_t id = link ? add_plan(shelf, plan.title, *link) : 0;
  if (!link) {
    state.message = "This plan is too long for the list of plans: save it as a file instead.";
  } else if (id == 0) {
    state.message = "The list is full: delete a plan first.";
  } else if (!write_shelf(state, platform, std::move(shelf))) {
    state.message = kKeepsNothing;
    return 0;
  }
  return id;
}

/// Adds the plan on the screen and goes on with it there. False when it could not be kept.
bool add_current(const App& app, PanelState& state, Platform& platform, const std::string& title) {
  Plan plan = app.whole_plan();
  plan.title = title;
  const std::int64_t id = add_to_shelf(state, platform, plan);
  if (id != 0) take_place(state, platform, id, 1);
  return id != 0;
}

void add(const App& app, PanelState& state, Platform& platform) {
  const std::string& title = app.plan().title;
  if (add_current(app, state, platform, title)) {
    state.message = "“" + title + "” is in the list of plans and follows every change.";
  }
}

void copy(const App& app, PanelState& state, Platform& platform) {
  Plan plan = app.whole_plan();
  plan.title += ", copy";
  if (add_to_shelf(state, platform, plan) == 0) return;
  state.message = "“" + plan.title + "” is in the list of plans. This one stays on the screen.";
}

void remove(PanelState& state, Platform& platform) {
  PlanShelf shelf = shelf_now(state, platform);
  const KeptPlan* plan = find_plan(shelf, state.shelf.current);
  if (plan == nullptr) return;
  state.shelf.removed = *plan;
  remove_plan(shelf, state.shelf.current);
  write_shelf(state, platform, std::move(shelf));
  take_place(state, platform, 0, 0);
  state.message = "“" + state.shelf.removed->title +
                  "” is out of the list. It can be put back, and it is still on the screen.";
}

void restore(const App& app, PanelState& state, Platform& platform) {
  if (!state.shelf.removed) return;
  const KeptPlan plan = *std::exchange(state.shelf.removed, std::nullopt);
  PlanShelf shelf = shelf_now(state, platform);
  restore_plan(shelf, plan);
  write_shelf(state, platform, std::move(shelf));
  if (plan_to_link(app.whole_plan()) == plan.link) {
    take_place(state, platform, plan.id, plan.edition);
  }
  state.message = "“" + plan.title + "” is in the list again.";
}

}  // namespace

void run_shelf_action(std::string_view id, const App& app, PanelState& state, Platform& platform) {
  if (!id.starts_with(kShelfPrefix)) return;
  state.message.clear();
  if (id == kShelfAdd) add(app, state, platform);
  if (id == kShelfCopy) copy(app, state, platform);
  if (id == kShelfDelete) remove(state, platform);
  if (id == kShelfRestore) restore(app, state, platform);
  if (id == kSaveSetAside) save_set_aside(state, platform);
}

void open_kept_plan(std::string_view text, const App& app, PanelState& state, Platform& platform,
                    Commands& commands) {
  const auto id = parse_rational(text);
  reload_shelf(state, platform);
  const KeptPlan* kept = id ? find_plan(state.shelf.shelf, id->num()) : nullptr;
  if (kept == nullptr || kept->id == state.shelf.current) return;
  auto plan = plan_from_link(kept->link, app.library());
  if (!plan) {
    state.message = "“" + kept->title + "” cannot be opened: expected " +
                    plan.error().front().accepted + ". The plan on the screen is unchanged.";
    return;
  }
  const KeptPlan opened = *kept;
  const std::string before = app.plan().title;
  // Nothing is lost: a plan that is in no list yet goes into it first.
  const bool unkept = state.shelf.current == 0 && app.plan() != app.first() && state.lesson.empty();
  if (unkept && !add_current(app, state, platform, before)) return;
  leave_lesson(state);
  state.message = "Opened “" + opened.title + "”." +
                  (unkept ? " “" + before + "” is in the list of plans now." : "");
  take_place(state, platform, opened.id, opened.edition);
  commands.emplace_back(OpenPlan{std::move(*plan)});
}

void load_shelf(PanelState& state, Platform& platform) {
  const auto text = platform.stored(kShelfKey);
  if (!text) return;
  auto shelf = shelf_from_json(*text);
  if (!shelf) {
    state.shelf.damaged = *text;
    set_aside(state, platform, *text);
    state.message =
        "The list of plans on this device could not be read and was set aside, to be saved under "
        "Plan: " +
        to_line(shelf.error().front());
    return;
  }
  state.shelf.shelf = std::move(*shelf);
  ++state.shelf.revision;
  for (const std::string& row : state.shelf.shelf.unread) set_aside(state, platform, row);
  const std::string place = platform.stored(kShelfPlaceKey).value_or("");
  const auto slash = place.find('/');
  if (slash == std::string::npos) return;
  const auto id = parse_rational(place.substr(0, slash));
  const auto edition = parse_rational(place.substr(slash + 1));
  if (!id || !edition || find_plan(state.shelf.shelf, id->num()) == nullptr) return;
  state.shelf.current = id->num();
  state.shelf.edition = edition->num();
}

void reload_shelf(PanelState& state, const Platform& platform) {
  PlanShelf now = shelf_now(state, platform);
  if (now == state.shelf.shelf) return;
  state.shelf.shelf = std::move(now);
  ++state.shelf.revision;
}

void save_to_shelf(const App& app, PanelState& state, Platform& platform, Commands& commands) {
  ShelfState& place = state.shelf;
  if (place.current == 0) {
    keep_on_device(state, platform, kShelfPlaceKey, "");
    return;
  }
  PlanShelf shelf = shelf_now(state, platform);
  const Plan plan = app.whole_plan();
  std::int64_t edition = place.edition;
  const auto link = plan_to_opening_link(plan);
  const Kept kept =
      link ? keep_plan(shelf, place.current, edition, plan.title, *link) : Kept::too_long;
  switch (kept) {
    case Kept::same:
      place.shelf = std::move(shelf);
      if (edition != place.edition) take_place(state, platform, place.current, edition);
      return;
    case Kept::done:
      if (write_shelf(state, platform, std::move(shelf))) {
        take_place(state, platform, place.current, edition);
      }
      return;
    case Kept::gone:
      take_place(state, platform, 0, 0);
      state.message = "This plan was deleted from the list in another tab. It is still here.";
      return;
    case Kept::too_long:
      state.message =
          "This plan is too long for the list now, which has it as it was before: save it as a "
          "file.";
      return;
    case Kept::changed:
      break;
  }
  const std::string title = free_title(shelf, plan.title);
  if (!add_current(app, state, platform, title)) return;
  commands.emplace_back(SetField{"/title", title, false});
  state.message = "“" + plan.title +
                  "” was changed in another tab meanwhile. Both are kept: this "
                  "one is “" +
                  title + "” now.";
}

void leave_shelf(PanelState& state) {
  if (state.shelf.current == 0) return;
  state.shelf.current = 0;
  ++state.shelf.revision;
}

}  // namespace widegate
