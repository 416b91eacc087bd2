// The table of a plan's fields: its rows make sense, typed text is understood, and one changed
// field takes along what hangs on it.
#include "core/plan/plan_fields.h"

#include <doctest/doctest.h>

#include <array>
#include <set>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/plan/plan_check.h"

using namespace widegate;

namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

/// What typed text reads as, printed; "refused" when it is not understood or not accepted.
std::string typed(std::string_view pointer, std::string_view text) {
  const FieldInfo& info = *find_field(pointer).value().info;
  const auto value = value_from_text(info, text);
  return value && value_accepted(info, *value) ? value_text(info, *value) : "refused";
}

struct TypedRow {
  std::string_view pointer, text, reads_as;
};

}  // namespace

TEST_CASE("every row has words, limits in order and a default inside them") {
  const Plan plan;
  std::set<std::string_view> pointers;
  for (const FieldInfo& info : plan_fields()) {
    CAPTURE(info.pointer);
    CHECK(pointers.insert(info.pointer).second);
    CHECK_FALSE(info.label.empty());
    CHECK(info.low <= info.high);
    CHECK(info.step >= Rational(0));
    CHECK(info.usual_low >= (info.usual_low == info.usual_high ? info.usual_low : info.low));
    CHECK(info.usual_high <= (info.usual_low == info.usual_high ? info.usual_high : info.high));
    CHECK(value_accepted(info, info.read(plan, 0)));
    CHECK((info.kind == FieldKind::choice) == !info.choices.empty());
    CHECK((info.kind == FieldKind::id) == (info.ids != IdList::none));
    const bool exact = info.kind == FieldKind::fraction || info.kind == FieldKind::rate;
    CHECK(exact == (info.max_den > 0));
    CHECK_FALSE(accepted_values(info).empty());
    const auto place = find_field(pointer_of(info, 3));
    REQUIRE(place.has_value());
    CHECK(place->info == &info);
    CHECK(place->line == (per_frame_line(info) ? 3 : 0));
  }
  CHECK(check_plan(plan, library()) == Problems{});
}

TEST_CASE("a value prints as text that reads back as itself") {
  const Plan plan;
  for (const FieldInfo& info : plan_fields()) {
    CAPTURE(info.pointer);
    const FieldValue value = info.read(plan, 0);
    CHECK(value_from_text(info, value_text(info, value)) == value);
  }
}

TEST_CASE("text is read as people type it") {
  constexpr auto kRows = std::to_array<TypedRow>({
      {"/deliverable/frame_lines/0/aspect", "2.39", "239/100"},
      {"/deliverable/frame_lines/0/aspect", "2,39", "239/100"},
      {"/deliverable/frame_lines/0/aspect", "239/100", "239/100"},
      {"/deliverable/frame_lines/0/aspect", "2.39:1", "239/100"},
      {"/deliverable/frame_lines/0/aspect", " 16 : 9 ", "16/9"},
      {"/deliverable/frame_lines/0/aspect", "16:-9", "refused"},
      {"/deliverable/frame_lines/0/aspect", "16:0", "refused"},
      {"/deliverable/frame_lines/0/aspect", "1:2:3", "refused"},
      {"/deliverable/frame_lines/0/aspect", "0", "refused"},
      {"/deliverable/frame_lines/0/aspect", "2.39001", "refused"},
      {"/run/sensor_rate", "24000/1001", "24000/1001"},
      {"/run/sensor_rate", "23.976", "24000/1001"},
      {"/run/sensor_rate", "23,98", "24000/1001"},
      {"/run/sensor_rate", "29.97 fps", "30000/1001"},
      {"/run/sensor_rate", "59.94", "60000/1001"},
      {"/run/sensor_rate", "119.88", "120000/1001"},
      {"/run/sensor_rate", "23.5", "47/2"},
      {"/run/sensor_rate", "0/0", "refused"},
      {"/run/sensor_rate", "24/0", "refused"},
      {"/run/sensor_rate", "-24", "refused"},
      {"/run/sensor_rate", "99999999999999999999", "refused"},
      {"/run/shutter_time_s", "1/48", "1/48"},
      {"/run/shutter_angle_deg", "172.8", "864/5"},
      {"/run/shutter_angle_deg", "360.5", "refused"},
      {"/lens/focal_mm", "35 mm", "35"},
      {"/lens/focal_mm", "9,5", "9.5"},
      {"/lens/focal_mm", "1.234,5", "refused"},
      {"/lens/focal_mm", "NaN", "refused"},
      {"/lens/focal_mm", "inf", "refused"},
      {"/lens/focal_mm", "0x20", "refused"},
      {"/lens/focal_mm", "", "refused"},
      {"/lens/squeeze", "2x", "2"},
      {"/lens/squeeze", "1.8", "9/5"},
      {"/lens/squeeze", "", ""},
      {"/lens/image_circle_mm", "", ""},
      {"/deliverable/width_pixels", "3840", "3840"},
      {"/deliverable/width_pixels", "3840.5", "refused"},
      {"/deliverable/width_pixels", "65536", "refused"},
      {"/choose/must_meet_mandate", "yes", "true"},
      {"/choose/must_meet_mandate", "maybe", "refused"},
      {"/store/verification", "full", "full"},
      {"/store/verification", "Full", "refused"},
      {"/store/card", "NOT AN ID", "refused"},
      {"/store/tape", "", ""},
      {"/title", "  The Salt Ferry ", "The Salt Ferry"},
      {"/title", "two\nlines", "refused"},
      {"/title", "\xff", "refused"},
      {"/store/currency", "", "refused"},
  });
  for (const TypedRow& row : kRows) {
    CAPTURE(row.pointer);
    CAPTURE(row.text);
    CHECK(typed(row.pointer, row.text) == row.reads_as);
  }
}

