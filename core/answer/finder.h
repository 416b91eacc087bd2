// What the finders of answers share: the plan with its report, trying a change, collecting what
// helped. Inner header of this folder.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/answer/answers.h"
#include "core/choose/ranking.h"

namespace widegate {

/// Fields to set together.
using AnswerChange = std::vector<TypedField>;

class Finder {
 public:
  Finder(const Plan& plan, const Report& report, const Catalogue& catalogue)
      : plan_(plan), report_(report), catalogue_(catalogue) {}

  [[nodiscard]] const Plan& plan() const { return plan_; }
  [[nodiscard]] const Report& report() const { return report_; }
  [[nodiscard]] const Catalogue& catalogue() const { return catalogue_; }
  [[nodiscard]] const Camera& camera() const;
  /// Null for a lens that is not in the library.
  [[nodiscard]] const LensSet* lens_set() const;

  /// Every format by rank; worked out when first asked for.
  [[nodiscard]] const Ranking& ranking();

  /// The report with the change made; nothing when the plan does not take it or stays the same.
  [[nodiscard]] std::optional<Report> tried(const AnswerChange& change) const;
  /// That report where the note's topic is better in it and nothing fails that did not.
  [[nodiscard]] std::optional<Report> mended(const AnswerChange& change, const Note& note) const;

  /// Keeps an answer unless the question has enough of them or the same one.
  void add(Question question, std::string text, std::string outcome, AnswerChange change);
  /// As add(), where the change mends the note.
  void add_if_mended(const Note& note, std::string text, std::string outcome, AnswerChange change);
  [[nodiscard]] std::vector<Answer> take() { return std::move(answers_); }

 private:
  const Plan& plan_;
  const Report& report_;
  const Catalogue& catalogue_;
  std::optional<Ranking> ranking_;
  std::vector<Answer> answers_;
};

// One for each thing a note may be about; what is found goes into the finder.
void find_lenses_that_cover(Finder& finder, const Note& note);
void find_lenses_of_squeeze(Finder& finder, const Note& note);
void find_lens_marks(Finder& finder, const Note& note);
void find_shutters(Finder& finder, const Note& note);
void find_lights(Finder& finder, const Note& note);
void find_rates(Finder& finder, const Note& note);
void find_cards(Finder& finder, const Note& note);
void find_links(Finder& finder, const Note& note);
void find_safer_copies(Finder& finder, const Note& note);
void find_formats(Finder& finder, const Note& note);
void find_smallest_changes(Finder& finder, const Note& note);
void find_level_lines(Finder& finder, const Note& note);

/// Which lens, and which place, shows what the plan wants to see.
void find_wanted_view(Finder& finder);

}  // namespace widegate
