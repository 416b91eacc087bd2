#include "core/handover/link/link_coder.h"

#include <doctest/doctest.h>

#include "tests/core/handover/fdl/dice.h"

namespace {

using widegate::Bytes;
using widegate::squeezed;
using widegate::unsqueezed;
using widegate::fdl::Dice;

Bytes random_bytes(Dice& dice, std::size_t length, std::int64_t values) {
  Bytes bytes(length);
  for (auto& byte : bytes) byte = static_cast<std::uint8_t>(dice.whole(0, values - 1));
  return bytes;
}

}  // namespace

TEST_CASE("every byte string comes back") {
  Dice dice(7);
  for (const std::size_t length : {0U, 1U, 2U, 3U, 100U, 5000U}) {
    for (const std::int64_t values : {1, 2, 16, 256}) {
      const Bytes bytes = random_bytes(dice, length, values);
      CAPTURE(length);
      CAPTURE(values);
      CHECK(unsqueezed(squeezed(bytes)) == bytes);
    }
  }
  for (int byte = 0; byte < 256; ++byte) {
    const Bytes bytes(3, static_cast<std::uint8_t>(byte));
    CHECK(unsqueezed(squeezed(bytes)) == bytes);
  }
}

TEST_CASE("noise grows by less than an eighth, repetition shrinks a lot") {
  Dice dice(8);
  CHECK(squeezed(random_bytes(dice, 5000, 256)).size() < 5625);
  CHECK(squeezed(Bytes(5000, 'a')).size() < 200);
}

TEST_CASE("any input gives bytes or a refusal, never more than the limit") {
  Dice dice(9);
  for (int i = 0; i < 300; ++i) {
    const auto bytes = unsqueezed(random_bytes(dice, static_cast<std::size_t>(i % 40), 256));
    if (bytes) CHECK(bytes->size() <= widegate::kMaxLinkBytes);
  }
}
