// The Pareto front against its definition, row by row against every other row.
#include "core/choose/pareto.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

namespace widegate {
namespace {

std::vector<bool> by_definition(const std::vector<Merits>& rows) {
  std::vector<bool> front(rows.size(), true);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (const Merits& other : rows) {
      if (dominates(other, rows[i])) front[i] = false;
    }
  }
  return front;
}

/// Few different values make many ties; many make few.
std::vector<Merits> random_rows(std::mt19937& random, std::size_t count, int values) {
  std::uniform_int_distribution<int> any(0, values - 1);
  std::vector<Merits> rows(count);
  for (Merits& row : rows) {
    for (double& value : row) value = any(random);
  }
  return rows;
}

TEST_CASE("a row dominates another when it is nowhere worse and somewhere better") {
  CHECK(dominates({1, 1, 1, 2}, {1, 1, 1, 1}));
  CHECK_FALSE(dominates({1, 1, 1, 1}, {1, 1, 1, 1}));
  CHECK_FALSE(dominates({2, 1, 1, 0}, {1, 1, 1, 1}));
}

TEST_CASE("the front is what its definition says, with few ties and with many") {
  std::mt19937 random(20'241);
  for (const int values : {1, 2, 3, 5, 20, 1000}) {
    for (const std::size_t count : {0U, 1U, 2U, 3U, 7U, 40U, 150U}) {
      for (int round = 0; round < 6; ++round) {
        CAPTURE(values);
        CAPTURE(count);
        const auto rows = random_rows(random, count, values);
        CHECK(pareto_front(rows) == by_definition(rows));
      }
    }
  }
}

TEST_CASE("the front is what its definition says when most rows are on it") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> any(0, 1);
  std::vector<Merits> rows(400);
  for (Merits& row : rows) {
    double left = 1;
    for (double& value : row) {
      value = left * any(random);
      left -= value;
    }
    row[3] = left;
  }
  const auto front = pareto_front(rows);
  CHECK(front == by_definition(rows));
  CHECK(std::count(front.begin(), front.end(), true) > 200);
}

TEST_CASE("infinite figures compare like any other") {
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  const std::vector<Merits> rows = {{1, 1, kInfinite, 0},
                                    {1, 1, kInfinite, -1},
                                    {1, 1, 100, 0},
                                    {1, 2, 100, -kInfinite},
                                    {1, 2, 99, -kInfinite}};
  CHECK(pareto_front(rows) == std::vector<bool>{true, false, false, true, false});
}

TEST_CASE("the front belongs to the rows, not to their order") {
  std::mt19937 random(99);
  auto rows = random_rows(random, 120, 6);
  const auto members = [](const std::vector<Merits>& of) {
    const auto front = pareto_front(of);
    std::vector<Merits> found;
    for (std::size_t i = 0; i < of.size(); ++i) {
      if (front[i]) found.push_back(of[i]);
    }
    std::sort(found.begin(), found.end());
    return found;
  };
  const auto expected = members(rows);
  for (int round = 0; round < 10; ++round) {
    std::shuffle(rows.begin(), rows.end(), random);
    CHECK(members(rows) == expected);
  }
}

}  // namespace
}  // namespace widegate
