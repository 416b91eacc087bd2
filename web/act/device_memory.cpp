#include "web/act/device_memory.h"

#include <string>

#include "web/view/kept_plan_controls.h"

namespace widegate {
namespace {

constexpr std::string_view kTrialKey = "trial";

void note(PanelState& state, bool kept) {
  if (!kept && !state.memory.refused) state.message = kKeepsNothing;
  state.memory.refused = !kept;
}

}  // namespace

bool keep_on_device(PanelState& state, Platform& platform, std::string_view key,
                    std::string_view text) {
  const bool kept = platform.store(key, text);
  note(state, kept);
  return kept;
}

bool set_aside(PanelState& state, Platform& platform, std::string_view text) {
  state.memory.set_aside = true;
  std::string all = platform.stored(kSetAsideKey).value_or("");
  if (all.find(text) != std::string::npos) return true;
  if (!all.empty()) all += '\n';
  return keep_on_device(state, platform, kSetAsideKey, all.append(text));
}

void try_device(PanelState& state, Platform& platform) {
  note(state, platform.store(kTrialKey, "1") && platform.store(kTrialKey, ""));
  state.memory.set_aside = platform.stored(kSetAsideKey).has_value();
}

void save_set_aside(const PanelState& state, Platform& platform) {
  if (!state.memory.set_aside) return;
  platform.save_file("widegate-set-aside.txt", "text/plain;charset=utf-8",
                     platform.stored(kSetAsideKey).value_or(""));
}

}  // namespace widegate
