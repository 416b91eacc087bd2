// What would have to change: worked by hand, then against every step of each input by brute force.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <initializer_list>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_json.h"
#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"
#include "tests/core/choose/sample.h"

namespace widegate {
namespace {

using choose_sample::random_catalogue;
using choose_sample::random_plan;
using choose_sample::small_catalogue;
using choose_sample::small_format;
using choose_sample::small_plan;

bool accepts(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format) {
  const Ranking ranking = rank(plan, catalogue);
  return std::any_of(ranking.formats.begin(), ranking.formats.end(),
                     [&](const RankedFormat& row) { return row.accepted && row.format == format; });
}

/// Whether the format passes with one input set to this value; values that a plan cannot have do
/// not pass.
bool accepts_with(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                  const Change& change) {
  const auto changed = with_change(plan, catalogue, change);
  return changed && accepts(*changed, catalogue, format);
}

/// One line for each change; text, so that doctest shows it.
std::string texts(const std::vector<Change>& changes) {
  std::string lines;
  for (const Change& change : changes) lines += change_text(change) + "\n";
  return lines;
}

std::optional<Change> change_of(const std::vector<Change>& changes, Input input) {
  const auto found = std::find_if(changes.begin(), changes.end(),
                                  [input](const Change& change) { return change.input == input; });
  return found == changes.end() ? std::nullopt : std::optional(*found);
}

std::string changes_by_hand(const Plan& plan, const Catalogue& catalogue) {
  return texts(smallest_changes(plan, catalogue, small_format()));
}

std::string lines(std::initializer_list<std::string_view> texts) {
  std::string joined;
  for (const std::string_view text : texts) (joined += text) += '\n';
  return joined;
}

TEST_CASE(
    "a circle that is too small: a larger one, another lens, less to cover, more protection") {
  Plan plan = small_plan();
  plan.lens.focal_mm = 25;  // 26 mm circle; the 24 x 12 mm frame line needs 26.833.
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Image circle: 26.84 mm instead of 26 mm",
               "Focal length of this lens set: 35 mm instead of 25 mm",
               "Protection: 0.032 instead of 0"}));
  plan.lens.focal_mm = 35;
  plan.lens.set = "wide";
  plan.choose.must_cover = CoverArea::mode;
  plan.lens.image_circle_mm = 29.99;
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Image circle: 30 mm instead of 29.99 mm",
               "Area the lens must cover: Protected area instead of Whole mode"}));
}

TEST_CASE("another lens set is proposed where it has the same focal length and covers") {
  Plan plan = small_plan();
  plan.choose.must_cover = CoverArea::mode;
  Catalogue catalogue = small_catalogue();
  catalogue.lens_sets.front().lenses[1].image_circle_mm = 29;
  CHECK(changes_by_hand(plan, catalogue) ==
        lines({"Image circle: 30 mm instead of 29 mm",
               "Focal length of this lens set: 50 mm instead of 35 mm",
               "Lens set: wide instead of lens",
               "Area the lens must cover: Protected area instead of Whole mode"}));
}

TEST_CASE("a card that cannot keep up: a lower rate, a faster card, the speed it would need") {
  Plan plan = small_plan();
  plan.run.sensor_rate = 48;  // 18 MB a frame: 864 MB/s.
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Sensor rate: 33.333 fps instead of 48 fps", "Card: quick instead of card",
               "Sustained write speed of the card: 864 000 000 bytes/s instead of 600 000 000 "
               "bytes/s"}));
}

TEST_CASE("what limits two things at once is cured by the one input they share, or by none") {
  Plan plan = small_plan();
  plan.run.sensor_rate = 72;  // Over the mode's 60 and the card's 33.3.
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Sensor rate: 33.333 fps instead of 72 fps"}));
  plan.commission.terms.photosites = 12'000'001;
  CHECK(changes_by_hand(plan, small_catalogue()).empty());
}

TEST_CASE("a rate over a fractional limit is lowered to exactly that limit") {
  Catalogue catalogue = small_catalogue();
  catalogue.cameras.front().modes.front().recordings.front().max_rate = Rational(24000, 1001);
  CHECK(changes_by_hand(small_plan(), catalogue) ==
        lines({"Sensor rate: 24000/1001 fps instead of 24 fps"}));
}

