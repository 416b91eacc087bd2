// Links of shows: every show comes back value for value, four parts fit one QR code, damage is
// refused.
#include "core/handover/link/show_link.h"
#include "core/handover/link/link_kind.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/qr.h"
#include "core/handover/link/link.h"
#include "core/handover/link/show_link_tags.h"
#include "core/show/show_check.h"
#include "core/show/show_fields.h"
#include "tests/core/show/random_shows.h"
#include "tests/core/support/rounds.h"

namespace widegate {
namespace {

const Catalogue& library() {
  static const Catalogue catalogue = built_in_catalogue().value();
  return catalogue;
}

template <class Row>
void check_tags() {
  const auto fields = show_fields<Row>();
  const auto tags = show_link_tags<Row>();
  CHECK(fields.size() == tags.size());
  for (const Field<Row>& info : fields) {
    CAPTURE(info.pointer);
    CHECK(std::count(tags.begin(), tags.end(), info.pointer) == 1);
  }
}

TEST_CASE("Every field of a show has its number in links") {
  check_tags<Show>();
  check_tags<ShowPart>();
  check_tags<CardsAtHand>();
  check_tags<PriceRow>();
  check_tags<Person>();
  check_tags<Rental>();
}

TEST_CASE("Random shows come back from their links") {
  testing::Dice dice(3);
  for (int round = 0; round < testing::rounds(400, 60); ++round) {
    const Show show = testing::random_show(dice, library());
    if (!check_show(show, library()).empty()) continue;
    const std::string link = show_to_link(show);
    CAPTURE(round);
    CHECK(is_show_link(link));
    CHECK(is_show_link("https://any.host/path/#" + link));
    const Checked<Show> back = show_from_link("https://any.host/path/#" + link, library());
    if (link.size() > kMaxLinkLength) continue;
    REQUIRE(back.has_value());
    CHECK(*back == show);
  }
}

TEST_CASE("What is no link to a show, and what damage does") {
  Show show;
  show.parts.push_back({.name = "A"});
  const std::string link = show_to_link(show);
  const auto refusal = [](std::string_view text) {
    const auto read = show_from_link(text, library());
    return read ? std::string() : read.error().front().accepted;
  };
  CHECK(refusal(link).empty());
  CHECK(refusal(plan_to_link(Plan{})).starts_with("a link to a show"));
  CHECK(refusal("s2." + link.substr(3)).find("newer") != std::string::npos);
  CHECK(refusal(link.substr(0, link.size() - 2)).find("damaged") != std::string::npos);
  CHECK(refusal("s1.!").find("damaged") != std::string::npos);
  CHECK(refusal(std::string(20'000, 's')).find("at most") != std::string::npos);
  CHECK(!is_show_link(plan_to_link(Plan{})));
  CHECK(!is_show_link("see this"));
  for (std::size_t i = 3; i < link.size(); ++i) {
    std::string damaged = link;
    damaged[i] = damaged[i] == 'A' ? 'B' : 'A';
    CHECK(!refusal(damaged).empty());
  }
}

}  // namespace
}  // namespace widegate
