#include "core/choose/change_inputs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <string>
#include <tuple>
#include <utility>

#include "core/catalogue/catalogue_fields.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr std::uint32_t helps(std::initializer_list<Requirement> requirements) {
  std::uint32_t bits = 0;
  for (const Requirement requirement : requirements) {
    bits |= std::uint32_t{1} << static_cast<unsigned>(requirement);
  }
  return bits;
}

/// A member of Conditions as a dial sees it.
template <auto Part, auto Member>
double member_now(const Conditions& conditions) {
  const auto& member = conditions.*Part.*Member;
  if constexpr (std::is_same_v<std::remove_cvref_t<decltype(member)>, Rational>) {
    return member.to_double();
  } else {
    return static_cast<double>(member);
  }
}

template <auto Part, auto Member>
void set_member(Conditions& conditions, std::int64_t step, std::int64_t steps_per_unit) {
  auto& member = conditions.*Part.*Member;
  using Value = std::remove_cvref_t<decltype(member)>;
  if constexpr (std::is_same_v<Value, std::int64_t>) {
    member = step;
  } else if constexpr (std::is_same_v<Value, double> ||
                       std::is_same_v<Value, std::optional<double>>) {
    member = static_cast<double>(step) / static_cast<double>(steps_per_unit);
  } else {
    member = Rational(step, steps_per_unit);
  }
}

enum class Turn { up, down, either };

template <auto Part, auto Member>
constexpr Dial dial(std::int64_t steps_per_unit, Turn turn) {
  return {.steps_per_unit = steps_per_unit,
          .up = turn != Turn::down,
          .down = turn != Turn::up,
          .now = member_now<Part, Member>,
          .set = set_member<Part, Member>};
}

double circle_now(const Conditions& conditions) {
  const auto circle = image_circle(conditions.lens, conditions.lens_set);
  return circle ? circle->diameter_mm : 0;
}

double squeeze_now(const Conditions& conditions) {
  return lens_squeeze(conditions.lens, conditions.lens_set).to_double();
}

constexpr Dial kCircleDial = {.steps_per_unit = 100,
                              .up = true,
                              .now = circle_now,
                              .set = set_member<&Conditions::lens, &LensChoice::image_circle_mm>};
constexpr Dial kSqueezeDial = {.steps_per_unit = 100,
                               .up = true,
                               .now = squeeze_now,
                               .set = set_member<&Conditions::lens, &LensChoice::squeeze>};

template <const std::string_view& Pointer>
const FieldSpec* plan_limits() {
  return find_field(Pointer)->info;
}

template <const std::string_view& Pointer>
const FieldSpec* card_limits() {
  const auto fields = row_fields<Card>();
  return &*std::find_if(fields.begin(), fields.end(),
                        [](const FieldSpec& spec) { return spec.pointer == Pointer; });
}

/// Sorts by a key, the smallest first; equal ones keep their order.
template <class Value, class Key>
void sort_by(std::vector<Value>& values, Key key) {
  std::stable_sort(values.begin(), values.end(),
                   [&key](const Value& a, const Value& b) { return key(a) < key(b); });
}

/// The rows of both catalogues without library rows that one's own stand in for.
template <class Row>
std::vector<const Row*> every_row(const std::vector<Row>& own, const std::vector<Row>& library) {
  std::vector<const Row*> rows;
  for (const Row& row : own) rows.push_back(&row);
  for (const Row& row : library) {
    if (find_row(own, row.id) == nullptr) rows.push_back(&row);
  }
  return rows;
}

std::vector<Conditions> focal_lengths(const RejectedFormat& format) {
  if (format.conditions.lens_set == nullptr) return {};
  const double now = format.conditions.lens.focal_mm;
  std::vector<double> focals;
  for (const Lens& lens : format.conditions.lens_set->lenses) focals.push_back(lens.focal_mm);
  sort_by(focals, [now](double focal) { return std::max(focal / now, now / focal); });
  std::vector<Conditions> settings(focals.size(), format.conditions);
  for (std::size_t i = 0; i < focals.size(); ++i) settings[i].lens.focal_mm = focals[i];
  return settings;
}

std::vector<Conditions> lens_sets(const RejectedFormat& format) {
  const LensChoice& lens = format.conditions.lens;
  auto sets = every_row(format.plan.own.lens_sets, format.library.lens_sets);
  std::erase_if(sets, [&](const LensSet* set) {
    return set->id == lens.set || circle_at(*set, lens.focal_mm).interpolated;
  });
  sort_by(sets, [&](const LensSet* set) {
    return std::tuple(circle_at(*set, lens.focal_mm).diameter_mm, std::string_view(set->id));
  });
  std::vector<Conditions> settings(sets.size(), format.conditions);
  for (std::size_t i = 0; i < sets.size(); ++i) {
    settings[i].lens_set = sets[i];
    settings[i].lens.set = sets[i]->id;
  }
  return settings;
}

