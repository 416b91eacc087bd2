#include "web/view/named_control.h"

#include <utility>

namespace widegate {

Control named_control(std::string_view id, ControlKind kind, std::string_view section,
                      std::string_view label) {
  Control control;
  control.id = id;
  control.kind = kind;
  control.section = section;
  control.label = label;
  return control;
}

void choose_item(Control& control, std::string value) {
  control.edit_text = std::move(value);
  for (const ChoiceItem& item : control.choices) {
    if (item.value == control.edit_text) control.value_text = item.label;
  }
}

}  // namespace widegate
