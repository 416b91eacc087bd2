#include "core/choose/criteria.h"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/optics/mode_geometry.h"
#include "core/store/card_load.h"

namespace widegate {
namespace {

// End points: common practice, no source; tried on jobs.
constexpr double kNoArea = 50;  // mm2; 64 times that is full: 3200
constexpr double kAreaDoublings = 6;
constexpr double kAreaRange = 64;
constexpr double kNoPixels = 0.125;  // of the delivered; 16 times that is full: twice
constexpr double kPixelDoublings = 4;
constexpr double kPixelRange = 16;
constexpr double kFullBits = 16;  // a pixel; a sixteenth is nothing
constexpr double kBitHalvings = 4;
constexpr double kDataDoublings = 5;  // 32 times the target is nothing
constexpr double kSpareSpeed = 1.2;
constexpr double kUsualTargetBits = 8;
constexpr std::int64_t kUsualFastest = 5;  // project rates
constexpr double kMosaic = 0.5;
constexpr double kBinnedMosaic = 0.25;
constexpr std::int64_t kFewestUsualBits = 8;
constexpr std::int64_t kBitsOnFilm = 10;
constexpr Rational kTelevisionRates[] = {Rational(30000, 1001), 50, Rational(60000, 1001), 60};
constexpr Rational kTelevisionRatesInHd[] = {25, 30};  // larger ones are cinema's and serials' too
constexpr std::int64_t kHdPixels = std::int64_t{1920} * 1080;

constexpr CriterionInfo kCriteria[] = {{"area", "Sensor area"},
                                       {"pixels", "Pixels"},
                                       {"fidelity", "Fidelity"},
                                       {"speed", "Speed"},
                                       {"data", "Little data"}};
static_assert(std::size(kCriteria) == kCriterionCount);

double clamped(double share) { return std::clamp(share, 0.0, 1.0); }

double mosaic_worth(const SensorMode& mode) { return mode.binned ? kBinnedMosaic : kMosaic; }

/// a * b where the fractions can be written, else the product of doubles.
double product(Rational a, Rational b) {
  const Rational exact = a * b;
  return exact.ok() ? exact.to_double() : a.to_double() * b.to_double();
}

/// Millimetres of one photosite, exactly where the mode's size is a short decimal.
Rational pitch_of(double size_mm, std::int64_t photosites) {
  const auto exact = rational_from_decimal(size_mm);
  return exact ? *exact / Rational(photosites) : Rational(1, 0);
}

double length_mm(Rational photosites, Rational pitch, double fallback) {
  const Rational exact = photosites * pitch;
  return exact.ok() ? exact.to_double() : fallback;
}

/// True pixels of one line.
double true_pixels(const Conditions& conditions, const FormatRows& format, const Geometry& geometry,
                   const LineMerit& line) {
  const double photosites = product(line.width, line.height);
  const auto scaled = [](Rational length, std::int64_t recorded, std::int64_t read) {
    return length * Rational(recorded, read);
  };
  const double recorded =
      product(scaled(line.width, geometry.recorded_width_pixels, geometry.width_photosites),
              scaled(line.height, geometry.recorded_height_pixels, geometry.height_photosites));
  if (format.camera->medium == Medium::film) {
    const double per_mm = conditions.plan->commission.film_pixels_per_mm;
    return std::min(recorded, line.area_mm2 * per_mm * per_mm);
  }
  const double worth = mosaic_worth(*format.mode);
  const bool raw = is_sensor_raw(format.codec->facts).value_or(false);
  return raw ? worth * std::min(photosites, recorded) : std::min(worth * photosites, recorded);
}

double chroma_worth(std::optional<Chroma> chroma) {
  constexpr double kWorth[] = {0.8, 0.9, 1, 1};
  return kWorth[chroma ? static_cast<std::size_t>(*chroma) : 0];
}

double middle(Span span) { return std::sqrt(span.least * span.most); }

double target_bytes_per_s(const Conditions& conditions) {
  constexpr double kBitsInByte = 8;
  constexpr double kSecondsPerMinute = 60;
  const Plan& plan = *conditions.plan;
  const double bits = weight_set_row(plan.choose.weights).target_bits;
  const LineRaster& main = conditions.pictures.front();
  const double pixels = main.width_pixels.to_double() * main.height_pixels.to_double();
  const double usual = bits * pixels * plan.run.project_rate.to_double() / kBitsInByte;
  const double minutes = plan.choose.min_minutes_per_card;
  const auto usable = usable_bytes(*conditions.card);
  if (minutes <= 0 || !usable) return usual;
  const double stated = static_cast<double>(*usable) / (minutes * kSecondsPerMinute);
  return bits < kUsualTargetBits ? std::min(usual, stated) : stated;
}

bool room_is_asked(const Conditions& conditions) {
  return conditions.plan->choose.min_room_percent > 0 || conditions.terms.protection > Rational(0);
}

template <std::size_t N>
bool is_among(const Rational (&rates)[N], Rational rate) {
  return std::find(std::begin(rates), std::end(rates), rate) != std::end(rates);
}

bool is_television(const Plan& plan) {
  const Rational rate = plan.run.project_rate;
  const Deliverable& delivered = plan.deliverable;
  const bool hd = delivered.width_pixels * delivered.height_pixels <= kHdPixels;
  return is_among(kTelevisionRates, rate) || (hd && is_among(kTelevisionRatesInHd, rate));
}

}  // namespace

const CriterionInfo& criterion_info(Criterion criterion) {
  return kCriteria[static_cast<std::size_t>(criterion)];
}

Wants wants_of(const Conditions& conditions) {
  const Plan& plan = *conditions.plan;
  const Weights weights = weights_of(plan.choose);
  Wants wants{
      .weights = {weights.area, weights.pixels, weights.fidelity, weights.speed, weights.data}};
  for (const double weight : wants.weights) wants.all_weights += weight;
  wants.sensor_rate = plan.run.sensor_rate.to_double();
  wants.full_speed = kSpareSpeed * wants.sensor_rate;
  if (weight_set_row(plan.choose.weights).wants_fastest) {
    wants.full_speed =
        plan.choose.fastest_rate.value_or(Rational(kUsualFastest) * plan.run.project_rate)
            .to_double();
  }
  wants.target_bytes_per_s = target_bytes_per_s(conditions);
  if (is_television(plan)) wants.converted_bytes_per_s = wants.target_bytes_per_s;
  return wants;
}

std::vector<LineMerit> line_merits(const Conditions& conditions, const SensorMode& mode,
                                   std::span<const FrameReport> frames) {
  const bool whole = room_is_asked(conditions);
  const Rational pitch_x = pitch_of(mode.width_mm, mode.width_photosites);
  const Rational pitch_y = pitch_of(mode.height_mm, mode.height_photosites);
  std::vector<LineMerit> merits;
  merits.reserve(frames.size());
  for (const FrameReport& frame : frames) {
    const ExactRect& rect = frame.photosites;
    const Rational exact = rect.width * pitch_x * (rect.height * pitch_y);
    const double area = exact.ok() ? exact.to_double()
                                   : length_mm(rect.width, pitch_x, frame.width_mm) *
                                         length_mm(rect.height, pitch_y, frame.height_mm);
    merits.push_back({.area_mm2 = area,
                      .counted_mm2 = whole ? mode.width_mm * mode.height_mm : area,
                      .width = rect.width,
                      .height = rect.height});
  }
  return merits;
}

PictureFigures picture_figures(const Conditions& conditions, const FormatRows& format,
                               std::span<const LineMerit> merits) {
  const Geometry geometry = make_geometry(*format.mode, *format.recording, conditions.squeeze);
  PictureFigures figures{.area_product = 1, .served_product = 1};
  for (std::size_t i = 0; i < merits.size(); ++i) {
    const LineMerit& line = merits[i];
    const LineRaster& picture = conditions.pictures[i];
    const double pixels = true_pixels(conditions, format, geometry, line);
    const double served = pixels / product(picture.width_pixels, picture.height_pixels);
    figures.area += clamped(std::log2(line.counted_mm2 / kNoArea) / kAreaDoublings);
    figures.pixels += clamped(std::log2(served / kNoPixels) / kPixelDoublings);
    figures.area_product *= std::clamp(line.counted_mm2, kNoArea, kNoArea * kAreaRange);
    figures.served_product *= std::clamp(served, kNoPixels, kNoPixels * kPixelRange);
    if (i > 0) continue;
    figures.area_mm2 = line.area_mm2;
    figures.photosites = product(line.width, line.height);
    figures.true_pixels = pixels;
    figures.served = served;
  }
  figures.area /= static_cast<double>(merits.size());
  figures.pixels /= static_cast<double>(merits.size());
  return figures;
}

double fidelity_share(const CodecFacts& facts, double stored_bits, bool film) {
  std::int64_t depth = facts.bit_depth.value_or(kFewestUsualBits);
  if (film) depth = std::min(depth, kBitsOnFilm);
  const double steps = clamped(1 - std::exp2(static_cast<double>(7 - depth)));
  const double worth = steps * chroma_worth(facts.chroma);
  if (facts.lossless.value_or(false)) return worth;
  const double lost = clamped(std::log2(kFullBits / stored_bits) / kBitHalvings);
  return worth * (1 - lost * lost * lost);
}

double stored_bits_per_pixel(const FormatRows& format, const FormatFigures& figures,
                             const DataFigures& data) {
  const double pixels = static_cast<double>(figures.recorded_width_pixels) *
                        static_cast<double>(figures.recorded_height_pixels);
  const double bytes = data.frame_bytes.exact()
                           ? static_cast<double>(data.frame_bytes.most)
                           : middle({static_cast<double>(data.frame_bytes.least),
                                     static_cast<double>(data.frame_bytes.most)});
  const bool raw = is_sensor_raw(format.codec->facts).value_or(false);
  return (raw ? 16 : 8) * bytes / pixels;
}

double handled_data(const Wants& wants, const CodecFacts& facts, double bytes_per_s) {
  return bytes_per_s + (facts.plays_at_once.value_or(true) ? 0 : wants.converted_bytes_per_s);
}

double speed_share(const Wants& wants, const FormatFigures& figures) {
  if (!figures.rate_ceiling) return 1;
  return std::min(1.0, figures.rate_ceiling->to_double() / wants.full_speed);
}

double data_share(const Wants& wants, double bytes_per_s) {
  return clamped(1 - std::log2(bytes_per_s / wants.target_bytes_per_s) / kDataDoublings);
}

double score_of(const Wants& wants, const Shares& shares) {
  constexpr double kUnits = 1e9;
  if (wants.all_weights <= 0) return 0;
  double sum = 0;
  for (std::size_t i = 0; i < kCriterionCount; ++i) sum += wants.weights[i] * shares[i];
  return std::round(sum / wants.all_weights * kUnits) / kUnits;
}

}  // namespace widegate