TEST_CASE("roundings of the 1000/1001 family are known, and nothing else is taken for one") {
  CHECK(rate_behind_rounding(Rational(2997, 125)) == Rational(24000, 1001));
  CHECK(rate_behind_rounding(Rational(1199, 50)) == Rational(24000, 1001));
  CHECK(rate_behind_rounding(Rational(5994, 125)) == Rational(48000, 1001));
  for (const Rational plain : {Rational(24), Rational(25), Rational(24000, 1001), Rational(47, 2),
                               Rational(2397, 100), Rational(999, 40), Rational(-2997, 125)}) {
    CHECK_FALSE(rate_behind_rounding(plain).has_value());
  }
}

TEST_CASE("text with control characters or malformed UTF-8 is not plain") {
  for (const std::string_view good : {"", "abc", "é漢🎞", "\u00a0"}) CHECK(is_plain_text(good));
  for (const std::string_view bad :
       {std::string_view("\0", 1), std::string_view("a\n"), std::string_view("\x7f"),
        std::string_view("\xc2\x85"), std::string_view("\xc0\xaf"),
        std::string_view("\xe0\x80\xaf"), std::string_view("\xed\xa0\x80"),
        std::string_view("\xf4\x90\x80\x80"), std::string_view("\xe6\xbc"),
        std::string_view("\x80")}) {
    CHECK_FALSE(is_plain_text(bad));
  }
  CHECK(in_quotes("a\nb\xff") == "\"a?b?\"");
  CHECK(in_quotes(std::string(200, 'x')).size() == 80);
}

TEST_CASE("a pointer that names no field is a problem, and the plan stays as it is") {
  for (const std::string_view pointer :
       {"", "/", "/lens", "/lens/", "/lens/focal", "/deliverable/frame_lines/1/aspect",
        "/deliverable/frame_lines/00/aspect", "/deliverable/frame_lines/8/aspect",
        "/deliverable/frame_lines/-1/aspect", "/deliverable/frame_lines/#/aspect", "/own"}) {
    CAPTURE(pointer);
    const auto changed = with_field(Plan{}, pointer, "2", library());
    REQUIRE_FALSE(changed.has_value());
    CHECK(changed.error().front().pointer == pointer);
  }
}

TEST_CASE("another camera keeps the ids it knows and takes its first row for the others") {
  const auto birch = with_field(Plan{}, "/format/camera", "birch", library());
  REQUIRE(birch.has_value());
  CHECK(birch->format == FormatChoice{"birch", "open-gate", "as-read", "bayer-12-packed"});
  const auto film = with_field(Plan{}, "/format/camera", "film-35-4-perf", library());
  REQUIRE(film.has_value());
  CHECK(film->format == FormatChoice{"film-35-4-perf", "scan-4096", "as-read", "dpx-10"});
  const auto recording = with_field(Plan{}, "/format/recording", "resample-4096", library());
  REQUIRE(recording.has_value());
  CHECK(recording->format.codec == "vc-3-1270");
  CHECK_FALSE(with_field(Plan{}, "/format/camera", "oak", library()).has_value());
  CHECK_FALSE(with_field(Plan{}, "/format/mode", "scan-4096", library()).has_value());
}

TEST_CASE("an anchor other than free forgets its place") {
  const std::string base = "/deliverable/frame_lines/0/anchor";
  CHECK_FALSE(with_field(Plan{}, base + "/y", "0.5", library()).has_value());
  const auto free = with_field(Plan{}, base + "/kind", "free", library());
  REQUIRE(free.has_value());
  const auto placed = with_field(*free, base + "/y", "-0.5", library());
  REQUIRE(placed.has_value());
  CHECK(field_text(*placed, base + "/y") == "-1/2");
  CHECK(with_field(*placed, base + "/kind", "top", library())->deliverable.frame_lines[0].anchor ==
        Anchor{.kind = AnchorKind::top});
}

TEST_CASE("several fields are checked together, so their order does not matter") {
  const TypedField longer_day{"/shooting/day_hours", "14"};
  const TypedField more_hours{"/shooting/recorded_hours_per_day", "12"};
  CHECK_FALSE(with_fields(Plan{}, std::array{more_hours}, library()).has_value());
  const auto one = with_fields(Plan{}, std::array{more_hours, longer_day}, library());
  const auto other = with_fields(Plan{}, std::array{longer_day, more_hours}, library());
  REQUIRE(one.has_value());
  CHECK(*one == *other);
}

TEST_CASE("the cameras considered are typed as a list") {
  const auto some = with_field(Plan{}, kCamerasPointer, " alder,birch  cedar", library());
  REQUIRE(some.has_value());
  CHECK(some->choose.cameras == std::vector<std::string>{"alder", "birch", "cedar"});
  CHECK(field_text(*some, kCamerasPointer) == "alder, birch, cedar");
  CHECK(with_field(*some, kCamerasPointer, "", library())->choose.cameras.empty());
  CHECK_FALSE(with_field(Plan{}, kCamerasPointer, "alder alder", library()).has_value());
  CHECK_FALSE(with_field(Plan{}, kCamerasPointer, "oak", library()).has_value());
}

TEST_CASE("what can be chosen is what the check accepts") {
  const Plan plan;
  for (const FieldInfo& info : plan_fields()) {
    const auto options = field_options(plan, library(), info);
    const bool listed = info.kind == FieldKind::id || info.kind == FieldKind::choice;
    CHECK(options.empty() != listed);
    for (const FieldOption& option : options) {
      CAPTURE(info.pointer);
      CAPTURE(option.value);
      CHECK_FALSE(option.label.empty());
      const auto changed = with_field(plan, pointer_of(info, 0), option.value, library());
      CHECK(changed.has_value());
    }
  }
}
