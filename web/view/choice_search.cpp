#include "web/view/choice_search.h"

#include <algorithm>
#include <cctype>

namespace widegate {
namespace {

constexpr std::size_t kLongFrom = 10;
constexpr std::size_t kLatelyShown = 3;
constexpr std::size_t kLatelyKept = 40;

/// Lower case; letters beyond ASCII stay as they are.
std::string folded(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](unsigned char c) { return static_cast<char>(c < 0x80 ? std::tolower(c) : c); });
  return out;
}

/// Whether the entry has each of the words somewhere.
bool has_words(const ChoiceItem& item, std::string_view words) {
  const std::string text = folded(item.label + " " + item.detail);
  const std::string wanted = folded(words);
  std::size_t at = 0;
  while (at < wanted.size()) {
    const std::size_t end = std::min(wanted.find(' ', at), wanted.size());
    if (text.find(wanted.substr(at, end - at)) == std::string::npos) return false;
    at = end + 1;
  }
  return true;
}

}  // namespace

bool is_long(const Control& control) { return control.choices.size() > kLongFrom; }

ChoiceList choice_list(const Control& control, const PanelState& state) {
  ChoiceList list;
  const bool all = !is_long(control) || state.search.empty();
  for (const ChoiceItem& item : control.choices) {
    if (all || has_words(item, state.search)) list.rest.push_back(&item);
  }
  if (!is_long(control) || !state.search.empty()) return list;
  for (const UsedLately& used : state.lately) {
    if (used.id != control.id || list.lately.size() == kLatelyShown) continue;
    for (const ChoiceItem& item : control.choices) {
      if (item.value == used.value) list.lately.push_back(&item);
    }
  }
  return list;
}

Control search_control(const Control& open, const PanelState& state) {
  Control control;
  control.id = kSearch;
  control.kind = ControlKind::text;
  control.section = open.section;
  control.label = "Search";
  control.edit_text = state.search;
  control.value_text = state.search.empty() ? "Search" : state.search;
  return control;
}

void note_lately(PanelState& state, std::string_view id, std::string_view value) {
  const bool equipment =
      id.starts_with("/format/") || id.starts_with("/store/") || id.starts_with("/lens/");
  if (!equipment || value.empty()) return;
  std::erase_if(state.lately,
                [&](const UsedLately& each) { return each.id == id && each.value == value; });
  state.lately.insert(state.lately.begin(), {std::string(id), std::string(value)});
  if (state.lately.size() > kLatelyKept) state.lately.resize(kLatelyKept);
  ++state.lately_version;
}

// One line each, "pointer value"; neither holds a space.
std::string lately_text(const PanelState& state) {
  std::string text;
  for (const UsedLately& each : state.lately) text += each.id + " " + each.value + "\n";
  return text;
}

void read_lately(PanelState& state, std::string_view text) {
  state.lately.clear();
  while (!text.empty() && state.lately.size() < kLatelyKept) {
    const std::string_view line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    const auto space = line.find(' ');
    if (space == std::string_view::npos || !line.starts_with("/")) continue;
    state.lately.push_back(
        {std::string(line.substr(0, space)), std::string(line.substr(space + 1))});
  }
}

}  // namespace widegate
