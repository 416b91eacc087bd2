// Whole cards on media: cases worked by hand, and a plainly written packing that knows no groups.
#include "core/store/packing.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <numeric>
#include <random>

namespace widegate {
namespace {

TEST_CASE("Whole cards, worked by hand") {
  // Seven cards of 3 on media of 8: two each, four media; the bytes alone would fit on three.
  CHECK(media_filled({.pieces = {{3, 7}}}, 8) == 4);
  CHECK(fewest_media({.pieces = {{3, 7}}}, 8) == 3);
  // Their room of 2 takes part-filled cards of 2, one each, and the last medium has room for two.
  CHECK(media_filled({.pieces = {{3, 7}, {2, 5}}}, 8) == 4);
  CHECK(media_filled({.pieces = {{3, 7}, {2, 6}}}, 8) == 5);
  // Largest first is not always best: it puts 5 and 4 together, where 5 3 2 and 4 4 2 take two.
  CHECK(media_filled({.pieces = {{5, 1}, {4, 2}, {3, 1}, {2, 2}}}, 10) == 3);
}

TEST_CASE("A card larger than a medium is parted, and loose bytes fill the room") {
  CHECK(media_filled({.pieces = {{25, 1}}}, 10) == 3);
  CHECK(media_filled({.pieces = {{6, 2}}, .loose = 8}, 10) == 2);
  CHECK(media_filled({.pieces = {{6, 2}}, .loose = 9}, 10) == 3);
  CHECK(media_filled({}, 10) == 0);
  CHECK(media_filled({.pieces = {{0, 1000}, {5, 0}}}, 10) == 0);
}

TEST_CASE("Counts that would not be exact are refused") {
  CHECK(!media_filled({.pieces = {{9, kLargestExact}, {8, kLargestExact}}}, 10));
  CHECK(!media_filled({.pieces = {}, .loose = Wide(-1)}, 10));
}

std::int64_t one_by_one(std::vector<std::int64_t> cards, std::int64_t capacity) {
  std::sort(cards.begin(), cards.end(), std::greater<>());
  std::vector<std::int64_t> rooms;
  for (const std::int64_t card : cards) {
    const auto room =
        std::find_if(rooms.begin(), rooms.end(), [&](std::int64_t left) { return left >= card; });
    if (room == rooms.end()) {
      rooms.push_back(capacity - card);
    } else {
      *room -= card;
    }
  }
  return static_cast<std::int64_t>(rooms.size());
}

TEST_CASE("Cards in groups are packed as cards one by one, whatever their order") {
  std::mt19937_64 random(20260301);
  const auto draw = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  for (int round = 0; round < 3000; ++round) {
    const std::int64_t capacity = draw(1, 400);
    MediaLoad load;
    std::vector<std::int64_t> cards;
    for (std::int64_t left = draw(1, 6); left > 0; --left) {
      const Pieces pieces{.bytes = draw(1, capacity), .count = draw(0, 30)};
      load.pieces.push_back(pieces);
      cards.insert(cards.end(), static_cast<std::size_t>(pieces.count), pieces.bytes);
    }
    CAPTURE(round);
    const auto filled = media_filled(load, capacity);
    REQUIRE(filled.has_value());
    CHECK(*filled == one_by_one(cards, capacity));
    std::shuffle(load.pieces.begin(), load.pieces.end(), random);
    CHECK(media_filled(load, capacity) == filled);
    const std::int64_t bytes = std::accumulate(cards.begin(), cards.end(), std::int64_t{0});
    CHECK(fewest_media(load, capacity) == (bytes + capacity - 1) / capacity);
    CHECK(fewest_media(load, capacity) <= filled);
  }
}

}  // namespace
}  // namespace widegate
