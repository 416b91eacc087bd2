#include "core/choose/change_inputs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <string>
#include <tuple>
#include <utility>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_fields.h"
#include "core/optics/lens_squeeze.h"
#include "core/optics/mode_geometry.h"

namespace widegate {
namespace {

constexpr std::uint32_t helps(std::initializer_list<Requirement> requirements) {
  std::uint32_t bits = 0;
  for (const Requirement requirement : requirements) {
    bits |= std::uint32_t{1} << static_cast<unsigned>(requirement);
  }
  return bits;
}

const LensSet* set_of(const Plan& plan, const Catalogue& library) {
  return find_row(plan.own.lens_sets, library.lens_sets, plan.lens.set);
}

double circle_now(const Plan& plan, const Catalogue& library) {
  const auto circle = image_circle(plan.lens, set_of(plan, library));
  return circle ? circle->diameter_mm : 0;
}

double photosites_now(const Plan& plan, const Catalogue& library) {
  return static_cast<double>(terms_in_force(plan, library).photosites);
}
double width_now(const Plan& plan, const Catalogue& library) {
  return terms_in_force(plan, library).width_pixels.to_double();
}
double height_now(const Plan& plan, const Catalogue& library) {
  return terms_in_force(plan, library).height_pixels.to_double();
}
double upscaling_now(const Plan& plan, const Catalogue& library) {
  return terms_in_force(plan, library).largest_upscaling.to_double();
}
double bit_depth_now(const Plan& plan, const Catalogue& library) {
  return static_cast<double>(terms_in_force(plan, library).bit_depth);
}
double compression_now(const Plan& plan, const Catalogue& library) {
  return terms_in_force(plan, library).compression.to_double();
}
double protection_now(const Plan& plan, const Catalogue& library) {
  return terms_in_force(plan, library).protection.to_double();
}

template <const std::string_view& Pointer>
const Field<Card>* card_row() {
  const auto fields = row_fields<Card>();
  return &*std::find_if(fields.begin(), fields.end(),
                        [](const Field<Card>& field) { return field.pointer == Pointer; });
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

constexpr std::string_view kCircle = "/lens/image_circle_mm";
constexpr std::string_view kFocal = "/lens/focal_mm";
constexpr std::string_view kSet = "/lens/set";
constexpr std::string_view kSqueeze = "/lens/squeeze";
constexpr std::string_view kMustCover = "/choose/must_cover";
constexpr std::string_view kProtection = "/deliverable/frame_lines/#/protection";
constexpr std::string_view kRate = "/run/sensor_rate";
constexpr std::string_view kChannels = "/run/audio_channels";
constexpr std::string_view kCard = "/store/card";
constexpr std::string_view kCardSpeed = "/write_bytes_per_s";
constexpr std::string_view kCardCapacity = "/capacity_bytes";
constexpr std::string_view kDeliverableWidth = "/deliverable/width_pixels";
constexpr std::string_view kDeliverableHeight = "/deliverable/height_pixels";
constexpr std::string_view kCommission = "/commission/id";
constexpr std::string_view kPhotosites = "/commission/photosites";
constexpr std::string_view kWidth = "/commission/recorded_width_pixels";
constexpr std::string_view kHeight = "/commission/recorded_height_pixels";
constexpr std::string_view kUpscaling = "/commission/largest_upscaling";
constexpr std::string_view kBitDepth = "/commission/bit_depth";
constexpr std::string_view kChroma = "/commission/chroma";
constexpr std::string_view kRaw = "/commission/sensor_raw";
constexpr std::string_view kCompression = "/commission/compression";
constexpr std::string_view kLossless = "/commission/lossless";
constexpr std::string_view kIntra = "/commission/intra";
constexpr std::string_view kPlays = "/commission/plays_at_once";
constexpr std::string_view kDesqueeze = "/commission/in_camera_desqueeze";
constexpr std::string_view kProtectionAsked = "/commission/protection";
constexpr std::string_view kWeights = "/choose/weights";
constexpr std::string_view kMinutes = "/choose/min_minutes_per_card";
constexpr std::string_view kPushIn = "/choose/min_push_in_percent";
constexpr std::string_view kRoom = "/choose/min_room_percent";

Patch set_to(std::string_view pointer, std::string value) {
  return {{std::string(pointer), std::move(value)}};
}

std::vector<Patch> focal_lengths(const RejectedFormat& format) {
  const LensSet* set = set_of(format.plan, format.library);
  if (set == nullptr) return {};
  const double now = format.plan.lens.focal_mm;
  std::vector<double> focals;
  for (const Lens& lens : set->lenses) focals.push_back(lens.focal_mm);
  sort_by(focals, [now](double focal) { return std::max(focal / now, now / focal); });
  std::vector<Patch> settings;
  for (const double focal : focals) settings.push_back(set_to(kFocal, print_number(focal)));
  return settings;
}

/// Sets of another squeeze make another picture: only where it is the squeeze that fails.
std::vector<Patch> lens_sets(const RejectedFormat& format) {
  const LensChoice& lens = format.plan.lens;
  const bool any_squeeze = format.findings.missed(Requirement::desqueeze) ||
                           format.findings.missed(Requirement::desqueeze_wish);
  const Rational squeeze = lens_squeeze(lens, set_of(format.plan, format.library));
  auto sets = every_row(format.plan.own.lens_sets, format.library.lens_sets);
  std::erase_if(sets, [&](const LensSet* set) {
    return set->id == lens.set || circle_at(*set, lens.focal_mm).interpolated ||
           (!any_squeeze && set->squeeze != squeeze);
  });
  sort_by(sets, [&](const LensSet* set) {
    return std::tuple(circle_at(*set, lens.focal_mm).diameter_mm, std::string_view(set->id));
  });
  std::vector<Patch> settings;
  for (const LensSet* set : sets) settings.push_back(set_to(kSet, set->id));
  return settings;
}

std::vector<Patch> squeezes(const RejectedFormat& format) {
  return {set_to(kSqueeze, print_rational(format.rows.recording->desqueeze))};
}

/// No smaller than the frame line: what is not covered there is dark in the picture.
std::vector<Patch> smaller_areas(const RejectedFormat& format) {
  const FieldSpec& spec = *find_field(kMustCover)->info;
  std::vector<Patch> settings;
  constexpr int kSmallest = static_cast<int>(CoverArea::frame);
  for (int area = static_cast<int>(format.plan.choose.must_cover) - 1; area >= kSmallest; --area) {
    settings.push_back(
        set_to(kMustCover, std::string(spec.choices[static_cast<std::size_t>(area)].token)));
  }
  return settings;
}

/// Rates that the table of a codec lists for this raster.
std::vector<Rational> table_rates(const RejectedFormat& format) {
  const auto* table = std::get_if<TableForm>(&format.rows.codec->form);
  if (table == nullptr) return {};
  const Geometry raster = make_geometry(*format.rows.mode, *format.rows.recording, 1);
  std::vector<Rational> rates;
  for (const TableForm::Row& row : table->rows) {
    if (row.width_pixels != raster.recorded_width_pixels) continue;
    if (row.height_pixels != raster.recorded_height_pixels) continue;
    rates.insert(rates.end(), row.rates.begin(), row.rates.end());
  }
  return rates;
}

/// The ceilings themselves, exactly, and what the codec's table has: nearest first.
std::vector<Patch> sensor_rates(const RejectedFormat& format) {
  std::vector<Rational> rates = table_rates(format);
  const FormatRows& rows = format.rows;
  for (const auto& limit : {rows.mode->max_rate, rows.camera->max_rate, rows.recording->max_rate}) {
    if (limit) rates.push_back(*limit);
  }
  const double now = format.plan.run.sensor_rate.to_double();
  sort_by(rates, [now](Rational rate) { return std::abs(rate.to_double() - now); });
  std::vector<Patch> settings;
  for (const Rational rate : rates) settings.push_back(set_to(kRate, print_rational(rate)));
  return settings;
}

/// Slowest first.
std::vector<Patch> cards(const RejectedFormat& format) {
  auto rows = every_row(format.plan.own.cards, format.library.cards);
  sort_by(rows, [](const Card* card) {
    return std::tuple(card->write_bytes_per_s, card->capacity_bytes, std::string_view(card->id));
  });
  std::vector<Patch> settings;
  for (const Card* card : rows) settings.push_back(set_to(kCard, card->id));
  return settings;
}

/// Usual rasters, largest first.
/// @source ITU-R BT.2020 and BT.709 for 7680, 3840 and 1920; SMPTE ST 428-1 for 4096 and 2048;
///         SMPTE ST 296 for 1280.
std::vector<Patch> deliverables(const RejectedFormat& format) {
  constexpr std::int64_t kRasters[][2] = {{7680, 4320}, {4096, 2160}, {3840, 2160},
                                          {2048, 1080}, {1920, 1080}, {1280, 720}};
  const Deliverable& now = format.plan.deliverable;
  std::vector<Patch> settings;
  for (const auto& [width, height] : kRasters) {
    if (width * height >= now.width_pixels * now.height_pixels) continue;
    settings.push_back({{std::string(kDeliverableWidth), std::to_string(width)},
                        {std::string(kDeliverableHeight), std::to_string(height)}});
  }
  return settings;
}

/// What follows from the deliverable, then none: nobody swaps one commissioner for another.
std::vector<Patch> commissions(const RejectedFormat& format) {
  constexpr std::string_view kNone = "none";
  const std::string& now = format.plan.commission.id;
  std::vector<Patch> settings;
  if (!now.empty()) settings.push_back(set_to(kCommission, ""));
  const bool there = find_row(format.plan.own.commissions, format.library.commissions, kNone);
  if (there && now != kNone) settings.push_back(set_to(kCommission, std::string(kNone)));
  return settings;
}

/// Settings of one value that asks for nothing.
template <const std::string_view& Pointer>
std::vector<Patch> asks_nothing(const RejectedFormat& /*format*/) {
  const FieldSpec& spec = *find_field(Pointer)->info;
  const bool flag = spec.kind == FieldKind::flag;
  return {set_to(Pointer, flag ? "false" : std::string(spec.choices.front().token))};
}

/// Less chroma, most first.
std::vector<Patch> chromas(const RejectedFormat& format) {
  const auto asked = terms_in_force(format.plan, format.library).chroma;
  const FieldSpec& spec = *find_field(kChroma)->info;
  std::vector<Patch> settings;
  for (int at = asked ? static_cast<int>(*asked) - 1 : -1; at >= 0; --at) {
    settings.push_back(
        set_to(kChroma, std::string(spec.choices[static_cast<std::size_t>(at)].token)));
  }
  return settings;
}

std::vector<Patch> balanced_weights(const RejectedFormat& format) {
  if (format.plan.choose.weights != WeightSet::soonest_in_edit) return {};
  return {set_to(kWeights, "balanced")};
}

using enum Requirement;

constexpr std::uint32_t kHelpsLines =
    helps({cover, photosites, upscaling, push_in, room, Requirement::protection});
constexpr std::uint32_t kHelpsRate =
    helps({mode_rate, recording_rate, frame_size, card_speed, card_minutes});
constexpr std::uint32_t kHelpsLoad = helps({card_speed, card_minutes});
constexpr std::uint32_t kHelpsCard = helps({frame_size, card_speed, media, card_minutes});
constexpr std::uint32_t kHelpsCapacity = helps({frame_size, card_minutes});
constexpr std::uint32_t kHelpsSize =
    helps({photosites, raster_width, raster_height, raster_count, upscaling, push_in});
constexpr std::uint32_t kHelpsCommission =
    kHelpsSize | helps({Requirement::protection, desqueeze_wish, bit_depth, chroma, sensor_raw,
                        compression, lossless, intra, plays_at_once, project_rate});

constexpr Dial down(std::int64_t steps_per_unit,
                    double (*now)(const Plan&, const Catalogue&) = nullptr) {
  return {.steps_per_unit = steps_per_unit, .down = true, .now = now};
}
constexpr Dial up(std::int64_t steps_per_unit,
                  double (*now)(const Plan&, const Catalogue&) = nullptr) {
  return {.steps_per_unit = steps_per_unit, .up = true, .now = now};
}

constexpr auto kInputs = std::to_array<ChangeInput>({
    {Input::image_circle, "image_circle", "Image circle", "mm", kCircle, helps({cover}),
     up(100, circle_now)},
    {.input = Input::focal_length,
     .key = "focal_length",
     .label = "Focal length of this lens set",
     .unit = "mm",
     .pointer = kFocal,
     .helps = helps({cover}),
     .settings = focal_lengths},
    {.input = Input::lens_set,
     .key = "lens_set",
     .label = "Lens set",
     .unit = "",
     .pointer = kSet,
     .helps = kHelpsLines | kHelpsSize | helps({desqueeze, desqueeze_wish}),
     .settings = lens_sets},
    {.input = Input::squeeze,
     .key = "squeeze",
     .label = "Squeeze of the lens",
     .unit = "x",
     .pointer = kSqueeze,
     .helps = helps({desqueeze}),
     .settings = squeezes},
    {.input = Input::must_cover,
     .key = "must_cover",
     .label = "Area the lens must cover",
     .unit = "",
     .pointer = kMustCover,
     .helps = helps({cover}),
     .settings = smaller_areas},
    {Input::protection, "protection", "Protection", "", kProtection, kHelpsLines,
     Dial{.steps_per_unit = 1000, .up = true, .down = true}},
    {Input::sensor_rate, "sensor_rate", "Sensor rate", "fps", kRate, kHelpsRate, down(1000),
     nullptr, sensor_rates},
    {Input::audio_channels, "audio_channels", "Audio channels", "", kChannels, kHelpsLoad, down(1)},
    {.input = Input::card,
     .key = "card",
     .label = "Card",
     .unit = "",
     .pointer = kCard,
     .helps = kHelpsCard,
     .settings = cards},
    {Input::card_speed, "card_speed", "Sustained write speed of the card", "bytes/s", "",
     helps({card_speed}), up(1), card_row<kCardSpeed>},
    {Input::card_capacity, "card_capacity", "Capacity of the card", "bytes", "", kHelpsCapacity,
     up(1), card_row<kCardCapacity>},
    {.input = Input::deliverable,
     .key = "deliverable",
     .label = "Deliverable",
     .unit = "px",
     .pointer = kDeliverableWidth,
     .helps = kHelpsSize,
     .settings = deliverables},
    {.input = Input::commission,
     .key = "commission",
     .label = "Commission",
     .unit = "",
     .pointer = kCommission,
     .helps = kHelpsCommission,
     .settings = commissions},
    {Input::photosites, "photosites", "Photosites required", "", kPhotosites, helps({photosites}),
     down(1, photosites_now)},
    {Input::recorded_width, "recorded_width", "Recorded width required", "px", kWidth,
     helps({raster_width, raster_count}), down(1, width_now)},
    {Input::recorded_height, "recorded_height", "Recorded height required", "px", kHeight,
     helps({raster_height, raster_count}), down(1, height_now)},
    {Input::upscaling, "upscaling", "Upscaling allowed", "x", kUpscaling, helps({upscaling}),
     up(100, upscaling_now)},
    {Input::bit_depth, "bit_depth", "Bits required", "bit", kBitDepth, helps({bit_depth}),
     down(1, bit_depth_now)},
    {.input = Input::chroma,
     .key = "chroma",
     .label = "Chroma required",
     .unit = "",
     .pointer = kChroma,
     .helps = helps({chroma}),
     .settings = chromas},
    {.input = Input::sensor_raw,
     .key = "sensor_raw",
     .label = "Raw of the sensor",
     .unit = "",
     .pointer = kRaw,
     .helps = helps({sensor_raw}),
     .settings = asks_nothing<kRaw>},
    {Input::compression, "compression", "Compression ratio allowed", "", kCompression,
     helps({compression}), up(10, compression_now)},
    {.input = Input::lossless,
     .key = "lossless",
     .label = "Lossless only",
     .unit = "",
     .pointer = kLossless,
     .helps = helps({lossless}),
     .settings = asks_nothing<kLossless>},
    {.input = Input::intra,
     .key = "intra",
     .label = "Every frame coded by itself",
     .unit = "",
     .pointer = kIntra,
     .helps = helps({intra}),
     .settings = asks_nothing<kIntra>},
    {.input = Input::plays_at_once,
     .key = "plays_at_once",
     .label = "Plays at once in the edit",
     .unit = "",
     .pointer = kPlays,
     .helps = helps({plays_at_once}),
     .settings = asks_nothing<kPlays>},
    {.input = Input::desqueeze_wish,
     .key = "desqueeze_wish",
     .label = "De-squeezed in camera",
     .unit = "",
     .pointer = kDesqueeze,
     .helps = helps({desqueeze_wish}),
     .settings = asks_nothing<kDesqueeze>},
    {Input::protection_asked, "protection_asked", "Protection required", "", kProtectionAsked,
     helps({Requirement::protection}), down(1000, protection_now)},
    {.input = Input::weights,
     .key = "weights",
     .label = "What matters",
     .unit = "",
     .pointer = kWeights,
     .helps = helps({plays_at_once}),
     .settings = balanced_weights},
    {Input::min_minutes, "min_minutes", "Minutes on a card, at least", "min", kMinutes,
     helps({card_minutes}), down(100)},
    {Input::min_push_in, "min_push_in", "Push-in, at least", "%", kPushIn, helps({push_in}),
     down(100)},
    {Input::min_room, "min_room", "Room around the frame line, at least", "%", kRoom, helps({room}),
     down(100)},
});

constexpr bool in_order() {
  for (std::size_t i = 0; i < kInputs.size(); ++i) {
    if (static_cast<std::size_t>(kInputs[i].input) != i) return false;
  }
  return true;
}
static_assert(in_order(), "a row stands at its enumerator's place");

}  // namespace

std::span<const ChangeInput> change_inputs() { return kInputs; }

}  // namespace widegate