std::vector<Conditions> smaller_areas(const RejectedFormat& format) {
  std::vector<Conditions> settings;
  for (int area = static_cast<int>(format.conditions.choose.must_cover) - 1; area >= 0; --area) {
    settings.push_back(format.conditions);
    settings.back().choose.must_cover = static_cast<CoverArea>(area);
  }
  return settings;
}

/// Rates that the table of a codec lists for this raster.
std::vector<Rational> table_rates(const RejectedFormat& format) {
  const auto* table = std::get_if<TableForm>(&format.codec.form);
  if (table == nullptr) return {};
  const Geometry raster = make_geometry(format.mode, format.recording, 1);
  std::vector<Rational> rates;
  for (const TableForm::Row& row : table->rows) {
    if (row.width_pixels != raster.recorded_width_pixels) continue;
    if (row.height_pixels != raster.recorded_height_pixels) continue;
    rates.insert(rates.end(), row.rates.begin(), row.rates.end());
  }
  return rates;
}

/// The ceilings themselves, exactly, and what the codec's table has: nearest first.
std::vector<Conditions> sensor_rates(const RejectedFormat& format) {
  std::vector<Rational> rates = table_rates(format);
  for (const auto& limit : {format.mode.max_rate, format.recording.max_rate}) {
    if (limit) rates.push_back(*limit);
  }
  const double now = format.conditions.run.sensor_rate.to_double();
  sort_by(rates, [now](Rational rate) { return std::abs(rate.to_double() - now); });
  std::vector<Conditions> settings(rates.size(), format.conditions);
  for (std::size_t i = 0; i < rates.size(); ++i) settings[i].run.sensor_rate = rates[i];
  return settings;
}

/// Slowest first.
std::vector<Conditions> cards(const RejectedFormat& format) {
  auto rows = every_row(format.plan.own.cards, format.library.cards);
  sort_by(rows, [](const Card* card) {
    return std::tuple(card->write_bytes_per_s, card->capacity_bytes, std::string_view(card->id));
  });
  std::vector<Conditions> settings(rows.size(), format.conditions);
  for (std::size_t i = 0; i < rows.size(); ++i) settings[i].card = *rows[i];
  return settings;
}

std::vector<Conditions> no_mandate(const RejectedFormat& format) {
  const bool both = format.fails(Requirement::mandate) && format.fails(Requirement::mandate_across);
  if (!both) return {};
  std::vector<Conditions> settings(1, format.conditions);
  settings.front().choose.must_meet_mandate = false;
  return settings;
}

constexpr std::string_view kCircle = "/lens/image_circle_mm";
constexpr std::string_view kFocal = "/lens/focal_mm";
constexpr std::string_view kSet = "/lens/set";
constexpr std::string_view kSqueeze = "/lens/squeeze";
constexpr std::string_view kMustCover = "/choose/must_cover";
constexpr std::string_view kProtection = "/deliverable/frame_lines/0/protection";
constexpr std::string_view kRate = "/run/sensor_rate";
constexpr std::string_view kChannels = "/run/audio_channels";
constexpr std::string_view kCard = "/store/card";
constexpr std::string_view kCardSpeed = "/write_bytes_per_s";
constexpr std::string_view kCardCapacity = "/capacity_bytes";
constexpr std::string_view kPhotosites = "/mandate/photosites";
constexpr std::string_view kAcross = "/mandate/photosites_across";
constexpr std::string_view kMeetMandate = "/choose/must_meet_mandate";
constexpr std::string_view kMinutes = "/choose/min_minutes_per_card";
constexpr std::string_view kPushIn = "/choose/min_push_in_percent";

constexpr std::uint32_t kHelpsFrame = helps(
    {Requirement::cover, Requirement::mandate, Requirement::mandate_across, Requirement::push_in});
constexpr std::uint32_t kHelpsRate =
    helps({Requirement::mode_rate, Requirement::recording_rate, Requirement::frame_size,
           Requirement::card_speed, Requirement::card_minutes});
constexpr std::uint32_t kHelpsLoad = helps({Requirement::card_speed, Requirement::card_minutes});
constexpr std::uint32_t kHelpsCard =
    helps({Requirement::frame_size, Requirement::card_speed, Requirement::card_minutes});
constexpr std::uint32_t kHelpsCapacity =
    helps({Requirement::frame_size, Requirement::card_minutes});

