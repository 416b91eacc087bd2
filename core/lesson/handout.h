// A lesson on paper: every step with its words, picture, figures before and after, working and
// question; the answers on a page of their own at the end. Black and white safe, A4 and Letter.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/lesson/lesson.h"
#include "core/lesson/lesson_run.h"

namespace widegate {

struct HandoutOptions {
  std::string
      link;  ///< Whole address that opens the lesson; printed and as a QR code. May be empty.
  std::string date;  ///< The day it is made, as the caller says it; may be empty.
};

/// A complete HTML document that needs no other file. Every number is from the plans.
/// @param run  of this lesson with this catalogue.
[[nodiscard]] std::string handout_html(const Lesson& lesson, const LessonRun& run,
                                       const Catalogue& catalogue, const HandoutOptions& options);

}  // namespace widegate
