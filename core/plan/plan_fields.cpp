#include "core/plan/plan_fields.h"

#include <array>

#include "core/catalogue/commission_specs.h"

namespace widegate {
namespace {

constexpr auto kAnchorKinds = std::to_array<ChoiceName>({
    {"centre", "Centre"},
    {"top", "Top of the mode"},
    {"common_top", "Common top"},
    {"free", "Placed freely"},
});
constexpr auto kMatches = std::to_array<ChoiceName>({
    {"width", "Width"},
    {"height", "Height"},
    {"diagonal", "Diagonal"},
});
constexpr auto kShutterKinds = std::to_array<ChoiceName>({
    {"angle", "Shutter angle"},
    {"time", "Shutter time"},
});
constexpr auto kLights = std::to_array<ChoiceName>({
    {"not_said", "Not known yet"},
    {"steady", "None that pulse: daylight"},
    {"mains", "On the mains"},
    {"frequency", "At a frequency of their own"},
});
constexpr auto kUploads = std::to_array<ChoiceName>({
    {"proxies", "Proxies"},
    {"originals", "Camera originals"},
});
constexpr auto kShootingBys = std::to_array<ChoiceName>({
    {"recorded_hours", "Recorded hours a day"},
    {"ratio", "Shooting ratio"},
});
constexpr auto kVerifications = std::to_array<ChoiceName>({
    {"none", "Copied only"},
    {"destination", "Copies read back"},
    {"full", "Card and copies read back"},
});
constexpr auto kCoverAreas = std::to_array<ChoiceName>({
    {"none", "Nothing"},
    {"frame", "Frame line"},
    {"protected_area", "Protected area"},
    {"mode", "Whole mode"},
});

constexpr auto kCompareWith = std::to_array<ChoiceName>({
    {"view", "At the same view"},
    {"lens", "With the same lens"},
});
constexpr auto kWeightSets = std::to_array<ChoiceName>({
    {"balanced", "Balanced"},
    {"best_picture", "Best picture"},
    {"biggest_image", "Biggest image"},
    {"highest_speed", "Highest speed"},
    {"least_data", "Least data"},
    {"soonest_in_edit", "Soonest in the edit"},
    {"own", "My own weights"},
});

namespace specs = commission_specs;

/// One requirement of the plan's commission.
template <auto Term>
constexpr auto term(FieldSpec spec) {
  return field<&Plan::commission, &Commissioned::terms, Term>(spec);
}

/// A rate in frames per second.
constexpr FieldSpec rate_spec(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer,
          .label = label,
          .unit = "fps",
          .low = Rational(1, 100),
          .high = 10000,
          .max_num = 10'000'000,
          .max_den = 10'010,
          .step = 1,
          .usual_low = 1,
          .usual_high = 240};
}

constexpr FieldSpec angle_spec(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer,
          .label = label,
          .unit = "deg",
          .low = 0,
          .high = 360,
          .low_excluded = true,
          .max_num = 360'000,
          .max_den = 1000,
          .step = 1,
          .usual_low = 1,
          .usual_high = 360};
}

constexpr FieldSpec anchor_spec(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer,
          .label = label,
          .low = -1,
          .high = 1,
          .max_num = 100,
          .max_den = 100,
          .step = Rational(1, 20)};
}

constexpr FieldSpec id_spec(std::string_view pointer, std::string_view label, IdList ids,
                            bool optional = false) {
  return {.pointer = pointer, .label = label, .optional = optional, .ids = ids};
}

constexpr FieldSpec choice_spec(std::string_view pointer, std::string_view label,
                                std::span<const ChoiceName> choices) {
  return {.pointer = pointer, .label = label, .choices = choices};
}

constexpr FieldSpec text_spec(std::string_view pointer, std::string_view label, Rational shortest,
                              Rational longest) {
  return {.pointer = pointer, .label = label, .low = shortest, .high = longest};
}

/// A count or a plain number; the slider spans usual_low to usual_high.
constexpr FieldSpec number_spec(std::string_view pointer, std::string_view label,
                                std::string_view unit, Rational low, Rational high, Rational step,
                                Rational usual_low, Rational usual_high) {
  return {.pointer = pointer,
          .label = label,
          .unit = unit,
          .low = low,
          .high = high,
          .step = step,
          .usual_low = usual_low,
          .usual_high = usual_high};
}