TEST_CASE("a codec with a table of rates is offered the nearest rate in it") {
  Catalogue catalogue = small_catalogue();
  TableForm table;
  table.rows = {
      {.width_pixels = 4000, .height_pixels = 3000, .rates = {30, 50}, .bytes = 5'000'000},
      {.width_pixels = 2000, .height_pixels = 3000, .rates = {25}, .bytes = 5'000'000}};
  catalogue.codecs.push_back(catalogue.codecs.front());
  catalogue.codecs.back().id = "table";
  catalogue.codecs.back().form = table;
  catalogue.cameras.front().modes.front().recordings.front().codecs.push_back("table");
  FormatChoice format = small_format();
  format.codec = "table";
  CHECK(texts(smallest_changes(small_plan(), catalogue, format)) ==
        lines({"Sensor rate: 30 fps instead of 24 fps"}));
}

TEST_CASE(
    "too few photosites inside the line: less protection, or fewer required, or no commission") {
  Plan plan = small_plan();
  plan.deliverable.frame_lines.front().protection = Rational(1, 10);
  plan.commission.terms.counted_on = CountedOn::frame;
  plan.commission.terms.photosites = 7'000'000;  // 3600 x 1800 are 6,480,000.
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Protection: 0.064 instead of 0.1",
               "Photosites required: 6 480 000 instead of 7 000 000"}));
}

TEST_CASE("a raster that is too small: a smaller deliverable, another commission, less required") {
  Plan plan = small_plan();
  plan.commission.id = "";
  plan.deliverable.width_pixels = 7680;
  plan.deliverable.height_pixels = 4320;
  const auto changes = smallest_changes(plan, small_catalogue(), small_format());
  const auto smaller = change_of(changes, Input::deliverable);
  REQUIRE(smaller);
  CHECK(smaller->patch.size() == 2);
  CHECK(smaller->value == "3840");  // 4096 asks for 4075 at least; 4000 are recorded
  CHECK(change_of(changes, Input::commission)->value == "none");
  CHECK_FALSE(change_of(changes, Input::upscaling));  // the raster is too small as well
}

TEST_CASE("too little room or running time: ask for less, or a larger card, or record less sound") {
  Plan plan = small_plan();
  plan.choose.min_room_percent = 5;
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Protection: 0.05 instead of 0",
               "Room around the frame line, at least: 0 % instead of 5 %"}));
  plan.choose.min_room_percent = 0;
  plan.choose.min_minutes_per_card = 20;  // 27,777 frames are 19.29 minutes.
  CHECK(changes_by_hand(plan, small_catalogue()) ==
        lines({"Sensor rate: 23.147 fps instead of 24 fps", "Card: quick instead of card",
               "Capacity of the card: 518 400 000 000 bytes instead of 500 000 000 000 bytes",
               "Minutes on a card, at least: 19.28 min instead of 20 min"}));
  plan.run.audio_channels = 8;
  plan.choose.min_minutes_per_card = 19.27;
  const auto changes = smallest_changes(plan, small_catalogue(), small_format());
  // 500 GB for 19.27 minutes leave 432,450 bytes a second for sound: three channels of 144,000.
  const auto sound = change_of(changes, Input::audio_channels);
  REQUIRE(sound);
  CHECK(sound->value == "3");
  CHECK(sound->now == "8");
  REQUIRE(sound->patch.size() == 1);
  CHECK(sound->patch.front().pointer == "/run/audio_channels");
}

TEST_CASE("a de-squeeze beyond the lens's squeeze: more squeeze") {
  Catalogue catalogue = small_catalogue();
  Recording& recording = catalogue.cameras.front().modes.front().recordings.front();
  recording.width_pixels = 4000;
  recording.height_pixels = 1500;
  recording.desqueeze = Rational(9, 5);
  CHECK(changes_by_hand(small_plan(), catalogue) ==
        lines({"Squeeze of the lens: 1.8 x instead of none"}));
}

