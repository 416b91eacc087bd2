// Answers of cards and copies: a card that keeps up or lasts, a way to copy fast enough, footage
// that survives.
#include <algorithm>
#include <array>
#include <cmath>

#include "core/answer/finder.h"
#include "core/base/number_text.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

/// One row that was tried.
template <class Row>
struct Tried {
  const Row* row;
  Report after;
};

/// Every row of both lists with which the note is mended.
template <class Row>
std::vector<Tried<Row>> mending(const Finder& finder, const Note& note, std::string_view pointer,
                                const std::vector<Row>& own, const std::vector<Row>& library) {
  std::vector<Tried<Row>> found;
  const auto try_row = [&](const Row& row) {
    if (auto after = finder.mended({{std::string(pointer), row.id}}, note)) {
      found.push_back({&row, std::move(*after)});
    }
  };
  for (const Row& row : own) try_row(row);
  for (const Row& row : library) {
    if (find_row(own, row.id) == nullptr) try_row(row);
  }
  return found;
}

bool takes(const Camera& camera, const Card& card) {
  return camera.media.empty() || card.kind.empty() ||
         std::find(camera.media.begin(), camera.media.end(), card.kind) != camera.media.end();
}

/// How far a size is from the one in use, in proportion.
double away(std::int64_t bytes, std::int64_t from) {
  return std::abs(
      std::log(static_cast<double>(bytes) / static_cast<double>(std::max<std::int64_t>(1, from))));
}

std::string card_outcome(const Report& after) {
  const ScaledTime minutes = scaled_minutes(after.store.minutes_per_card, 0);
  return "writes " + short_number(after.store.write_headroom.least, 1) + " times the data rate, " +
         minutes.text + " " + std::string(minutes.unit) + " on a card";
}

struct SaferRow {
  Topic topic;
  std::string_view text;
  std::string_view outcome;
  std::string_view pointer;
  std::string_view value;
};
constexpr auto kSafer = std::to_array<SaferRow>({
    {Topic::store_copies, "Two copies on drives", "beside the cards", "/store/drive_copies", "2"},
    {Topic::store_one_place, "Keep them in two places", "a fire takes one of them, not both",
     "/store/copy_places", "2"},
    {Topic::store_verification, "Read every copy back", "and compare it with its checksum",
     "/store/verification", "destination"},
    {Topic::store_upload, "Upload proxies", "the originals travel on drives", "/store/upload_what",
     "proxies"},
});

}  // namespace

void find_cards(Finder& finder, const Note& note) {
  constexpr std::size_t kCards = 2;
  const Plan& plan = finder.plan();
  const Catalogue& library = finder.catalogue();
  auto cards = mending(finder, note, "/store/card", plan.own.cards, library.cards);
  std::erase_if(cards, [&](const auto& tried) { return !takes(finder.camera(), *tried.row); });
  const Card* now = find_row(plan.own.cards, library.cards, plan.store.card);
  std::stable_sort(cards.begin(), cards.end(), [now](const auto& a, const auto& b) {
    const Severity first = worst_severity(a.after.notes, Question::store);
    const Severity second = worst_severity(b.after.notes, Question::store);
    if (first != second) return first < second;
    return away(a.row->capacity_bytes, now->capacity_bytes) <
           away(b.row->capacity_bytes, now->capacity_bytes);
  });
  for (std::size_t i = 0; i < cards.size() && i < kCards; ++i) {
    finder.add(topic_question(note.topic), "Use " + cards[i].row->name,
               card_outcome(cards[i].after), {{"/store/card", cards[i].row->id}});
  }
}

/// The slowest that is fast enough: what is to be had most easily.
void find_links(Finder& finder, const Note& note) {
  auto links =
      mending(finder, note, "/store/link", finder.plan().own.links, finder.catalogue().links);
  if (links.empty()) return;
  const auto slowest =
      std::min_element(links.begin(), links.end(), [](const auto& a, const auto& b) {
        return a.row->payload_bytes_per_s < b.row->payload_bytes_per_s;
      });
  finder.add(Question::store, "Copy over " + slowest->row->name, "copying keeps up with shooting",
             {{"/store/link", slowest->row->id}});
}

void find_safer_copies(Finder& finder, const Note& note) {
  for (const SaferRow& row : kSafer) {
    if (row.topic != note.topic) continue;
    finder.add_if_mended(note, std::string(row.text), std::string(row.outcome),
                         {{std::string(row.pointer), std::string(row.value)}});
  }
}

}  // namespace widegate
