// Text into JSON: what is refused before it costs memory, and how a refusal names its place.
#include "core/encode/json_text.h"

#include <doctest/doctest.h>

namespace {

using namespace widegate;

/// The one problem of a text.
Problem problem_of(std::string_view text, JsonLimits limits = {}) {
  const auto read = parse_json(text, limits);
  REQUIRE_FALSE(read.has_value());
  REQUIRE(read.error().size() == 1);
  return read.error().front();
}

}  // namespace

TEST_CASE("a number that no double holds is out of range, where it stands, and no broken JSON") {
  const Problem member = problem_of(R"({"a":{"b":1e400}})");
  CHECK(member.pointer == "/a/b");
  CHECK(member.value == "\"1e400\"");
  CHECK(member.accepted == "a number below 1.8e308");
  CHECK(problem_of(R"({"a":[1,2,-1e999]})").pointer == "/a/2");
  CHECK(problem_of("1e400").pointer.empty());
  CHECK(parse_json("[1e-400, 1e300]").has_value());
}

TEST_CASE("a text that is too long is refused before it is read") {
  const Problem problem = problem_of(std::string(101, '['), {.bytes = 100});
  CHECK(problem.value == "a text of 101 bytes");
  CHECK(problem.accepted == "a document of at most 100 bytes");
  CHECK(parse_json(std::string(98, ' ') + "[]", {.bytes = 100}).has_value());
}

TEST_CASE("more values than a document may have are refused at the first one too many") {
  const JsonLimits limits{.values = 4};
  CHECK(parse_json(R"({"a":[1,2]})", limits).has_value());
  const Problem number = problem_of(R"({"a":[1,2,3]})", limits);
  CHECK(number.pointer == "/a/2");
  CHECK(number.accepted == "at most 4 values in a document");
  CHECK(problem_of(R"({"a":[1,2],"b":{}})", limits).pointer == "/b");
}
