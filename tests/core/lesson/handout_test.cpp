// The handout of every built-in lesson: all of its words, pictures, workings and questions, and the
// answers after everything else.
#include "core/lesson/handout.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/markup.h"
#include "core/lesson/built_in_lessons.h"
#include "core/report/working.h"

using namespace widegate;

namespace {

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++found;
  }
  return found;
}

}  // namespace

TEST_CASE(
    "a lesson's handout has its words, pictures, workings, questions, and answers at the end") {
  const Catalogue library = built_in_catalogue().value();
  for (const std::string_view id : built_in_lesson_ids()) {
    CAPTURE(id);
    const Lesson lesson = built_in_lesson(id, library).value();
    const LessonRun run = run_lesson(lesson, library);
    const std::string html = handout_html(
        lesson, run, library, {.link = "https://any.host/#lesson-1.1.id.x", .date = "1 May 2031"});
    CHECK(count(html, "<section class=\"step\"") == lesson.steps.size());
    CHECK(count(html, "class=\"picture\"") == lesson.steps.size());
    CHECK(count(html, "<svg") > lesson.steps.size());  // A picture for each step, and the QR code.
    CHECK(html.find("made on 1 May 2031") != std::string::npos);
    const std::size_t answers = html.find("class=\"answers\"");
    REQUIRE(answers != std::string::npos);
    for (const StepRun& step : run.steps) {
      CAPTURE(step.title);
      CHECK(html.find(escape(step.words)) != std::string::npos);
      CHECK(html.find(escape(step.figures.back().after)) != std::string::npos);
      const auto working = working_of(step.report, step.figures.front().key);
      REQUIRE(working.has_value());
      for (const std::string& line : working->substituted) {
        CHECK(html.find(escape(line)) != std::string::npos);
      }
      if (step.answer.empty()) continue;
      CHECK(html.find(escape(step.question)) < answers);
      CHECK(html.find(escape(step.answer)) > answers);
    }
  }
}

TEST_CASE("what a teacher typed stays text on the handout") {
  const Catalogue library = built_in_catalogue().value();
  Lesson lesson = built_in_lesson("squeeze", library).value();
  lesson.steps[0].words = "<script>alert(1)</script>";
  const std::string html = handout_html(lesson, run_lesson(lesson, library), library, {});
  CHECK(html.find("<script>") == std::string::npos);
  CHECK(html.find("&lt;script&gt;") != std::string::npos);
}
