#include "core/encode/qr.h"

#include <doctest/doctest.h>

#include <string>

namespace {

struct Capacity {
  int version;
  int modules;
  std::size_t bytes_at_level_l;
};

const Capacity kCapacities[] = {
#include "tests/data/qr_capacity.inc"
};

}  // namespace

TEST_CASE("a text as long as a version holds gets that version, one byte more the next") {
  CHECK(std::size(kCapacities) == 40);
  for (const Capacity& row : kCapacities) {
    CAPTURE(row.version);
    // Lower-case letters force byte mode.
    const std::string text(row.bytes_at_level_l, 'w');
    const auto fits = widegate::make_qr(text);
    REQUIRE(fits.has_value());
    CHECK(fits->size == row.modules);
    CHECK(fits->dark.size() == static_cast<std::size_t>(row.modules * row.modules));
    const auto next = widegate::make_qr(text + 'w');
    CHECK(next.has_value() == (row.version < 40));
    if (next) CHECK(next->size > row.modules);
  }
}

TEST_CASE("the three finders stand in their corners") {
  const auto code = widegate::make_qr("plan");
  REQUIRE(code.has_value());
  const int far = code->size - 7;
  for (const auto& [x, y] : {std::pair{0, 0}, std::pair{far, 0}, std::pair{0, far}}) {
    for (int i = 0; i < 7; ++i) {
      CHECK(code->at(x + i, y));
      CHECK(code->at(x, y + i));
    }
    CHECK_FALSE(code->at(x + 1, y + 1));
    CHECK(code->at(x + 3, y + 3));
  }
}

TEST_CASE("text with a zero byte is refused") {
  CHECK_FALSE(widegate::make_qr(std::string_view("a\0b", 3)).has_value());
}
