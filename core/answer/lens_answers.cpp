// Answers that are another lens: one that covers, one of the squeeze that is taken out, one that
// shows what is wanted; and what the lens at hand can do.
#include <algorithm>
#include <cmath>

#include "core/answer/finder.h"
#include "core/base/number_text.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

constexpr std::string_view kSet = "/lens/set";
constexpr std::string_view kFocal = "/lens/focal_mm";
constexpr std::string_view kCircle = "/lens/image_circle_mm";
constexpr std::string_view kSqueeze = "/lens/squeeze";
constexpr std::string_view kFocus = "/lens/focus_m";

std::string millimetres(double mm) { return short_number(mm, 1) + " mm"; }
std::string metres(double m) { return short_number(m, 2) + " m"; }

TypedField field(std::string_view pointer, std::string text) {
  return {std::string(pointer), std::move(text)};
}

/// How far one focal length is from another, in proportion.
double away(double focal_mm, double from_mm) { return std::abs(std::log(focal_mm / from_mm)); }

/// The lenses of a set, the nearest in proportion first.
std::vector<const Lens*> by_nearness(const LensSet& set, double focal_mm) {
  std::vector<const Lens*> lenses;
  for (const Lens& lens : set.lenses) lenses.push_back(&lens);
  std::stable_sort(lenses.begin(), lenses.end(), [focal_mm](const Lens* a, const Lens* b) {
    return away(a->focal_mm, focal_mm) < away(b->focal_mm, focal_mm);
  });
  return lenses;
}

/// To another lens; a circle that was typed for this one is not that one's.
AnswerChange lens_change(const Plan& plan, const LensSet& set, double focal_mm) {
  AnswerChange change;
  if (set.id != plan.lens.set) change.push_back(field(kSet, set.id));
  if (focal_mm != plan.lens.focal_mm) change.push_back(field(kFocal, print_number(focal_mm)));
  if (plan.lens.image_circle_mm) change.push_back(field(kCircle, ""));
  return change;
}

/// Every set of the library and of the plan, one's own first.
std::vector<const LensSet*> all_sets(const Finder& finder) {
  std::vector<const LensSet*> sets;
  const auto& own = finder.plan().own.lens_sets;
  for (const LensSet& set : own) sets.push_back(&set);
  for (const LensSet& set : finder.catalogue().lens_sets) {
    if (find_row(own, set.id) == nullptr) sets.push_back(&set);
  }
  return sets;
}

double circle_needed(const Report& report, const Plan& plan) {
  switch (plan.choose.must_cover) {
    case CoverArea::mode:
      return report.cover.mode.diagonal_mm;
    case CoverArea::protected_area:
      return report.cover.protected_area.diagonal_mm;
    case CoverArea::frame:
    case CoverArea::none:
      break;
  }
  return report.cover.frame.diagonal_mm;
}

/// "Tamar" of "Tamar, spherical, 35 mm size".
std::string short_name(const LensSet& set) { return set.name.substr(0, set.name.find(',')); }

std::string cover_outcome(const Report& after, const Plan& plan) {
  return millimetres(after.cover.image_circle_mm) + " circle, " +
         millimetres(circle_needed(after, plan)) + " needed";
}

/// Of this set the lens nearest to the one in use that mends the note.
bool add_covering_lens(Finder& finder, const Note& note, const LensSet& set,
                       std::string_view name) {
  for (const Lens* lens : by_nearness(set, finder.plan().lens.focal_mm)) {
    const AnswerChange change = lens_change(finder.plan(), set, lens->focal_mm);
    const auto after = finder.mended(change, note);
    if (!after) continue;
    finder.add(Question::cover, std::string(name) + millimetres(lens->focal_mm),
               cover_outcome(*after, finder.plan()), change);
    return true;
  }
  return false;
}

double squeeze_now(const Finder& finder) { return finder.report().mode.squeeze; }

/// The sets of this squeeze but the one in use, those with the nearest focal length first.
std::vector<const LensSet*> other_sets(const Finder& finder, double squeeze) {
  std::vector<const LensSet*> sets = all_sets(finder);
  std::erase_if(sets, [&](const LensSet* set) {
    return set->id == finder.plan().lens.set || set->lenses.empty() ||
           std::abs(set->squeeze.to_double() - squeeze) > 1e-9;
  });
  const double focal = finder.plan().lens.focal_mm;
  std::stable_sort(sets.begin(), sets.end(), [focal](const LensSet* a, const LensSet* b) {
    return away(by_nearness(*a, focal).front()->focal_mm, focal) <
           away(by_nearness(*b, focal).front()->focal_mm, focal);
  });
  return sets;
}

void add_smaller_area(Finder& finder, const Note& note) {
  const Plan& plan = finder.plan();
  if (note.severity != Severity::fail || plan.choose.must_cover <= CoverArea::frame) return;
  finder.add_if_mended(note, "Only the frame line has to be covered",
                       "what is around it may be dark", {{"/choose/must_cover", "frame"}});
}

}  // namespace