constexpr auto kLevers = std::to_array<Lever>({
    {.input = Input::image_circle,
     .key = "image_circle",
     .label = "Image circle",
     .unit = "mm",
     .pointer = kCircle,
     .helps = helps({Requirement::cover}),
     .limits = plan_limits<kCircle>,
     .dial = kCircleDial},
    {.input = Input::focal_length,
     .key = "focal_length",
     .label = "Focal length of this lens set",
     .unit = "mm",
     .pointer = kFocal,
     .helps = helps({Requirement::cover}),
     .settings = focal_lengths},
    {.input = Input::lens_set,
     .key = "lens_set",
     .label = "Lens set",
     .unit = "",
     .pointer = kSet,
     .helps = kHelpsFrame | helps({Requirement::squeeze}),
     .settings = lens_sets},
    {.input = Input::squeeze,
     .key = "squeeze",
     .label = "Squeeze of the lens",
     .unit = "x",
     .pointer = kSqueeze,
     .helps = helps({Requirement::squeeze}),
     .limits = plan_limits<kSqueeze>,
     .dial = kSqueezeDial},
    {.input = Input::must_cover,
     .key = "must_cover",
     .label = "Area the lens must cover",
     .unit = "",
     .pointer = kMustCover,
     .helps = helps({Requirement::cover}),
     .settings = smaller_areas},
    {.input = Input::protection,
     .key = "protection",
     .label = "Protection",
     .unit = "",
     .pointer = kProtection,
     .helps = kHelpsFrame,
     .limits = plan_limits<kProtection>,
     .dial = dial<&Conditions::main, &FrameLine::protection>(1000, Turn::either)},
    {.input = Input::sensor_rate,
     .key = "sensor_rate",
     .label = "Sensor rate",
     .unit = "fps",
     .pointer = kRate,
     .helps = kHelpsRate,
     .limits = plan_limits<kRate>,
     .dial = dial<&Conditions::run, &Running::sensor_rate>(1000, Turn::down),
     .settings = sensor_rates},
    {.input = Input::audio_channels,
     .key = "audio_channels",
     .label = "Audio channels",
     .unit = "",
     .pointer = kChannels,
     .helps = kHelpsLoad,
     .limits = plan_limits<kChannels>,
     .dial = dial<&Conditions::run, &Running::audio_channels>(1, Turn::down)},
    {.input = Input::card,
     .key = "card",
     .label = "Card",
     .unit = "",
     .pointer = kCard,
     .helps = kHelpsCard,
     .settings = cards},
    {.input = Input::card_speed,
     .key = "card_speed",
     .label = "Sustained write speed of the card",
     .unit = "bytes/s",
     .pointer = "",
     .helps = helps({Requirement::card_speed}),
     .limits = card_limits<kCardSpeed>,
     .dial = dial<&Conditions::card, &Card::write_bytes_per_s>(1, Turn::up)},
    {.input = Input::card_capacity,
     .key = "card_capacity",
     .label = "Capacity of the card",
     .unit = "bytes",
     .pointer = "",
     .helps = kHelpsCapacity,
     .limits = card_limits<kCardCapacity>,
     .dial = dial<&Conditions::card, &Card::capacity_bytes>(1, Turn::up)},
    {.input = Input::mandate,
     .key = "mandate",
     .label = "Photosites required",
     .unit = "",
     .pointer = kPhotosites,
     .helps = helps({Requirement::mandate}),
     .limits = plan_limits<kPhotosites>,
     .dial = dial<&Conditions::mandate, &Mandate::photosites>(1, Turn::down)},
    {.input = Input::mandate_across,
     .key = "mandate_across",
     .label = "Photosites required across",
     .unit = "",
     .pointer = kAcross,
     .helps = helps({Requirement::mandate_across}),
     .limits = plan_limits<kAcross>,
     .dial = dial<&Conditions::mandate, &Mandate::photosites_across>(1, Turn::down)},
    {.input = Input::must_meet_mandate,
     .key = "must_meet_mandate",
     .label = "Must meet the mandate",
     .unit = "",
     .pointer = kMeetMandate,
     .helps = helps({Requirement::mandate, Requirement::mandate_across}),
     .settings = no_mandate},
    {.input = Input::min_minutes,
     .key = "min_minutes",
     .label = "Minutes on a card, at least",
     .unit = "min",
     .pointer = kMinutes,
     .helps = helps({Requirement::card_minutes}),
     .limits = plan_limits<kMinutes>,
     .dial = dial<&Conditions::choose, &Choosing::min_minutes_per_card>(100, Turn::down)},
    {.input = Input::min_push_in,
     .key = "min_push_in",
     .label = "Push-in, at least",
     .unit = "%",
     .pointer = kPushIn,
     .helps = helps({Requirement::push_in}),
     .limits = plan_limits<kPushIn>,
     .dial = dial<&Conditions::choose, &Choosing::min_push_in_percent>(100, Turn::down)},
});

constexpr bool in_order() {
  for (std::size_t i = 0; i < kLevers.size(); ++i) {
    if (static_cast<std::size_t>(kLevers[i].input) != i) return false;
  }
  return true;
}
static_assert(in_order(), "a row stands at its enumerator's place");

}  // namespace

std::span<const Lever> change_levers() { return kLevers; }

}  // namespace widegate
