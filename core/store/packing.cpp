#include "core/store/packing.h"

#include <algorithm>

namespace widegate {
namespace {

/// Media beside one another that have the same room left.
struct Media {
  std::int64_t room = 0;
  std::int64_t count = 0;
};

/// Media in the order they were begun, with what has been put on them.
class Shelf {
 public:
  explicit Shelf(std::int64_t capacity) : capacity_(capacity) {}

  /// Each piece on the first medium with room for it.
  void add(Pieces pieces) {
    std::vector<Media> after;
    after.reserve(media_.size() + 2);
    for (const Media& media : media_) put(after, media, pieces);
    const std::int64_t each = capacity_ / pieces.bytes;
    put(after, {.room = capacity_, .count = pieces.count / each + 1}, pieces);
    // What was begun for nothing is no medium.
    if (!after.empty() && after.back().room == capacity_) after.pop_back();
    media_ = std::move(after);
  }

  [[nodiscard]] Wide count() const {
    Wide count = 0;
    for (const Media& media : media_) count = count + media.count;
    return count;
  }

 private:
  static void keep(std::vector<Media>& after, Media media) {
    if (media.count > 0) after.push_back(media);
  }

  /// Takes off `pieces` what fits on these media.
  static void put(std::vector<Media>& after, Media media, Pieces& pieces) {
    const std::int64_t each = media.room / pieces.bytes;
    if (each == 0 || pieces.count == 0) return keep(after, media);
    const std::int64_t full = std::min(media.count, pieces.count / each);
    keep(after, {.room = media.room - each * pieces.bytes, .count = full});
    pieces.count -= full * each;
    const bool part = full < media.count && pieces.count > 0;
    if (part) keep(after, {.room = media.room - pieces.count * pieces.bytes, .count = 1});
    if (part) pieces.count = 0;
    keep(after, {.room = media.room, .count = media.count - full - (part ? 1 : 0)});
  }

  std::int64_t capacity_;
  std::vector<Media> media_;
};

}  // namespace

Wide MediaLoad::bytes() const {
  Wide sum = loose;
  for (const Pieces& each : pieces) sum = sum + Wide(each.bytes) * each.count;
  return sum;
}

std::optional<std::int64_t> media_filled(const MediaLoad& load, std::int64_t capacity_bytes) {
  std::vector<Pieces> pieces = load.pieces;
  std::sort(pieces.begin(), pieces.end(),
            [](const Pieces& a, const Pieces& b) { return a.bytes > b.bytes; });
  Shelf shelf(capacity_bytes);
  for (const Pieces& each : pieces) {
    const bool whole = each.bytes > 0 && each.bytes <= capacity_bytes;
    if (whole && each.count > 0) shelf.add(each);
  }
  // What is parted fills the room that is left: then the bytes alone decide.
  const auto by_cards = shelf.count().count();
  const auto by_bytes = fewest_media(load, capacity_bytes);
  if (!by_cards || !by_bytes) return std::nullopt;
  return std::max(*by_cards, *by_bytes);
}

std::optional<std::int64_t> fewest_media(const MediaLoad& load, std::int64_t capacity_bytes) {
  return ceil_div(load.bytes(), capacity_bytes).count();
}

}  // namespace widegate