constexpr FieldSpec price_per_foot(std::string_view pointer, std::string_view label) {
  return number_spec(pointer, label, "", 0, 10'000, Rational(1, 20), 0, 5);
}

constexpr FieldSpec weight_spec(std::string_view pointer, std::string_view label) {
  return number_spec(pointer, label, "", 0, 10, Rational(1, 2), 0, 10);
}

constexpr FieldSpec above_low(FieldSpec spec) {
  spec.low_excluded = true;
  return spec;
}

constexpr FieldSpec below_high(FieldSpec spec) {
  spec.high_excluded = true;
  return spec;
}

constexpr FieldSpec fraction_spec(FieldSpec spec, std::int64_t max_num, std::int64_t max_den) {
  spec.max_num = max_num;
  spec.max_den = max_den;
  return spec;
}

constexpr Rational kTenth = Rational(1, 10);
constexpr Rational kHundredth = Rational(1, 100);
constexpr std::int64_t kBillion = 1'000'000'000;

// Limits keep every later formula inside exact or well-conditioned arithmetic; where no standard
// sets one it is generous common practice. 65535 is the largest raster side of a 16-bit field.
constexpr std::array kFields = {
    field<&Plan::title>(text_spec("/title", "Title", 0, 120)),

    field<&Plan::format, &FormatChoice::camera>(
        id_spec("/format/camera", "Camera", IdList::camera)),
    field<&Plan::format, &FormatChoice::mode>(id_spec("/format/mode", "Sensor mode", IdList::mode)),
    field<&Plan::format, &FormatChoice::recording>(
        id_spec("/format/recording", "Recording option", IdList::recording)),
    field<&Plan::format, &FormatChoice::codec>(id_spec("/format/codec", "Codec", IdList::codec)),

    field<&Plan::deliverable, &Deliverable::width_pixels>(number_spec(
        "/deliverable/width_pixels", "Deliverable width", "px", 16, 65535, 2, 720, 8192)),
    field<&Plan::deliverable, &Deliverable::height_pixels>(number_spec(
        "/deliverable/height_pixels", "Deliverable height", "px", 16, 65535, 2, 480, 8192)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::name>(
        text_spec("/deliverable/frame_lines/#/name", "Frame line name", 1, 60)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::aspect>(
        fraction_spec(number_spec("/deliverable/frame_lines/#/aspect", "Aspect ratio", "", kTenth,
                                  10, kHundredth, Rational(1, 2), 3),
                      10'000, 1000)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::protection>(
        fraction_spec(below_high(number_spec("/deliverable/frame_lines/#/protection", "Protection",
                                             "", 0, Rational(1, 2), kHundredth, 0, Rational(1, 4))),
                      500, 1000)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::anchor, &Anchor::kind>(
        choice_spec("/deliverable/frame_lines/#/anchor/kind", "Anchor", kAnchorKinds)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::anchor, &Anchor::x>(
        anchor_spec("/deliverable/frame_lines/#/anchor/x", "Horizontal place")),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::anchor, &Anchor::y>(
        anchor_spec("/deliverable/frame_lines/#/anchor/y", "Vertical place")),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::width_pixels>(
        number_spec("/deliverable/frame_lines/#/width_pixels", "Delivered width of this line", "px",
                    16, 65535, 2, 720, 8192)),
    field<&Plan::deliverable, &Deliverable::frame_lines, &FrameLine::height_pixels>(
        number_spec("/deliverable/frame_lines/#/height_pixels", "Delivered height of this line",
                    "px", 16, 65535, 2, 480, 8192)),

    field<&Plan::lens, &LensChoice::set>(id_spec("/lens/set", "Lens set", IdList::lens_set, true)),
    field<&Plan::lens, &LensChoice::focal_mm>(
        number_spec("/lens/focal_mm", "Focal length", "mm", 1, 3000, 1, 8, 300)),
    field<&Plan::lens, &LensChoice::squeeze>(fraction_spec(
        number_spec("/lens/squeeze", "Squeeze", "x", 1, 4, Rational(1, 20), 1, 2), 400, 100)),
    field<&Plan::lens, &LensChoice::image_circle_mm>(
        number_spec("/lens/image_circle_mm", "Image circle", "mm", 1, 500, kTenth, 10, 90)),
    field<&Plan::lens, &LensChoice::f_number>(
        number_spec("/lens/f_number", "f-number", "", Rational(1, 2), 64, kTenth, 1, 22)),
    field<&Plan::lens, &LensChoice::focus_m>(number_spec("/lens/focus_m", "Focus distance", "m",
                                                         Rational(1, 20), 10'000, kTenth,
                                                         Rational(3, 10), 30)),
    field<&Plan::lens, &LensChoice::wanted_width_m>(number_spec(
        "/lens/wanted_width_m", "Scene width wanted", "m", kHundredth, 10'000, kTenth, kTenth, 30)),
    field<&Plan::lens, &LensChoice::wanted_height_m>(
        number_spec("/lens/wanted_height_m", "Scene height wanted", "m", kHundredth, 10'000, kTenth,
                    kTenth, 30)),
    field<&Plan::lens, &LensChoice::circle_of_confusion_mm>(
        number_spec("/lens/circle_of_confusion_mm", "Circle of confusion", "mm",
                    Rational(1, 10'000), 1, Rational(1, 1000), Rational(1, 200), kTenth)),
    field<&Plan::lens, &LensChoice::extender>(
        fraction_spec(number_spec("/lens/extender", "Extender or reducer", "x", Rational(1, 4), 4,
                                  kHundredth, Rational(1, 2), 2),
                      400, 100)),
    field<&Plan::lens, &LensChoice::match>(
        choice_spec("/lens/match", "Match the view by", kMatches)),

    field<&Plan::commission, &Commissioned::id>(
        id_spec("/commission/id", "Commission", IdList::commission, true)),
    term<&CommissionTerms::photosites>(specs::photosites("/commission/photosites")),
    term<&CommissionTerms::counted_on>(specs::counted_on("/commission/counted_on")),
    term<&CommissionTerms::recorded_width_pixels>(
        specs::recorded_width("/commission/recorded_width_pixels")),
    term<&CommissionTerms::recorded_height_pixels>(
        specs::recorded_height("/commission/recorded_height_pixels")),
    term<&CommissionTerms::largest_upscaling>(
        specs::largest_upscaling("/commission/largest_upscaling")),
    term<&CommissionTerms::bit_depth>(specs::bit_depth("/commission/bit_depth")),
    term<&CommissionTerms::chroma>(specs::chroma("/commission/chroma")),
    term<&CommissionTerms::sensor_raw>(specs::sensor_raw("/commission/sensor_raw")),
    term<&CommissionTerms::compression>(specs::compression("/commission/compression")),
    term<&CommissionTerms::lossless>(specs::lossless("/commission/lossless")),
    term<&CommissionTerms::intra>(specs::intra("/commission/intra")),
    term<&CommissionTerms::plays_at_once>(specs::plays_at_once("/commission/plays_at_once")),
    term<&CommissionTerms::in_camera_desqueeze>(
        specs::in_camera_desqueeze("/commission/in_camera_desqueeze")),
    term<&CommissionTerms::protection>(specs::protection("/commission/protection")),
    field<&Plan::commission, &Commissioned::film_pixels_per_mm>(number_spec(
        "/commission/film_pixels_per_mm", "Pixels of a scan that count, each millimetre", "px/mm",
        1, 10'000, 1, 40, 400)),

    field<&Plan::run, &Running::project_rate>(rate_spec("/run/project_rate", "Project rate")),
    field<&Plan::run, &Running::sensor_rate>(rate_spec("/run/sensor_rate", "Sensor rate")),
    field<&Plan::run, &Running::shutter_kind>(
        choice_spec("/run/shutter_kind", "Shutter stated as", kShutterKinds)),
    field<&Plan::run, &Running::shutter_angle_deg>(
        angle_spec("/run/shutter_angle_deg", "Shutter angle")),
    field<&Plan::run, &Running::shutter_time_s>(
        fraction_spec(above_low(number_spec("/run/shutter_time_s", "Shutter time", "s", 0, 100, 0,
                                            Rational(1, 1000), Rational(1, 12))),
                      100'000'000, 1'000'000)),
    field<&Plan::run, &Running::base_angle_deg>(
        angle_spec("/run/base_angle_deg", "Base shutter angle")),
    field<&Plan::run, &Running::lights>(choice_spec("/run/lights", "Lights", kLights)),
    field<&Plan::run, &Running::mains_hz>(fraction_spec(
        number_spec("/run/mains_hz", "Mains frequency", "Hz", 16, 400, 10, 50, 60), 400'000, 1000)),
    field<&Plan::run, &Running::pulses_hz>(fraction_spec(
        number_spec("/run/pulses_hz", "Pulses of the lights", "Hz", 1, 100'000, 10, 50, 1000),
        100'000'000, 1000)),
    field<&Plan::run, &Running::audio_channels>(
        number_spec("/run/audio_channels", "Audio channels", "", 0, 64, 1, 0, 16)),

    field<&Plan::shooting, &Shooting::days>(
        number_spec("/shooting/days", "Shooting days", "", 1, 10'000, 1, 1, 120)),
    field<&Plan::shooting, &Shooting::units>(
        number_spec("/shooting/units", "Units", "", 1, 100, 1, 1, 6)),
    field<&Plan::shooting, &Shooting::cameras_per_unit>(
        number_spec("/shooting/cameras_per_unit", "Cameras in each unit", "", 1, 100, 1, 1, 8)),
    field<&Plan::shooting, &Shooting::by>(
        choice_spec("/shooting/by", "Footage stated as", kShootingBys)),
    field<&Plan::shooting, &Shooting::recorded_hours_per_day>(
        number_spec("/shooting/recorded_hours_per_day", "Recorded each day and camera", "h", 0, 24,
                    Rational(1, 4), 0, 8)),
    field<&Plan::shooting, &Shooting::script_minutes>(
        number_spec("/shooting/script_minutes", "Length on screen", "min", 0, 100'000, 1, 0, 600)),
    field<&Plan::shooting, &Shooting::shooting_ratio>(
        number_spec("/shooting/shooting_ratio", "Shooting ratio", "", 1, 1000, 1, 1, 60)),
    field<&Plan::shooting, &Shooting::day_hours>(above_low(
        number_spec("/shooting/day_hours", "Shooting day", "h", 0, 24, Rational(1, 2), 1, 16))),

    field<&Plan::store, &Storing::container>(
        id_spec("/store/container", "Container", IdList::container)),
    field<&Plan::store, &Storing::card>(id_spec("/store/card", "Card", IdList::card)),
    field<&Plan::store, &Storing::link>(id_spec("/store/link", "Link", IdList::link)),
    field<&Plan::store, &Storing::drive>(id_spec("/store/drive", "Drive", IdList::drive)),
    field<&Plan::store, &Storing::tape>(id_spec("/store/tape", "Tape", IdList::tape, true)),
    field<&Plan::store, &Storing::checksum>(
        id_spec("/store/checksum", "Checksum", IdList::checksum)),
    field<&Plan::store, &Storing::verification>(
        choice_spec("/store/verification", "Verification", kVerifications)),
    field<&Plan::store, &Storing::drive_copies>(
        number_spec("/store/drive_copies", "Copies on drives", "", 0, 20, 1, 0, 4)),
    field<&Plan::store, &Storing::tape_copies>(
        number_spec("/store/tape_copies", "Copies on tape", "", 0, 20, 1, 0, 4)),
    field<&Plan::store, &Storing::travel_minutes>(number_spec(
        "/store/travel_minutes", "Camera to copying station", "min", 0, 10'080, 5, 0, 240)),
    field<&Plan::store, &Storing::return_minutes>(number_spec(
        "/store/return_minutes", "Station back to camera", "min", 0, 10'080, 5, 0, 240)),
    field<&Plan::store, &Storing::copy_places>(
        number_spec("/store/copy_places", "Places the copies are kept in", "", 1, 20, 1, 1, 4)),
    field<&Plan::store, &Storing::hold_hours>(
        number_spec("/store/hold_hours", "A copied card is held", "h", 0, 500, 1, 0, 72)),
    field<&Plan::store, &Storing::spare_cards>(
        number_spec("/store/spare_cards", "Spare cards, each camera", "", 0, 100, 1, 0, 6)),
    field<&Plan::store, &Storing::upload_what>(
        choice_spec("/store/upload_what", "Uploaded", kUploads)),
    field<&Plan::store, &Storing::proxy_megabits_per_s>(
        number_spec("/store/proxy_megabits_per_s", "Data rate of the proxies", "Mbit/s", kHundredth,
                    10'000, 1, 1, 50)),
    field<&Plan::store, &Storing::upload_megabits_per_s>(
        number_spec("/store/upload_megabits_per_s", "Upload speed", "Mbit/s", kHundredth, 1'000'000,
                    10, 1, 1000)),
    field<&Plan::store, &Storing::upload_share>(
        number_spec("/store/upload_share", "Share uploaded", "", 0, 1, Rational(1, 20), 0, 1)),
    field<&Plan::store, &Storing::currency>(text_spec("/store/currency", "Currency", 1, 12)),
    field<&Plan::store, &Storing::wrangler_price_per_hour>(number_spec(
        "/store/wrangler_price_per_hour", "Data wrangler, each hour", "", 0, kBillion, 1, 0, 200)),
    field<&Plan::store, &Storing::upload_price_per_terabyte>(number_spec(
        "/store/upload_price_per_terabyte", "Upload, each terabyte", "", 0, kBillion, 1, 0, 200)),

    field<&Plan::film, &Filming::magazine_feet>(
        number_spec("/film/magazine_feet", "Magazine", "ft", 20, 10'000, 100, 100, 1000)),
    field<&Plan::film, &Filming::stock_price_per_foot>(
        price_per_foot("/film/stock_price_per_foot", "Stock, each foot")),
    field<&Plan::film, &Filming::processing_price_per_foot>(
        price_per_foot("/film/processing_price_per_foot", "Processing, each foot")),
    field<&Plan::film, &Filming::scanning_price_per_foot>(
        price_per_foot("/film/scanning_price_per_foot", "Scanning, each foot")),

    field<&Plan::choose, &Choosing::must_cover>(
        choice_spec("/choose/must_cover", "Lens must cover", kCoverAreas)),
    field<&Plan::choose, &Choosing::min_minutes_per_card>(
        number_spec("/choose/min_minutes_per_card", "Minutes on a card, at least", "min", 0, 10'000,
                    1, 0, 120)),
    field<&Plan::choose, &Choosing::min_push_in_percent>(below_high(
        number_spec("/choose/min_push_in_percent", "Push-in, at least", "%", 0, 100, 1, 0, 50))),
    field<&Plan::choose, &Choosing::min_room_percent>(
        below_high(number_spec("/choose/min_room_percent", "Room around the frame line, at least",
                               "%", 0, 100, 1, 0, 50))),
    field<&Plan::choose, &Choosing::compare>(
        choice_spec("/choose/compare", "Formats compared", kCompareWith)),
    field<&Plan::choose, &Choosing::weights>(
        choice_spec("/choose/weights", "What matters", kWeightSets)),
    field<&Plan::choose, &Choosing::fastest_rate>(
        rate_spec("/choose/fastest_rate", "Fastest rate wanted")),
    field<&Plan::choose, &Choosing::weight_area>(
        weight_spec("/choose/weight_area", "Weight of sensor area")),
    field<&Plan::choose, &Choosing::weight_pixels>(
        weight_spec("/choose/weight_pixels", "Weight of pixels")),
    field<&Plan::choose, &Choosing::weight_fidelity>(
        weight_spec("/choose/weight_fidelity", "Weight of fidelity")),
    field<&Plan::choose, &Choosing::weight_speed>(
        weight_spec("/choose/weight_speed", "Weight of highest rate")),
    field<&Plan::choose, &Choosing::weight_data>(
        weight_spec("/choose/weight_data", "Weight of low data")),
};

// Members that are structs have rows of their own; frame lines, cameras and one's own library are
// handled by name in plan_json.cpp and plan_check.cpp.
template <class Holder>
constexpr std::size_t kRows = rows_of<Holder>(kFields);

WIDEGATE_EVERY_MEMBER(Plan, kRows<Plan>, 10, title, format, deliverable, lens, commission, run,
                      shooting, store, film, choose, own);
WIDEGATE_EVERY_MEMBER(FormatChoice, kRows<FormatChoice>, 0, camera, mode, recording, codec);
WIDEGATE_EVERY_MEMBER(Deliverable, kRows<Deliverable>, 1, width_pixels, height_pixels, frame_lines);
WIDEGATE_EVERY_MEMBER(FrameLine, kRows<FrameLine>, 1, name, aspect, protection, anchor,
                      width_pixels, height_pixels);
WIDEGATE_EVERY_MEMBER(Anchor, kRows<Anchor>, 0, kind, x, y);
WIDEGATE_EVERY_MEMBER(LensChoice, kRows<LensChoice>, 0, set, focal_mm, squeeze, image_circle_mm,
                      f_number, focus_m, extender, wanted_width_m, wanted_height_m,
                      circle_of_confusion_mm, match);
WIDEGATE_EVERY_MEMBER(Commissioned, kRows<Commissioned>, 1, id, terms, film_pixels_per_mm);
WIDEGATE_EVERY_MEMBER(CommissionTerms, kRows<CommissionTerms>, 0, photosites, counted_on,
                      recorded_width_pixels, recorded_height_pixels, largest_upscaling, bit_depth,
                      chroma, sensor_raw, compression, lossless, intra, plays_at_once,
                      in_camera_desqueeze, protection);
WIDEGATE_EVERY_MEMBER(Running, kRows<Running>, 0, project_rate, sensor_rate, shutter_kind,
                      shutter_angle_deg, shutter_time_s, base_angle_deg, lights, mains_hz,
                      pulses_hz, audio_channels);
WIDEGATE_EVERY_MEMBER(Shooting, kRows<Shooting>, 0, days, units, cameras_per_unit, by,
                      recorded_hours_per_day, script_minutes, shooting_ratio, day_hours);
WIDEGATE_EVERY_MEMBER(Storing, kRows<Storing>, 0, container, card, link, drive, tape, checksum,
                      verification, drive_copies, tape_copies, travel_minutes, return_minutes,
                      copy_places, hold_hours, spare_cards, upload_what, proxy_megabits_per_s,
                      upload_megabits_per_s, upload_share, currency, wrangler_price_per_hour,
                      upload_price_per_terabyte);
WIDEGATE_EVERY_MEMBER(Filming, kRows<Filming>, 0, magazine_feet, stock_price_per_foot,
                      processing_price_per_foot, scanning_price_per_foot);
WIDEGATE_EVERY_MEMBER(Choosing, kRows<Choosing>, 1, cameras, must_cover, min_minutes_per_card,
                      min_push_in_percent, min_room_percent, compare, weights, fastest_rate,
                      weight_area, weight_pixels, weight_fidelity, weight_speed, weight_data);

constexpr std::string_view kIndexMark = "#";

/// The index at the front of `text`, cut off it; nothing when there is none in canonical form
/// (no leading zero) or it is not below kMaxFrameLines.
std::optional<std::size_t> take_index(std::string_view& text) {
  if (text.empty() || text.front() < '0' || text.front() > '9') return std::nullopt;
  const auto index = static_cast<std::size_t>(text.front() - '0');
  text.remove_prefix(1);
  return index < kMaxFrameLines ? std::optional(index) : std::nullopt;
}

/// The frame line a pointer means when it fits this row's pattern.
std::optional<std::size_t> matched_line(std::string_view pattern, std::string_view pointer) {
  const auto mark = pattern.find(kIndexMark);
  if (mark == std::string_view::npos) {
    return pattern == pointer ? std::optional(std::size_t{0}) : std::nullopt;
  }
  if (!pointer.starts_with(pattern.substr(0, mark))) return std::nullopt;
  std::string_view rest = pointer.substr(mark);
  const auto line = take_index(rest);
  return line && rest == pattern.substr(mark + 1) ? line : std::nullopt;
}

}  // namespace

std::span<const FieldInfo> plan_fields() { return kFields; }

bool per_frame_line(const FieldInfo& info) { return info.per_line; }

std::string pointer_of(const FieldInfo& info, std::size_t line) {
  std::string pointer(info.pointer);
  if (const auto mark = pointer.find(kIndexMark); mark != std::string::npos) {
    pointer.replace(mark, kIndexMark.size(), std::to_string(line));
  }
  return pointer;
}

std::optional<FieldPlace> find_field(std::string_view pointer) {
  for (const FieldInfo& info : kFields) {
    if (const auto line = matched_line(info.pointer, pointer)) return FieldPlace{&info, *line};
  }
  return std::nullopt;
}

}  // namespace widegate
