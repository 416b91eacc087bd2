// Verdicts: which notes a report deserves, and their words. The numbers are the report's.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate {

/// Which of the seven questions a note belongs to.
enum class Question { frame, cover, see, resolve, run, store, choose };

/// Every note the report deserves, in the order of the questions. The usual cautions are always
/// among them: test lights on camera, ask the commissioner, never wipe before two verified copies.
/// @param report  complete but for its notes.
[[nodiscard]] std::vector<Note> make_notes(const Plan& plan, const Report& report);

/// One plain sentence with have and need put in, to as many decimals as tell them apart.
[[nodiscard]] std::string note_text(const Note& note);

/// Stable key of the topic ("cover.frame") and the unit of have and need ("mm", "" for none).
[[nodiscard]] std::string_view topic_key(Topic topic);
[[nodiscard]] std::string_view topic_unit(Topic topic);
[[nodiscard]] Question topic_question(Topic topic);

/// "ok", "caution", "fail".
[[nodiscard]] std::string_view severity_key(Severity severity);

/// True for the usual cautions, given whatever the plan is: they are told in one line of their own,
/// and their severity is ok, because nothing in this plan is off.
[[nodiscard]] bool topic_standing(Topic topic);

/// The usual cautions in one line, for the foot of whatever tells the notes; empty without any.
[[nodiscard]] std::string standing_text(const std::vector<Note>& notes);

/// The worst note of a question; ok when it has none.
[[nodiscard]] Severity worst_severity(const std::vector<Note>& notes, Question question);

}  // namespace widegate
