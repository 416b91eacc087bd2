#include <doctest/doctest.h>

#include <random>
#include <vector>

#include "web/draw/picture/label_places.h"

using namespace widegate;

TEST_CASE("labels never overlap and leaders never cross") {
  std::mt19937 random(20251);
  std::uniform_real_distribution<float> y(-200, 600);
  std::uniform_int_distribution<std::size_t> count(1, 11);
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    std::vector<LabelTarget> targets(count(random));
    for (LabelTarget& target : targets) target = {y(random), y(random), y(random)};
    const auto places = place_labels(targets, 10, 230);
    REQUIRE(places.size() == targets.size());
    const float step = 220.0F / static_cast<float>(targets.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      CHECK(places[i].y >= 10);
      CHECK(places[i].y <= 230);
      if (i == 0) continue;
      CHECK(places[i].y - places[i - 1].y >= step * 0.999F);
      CHECK(places[i].anchor_y > places[i - 1].anchor_y);
    }
  }
}

TEST_CASE("a leader is level where its outline reaches the label's height") {
  const LabelTarget tall{100, 0, 200};
  const auto places = place_labels(std::vector<LabelTarget>{tall, tall}, 0, 200);
  CHECK(places[0].y == places[0].anchor_y);
  CHECK(places[1].y == places[1].anchor_y);
}

TEST_CASE("where there is not room for all, the most important keep their labels, in order") {
  const std::vector<int> ranks = {3, 1, 4, 3, 1, 0};
  using Kept = std::vector<std::size_t>;
  CHECK(most_important(ranks, 6) == Kept{0, 1, 2, 3, 4, 5});
  CHECK(most_important(ranks, 9) == Kept{0, 1, 2, 3, 4, 5});
  CHECK(most_important(ranks, 4) == Kept{0, 1, 4, 5});
  CHECK(most_important(ranks, 1) == Kept{5});
  CHECK(most_important(ranks, 0).empty());
  CHECK(most_important({}, 3).empty());
}
