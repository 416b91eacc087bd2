// The part of lesson_actions.h that waits for the rest of the program: reading lessons, keeping
// one's own, handing them on.
#include <algorithm>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "core/encode/qr_svg.h"
#include "core/lesson/built_in_lessons.h"
#include "core/lesson/handout.h"
#include "core/lesson/lesson_json.h"
#include "core/lesson/lesson_link.h"
#include "core/lesson/lesson_run.h"
#include "web/act/handover_actions.h"
#include "web/act/lesson_actions.h"

namespace widegate {
namespace {

constexpr std::string_view kOwn = "own:";

/// Puts a lesson on the screen at a step; the plan to go back to is the one from before lessons.
void begin(std::string_view id, Lesson lesson, std::size_t step, const App& app, PanelState& state,
           Commands& commands) {
  const auto& under_way = state.lesson_shown;
  Plan before = under_way ? under_way->plan_before : app.plan();
  const std::int64_t kept = under_way ? under_way->kept_before : state.shelf.current;
  leave_lesson(state);
  LessonRun run = run_lesson(lesson, app.library());
  state.lesson_shown = std::make_shared<const LessonShown>(
      LessonShown{std::move(lesson), std::move(run), std::move(before), kept});
  state.before_lesson = state.comparison;
  state.lesson = id;
  show_lesson_step(step, state, commands);
}

std::string own_id(std::size_t index) { return std::string(kOwn) + std::to_string(index); }

/// The lessons of the list of heads.
std::optional<Lesson> lesson_of(std::string_view id, const App& app, const PanelState& state) {
  for (std::size_t i = 0; i < state.own_lessons.size(); ++i) {
    if (own_id(i) == id) return state.own_lessons[i];
  }
  return built_in_lesson(id, app.library());
}

void add_own(Lesson lesson, PanelState& state) {
  state.lesson_heads.push_back({own_id(state.own_lessons.size()), lesson.title, lesson.aim});
  state.own_lessons.push_back(std::move(lesson));
}

/// The id of a lesson in the list of heads; empty when it is not there.
std::string listed_id(const Lesson& lesson, const App& app, const PanelState& state) {
  for (const LessonHead& head : state.lesson_heads) {
    if (head.title == lesson.title && lesson_of(head.id, app, state) == lesson) return head.id;
  }
  return {};
}

/// Keeps a lesson on the device, unless it is there; says when it cannot be.
std::string keep(const Lesson& lesson, const App& app, PanelState& state, Platform& platform) {
  if (std::string id = listed_id(lesson, app, state); !id.empty()) return id;
  add_own(lesson, state);
  const auto link = lesson_to_link(lesson, 1, app.library());
  const std::string texts = state.own_lesson_texts + link.value_or("") + "\n";
  if (link && platform.store(kLessonsKey, texts)) {
    state.own_lesson_texts = texts;
  } else {
    state.message = "The lesson could not be kept on this device: save it as a file.";
  }
  return state.lesson_heads.back().id;
}

/// The address of the lesson under way at the step on the screen.
std::optional<std::string> lesson_address(const App& app, const PanelState& state,
                                          const Platform& platform) {
  if (!state.lesson_shown) return std::nullopt;
  const auto link = lesson_to_link(state.lesson_shown->lesson,
                                   static_cast<std::int64_t>(state.lesson_step) + 1, app.library());
  return link ? std::optional(platform.page_address() + "#" + *link) : std::nullopt;
}

constexpr std::string_view kTooLong = "This lesson is too long for a link. Save it as a file.";

}  // namespace

void start_lesson(std::string_view id, const App& app, PanelState& state, Commands& commands) {
  const auto same = [id](const LessonHead& head) { return head.id == id; };
  if (std::none_of(state.lesson_heads.begin(), state.lesson_heads.end(), same)) {
    return end_lesson(state, commands);
  }
  auto lesson = lesson_of(id, app, state);
  if (lesson) return begin(id, std::move(*lesson), 0, app, state, commands);
  end_lesson(state, commands);
  state.message = "This lesson needs the demo cameras of the library.";
}

void load_lessons(const App& app, PanelState& state, const Platform& platform) {
  state.lesson_heads = built_in_lesson_heads();
  state.own_lessons.clear();
  state.own_lesson_texts = platform.stored(kLessonsKey).value_or("");
  std::string_view rest = state.own_lesson_texts;
  while (!rest.empty()) {
    const std::string_view link = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(rest.size(), link.size() + 1));
    // One that cannot be read stays kept as it is.
    if (auto linked = lesson_from_link(link, app.library())) add_own(linked->lesson, state);
  }
}

bool open_lesson_link(std::string_view link, const App& app, PanelState& state, Platform& platform,
                      Commands& commands) {
  auto linked = lesson_from_link(link, app.library());
  if (!linked) {
    state.message = "This link does not hold a lesson that can be read: expected " +
                    linked.error().front().accepted + ". The plan on the screen is unchanged.";
    return false;
  }
  const std::string id = keep(linked->lesson, app, state, platform);
  begin(id, std::move(linked->lesson), static_cast<std::size_t>(linked->step) - 1, app, state,
        commands);
  return true;
}

void open_lesson_file(std::string_view name, std::string_view text, const App& app,
                      PanelState& state, Platform& platform, Commands& commands) {
  auto lesson = lesson_from_json(text, app.library());
  if (!lesson) {
    state.message = std::string(name) + " is not a lesson: " + to_line(lesson.error().front());
    return;
  }
  state.message = "Opened " + std::string(name) + ".";
  const std::string id = keep(*lesson, app, state, platform);
  begin(id, std::move(*lesson), 0, app, state, commands);
}

void save_lesson(const PanelState& state, Platform& platform) {
  if (!state.lesson_shown) return;
  Plan named;
  named.title = state.lesson_shown->lesson.title;
  platform.save_file(file_name(named, ".lesson.json"), "application/json",
                     lesson_to_json(state.lesson_shown->lesson));
}

void copy_lesson_link(const App& app, PanelState& state, Platform& platform) {
  const auto address = lesson_address(app, state, platform);
  if (!address) {
    state.message = kTooLong;
    return;
  }
  state.message = platform.copy_text(*address)
                      ? "The link is on the clipboard. It opens this step, and has " +
                            std::to_string(address->size()) + " characters."
                      : "The clipboard was refused.";
}

void show_lesson_qr(const App& app, PanelState& state, Platform& platform) {
  const auto address = lesson_address(app, state, platform);
  const auto qr = address ? make_qr(*address) : std::nullopt;
  if (!qr) {
    state.message = kTooLong;
    return;
  }
  platform.show_picture(qr_svg(*qr), *address);
}

void print_lesson(const App& app, PanelState& state, Platform& platform) {
  if (!state.lesson_shown) return;
  const std::string link = lesson_address(app, state, platform).value_or("");
  platform.print_document(handout_html(state.lesson_shown->lesson, state.lesson_shown->run,
                                       app.library(), {.link = link, .date = {}}));
}

}  // namespace widegate