void find_lenses_that_cover(Finder& finder, const Note& note) {
  if (const LensSet* set = finder.lens_set()) {
    add_covering_lens(finder, note, *set, "Use the ");
  }
  for (const LensSet* set : other_sets(finder, squeeze_now(finder))) {
    if (add_covering_lens(finder, note, *set, "Use " + short_name(*set) + " ")) break;
  }
  add_smaller_area(finder, note);
}

void find_lenses_of_squeeze(Finder& finder, const Note& note) {
  for (const LensSet* set : other_sets(finder, note.need)) {
    const Lens& lens = *by_nearness(*set, finder.plan().lens.focal_mm).front();
    AnswerChange change = lens_change(finder.plan(), *set, lens.focal_mm);
    if (finder.plan().lens.squeeze) change.push_back(field(kSqueeze, ""));
    finder.add_if_mended(note, "Use " + short_name(*set) + " " + millimetres(lens.focal_mm),
                         "squeezes " + short_number(note.need, 2) + " times", change);
  }
}

void find_lens_marks(Finder& finder, const Note& note) {
  if (note.topic == Topic::see_widest_stop) {
    finder.add_if_mended(note, "Stop " + short_number(note.need, 2), "as far as the lens opens",
                         {field("/lens/f_number", print_number(note.need))});
  } else {
    finder.add_if_mended(note, "Focus at " + metres(note.need), "as near as the lens focuses",
                         {field(kFocus, print_number(note.need))});
  }
}

namespace {

/// Width or height of the scene: what is wanted of it and what a report shows.
struct WantedSide {
  double wanted_m;
  std::optional<double> focal_mm;
  std::optional<double> distance_m;
  double (*shown_m)(const Report& report);
  std::string_view word;
};

std::optional<WantedSide> wanted_side(const SeeReport& see) {
  if (see.wanted_width_m) {
    return WantedSide{*see.wanted_width_m, see.focal_for_wanted_width_mm,
                      see.distance_for_wanted_width_m,
                      [](const Report& report) { return report.see.width_at_focus_m; }, " wide"};
  }
  if (see.wanted_height_m) {
    return WantedSide{*see.wanted_height_m, see.focal_for_wanted_height_mm,
                      see.distance_for_wanted_height_m,
                      [](const Report& report) { return report.see.height_at_focus_m; }, " high"};
  }
  return std::nullopt;
}

std::string seen_words(const WantedSide& side, const Report& after) {
  return "sees " + metres(side.shown_m(after)) + std::string(side.word) + " at " +
         metres(after.see.focus_m);
}

/// The longest lens of the set that shows all of it; where none does the shortest, which says so.
const Lens& lens_for(const LensSet& set, double focal_mm) {
  const Lens* found = &set.lenses.front();
  for (const Lens& lens : set.lenses) {
    if (lens.focal_mm <= focal_mm * (1 + 1e-9)) found = &lens;
  }
  return *found;
}

void add_lens_for_view(Finder& finder, const WantedSide& side) {
  const Plan& plan = finder.plan();
  if (!side.focal_mm) return;
  const LensSet* set = finder.lens_set();
  if (set == nullptr || set->lenses.empty()) {
    const double focal = std::floor(*side.focal_mm / finder.report().see.extender * 10) / 10;
    const AnswerChange change{field(kFocal, print_number(focal))};
    if (const auto after = finder.tried(change)) {
      finder.add(Question::see, "Use " + millimetres(focal), seen_words(side, *after), change);
    }
    return;
  }
  // What is marked on the lens; an extender makes the rest.
  const double mark = *side.focal_mm / finder.report().see.extender;
  const Lens& all_in = lens_for(*set, mark);
  const Lens& nearest = *by_nearness(*set, mark).front();
  for (const Lens* lens : {&all_in, &nearest}) {
    const AnswerChange change = lens_change(plan, *set, lens->focal_mm);
    const auto after = finder.tried(change);
    if (!after) continue;
    const bool too_little = side.shown_m(*after) < side.wanted_m;
    const bool widest = lens == &set->lenses.front();
    finder.add(Question::see, "Use the " + millimetres(lens->focal_mm),
               seen_words(side, *after) + (too_little && widest ? ", the widest of the set" : ""),
               change);
  }
}

/// A centimetre further rather than nearer: all of it shall be in.
void add_place_for_view(Finder& finder, const WantedSide& side) {
  if (!side.distance_m) return;
  const double metres_away = std::ceil(*side.distance_m * 100) / 100;
  const AnswerChange change{field(kFocus, print_number(metres_away))};
  const auto after = finder.tried(change);
  if (!after) return;
  finder.add(Question::see, "From " + metres(metres_away) + " away",
             "this lens sees " + metres(side.shown_m(*after)) + std::string(side.word) + " there",
             change);
}

/// Whether what is shown is all that is wanted and hardly more.
bool is_reached(const WantedSide& side, const Report& report) {
  constexpr double kReached = 0.005;
  return std::abs(side.shown_m(report) / side.wanted_m - 1) < kReached;
}

}  // namespace

void find_wanted_view(Finder& finder) {
  const auto side = wanted_side(finder.report().see);
  if (!side || is_reached(*side, finder.report())) return;
  add_lens_for_view(finder, *side);
  add_place_for_view(finder, *side);
}

}  // namespace widegate
