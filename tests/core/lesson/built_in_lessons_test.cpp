// The built-in lessons: the claims of every step hold, every number in the words is proved by a
// figure that the step names, and nothing turns red but what the words speak of.
#include "core/lesson/built_in_lessons.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/encode/json_text.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_run.h"
#include "core/report/notes.h"
#include "core/report/working.h"

namespace {

using namespace widegate;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

struct Read {
  std::string id;
  Lesson lesson;
  LessonRun run;
};

const std::vector<Read>& all() {
  static const std::vector<Read> kAll = [] {
    std::vector<Read> lessons;
    for (const std::string_view id : built_in_lesson_ids()) {
      auto lesson = built_in_lesson(id, library());
      if (!lesson) continue;
      LessonRun run = run_lesson(*lesson, library());
      lessons.push_back({std::string(id), std::move(*lesson), std::move(run)});
    }
    return lessons;
  }();
  return kAll;
}

/// Names that have a number in them and state none.
constexpr std::string_view kNames[] = {"35 mm size", "65 mm size", "4K", "16:9"};

/// The text without figures in braces and without names.
std::string typed(std::string text) {
  for (std::size_t open = text.find('{'); open != std::string::npos; open = text.find('{')) {
    text.erase(open, text.find('}') - open + 1);
  }
  for (const std::string_view name : kNames) {
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name)) {
      text.erase(at, name.size());
    }
  }
  return text;
}

/// Every number of a text, as it was typed: "1.88", "50".
std::vector<std::string> numbers_in(const std::string& text) {
  constexpr std::string_view kDigits = "0123456789";
  std::vector<std::string> numbers;
  for (std::size_t at = text.find_first_of(kDigits); at != std::string::npos;) {
    std::size_t end = text.find_first_not_of("0123456789.", at);
    if (end == std::string::npos) end = text.size();
    std::string number = text.substr(at, end - at);
    if (number.back() == '.') number.pop_back();
    numbers.push_back(number);
    at = text.find_first_of(kDigits, end);
  }
  return numbers;
}

/// True when a figure that the step watches rounds to the number as it was typed.
bool proved(const std::string& number, const StepRun& step) {
  const std::size_t point = number.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
  return std::any_of(step.figures.begin(), step.figures.end(), [&](const WatchedFigure& figure) {
    return figure.after_number && print_fixed(figure.after_number->least, decimals) == number &&
           print_fixed(figure.after_number->most, decimals) == number;
  });
}

/// Every question that turns red, by lesson and step from 1; no step has one that its words do not
/// speak of. What misses a requirement is no format to choose.
const std::set<std::tuple<std::string, std::size_t, Question>> kFailing = {
    {"area-and-circle", 2, Question::cover},
    {"area-and-circle", 2, Question::choose},
    {"pixels-in-the-file", 2, Question::resolve},
    {"pixels-in-the-file", 2, Question::choose},
    {"room", 4, Question::choose},
    {"data-and-cards", 5, Question::run},
    {"data-and-cards", 5, Question::store},
    {"data-and-cards", 5, Question::choose},
};

}  // namespace

TEST_CASE("there are at least ten lessons, all readable, each with its own name and title") {
  CHECK(all().size() == built_in_lesson_ids().size());
  CHECK(all().size() >= 10);
  std::set<std::string> ids;
  std::set<std::string> titles;
  const std::vector<LessonHead> heads = built_in_lesson_heads();
  REQUIRE(heads.size() == all().size());
  for (std::size_t i = 0; i < all().size(); ++i) {
    CAPTURE(all()[i].id);
    CHECK(ids.insert(all()[i].id).second);
    CHECK(titles.insert(all()[i].lesson.title).second);
    CHECK(heads[i].id == all()[i].id);
    CHECK(heads[i].title == all()[i].lesson.title);
    CHECK(heads[i].aim == all()[i].lesson.aim);
    CHECK(all()[i].lesson.steps.size() >= 3);
  }
  CHECK_FALSE(built_in_lesson("no-such-lesson", library()).has_value());
  CHECK_FALSE(built_in_lesson("squeeze", Catalogue{}).has_value());
}

TEST_CASE("names of lessons in short links stay for ever") {
  for (const std::string_view id :
       {"area-and-raster", "area-and-circle", "squeeze", "pixels-in-the-file", "oversampling",
        "room", "lights-and-shutter", "data-and-cards", "depth-and-view", "money-and-days",
        "film-against-files"}) {
    CAPTURE(id);
    CHECK(built_in_lesson(id, library()).has_value());
  }
}

