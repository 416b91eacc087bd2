#include "core/show/media_sets.h"

#include <algorithm>

#include "core/store/packing.h"

namespace widegate {
namespace {

/// Parts whose cards go on media of one model.
struct Group {
  MediaSet set;
  std::int64_t capacity_bytes = 0;
  std::vector<const EvaluatedPart*> parts;
};

std::int64_t copies_of(const EvaluatedPart& part, bool tape) {
  return tape ? part.tape_copies() : part.plan().store.drive_copies;
}

/// What a part has shot by the end of a day; nothing when a count overflows.
bool add_load(MediaLoad& load, const EvaluatedPart& part, std::int64_t day, End end) {
  const StoreReport& store = part.report.store;
  const DayCards& cards = end == End::light ? store.lightest_day : store.heaviest_day;
  const Wide camera_days = Wide(part.cameras()) * part.days_by(day);
  const auto full = (camera_days * cards.full).count();
  const auto last = camera_days.count();
  if (!full || !last) return false;
  load.loose = load.loose + camera_days * cards.loose_bytes;
  load.pieces.push_back({cards.full_bytes, *full});
  load.pieces.push_back({cards.last_bytes, *last});
  return true;
}

/// Media of all copies by a day, counted by `count`: of each number of copies those parts that have
/// as many.
template <class Count>
std::optional<std::int64_t> media_by(const Group& group, std::int64_t day, End end, Count count) {
  std::vector<std::int64_t> numbers;
  for (const EvaluatedPart* part : group.parts) {
    numbers.push_back(copies_of(*part, group.set.tape));
  }
  std::sort(numbers.begin(), numbers.end());
  Wide media = 0;
  std::int64_t before = 0;
  for (const std::int64_t copies : numbers) {
    if (copies == before) continue;
    MediaLoad load;
    for (const EvaluatedPart* part : group.parts) {
      if (copies_of(*part, group.set.tape) < copies) continue;
      if (!add_load(load, *part, day, end)) return std::nullopt;
    }
    const auto filled = count(load, group.capacity_bytes);
    if (!filled) return std::nullopt;
    media = media + Wide(*filled) * (copies - before);
    before = copies;
  }
  return media.count();
}

ByteRange range(std::int64_t a, std::int64_t b) { return {std::min(a, b), std::max(a, b)}; }

/// At both ends of the codecs' ranges.
template <class Count>
std::optional<ByteRange> media_range(const Group& group, std::int64_t day, Count count) {
  const auto light = media_by(group, day, End::light, count);
  const auto heavy = media_by(group, day, End::heavy, count);
  if (!light || !heavy) return std::nullopt;
  return range(*light, *heavy);
}

/// The days on which the media of the first copy are full: with the next day's cards there are
/// more.
std::vector<std::int64_t> full_days(const Group& group, std::int64_t days) {
  std::vector<std::int64_t> full;
  Group first = group;
  std::int64_t before = 0;
  for (std::int64_t day = 1; day <= days; ++day) {
    MediaLoad load;
    for (const EvaluatedPart* part : first.parts) add_load(load, *part, day, End::heavy);
    const std::int64_t media = media_filled(load, group.capacity_bytes).value_or(before);
    if (before > 0 && media > before) full.push_back(day);
    before = std::max(before, media);
  }
  return full;
}

std::optional<FilledMedia> filled(Group&& group, std::int64_t days) {
  const auto all = media_range(group, days, media_filled);
  const auto fewest = media_range(group, days, fewest_media);
  if (!all || !fewest) return std::nullopt;
  FilledMedia filled;
  filled.by_day.reserve(static_cast<std::size_t>(days));
  ByteRange before;
  for (std::int64_t day = 1; day <= days; ++day) {
    const auto media = media_range(group, day, media_filled);
    if (!media) return std::nullopt;
    before = {std::min(std::max(before.least, media->least), all->least),
              std::min(std::max(before.most, media->most), all->most)};
    filled.by_day.push_back(before);
  }
  filled.set = std::move(group.set);
  filled.set.media = *all;
  filled.set.fewest = *fewest;
  return filled;
}

template <class Row>
void add_part(std::vector<Group>& groups, const EvaluatedPart& part, const Row& row, bool tape,
              Keeping keeping) {
  if (copies_of(part, tape) == 0) return;
  const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
    return keeping == Keeping::shared && group.set.tape == tape && group.set.id == row.id &&
           group.capacity_bytes == row.capacity_bytes;
  });
  Group& group = same == groups.end() ? groups.emplace_back() : *same;
  group.set.tape = tape;
  group.set.id = row.id;
  group.set.name = row.name;
  group.set.parts += (group.parts.empty() ? "" : ", ") + part.part->name;
  group.capacity_bytes = row.capacity_bytes;
  group.parts.push_back(&part);
}

}  // namespace

std::optional<std::vector<FilledMedia>> media_of(const ShowArchive& archive,
                                                 const std::vector<EvaluatedPart>& parts,
                                                 std::int64_t days) {
  std::vector<Group> groups;
  for (const EvaluatedPart& part : parts) {
    add_part(groups, part, *part.drive, false, archive.drives);
  }
  for (const EvaluatedPart& part : parts) {
    if (part.tape != nullptr) add_part(groups, part, *part.tape, true, archive.tapes);
  }
  std::vector<FilledMedia> sets;
  sets.reserve(groups.size());
  for (Group& group : groups) {
    std::vector<std::int64_t> full = full_days(group, days);
    auto media = filled(std::move(group), days);
    if (!media) return std::nullopt;
    media->set.full_days = std::move(full);
    sets.push_back(std::move(*media));
  }
  return sets;
}

}  // namespace widegate
