// Jobs as they come: a plan each, and what an experienced person would say about it, checked by
// machine. Rows are in jobs.inc; every one has its reason in words.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/choose/binding.h"
#include "core/choose/ranking.h"
#include "core/choose/ranking_words.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/flat_figures.h"
#include "core/report/notes.h"

namespace widegate {
namespace {

/// What is expected of a job; `what` and `of` are patterns of formats ("alder/*/as-read/bayer-*").
enum class Expect {
  first,        ///< The first matches `what`.
  not_first,    ///< The first does not match `what`.
  above,        ///< The best that matches `what` stands above the best that matches `of`.
  accepted,     ///< Something that matches `what` passes.
  rejected,     ///< Nothing that matches `what` passes; each misses the requirement `of`.
  caution,      ///< Everything that passes and matches `what` carries the caution `of`.
  no_caution,   ///< The first carries no caution.
  nothing,      ///< Nothing passes.
  something,    ///< Something passes.
  binds,        ///< The requirement `what`, or "size", is among the two that bind most.
  plan_misses,  ///< The plan's own format misses the requirement `what`.
  plan_meets,   ///< The plan's own format misses nothing.
  noted,        ///< The report fails or warns of the topic `what`.
  not_noted,    ///< It does not.
  at_least,     ///< The report's figure `what` is at least the number `of`.
  at_most,      ///< It is at most that.
  says,         ///< A sentence above the list holds the words `what`.
};

struct Expectation {
  Expect expect;
  std::string_view what = "*";
  std::string_view of = "";
};

struct Job {
  std::string_view name;
  std::string_view reason;
  std::vector<TypedField> edits;
  std::vector<Expectation> expectations;
};

const std::vector<Job>& jobs() {
  using enum Expect;
  static const std::vector<Job> kJobs = {
#include "tests/core/choose/jobs.inc"
  };
  return kJobs;
}

/// "*" stands for any text, also of several parts.
bool matches(std::string_view pattern, std::string_view text) {
  if (pattern.empty()) return text.empty();
  if (pattern.front() == '*') {
    for (std::size_t skipped = 0; skipped <= text.size(); ++skipped) {
      if (matches(pattern.substr(1), text.substr(skipped))) return true;
    }
    return false;
  }
  return !text.empty() && text.front() == pattern.front() &&
         matches(pattern.substr(1), text.substr(1));
}

std::string id_of(const FormatChoice& format) {
  return format.camera + "/" + format.mode + "/" + format.recording + "/" + format.codec;
}

bool is_like(const RankedFormat& row, std::string_view pattern) {
  return matches(pattern, id_of(row.format));
}

Requirement requirement_of(std::string_view key) {
  for (std::size_t i = 0; i < kRequirementCount; ++i) {
    const auto requirement = static_cast<Requirement>(i);
    if (requirement_info(requirement).key == key) return requirement;
  }
  FAIL("no such requirement: " << std::string(key));
  return Requirement::cover;
}

Caution caution_of(std::string_view key) {
  for (std::size_t i = 0; i < kCautionCount; ++i) {
    const auto caution = static_cast<Caution>(i);
    if (caution_info(caution).key == key) return caution;
  }
  FAIL("no such caution: " << std::string(key));
  return Caution::upscaled;
}

/// Place of the best accepted row that matches; nothing when none does.
std::optional<std::size_t> place_of(const Ranking& ranking, std::string_view pattern) {
  for (std::size_t i = 0; i < ranking.accepted; ++i) {
    if (is_like(ranking.formats[i], pattern)) return i;
  }
  return std::nullopt;
}

bool stands_above(const Ranking& ranking, std::string_view what, std::string_view of) {
  const auto better = place_of(ranking, what);
  const auto worse = place_of(ranking, of);
  return better && (!worse || *better < *worse);
}

bool all_rejected_for(const Ranking& ranking, std::string_view pattern, std::string_view key) {
  const Requirement requirement = requirement_of(key);
  bool any = false;
  for (const RankedFormat& row : ranking.formats) {
    if (!is_like(row, pattern)) continue;
    any = true;
    if (row.accepted || !row.figures.findings.missed(requirement)) return false;
  }
  return any;
}

bool all_cautioned(const Ranking& ranking, std::string_view pattern, std::string_view key) {
  const Caution caution = caution_of(key);
  bool any = false;
  for (std::size_t i = 0; i < ranking.accepted; ++i) {
    const RankedFormat& row = ranking.formats[i];
    if (!is_like(row, pattern)) continue;
    any = true;
    if (!row.figures.cautions.has(caution)) return false;
  }
  return any;
}

bool among_what_binds(const Ranking& ranking, std::string_view key) {
  const auto bindings = what_binds(ranking.formats);
  for (std::size_t i = 0; i < std::min<std::size_t>(2, bindings.size()); ++i) {
    if (bindings[i].key() == key) return true;
  }
  return false;
}

bool is_noted(const Report& report, std::string_view key) {
  return std::any_of(report.notes.begin(), report.notes.end(), [&](const Note& note) {
    return note.severity != Severity::ok && topic_key(note.topic) == key;
  });
}

/// The report's figure, both ends of a range, against a number.
bool figure_is(const Report& report, std::string_view key, std::string_view number, bool at_least) {
  const auto figures = figures_of(report);
  const Figure* figure = find_figure(figures, key);
  const auto bound = parse_decimal(number);
  REQUIRE(bound);
  if (figure == nullptr || figure->number() == nullptr) return false;
  const Span value = *figure->number();
  return at_least ? value.least >= *bound : value.most <= *bound;
}

bool is_said(const Plan& plan, const Catalogue& library, const Ranking& ranking,
             std::string_view words) {
  const auto lines = words_above_ranking(plan, library, ranking);
  return std::any_of(lines.begin(), lines.end(), [words](const std::string& line) {
    return line.find(words) != std::string::npos;
  });
}

/// One job worked out.
struct Answer {
  const Plan& plan;
  const Catalogue& library;
  const Ranking& ranking;
  const Report& report;
};

bool holds(const Expectation& expected, const Answer& answer) {
  const auto& [expect, what, of] = expected;
  const auto& [plan, library, ranking, report] = answer;
  const bool any = ranking.accepted > 0;
  switch (expect) {
    case Expect::first:
      return any && is_like(ranking.formats.front(), what);
    case Expect::not_first:
      return any && !is_like(ranking.formats.front(), what);
    case Expect::above:
      return stands_above(ranking, what, of);
    case Expect::accepted:
      return place_of(ranking, what).has_value();
    case Expect::rejected:
      return all_rejected_for(ranking, what, of);
    case Expect::caution:
      return all_cautioned(ranking, what, of);
    case Expect::no_caution:
      return any && ranking.formats.front().figures.cautions.none();
    case Expect::nothing:
      return !any;
    case Expect::something:
      return any;
    case Expect::binds:
      return among_what_binds(ranking, what);
    case Expect::plan_misses:
      return report.commission.findings.missed(requirement_of(what));
    case Expect::plan_meets:
      return report.commission.met;
    case Expect::noted:
      return is_noted(report, what);
    case Expect::not_noted:
      return !is_noted(report, what);
    case Expect::at_least:
    case Expect::at_most:
      return figure_is(report, what, of, expect == Expect::at_least);
    case Expect::says:
      return is_said(plan, library, ranking, what);
  }
  return false;
}

TEST_CASE("jobs: what an experienced person would say") {
  const auto library = built_in_catalogue();
  REQUIRE(library);
  CHECK(jobs().size() >= 90);
  for (const Job& job : jobs()) {
    CAPTURE(job.name);
    CAPTURE(job.reason);
    CHECK_FALSE(job.reason.empty());
    const auto plan = with_fields(Plan{}, job.edits, *library);
    for (const Problem& problem : plan ? Problems() : plan.error()) FAIL_CHECK(to_line(problem));
    if (!plan) continue;
    const Ranking ranking = rank(*plan, *library);
    const Report report = evaluate(*plan, *library);
    REQUIRE(report.problems.empty());
    const std::string best = ranking.accepted > 0 ? id_of(ranking.formats.front().format) : "none";
    CAPTURE(best);
    for (const Expectation& expected : job.expectations) {
      CAPTURE(static_cast<int>(expected.expect));
      CAPTURE(expected.what);
      CAPTURE(expected.of);
      CHECK(holds(expected, {*plan, *library, ranking, report}));
    }
  }
}

}  // namespace
}  // namespace widegate
