#include "web/draw/picture/label_places.h"

#include <algorithm>
#include <numeric>

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

std::vector<std::size_t> most_important(std::span<const int> ranks, std::size_t most) {
  std::vector<std::size_t> kept(ranks.size());
  std::iota(kept.begin(), kept.end(), std::size_t{0});
  if (kept.size() <= most) return kept;
  std::stable_sort(kept.begin(), kept.end(),
                   [ranks](std::size_t a, std::size_t b) { return ranks[a] < ranks[b]; });
  kept.resize(most);
  std::sort(kept.begin(), kept.end());
  return kept;
}

}  // namespace widegate
