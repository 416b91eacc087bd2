#include "web/picture/label_places.h"

#include <algorithm>

namespace widegate {

std::vector<LabelPlace> place_labels(std::span<const LabelTarget> targets, float top,
                                     float bottom) {
  constexpr float kLeastDistance = 3;
  std::vector<LabelPlace> places;
  places.reserve(targets.size());
  const float step = (bottom - top) / static_cast<float>(std::max<std::size_t>(1, targets.size()));
  float y = top + step / 2;
  for (const LabelTarget& target : targets) {
    const float low = std::min(target.top, target.bottom);
    const float high = std::max(target.top, target.bottom);
    LabelPlace place{y, std::clamp(y, low, high)};
    // Leaders that start in order and end in order cannot cross.
    if (!places.empty()) {
      place.anchor_y = std::max(place.anchor_y, places.back().anchor_y + kLeastDistance);
    }
    places.push_back(place);
    y += step;
  }
  return places;
}

}  // namespace widegate
