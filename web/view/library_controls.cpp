#include "web/view/library_controls.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "core/catalogue/merge.h"
#include "core/plan/carried_rows.h"

namespace widegate {
namespace {

constexpr std::string_view kSection = "library";

struct KindRow {
  OwnKind kind;
  std::string_view pointer;  ///< Of the plan's value that names such a row; empty for none.
};
constexpr auto kKinds = std::to_array<KindRow>({
    {OwnKind::camera, "/format/camera"},
    {OwnKind::codec, ""},
    {OwnKind::card, "/store/card"},
    {OwnKind::lens_set, "/lens/set"},
    {OwnKind::drive, "/store/drive"},
    {OwnKind::tape, "/store/tape"},
    {OwnKind::link, "/store/link"},
    {OwnKind::commission, "/commission/id"},
});

std::string with_capital(std::string_view words) {
  std::string text(words);
  if (!text.empty() && text.front() >= 'a') text.front() = static_cast<char>(text.front() - 32);
  return text;
}

Control named(std::string id, ControlKind kind, std::string label) {
  Control control;
  control.id = std::move(id);
  control.kind = kind;
  control.section = kSection;
  control.label = std::move(label);
  return control;
}

Control action(std::string_view id, std::string label) {
  return named(std::string(id), ControlKind::action, std::move(label));
}

/// What one row of a list is: "Camera".
std::string list_words(std::string_view list) {
  for (const KindRow& row : kKinds) {
    if (own_list(row.kind) == list) return with_capital(own_words(row.kind));
  }
  return std::string(list);
}

/// The words of a list in front of a row's name: "Camera: Hazel".
std::string listed_name(std::string_view list, std::string_view name) {
  return list_words(list) + ": " + std::string(name);
}

Control new_control() {
  Control control = named("library:new", ControlKind::choice, "Add");
  control.value_text = "Choose what to add";
  control.choices.push_back({"", "Choose what to add", ""});
  for (const KindRow& row : kKinds) {
    const std::string list(own_list(row.kind));
    control.choices.push_back({list, with_capital(own_words(row.kind)), ""});
  }
  return control;
}

Control row_control(const App& app) {
  const auto rows = library_changes({}, app.own());
  Control control = named("library:row", ControlKind::choice, "Change or take out");
  control.enabled = !rows.empty();
  control.value_text =
      rows.empty() ? "Nothing of your own yet" : std::to_string(rows.size()) + " of your own";
  control.choices.push_back({"", control.value_text, ""});
  for (const LibraryChange& row : rows) {
    control.choices.push_back(
        {std::string(row.list) + "/" + row.id, row.name, list_words(row.list)});
  }
  return control;
}

std::string problem_words(const Problem& problem) {
  if (problem.value == "nothing") return "Needed: " + problem.accepted;
  return problem.value + " is not accepted; expected " + problem.accepted;
}

/// Problems that can be shown: what is missing only after it was tried to keep the row.
std::string shown_problem(const Problems& problems, const FormItem& item, bool tried) {
  for (const Problem& problem : problems) {
    if (problem.pointer != item.pointer) continue;
    if (tried || !item.text.empty()) return problem_words(problem);
  }
  return {};
}

Control input_control(const FormItem& item, const Problems& problems, bool tried) {
  const std::string group = item.group.empty() ? "" : item.group + ": ";
  const std::string unit = item.unit.empty() ? "" : " (" + item.unit + ")";
  const bool choice = item.input == FormInput::choice;
  Control control =
      named("library:" + item.pointer, choice ? ControlKind::choice : ControlKind::text,
            group + item.label + unit);
  control.short_label = item.label + unit;
  control.edit_text = item.text;
  control.numeric = item.input == FormInput::number;
  control.value_text = item.text.empty() ? item.empty : item.text;
  if (!item.empty.empty() && !choice) control.help = "Empty: " + item.empty;
  for (const FieldOption& option : item.choices) {
    if (option.value == item.text) control.value_text = option.label;
    control.choices.push_back({option.value, option.label, ""});
  }
  control.problem = shown_problem(problems, item, tried);
  return control;
}

Control from_control(const App& app, OwnKind kind) {
  Control control = named("library:from", ControlKind::choice, "Begin with the figures of");
  control.value_text = "An empty form";
  control.choices.push_back({"", "An empty form", ""});
  for (const LibraryChange& row : library_changes({}, app.library())) {
    if (row.list == own_list(kind)) control.choices.push_back({row.id, row.name, ""});
  }
  return control;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += (text.empty() ? "" : "\n") + line;
  return text;
}

Control keep_control(const LibraryState& library, const Checked<Catalogue>& row,
                     const std::vector<Control>& inputs) {
  Control control =
      action("library:keep", "Keep this " + std::string(own_words(library.form->kind)));
  if (row) {
    control.help = joined(row_findings(*row));
    return control;
  }
  if (!library.tried) return control;
  for (const Problem& problem : row.error()) {
    const bool marked = std::any_of(inputs.begin(), inputs.end(), [&](const Control& input) {
      return input.id == "library:" + problem.pointer;
    });
    if (!marked) control.problem = problem_words(problem);
  }
  return control;
}

void add_form(std::vector<Control>& controls, const App& app, const LibraryState& library) {
  const OwnForm& form = *library.form;
  const bool fresh = form.root.id.empty();
  if (fresh) controls.push_back(from_control(app, form.kind));
  const auto row = row_from_form(form, app.library());
  const Problems problems = row ? Problems{} : row.error();
  std::string heading;
  for (const FormItem& item : form_items(form, app.library())) {
    if (item.type == FormItem::Type::heading) {
      heading = item.label;
      continue;
    }
    Control control = item.type == FormItem::Type::press
                          ? action("library:press:" + item.pointer, item.label)
                          : input_control(item, problems, library.tried);
    control.heading = std::exchange(heading, {});
    if (item.type == FormItem::Type::press && !item.group.empty()) {
      control.short_label = item.label;
      if (item.label.find(item.group) == std::string::npos) {
        control.label = item.group + ": " + item.label;
      }
    }
    controls.push_back(std::move(control));
  }
  controls.push_back(keep_control(library, row, controls));
  controls.push_back(action("library:cancel", "Close the form"));
  if (!fresh) controls.push_back(action("library:take-out", "Take it out"));
}

/// What bringing rows in would change, a line for each kind of change.
std::string change_lines(const std::vector<LibraryChange>& changes) {
  std::string added, differs;
  std::size_t same = 0;
  for (const LibraryChange& change : changes) {
    const std::string name = listed_name(change.list, change.name);
    if (change.change == RowChange::added) added += (added.empty() ? "New: " : "; ") + name;
    if (change.change == RowChange::differs) {
      differs += (differs.empty() ? "Different from what is here: " : "; ") + name;
    }
    if (change.change == RowChange::same) ++same;
  }
  std::vector<std::string> lines;
  if (!added.empty()) lines.push_back(std::move(added));
  if (!differs.empty()) lines.push_back(std::move(differs));
  if (same > 0) lines.push_back("The same already: " + std::to_string(same));
  if (lines.empty()) lines.emplace_back("There is nothing in it.");
  return joined(lines);
}

void add_incoming(std::vector<Control>& controls, const App& app, const LibraryState& library) {
  const auto changes = library_changes(app.library(), *library.incoming);
  const auto count = [&changes](RowChange wanted) {
    return std::count_if(changes.begin(), changes.end(),
                         [wanted](const LibraryChange& each) { return each.change == wanted; });
  };
  const auto differing = count(RowChange::differs);
  Control bring =
      action("library:import-new", differing > 0 ? "Bring in only what is new" : "Bring it in");
  bring.heading = "From " + library.incoming_from;
  bring.help = change_lines(changes);
  bring.enabled = count(RowChange::added) > 0;
  controls.push_back(std::move(bring));
  if (differing > 0) {
    controls.push_back(
        action("library:import-all", "Bring in all and replace " + std::to_string(differing)));
  }
  controls.push_back(action("library:import-none", "Leave everything as it is"));
}

void add_list(std::vector<Control>& controls, const App& app, const LibraryState& library) {
  const Catalogue last = library.last_id.empty() ? Catalogue{} : app.own();
  for (const LibraryChange& row : library_changes({}, last)) {
    const std::string_view pointer = plan_pointer(library.last_kind);
    const bool usable = !pointer.empty() && field_text(app.plan(), pointer) != row.id;
    if (row.list != own_list(library.last_kind) || row.id != library.last_id || !usable) continue;
    controls.push_back(action("library:use", "Use " + row.name + " in the plan"));
  }
  controls.push_back(new_control());
  if (!is_empty(app.own())) controls.push_back(row_control(app));
  if (!is_empty(library.removed)) {
    controls.push_back(action("library:put-back", "Put back what was taken out"));
  }
  const Catalogue& brought = app.plan().own;
  if (!is_empty(brought)) {
    controls.push_back(action("library:brought", "Keep what this plan brought"));
    if (!is_empty(rows_also_in(brought, app.library()))) {
      controls.push_back(action("library:use-mine", "Use your own versions in this plan"));
    }
  }
  Control out = action("library:export", "Save your equipment as a file");
  out.enabled = !is_empty(app.own());
  controls.push_back(std::move(out));
  controls.push_back(action("library:import", "Bring in equipment from a file"));
}

const KindRow* row_of_list(std::string_view list) {
  for (const KindRow& row : kKinds) {
    if (own_list(row.kind) == list) return &row;
  }
  return nullptr;
}

}  // namespace

std::optional<OwnKind> kind_of_list(std::string_view list) {
  const KindRow* row = row_of_list(list);
  return row == nullptr ? std::nullopt : std::optional(row->kind);
}

std::string_view plan_pointer(OwnKind kind) {
  const KindRow* row = row_of_list(own_list(kind));
  return row == nullptr ? std::string_view() : row->pointer;
}

std::vector<Control> library_controls(const App& app, const PanelState& state) {
  std::vector<Control> controls;
  const LibraryState& library = state.library;
  if (library.incoming) {
    add_incoming(controls, app, library);
  } else if (library.form) {
    add_form(controls, app, library);
  } else {
    add_list(controls, app, library);
  }
  return controls;
}

}  // namespace widegate
