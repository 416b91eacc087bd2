#include "web/act/library_actions.h"

#include <array>
#include <string>
#include <utility>

#include "core/catalogue/catalogue_json.h"
#include "core/catalogue/each_list.h"
#include "core/catalogue/merge.h"
#include "core/plan/carried_rows.h"
#include "web/act/device_memory.h"
#include "web/view/library_controls.h"

namespace widegate {
namespace {

constexpr std::string_view kPress = "library:press:";

/// Everything an action may use.
struct Desk {
  const App& app;
  PanelState& state;
  Platform& platform;
  Commands& commands;

  [[nodiscard]] LibraryState& library() const { return state.library; }
};

/// "cameras/hazel" in its parts; nothing for any other text.
struct RowName {
  std::string_view list;
  std::string_view id;
};
std::optional<RowName> row_named(std::string_view text) {
  const auto slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  return RowName{text.substr(0, slash), text.substr(slash + 1)};
}

/// The one row as a catalogue of its own; empty when there is none such.
Catalogue row_alone(const Catalogue& rows, std::string_view list, std::string_view id) {
  Catalogue alone = rows;
  for_each_list(alone, [&](std::string_view key, auto& each) {
    std::erase_if(each, [&](const auto& row) { return key != list || row.id != id; });
  });
  return alone;
}

std::string name_in(const Catalogue& rows) {
  for (const LibraryChange& change : library_changes({}, rows)) return change.name;
  return {};
}

/// What is on the device now: another tab may have changed it since. Unreadable: what is here.
Catalogue kept_rows(const Desk& desk) {
  const auto text = desk.platform.stored(kLibraryKey);
  if (!text) return desk.app.own();
  const auto read = catalogue_from_json(*text, desk.app.built_in());
  return read ? *read : desk.app.own();
}

void keep_rows(const Desk& desk, Catalogue rows, std::string message) {
  LibraryState& library = desk.library();
  if (!library.damaged.empty() && !set_aside(desk.state, desk.platform, library.damaged)) return;
  library.damaged.clear();
  const std::string text = is_empty(rows) ? std::string() : catalogue_to_json(rows);
  const bool stored = keep_on_device(desk.state, desk.platform, kLibraryKey, text);
  if (!stored) message += " This device keeps nothing, though: save your equipment as a file.";
  desk.state.message = std::move(message);
  desk.commands.emplace_back(UseLibrary{std::move(rows)});
  ++library.revision;
}

void close_form(LibraryState& library) {
  library.form.reset();
  library.opened = {};
  library.tried = false;
  ++library.revision;
}

void keep_form(Desk& desk) {
  LibraryState& library = desk.library();
  if (!library.form) return;
  library.tried = true;
  ++library.revision;
  const auto row = row_from_form(*library.form, desk.app.library());
  if (!row) {
    desk.state.message = "Not kept yet: something is missing or does not fit. It is marked above.";
    return;
  }
  const Catalogue kept = kept_rows(desk);
  const auto change = library_changes({}, *row).front();
  const Catalogue there = row_alone(kept, change.list, change.id);
  const bool changed_elsewhere =
      !is_empty(library.opened) && there != library.opened && there != *row;
  std::string message = change.name + " is kept on this device.";
  if (changed_elsewhere) {
    message = change.name + " was changed in another tab meanwhile; this version took its place.";
  }
  library.last_kind = library.form->kind;
  library.last_id = change.id;
  close_form(library);
  keep_rows(desk, merged_library(kept, *row, OnDifference::replace), std::move(message));
}

void new_commission(Desk& desk) {
  LibraryState& library = desk.library();
  library.form = blank_form(OwnKind::commission);
  library.opened = {};
  library.tried = false;
  ++library.revision;
  desk.state.jump = "library";
}

void cancel_form(Desk& desk) { close_form(desk.library()); }

void take_out(Desk& desk) {
  LibraryState& library = desk.library();
  if (!library.form || is_empty(library.opened)) return;
  library.removed = library.opened;
  const std::string list(own_list(library.form->kind));
  const std::string id = library.form->root.id;
  const std::string name = name_in(library.opened);
  close_form(library);
  if (library.last_id == id) library.last_id.clear();
  keep_rows(desk, library_without(kept_rows(desk), list, id),
            name + " is taken out. A plan that uses it keeps it.");
}

void put_back(Desk& desk) {
  LibraryState& library = desk.library();
  const Catalogue row = std::exchange(library.removed, {});
  keep_rows(desk, merged_library(kept_rows(desk), row, OnDifference::keep),
            name_in(row) + " is back.");
}

void use_last(Desk& desk) {
  const LibraryState& library = desk.library();
  const std::string pointer(plan_pointer(library.last_kind));
  if (library.last_id.empty() || pointer.empty()) return;
  desk.commands.emplace_back(SetField{pointer, library.last_id, false});
}

void export_rows(Desk& desk) {
  desk.platform.save_file("widegate-equipment.json", "application/json",
                          catalogue_to_json(desk.app.own()));
  desk.state.message = "Handed to the device as widegate-equipment.json.";
}

void choose_file(Desk& desk) { desk.platform.open_file(kLibraryFile, ".json,application/json"); }

/// Rows of `incoming` that are not here already, value for value.
Catalogue news_of(const App& app, const Catalogue& incoming) {
  Plan holder;
  holder.own = incoming;
  return lightened_plan(std::move(holder), app.library()).own;
}

void bring_in(Desk& desk, OnDifference on_difference) {
  LibraryState& library = desk.library();
  if (!library.incoming) return;
  Catalogue rows = news_of(desk.app, *library.incoming);
  if (on_difference == OnDifference::keep) {
    rows = rows_not_in(rows, desk.app.library());
  }
  library.incoming.reset();
  const std::size_t count = library_changes({}, rows).size();
  keep_rows(desk, merged_library(kept_rows(desk), rows, on_difference),
            std::to_string(count) + (count == 1 ? " piece" : " pieces") +
                " of equipment brought in; the rest is as it was.");
}
void bring_in_new(Desk& desk) { bring_in(desk, OnDifference::keep); }
void bring_in_all(Desk& desk) { bring_in(desk, OnDifference::replace); }

void leave_out(Desk& desk) {
  desk.library().incoming.reset();
  ++desk.library().revision;
  desk.state.message = "Nothing was changed.";
}

void ask_for_brought(Desk& desk) {
  LibraryState& library = desk.library();
  library.incoming = desk.app.plan().own;
  library.incoming_from = "this plan";
  ++library.revision;
}

/// The plan forgets its own versions of rows that the library has too.
void use_mine(Desk& desk) {
  Plan plan = desk.app.plan();
  plan.own = rows_not_in(plan.own, desk.app.library());
  desk.commands.emplace_back(ReplacePlan{std::move(plan)});
  desk.state.message = "The plan uses your own versions now. Undo brings its own back.";
}

struct ActionRow {
  std::string_view id;
  void (*run)(Desk&);
};
constexpr auto kActions = std::to_array<ActionRow>({
    {"library:keep", keep_form},
    {"library:cancel", cancel_form},
    {kNewCommission, new_commission},
    {"library:take-out", take_out},
    {"library:put-back", put_back},
    {"library:use", use_last},
    {"library:export", export_rows},
    {"library:import", choose_file},
    {"library:import-new", bring_in_new},
    {"library:import-all", bring_in_all},
    {"library:import-none", leave_out},
    {"library:brought", ask_for_brought},
    {"library:use-mine", use_mine},
});

void open_form(LibraryState& library, const App& app, std::string_view text) {
  const auto name = row_named(text);
  const auto kind = name ? kind_of_list(name->list) : std::nullopt;
  if (!kind) return;
  library.form = form_of_row(app.own(), *kind, name->id);
  library.opened = row_alone(app.own(), name->list, name->id);
  library.tried = false;
}

void start_from(LibraryState& library, const App& app, std::string_view id) {
  if (!library.form || id.empty()) return;
  if (auto form = form_of_row(app.library(), library.form->kind, id)) {
    library.form = as_new_form(std::move(*form));
  }
}

}  // namespace

void set_library_control(std::string_view id, std::string_view text, const App& app,
                         PanelState& state) {
  LibraryState& library = state.library;
  state.message.clear();
  ++library.revision;
  const std::string_view key = id.substr(kLibraryPrefix.size());
  if (key == "new") {
    const auto kind = kind_of_list(text);
    if (!kind) return;
    library.form = blank_form(*kind);
    library.opened = {};
    library.tried = false;
    state.jump = "library";
  } else if (key == "row") {
    open_form(library, app, text);
    state.jump = "library";
  } else if (key == "from") {
    start_from(library, app, text);
  } else if (library.form) {
    set_form_text(*library.form, key, text);
  }
}

void run_library_action(std::string_view id, const App& app, PanelState& state, Platform& platform,
                        Commands& commands) {
  if (!id.starts_with(kLibraryPrefix)) return;
  state.message.clear();
  Desk desk{app, state, platform, commands};
  if (id.starts_with(kPress) && state.library.form) {
    press_form(*state.library.form, id.substr(kPress.size()));
    ++state.library.revision;
  }
  for (const ActionRow& row : kActions) {
    if (row.id == id) row.run(desk);
  }
}

void load_library(const App& app, PanelState& state, Platform& platform, Commands& commands) {
  const auto text = platform.stored(kLibraryKey);
  if (!text) {
    if (!is_empty(app.own())) commands.emplace_back(UseLibrary{});
    return;
  }
  auto rows = catalogue_from_json(*text, app.built_in());
  if (!rows) {
    state.library.damaged = *text;
    set_aside(state, platform, *text);
    state.message =
        "Your own equipment on this device could not be read and was set aside, to be saved under "
        "Plan: " +
        to_line(rows.error().front());
    return;
  }
  commands.emplace_back(UseLibrary{std::move(*rows)});
  ++state.library.revision;
}

void library_file_opened(std::string_view name, std::string_view text, const App& app,
                         PanelState& state) {
  auto rows = catalogue_from_json(text, app.library());
  ++state.library.revision;
  if (!rows) {
    state.message = std::string(name) +
                    " is no equipment that can be read, and nothing was changed: " +
                    to_line(rows.error().front());
    return;
  }
  state.library.incoming = std::move(*rows);
  state.library.incoming_from = name;
  state.jump = "library";
}

void tell_brought_rows(const App& app, PanelState& state) {
  const Catalogue& brought = app.plan().own;
  if (is_empty(brought)) return;
  const Catalogue against = rows_also_in(brought, app.library());
  if (is_empty(against)) {
    state.message = "This plan brings " + name_in(brought) +
                    " along. It can be kept below, under "
                    "Your own equipment.";
  } else {
    state.message = "This plan brings its own version of " + name_in(against) +
                    ", other than "
                    "yours. It uses its own until you decide, under Your own equipment.";
  }
}

}  // namespace widegate
