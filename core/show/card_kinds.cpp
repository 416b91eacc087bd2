#include "core/show/card_kinds.h"

#include <algorithm>

namespace widegate {
namespace {

CardKind& kind_of(std::vector<CardKind>& kinds, const Card& card) {
  const auto same = std::find_if(kinds.begin(), kinds.end(),
                                 [&](const CardKind& kind) { return kind.id == card.id; });
  if (same != kinds.end()) return *same;
  CardKind& kind = kinds.emplace_back();
  kind.id = card.id;
  kind.name = card.name;
  return kind;
}

/// Cards a part has out on a day, not yet back from copying among them.
ByteRange out_on(const EvaluatedPart& part, std::int64_t day) {
  const StoreReport& store = part.report.store;
  if (!part.shoots_on(day)) return {};
  if (store.rotation_sustainable) return store.cards_in_all;
  const auto used = [&](std::int64_t cards_per_day, std::int64_t all) {
    return std::min(all, cards_per_day * part.cameras() * part.days_by(day));
  };
  return {used(store.cards_per_day.least, store.cards_in_all.least),
          used(store.cards_per_day.most, store.cards_in_all.most)};
}

}  // namespace

std::vector<CardKind> card_kinds(const Show& show, const std::vector<EvaluatedPart>& parts,
                                 std::int64_t days) {
  std::vector<CardKind> kinds;
  for (const EvaluatedPart& part : parts) {
    if (part.report.store.no_cards) continue;
    CardKind& kind = kind_of(kinds, *part.card);
    kind.to_have = plus(kind.to_have, part.report.store.cards_in_all);
  }
  std::sort(kinds.begin(), kinds.end(),
            [](const CardKind& a, const CardKind& b) { return a.id < b.id; });
  for (CardKind& kind : kinds) {
    for (const CardsAtHand& row : show.cards) {
      if (row.card == kind.id) kind.at_hand = row.count;
    }
    for (std::int64_t day = 1; day <= days; ++day) {
      ByteRange out;
      for (const EvaluatedPart& part : parts) {
        const bool of_kind = !part.report.store.no_cards && part.card->id == kind.id;
        if (of_kind) out = plus(out, out_on(part, day));
      }
      kind.at_once = {std::max(kind.at_once.least, out.least),
                      std::max(kind.at_once.most, out.most)};
      if (kind.at_hand && !kind.short_day && out.most > *kind.at_hand) kind.short_day = day;
    }
  }
  return kinds;
}

}  // namespace widegate
