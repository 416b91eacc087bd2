#include "web/act/delivery_actions.h"

#include <string>
#include <utility>

#include "core/base/number_text.h"
#include "core/handover/fdl/plan_import.h"
#include "core/handover/fdl/read.h"
#include "core/handover/fdl/template_fields.h"
#include "core/handover/fdl/template_library.h"
#include "core/handover/fdl/write.h"
#include "web/act/handover_actions.h"
#include "web/view/delivery.h"

namespace widegate {
namespace {

constexpr std::string_view kMime = "application/json";
constexpr std::string_view kChoiceKey = "delivery";
constexpr std::string_view kOwnKey = "delivery-own";
/// More than this about one list is not read by anybody.
constexpr std::size_t kMostNotes = 40;

bool known_template(std::string_view id) {
  if (id == fdl::kOwnTemplate) return true;
  for (const fdl::CanvasTemplate& entry : fdl::delivery_templates({})) {
    if (entry.id == id) return true;
  }
  return false;
}

void set_own(DeliveryState& state, std::string_view id, std::string_view text) {
  const std::string_view key = id.substr(kOwnField.size());
  auto changed = fdl::with_template_field(state.choice.own, key, text);
  if (changed) {
    state.choice.own = std::move(*changed);
  } else {
    state.rejected = id;
    state.accepted = changed.error().front().accepted;
  }
}

void set_value(DeliveryState& state, std::string_view id, std::string_view text) {
  state.rejected.clear();
  ++state.version;
  if (id.starts_with(kOwnField)) return set_own(state, id, text);
  if (id == kDeliveryTemplate && known_template(text)) state.choice.canvas_template = text;
  if (id == kDeliverySource) {
    state.choice.source =
        text == "sensor" ? fdl::DeliverySource::sensor : fdl::DeliverySource::recorded;
  }
  const auto line = parse_rational(text);
  if (id == kDeliveryLine && line && line->num() >= 0) {
    state.choice.frame_line = static_cast<std::size_t>(line->num());
  }
}

void reset_value(DeliveryState& state, std::string_view id) {
  if (id.starts_with(kOwnField)) {
    const fdl::TemplateField* field = fdl::find_template_field(id.substr(kOwnField.size()));
    if (field != nullptr) set_value(state, id, field->read(fdl::usual_own_template()));
    return;
  }
  if (id == kDeliveryTemplate) set_value(state, id, fdl::DeliveryChoice{}.canvas_template);
  if (id == kDeliverySource) set_value(state, id, "recorded");
  if (id == kDeliveryLine) set_value(state, id, "0");
}

void save(const App& app, PanelState& state, Platform& platform, std::string_view end,
          const std::string& text) {
  const std::string name = file_name(app.plan(), end);
  platform.save_file(name, kMime, text);
  state.message = "Handed to the device as " + name + ".";
}

void save_result(const App& app, const fdl::Delivery& delivery, PanelState& state,
                 Platform& platform) {
  const auto document = fdl::delivered_document(delivery);
  if (!document) {
    state.message = "No result document: " + to_line(document.error().front()) + ".";
    return;
  }
  save(app, state, platform, "-" + delivery.chosen.id + ".fdl", fdl::write_document(*document));
}

void own_from(const fdl::Delivery& delivery, PanelState& state) {
  DeliveryState& mine = state.delivery;
  mine.choice.own = delivery.chosen;
  mine.choice.own.id = fdl::kOwnTemplate;
  mine.choice.own.label = fdl::usual_own_template().label;
  mine.choice.canvas_template = fdl::kOwnTemplate;
  ++mine.version;
  state.message = "The own template now holds these settings. Change them below.";
}

void add_notes(std::vector<std::string>& notes, std::string_view severity,
               const std::vector<fdl::ImportNote>& found) {
  for (const fdl::ImportNote& note : found) {
    if (notes.size() >= kMostNotes) return;
    notes.push_back(std::string(severity) + ": " + (note.pointer.empty() ? "/" : note.pointer) +
                    ": " + note.text);
  }
}

void refuse(PanelState& state, std::string_view name, const Problems& problems) {
  DeliveryState& mine = state.delivery;
  for (const Problem& problem : problems) {
    if (mine.import_notes.size() < kMostNotes) {
      mine.import_notes.push_back("Fails: " + to_line(problem));
    }
  }
  state.message = std::string(name) + " was not taken: " + to_line(problems.front()) + ".";
  if (problems.size() > 1) {
    state.message += " " + std::to_string(problems.size() - 1) + " more, listed under Delivery.";
  }
  state.message += " The plan is unchanged.";
}

}  // namespace

bool take_delivery_command(const Command& command, DeliveryState& state) {
  if (const auto* set = std::get_if<SetField>(&command)) {
    if (!set->pointer.starts_with(kDeliveryPrefix)) return false;
    set_value(state, set->pointer, set->text);
    return true;
  }
  const auto* reset = std::get_if<ResetField>(&command);
  if (reset == nullptr || !reset->pointer.starts_with(kDeliveryPrefix)) return false;
  reset_value(state, reset->pointer);
  return true;
}

void run_delivery_action(std::string_view id, const App& app, PanelState& state,
                         Platform& platform) {
  if (id == kOpenFraming) return platform.open_file(kFramingFile, ".fdl,.json,application/json");
  if (id == kClearImport) {
    state.delivery.import_notes.clear();
    ++state.delivery.version;
    return;
  }
  const bool known =
      id == kSaveDelivery || id == kSaveDeliverySource || id == kSaveTemplate || id == kOwnFromThis;
  const auto delivery = known ? make_delivery(app, state.delivery) : std::nullopt;
  if (!delivery) return;
  if (id == kSaveDelivery) save_result(app, *delivery, state, platform);
  if (id == kOwnFromThis) own_from(*delivery, state);
  if (id == kSaveDeliverySource) {
    save(app, state, platform, ".fdl", fdl::write_document(delivery->source));
  }
  if (id == kSaveTemplate) {
    save(app, state, platform, "-" + delivery->chosen.id + "-template.fdl",
         fdl::write_document(fdl::template_document({delivery->chosen})));
  }
}

void open_framing(std::string_view name, std::string_view text, const App& app, PanelState& state,
                  Commands& commands) {
  DeliveryState& mine = state.delivery;
  mine.import_notes.clear();
  ++mine.version;
  state.jump = kDeliverySection;
  const auto reading = fdl::read_document(text);
  if (!reading) return refuse(state, name, reading.error());
  auto result = fdl::import_plan(reading->document, app.plan(), app.library());
  if (!result) return refuse(state, name, result.error());
  for (const Problem& warning : reading->warnings) {
    if (mine.import_notes.size() < kMostNotes) {
      mine.import_notes.push_back("Caution: " + to_line(warning));
    }
  }
  add_notes(mine.import_notes, "Caution: not taken", result->left);
  add_notes(mine.import_notes, "Fine: taken", result->taken);
  commands.emplace_back(ReplacePlan{std::move(result->plan)});
  state.message = "Took what " + std::string(name) + " says about the frame lines.";
  const std::size_t open = result->left.size() + reading->warnings.size();
  state.message += open == 0 ? " Everything was understood."
                             : " " + std::to_string(open) + " remarks stand under Delivery.";
  state.message += " Undo brings the old plan back.";
}

void keep_delivery(const DeliveryState& state, Platform& platform) {
  const fdl::DeliveryChoice& choice = state.choice;
  const bool recorded = choice.source == fdl::DeliverySource::recorded;
  platform.store(kChoiceKey, choice.canvas_template + (recorded ? " recorded " : " sensor ") +
                                 std::to_string(choice.frame_line));
  const bool usual = choice.own == fdl::usual_own_template();
  platform.store(kOwnKey,
                 usual ? std::string() : fdl::write_document(fdl::template_document({choice.own})));
}

void load_delivery(DeliveryState& state, const Platform& platform) {
  if (const auto kept = platform.stored(kChoiceKey)) {
    const std::string_view text = *kept;
    const std::size_t first = text.find(' ');
    const std::size_t second = text.find(' ', first + 1);
    if (first != std::string_view::npos && second != std::string_view::npos) {
      set_value(state, kDeliveryTemplate, text.substr(0, first));
      set_value(state, kDeliverySource, text.substr(first + 1, second - first - 1));
      set_value(state, kDeliveryLine, text.substr(second + 1));
    }
  }
  const auto own = platform.stored(kOwnKey);
  if (!own) return;
  const auto reading = fdl::read_document(*own);
  if (!reading || fdl::rows(reading->document.canvas_templates).empty()) return;
  state.choice.own = fdl::rows(reading->document.canvas_templates).front();
  state.choice.own.id = fdl::kOwnTemplate;
  ++state.version;
}

}  // namespace widegate