TEST_CASE("what every step claims holds, and every step claims something") {
  for (const Read& read : all()) {
    CAPTURE(read.id);
    for (std::size_t at = 0; at < read.run.steps.size(); ++at) {
      const StepRun& step = read.run.steps[at];
      CAPTURE(step.title);
      CHECK(step.report.problems.empty());
      CHECK(working_of(step.report, step.figures.front().key).has_value());
      CHECK(std::any_of(step.figures.begin(), step.figures.end(),
                        [](const WatchedFigure& figure) { return !figure.claim.empty(); }));
      for (const WatchedFigure& figure : step.figures) {
        CAPTURE(figure.key);
        CAPTURE(figure.before);
        CAPTURE(figure.after);
        CAPTURE(figure.claim);
        CHECK(figure.holds);
      }
      // Something moves in every step but the first.
      CHECK((at == 0 ||
             std::any_of(step.figures.begin(), step.figures.end(),
                         [](const WatchedFigure& figure) { return figure.changed; }) ||
             read.lesson.steps[at].plan == read.lesson.steps[at - 1].plan));
    }
  }
}

TEST_CASE("every number typed in the words of a step is proved by a figure the step names") {
  for (const Read& read : all()) {
    CAPTURE(read.id);
    for (std::size_t at = 0; at < read.run.steps.size(); ++at) {
      const LessonStep& step = read.lesson.steps[at];
      for (const std::string* text : {&step.title, &step.words, &step.question}) {
        for (const std::string& number : numbers_in(typed(*text))) {
          CAPTURE(step.title);
          CAPTURE(number);
          CHECK(proved(number, read.run.steps[at]));
        }
      }
      // Answers are from the plans, never typed.
      CHECK(numbers_in(typed(step.answer)).empty());
    }
  }
}

TEST_CASE("a figure in the words is one that exists, told with its unit") {
  for (const Read& read : all()) {
    for (const StepRun& step : read.run.steps) {
      for (const std::string* text : {&step.words, &step.question, &step.answer}) {
        CAPTURE(*text);
        CHECK(text->find('{') == std::string::npos);
        const bool range = text->find("6–10 min") != std::string::npos;  // The one spoken of.
        CHECK((text->find("–") != std::string::npos) == range);
      }
    }
  }
  const StepRun& lights = all()[6].run.steps.front();
  CHECK(lights.words.find("brighten 100 times a second") != std::string::npos);
  CHECK(lights.words.find("A shutter of 180° at 24 fps holds 2.083 of them") != std::string::npos);
}

TEST_CASE("a step turns red only where its words say so") {
  std::set<std::tuple<std::string, std::size_t, Question>> failing;
  for (const Read& read : all()) {
    for (std::size_t at = 0; at < read.run.steps.size(); ++at) {
      for (const Note& note : read.run.steps[at].report.notes) {
        if (note.severity != Severity::fail) continue;
        failing.insert({read.id, at + 1, topic_question(note.topic)});
      }
    }
  }
  for (const auto& each : failing) {
    CAPTURE(std::string(std::get<0>(each)));
    CAPTURE(std::get<1>(each));
    CAPTURE(static_cast<int>(std::get<2>(each)));
    CHECK(kFailing.count({std::get<0>(each), std::get<1>(each), std::get<2>(each)}) == 1);
  }
  for (const auto& each : kFailing) {
    CAPTURE(std::string(std::get<0>(each)));
    CAPTURE(std::get<1>(each));
    CAPTURE(static_cast<int>(std::get<2>(each)));
    CHECK(failing.count({std::get<0>(each), std::get<1>(each), std::get<2>(each)}) == 1);
  }
}

TEST_CASE("the lesson's files are written as the program writes them") {
  for (std::size_t i = 0; i < all().size(); ++i) {
    CAPTURE(all()[i].id);
    // The built-in text has no line breaks; parsed, it must be the same document key for key.
    const Checked<Json> document = parse_json(lesson_texts()[i]);
    REQUIRE(document.has_value());
    CHECK(print_json(*document) == lesson_to_json(all()[i].lesson));
  }
}

TEST_CASE("a file resampled to 2048 does not fulfil a 4K mandate however many photosites it has") {
  const auto at = std::find_if(all().begin(), all().end(),
                               [](const Read& read) { return read.id == "pixels-in-the-file"; });
  REQUIRE(at != all().end());
  const Report& resampled = at->run.steps[1].report;
  CHECK(resampled.resolve.recorded_width_pixels == 2048);
  CHECK(resampled.resolve.mandate.have > resampled.resolve.mandate.required);
  CHECK_FALSE(resampled.commission.met);
}
