#include "web/view/choice_items.h"

#include <utility>

namespace widegate {

void put_item(Control& control, std::string_view value, std::string label, bool chosen) {
  if (chosen) {
    control.edit_text = value;
    control.value_text = label;
  }
  control.choices.push_back({std::string(value), std::move(label), {}});
}

std::vector<const Camera*> cameras_to_choose(const App& app) {
  const std::vector<Camera>& own = app.plan().own.cameras;
  std::vector<const Camera*> cameras;
  for (const Camera& camera : own) cameras.push_back(&camera);
  for (const Camera& camera : app.library().cameras) {
    if (find_row(own, camera.id) == nullptr) cameras.push_back(&camera);
  }
  return cameras;
}

}  // namespace widegate
