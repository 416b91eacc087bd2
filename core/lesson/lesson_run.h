// A lesson run through: every step's report, the figures to watch before and after, whether what
// the words claim holds, and the words with their figures put in.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/span.h"
#include "core/catalogue/catalogue.h"
#include "core/lesson/lesson.h"
#include "core/report/report.h"

namespace widegate {

/// A figure to watch, told.
struct WatchedFigure {
  std::string key;
  std::string label;
  std::size_t since = 0;  ///< The step compared with, from 0; the step itself for a first step.
  std::string before;     ///< With its unit; empty in a first step, or where it did not exist.
  std::string after;
  std::optional<Span> before_number;  ///< Exact, in the unit of the key; nothing for text.
  std::optional<Span> after_number;
  std::string claim;    ///< "rises", "falls, to 0.5 times"; empty when nothing is claimed.
  bool changed = true;  ///< False when before and after read the same.
  bool holds = true;    ///< False when the plan does not do what is claimed.
};

struct StepRun {
  std::string title;
  std::string words;          ///< Figures put in; so are those of question and answer.
  std::string control_label;  ///< Plain words of the control to move,
  std::string control_value;  ///< and where it stands, with its unit.
  std::string question;
  std::string answer;
  std::vector<WatchedFigure> figures;
  Report report;
};

struct LessonRun {
  std::vector<StepRun> steps;
  [[nodiscard]] bool holds() const;  ///< True when every claim of every step does.
};

/// @param lesson  as read from its document; a figure that a report lacks is told as "–" and does
///                not hold (a library that has changed since).
[[nodiscard]] LessonRun run_lesson(const Lesson& lesson, const Catalogue& catalogue);

/// One "{key}" of a text, "{step:key}", or with "#" before the key: without its unit.
struct WordsFigure {
  std::string_view key;
  std::optional<std::size_t> step;  ///< From 1; nothing for the step whose words they are.
  bool bare = false;
};

/// The figures in a text, in order.
/// @return nothing when a brace is not closed, stands inside another, or holds no key.
[[nodiscard]] std::optional<std::vector<WordsFigure>> figures_in_words(std::string_view text);

/// "54.3°", "0.89×", "21 min": a told number with its unit as it stands in a sentence.
[[nodiscard]] std::string with_unit(std::string_view text, std::string_view unit);

}  // namespace widegate