TEST_CASE("nothing is proposed for a format that passes or does not exist") {
  CHECK(smallest_changes(small_plan(), small_catalogue(), small_format()).empty());
  FormatChoice nowhere = small_format();
  nowhere.mode = "nowhere";
  CHECK(smallest_changes(small_plan(), small_catalogue(), nowhere).empty());
}

/// Inputs that move in steps, and how far brute force follows them.
struct Stepped {
  Input input;
  Rational step;
  int reach;
};
constexpr auto kStepped = std::to_array<Stepped>({
    {Input::image_circle, Rational(1, 100), 600},
    {Input::protection, Rational(1, 1000), 500},
    {Input::audio_channels, 1, 8},
    {Input::card_speed, 1, 1},
    {Input::card_capacity, 1, 1},
    {Input::photosites, 1, 1},
    {Input::recorded_width, 1, 1},
    {Input::min_minutes, Rational(1, 100), 1},
    {Input::min_push_in, Rational(1, 100), 500},
    {Input::min_room, Rational(1, 100), 500},
});

const Stepped* stepped_row(Input input) {
  for (const Stepped& row : kStepped) {
    if (row.input == input) return &row;
  }
  return nullptr;
}

std::string as_value(Input input, Rational value) {
  const bool fraction = input == Input::protection;
  return fraction || value.whole() ? print_rational(value) : print_number(value.to_double());
}

/// The same change to another value.
Change with_value(Change change, const std::string& value) {
  change.value = value;
  for (TypedField& field : change.patch) field.text = value;
  return change;
}

/// One step less than the proposal (nearer to what is now) does not make it pass.
void check_one_step_less(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                         const Change& change) {
  const Stepped* row = stepped_row(change.input);
  if (row == nullptr) return;
  const Rational now = parse_rational(change.now).value();
  const Rational value = parse_rational(change.value).value();
  const Rational less = value > now ? value - row->step : value + row->step;
  if (value > now ? less <= now : less >= now) return;
  const Change smaller = with_value(change, as_value(change.input, less));
  CAPTURE(smaller.value);
  CHECK_FALSE(accepts_with(plan, catalogue, format, smaller));
}

/// A rate between the proposal and what is now, a thousandth away from the proposal.
void check_rate(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                const Change& change) {
  const Rational value = parse_rational(change.value).value();
  if (value > plan.run.sensor_rate) return;
  const Rational nearer = value + Rational(1, 1000);
  if (nearer >= plan.run.sensor_rate) return;
  const Change smaller = with_value(change, print_rational(nearer));
  CHECK_FALSE(accepts_with(plan, catalogue, format, smaller));
}

/// Cards slower than the proposed one do not serve.
void check_slower_cards(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                        const Change& change) {
  const Card& proposed = *find_row(catalogue.cards, change.value);
  for (const Card& card : catalogue.cards) {
    if (card.write_bytes_per_s >= proposed.write_bytes_per_s) continue;
    const Change slower = with_value(change, card.id);
    CHECK_FALSE(accepts_with(plan, catalogue, format, slower));
  }
}

TEST_CASE("every proposal is enough, and slightly less is not") {
  std::mt19937 random(41);
  const Catalogue catalogue = random_catalogue(random, 60);
  std::array<int, 40> seen{};
  for (int round = 0; round < 60; ++round) {
    const Plan plan = random_plan(random, catalogue);
    for (const RankedFormat& row : rank(plan, catalogue).formats) {
      for (const Change& change : smallest_changes(plan, catalogue, row.format)) {
        CAPTURE(change_text(change));
        CAPTURE(row.format.camera + " " + row.format.mode + " " + row.format.recording + " " +
                row.format.codec);
        ++seen[static_cast<std::size_t>(change.input)];
        CHECK_FALSE(row.accepted);
        CHECK(accepts_with(plan, catalogue, row.format, change));
        check_one_step_less(plan, catalogue, row.format, change);
        if (change.input == Input::sensor_rate) check_rate(plan, catalogue, row.format, change);
        if (change.input == Input::card) check_slower_cards(plan, catalogue, row.format, change);
      }
    }
  }
  const auto inputs = std::count_if(seen.begin(), seen.end(), [](int count) { return count > 0; });
  CHECK(inputs >= 10);
}

