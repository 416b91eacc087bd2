#include "core/answer/answers.h"

#include <algorithm>
#include <array>

#include "core/answer/finder.h"
#include "core/report/evaluate.h"

namespace widegate {
namespace {

/// What answers a note of this topic that is not plainly fine.
struct TopicAnswers {
  Topic topic;
  void (*find)(Finder& finder, const Note& note);
};

constexpr auto kTopics = std::to_array<TopicAnswers>({
    {Topic::anchor_limited, find_level_lines},
    {Topic::frame_push_in, find_formats},
    {Topic::frame_room, find_formats},
    {Topic::cover_frame, find_lenses_that_cover},
    {Topic::cover_protected, find_lenses_that_cover},
    {Topic::cover_mode, find_lenses_that_cover},
    {Topic::cover_marginal, find_lenses_that_cover},
    {Topic::cover_neighbour_circle, find_lenses_that_cover},
    {Topic::see_widest_stop, find_lens_marks},
    {Topic::see_close_focus, find_lens_marks},
    {Topic::resolve_mandate, find_formats},
    {Topic::resolve_raster, find_formats},
    {Topic::resolve_upscaled, find_formats},
    {Topic::resolve_squeeze_mismatch, find_lenses_of_squeeze},
    {Topic::run_rate_ceiling, find_rates},
    {Topic::run_flicker, find_shutters},
    {Topic::run_bands, find_shutters},
    {Topic::run_no_safe_angle, find_lights},
    {Topic::store_write_headroom, find_cards},
    {Topic::store_minutes, find_cards},
    {Topic::store_card_claim, find_cards},
    {Topic::store_rotation, find_links},
    {Topic::store_copies, find_safer_copies},
    {Topic::store_one_place, find_safer_copies},
    {Topic::store_verification, find_safer_copies},
    {Topic::store_upload, find_safer_copies},
    {Topic::commission_missed, find_smallest_changes},
});

Severity severity_of(const Report& report, Topic topic) {
  Severity worst = Severity::ok;
  for (const Note& note : report.notes) {
    if (note.topic == topic) worst = std::max(worst, note.severity);
  }
  return worst;
}

/// Whether something fails in `after` that did not in `before`.
bool breaks_something(const Report& before, const Report& after) {
  return std::any_of(after.notes.begin(), after.notes.end(), [&before](const Note& note) {
    return note.severity == Severity::fail && severity_of(before, note.topic) != Severity::fail;
  });
}

bool same_change(const AnswerChange& a, const AnswerChange& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const TypedField& left, const TypedField& right) {
                      return left.pointer == right.pointer && left.text == right.text;
                    });
}

}  // namespace

const Camera& Finder::camera() const {
  return *find_row(plan_.own.cameras, catalogue_.cameras, plan_.format.camera);
}

const LensSet* Finder::lens_set() const {
  return find_row(plan_.own.lens_sets, catalogue_.lens_sets, plan_.lens.set);
}

const Ranking& Finder::ranking() {
  if (!ranking_) ranking_ = rank(plan_, catalogue_);
  return *ranking_;
}

std::optional<Report> Finder::tried(const AnswerChange& change) const {
  const Checked<Plan> changed = with_fields(plan_, change, catalogue_);
  if (!changed || *changed == plan_) return std::nullopt;
  Report report = evaluate(*changed, catalogue_);
  if (!report.problems.empty()) return std::nullopt;
  return report;
}

std::optional<Report> Finder::mended(const AnswerChange& change, const Note& note) const {
  std::optional<Report> after = tried(change);
  if (!after || severity_of(*after, note.topic) >= note.severity) return std::nullopt;
  if (breaks_something(report_, *after)) return std::nullopt;
  return after;
}

void Finder::add(Question question, std::string text, std::string outcome, AnswerChange change) {
  std::size_t count = 0;
  for (const Answer& answer : answers_) {
    if (answer.question != question) continue;
    if (++count == kMostAnswers || same_change(answer.change, change)) return;
  }
  answers_.push_back({question, std::move(text), std::move(outcome), std::move(change)});
}

void Finder::add_if_mended(const Note& note, std::string text, std::string outcome,
                           AnswerChange change) {
  if (!mended(change, note)) return;
  add(topic_question(note.topic), std::move(text), std::move(outcome), std::move(change));
}

std::vector<Answer> answers(const Plan& plan, const Report& report, const Catalogue& catalogue) {
  if (!report.problems.empty()) return {};
  Finder finder(plan, report, catalogue);
  for (const Severity severity : {Severity::fail, Severity::caution}) {
    for (const Note& note : report.notes) {
      if (note.severity != severity || topic_standing(note.topic)) continue;
      for (const TopicAnswers& row : kTopics) {
        if (row.topic == note.topic) row.find(finder, note);
      }
    }
  }
  find_wanted_view(finder);
  std::vector<Answer> found = finder.take();
  std::stable_sort(found.begin(), found.end(),
                   [](const Answer& a, const Answer& b) { return a.question < b.question; });
  return found;
}

Checked<Plan> with_answer(const Plan& plan, const Answer& answer, const Catalogue& catalogue) {
  return with_fields(plan, answer.change, catalogue);
}

}  // namespace widegate
