#include "core/plan/carried_rows.h"

#include <algorithm>
#include <type_traits>
#include <utility>

#include "core/catalogue/each_list.h"
#include "core/catalogue/renamed_ids.h"

namespace widegate {
namespace {

template <class Row>
void take_row(std::vector<Row>& taken, const std::vector<Row>& carried, const std::vector<Row>& own,
              std::string_view id) {
  const Row* row = find_row(own, id);
  const bool there = find_row(carried, id) != nullptr || find_row(taken, id) != nullptr;
  if (row != nullptr && !there) taken.push_back(*row);
}

/// The codecs of every recording option.
void take_codecs(std::vector<Codec>& taken, const std::vector<Camera>& cameras,
                 const std::vector<Codec>& carried, const std::vector<Codec>& own) {
  for (const Camera& camera : cameras) {
    for (const SensorMode& mode : camera.modes) {
      for (const Recording& recording : mode.recordings) {
        for (const std::string& id : recording.codecs) take_row(taken, carried, own, id);
      }
    }
  }
}

/// Removes the rows that `unwanted(row, the other list's rows)` says.
template <class Unwanted>
Catalogue without(Catalogue rows, const Catalogue& other, Unwanted unwanted) {
  for_each_list(rows, [&](std::string_view key, auto& list) {
    for_each_list(other, [&](std::string_view other_key, const auto& others) {
      using Rows = std::remove_cvref_t<decltype(list)>;
      if constexpr (std::is_same_v<Rows, std::remove_cvref_t<decltype(others)>>) {
        if (key != other_key) return;
        std::erase_if(list, [&](const auto& row) { return unwanted(row, others); });
      }
    });
  });
  return rows;
}

}  // namespace

Catalogue rows_in_use(const Plan& plan, const Catalogue& own) {
  Catalogue taken;
  const Catalogue& carried = plan.own;
  take_row(taken.cameras, carried.cameras, own.cameras, plan.format.camera);
  for (const std::string& id : plan.choose.cameras) {
    take_row(taken.cameras, carried.cameras, own.cameras, id);
  }
  take_row(taken.codecs, carried.codecs, own.codecs, plan.format.codec);
  take_codecs(taken.codecs, taken.cameras, carried.codecs, own.codecs);
  take_codecs(taken.codecs, carried.cameras, carried.codecs, own.codecs);
  take_row(taken.lens_sets, carried.lens_sets, own.lens_sets, plan.lens.set);
  take_row(taken.cards, carried.cards, own.cards, plan.store.card);
  take_row(taken.links, carried.links, own.links, plan.store.link);
  take_row(taken.drives, carried.drives, own.drives, plan.store.drive);
  take_row(taken.tapes, carried.tapes, own.tapes, plan.store.tape);
  take_row(taken.checksums, carried.checksums, own.checksums, plan.store.checksum);
  take_row(taken.containers, carried.containers, own.containers, plan.store.container);
  return taken;
}

Plan carrying_plan(Plan plan, const Catalogue& own) {
  const Catalogue used = rows_in_use(plan, own);
  plan.own = merged_library(plan.own, used, OnDifference::keep);
  return plan;
}

Plan lightened_plan(Plan plan, const Catalogue& own) {
  plan.own = without(std::move(plan.own), own, [](const auto& row, const auto& others) {
    const auto* other = find_row(others, row.id);
    return other != nullptr && *other == row;
  });
  return plan;
}

Catalogue rows_also_in(const Catalogue& rows, const Catalogue& other) {
  return without(rows, other, [](const auto& row, const auto& others) {
    return find_row(others, row.id) == nullptr;
  });
}

Catalogue rows_not_in(const Catalogue& rows, const Catalogue& other) {
  return without(rows, other, [](const auto& row, const auto& others) {
    return find_row(others, row.id) != nullptr;
  });
}

void use_current_ids(Plan& plan) {
  plan.format.codec = std::string(current_codec_id(plan.format.codec));
  use_current_ids(plan.own);
}

bool is_empty(const Catalogue& rows) { return rows == Catalogue{}; }

}  // namespace widegate