/// The nearest value that passes, found by trying every step both ways.
std::optional<Rational> nearest_by_trying(const Plan& plan, const Catalogue& catalogue,
                                          const FormatChoice& format, const Stepped& row,
                                          Rational now) {
  for (int distance = 1; distance <= row.reach; ++distance) {
    for (const int sign : {-1, 1}) {
      const Rational value = now + Rational(sign * distance) * row.step;
      Change change{.input = row.input, .value = as_value(row.input, value), .now = ""};
      if (!input_pointer(row.input).empty()) {
        std::string pointer(input_pointer(row.input));
        const auto mark = pointer.find('#');
        if (mark != std::string::npos) pointer.replace(mark, 1, "0");
        change.patch = {{pointer, change.value}};
      }
      if (accepts_with(plan, catalogue, format, change)) return value;
    }
  }
  return std::nullopt;
}

bool within(const Stepped& row, Rational now, Rational value) {
  const Rational distance = value > now ? value - now : now - value;
  return distance <= Rational(row.reach) * row.step;
}

/// What brute force finds is what is proposed, for one input that the plan sets.
bool check_by_trying(const Plan& plan, const Catalogue& catalogue, const FormatChoice& format,
                     Input input, Rational now) {
  const Stepped* row = stepped_row(input);
  const auto changes = smallest_changes(plan, catalogue, format);
  const auto tried = nearest_by_trying(plan, catalogue, format, *row, now);
  const auto proposed = change_of(changes, input);
  CAPTURE(input_key(input));
  // Brute force stops at its reach.
  const bool in_reach = !proposed || within(*row, now, *parse_rational(proposed->value));
  if (tried || in_reach) CHECK(tried.has_value() == proposed.has_value());
  if (tried && proposed) CHECK(parse_rational(proposed->value) == *tried);
  return tried.has_value();
}

TEST_CASE("no step of an input that brute force can try is overlooked") {
  std::mt19937 random(42);
  const Catalogue catalogue = random_catalogue(random, 20);
  int found = 0;
  int none = 0;
  for (int round = 0; round < 400 && (found < 3 || none < 2); ++round) {
    Plan plan = random_plan(random, catalogue);
    if (!plan.lens.image_circle_mm) plan.lens.image_circle_mm = 25;
    const Ranking ranking = rank(plan, catalogue);
    if (ranking.accepted == ranking.formats.size()) continue;
    const RankedFormat& row = ranking.formats[ranking.accepted];
    const bool hopeless = smallest_changes(plan, catalogue, row.format).empty();
    if (hopeless ? none >= 2 : found >= 3) continue;
    bool any = false;
    const auto check = [&](Input input, Rational now) {
      any = check_by_trying(plan, catalogue, row.format, input, now) || any;
    };
    check(Input::image_circle, rational_from_decimal(*plan.lens.image_circle_mm).value());
    check(Input::protection, plan.deliverable.frame_lines.front().protection);
    check(Input::audio_channels, plan.run.audio_channels);
    check(Input::min_push_in, rational_from_decimal(plan.choose.min_push_in_percent).value_or(0));
    ++(any ? found : none);
  }
  CHECK(found > 0);
  CHECK(none > 0);
}

TEST_CASE("every rejected format of the built-in library passes with each change proposed for it") {
  const auto library = built_in_catalogue();
  REQUIRE(library);
  Plan plan;
  plan.run.sensor_rate = 60;
  const auto formats = rank(plan, *library).formats;
  std::size_t tried = 0;
  for (std::size_t i = 0; i < formats.size(); i += 11) {
    for (const Change& change : smallest_changes(plan, *library, formats[i].format)) {
      CAPTURE(change_text(change));
      CHECK(accepts_with(plan, *library, formats[i].format, change));
      check_one_step_less(plan, *library, formats[i].format, change);
      ++tried;
    }
  }
  CHECK(tried > 20);
}

}  // namespace
}  // namespace widegate
