#include "core/encode/base64url.h"

#include <doctest/doctest.h>

namespace {

using widegate::Bytes;
using widegate::from_base64url;
using widegate::to_base64url;

struct Row {
  Bytes bytes;
  const char* text;
};

// RFC 4648 section 10 without padding, and its URL alphabet's two own letters (section 5).
const Row kRows[] = {
    {{}, ""},
    {{'f'}, "Zg"},
    {{'f', 'o'}, "Zm8"},
    {{'f', 'o', 'o'}, "Zm9v"},
    {{'f', 'o', 'o', 'b'}, "Zm9vYg"},
    {{'f', 'o', 'o', 'b', 'a'}, "Zm9vYmE"},
    {{'f', 'o', 'o', 'b', 'a', 'r'}, "Zm9vYmFy"},
    {{0xfb, 0xff, 0xbf}, "-_-_"},
    {{0xfa, 0xfb, 0xfc, 0xfd, 0xfe, 0xff}, "-vv8_f7_"},
};

}  // namespace

TEST_CASE("base64url follows RFC 4648 both ways") {
  for (const Row& row : kRows) {
    CAPTURE(row.text);
    CHECK(to_base64url(row.bytes) == row.text);
    CHECK(from_base64url(row.text) == row.bytes);
  }
}

TEST_CASE("every byte string of up to two bytes comes back") {
  for (int a = 0; a < 256; ++a) {
    const Bytes one{static_cast<std::uint8_t>(a)};
    CHECK(from_base64url(to_base64url(one)) == one);
    for (int b = 0; b < 256; b += 5) {
      const Bytes two{static_cast<std::uint8_t>(a), static_cast<std::uint8_t>(b)};
      CHECK(from_base64url(to_base64url(two)) == two);
    }
  }
}

TEST_CASE("text that is no canonical base64url is refused") {
  for (const char* text : {"Z", "Zg==", "Zm9+", "Zm9/", "Zm 9", "Zh", "Zm9", "\xc3\xa9"}) {
    CAPTURE(text);
    CHECK_FALSE(from_base64url(text).has_value());
  }
}
