#include "tests/bench/rank_bench.h"

#include <algorithm>
#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"
#include "tests/bench/bench.h"

namespace widegate::bench {
namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value_or(Catalogue());
  return kLibrary;
}

std::size_t formats_of(const Camera& camera) {
  std::size_t count = 0;
  for (const SensorMode& mode : camera.modes) {
    for (const Recording& recording : mode.recordings) count += recording.codecs.size();
  }
  return count;
}

/// A camera of the library with every mode a little smaller, so that no two formats are equal.
Camera variant(Camera camera, std::int64_t number) {
  camera.id += "-" + std::to_string(number);
  const double left = 1 - static_cast<double>(number) / 10'000;
  for (SensorMode& mode : camera.modes) {
    const auto width = static_cast<double>(mode.width_photosites);
    mode.width_photosites = static_cast<std::int64_t>(width * left);
    mode.width_mm *= static_cast<double>(mode.width_photosites) / width;
  }
  return camera;
}

/// The built-in library with variants of its cameras until there are this many formats.
Catalogue catalogue_of(std::size_t formats) {
  Catalogue catalogue = library();
  std::size_t count = 0;
  for (const Camera& camera : catalogue.cameras) count += formats_of(camera);
  const std::vector<Camera> cameras = catalogue.cameras;
  for (std::int64_t number = 1; count < formats; ++number) {
    for (const Camera& camera : cameras) {
      if (count >= formats) break;
      catalogue.cameras.push_back(variant(camera, number));
      count += formats_of(camera);
    }
  }
  return catalogue;
}

/// Every requirement is asked for; about half of the formats pass.
Plan busy_plan() {
  Plan plan;
  plan.mandate = {.photosites = 4'000'000, .photosites_across = 2048};
  plan.choose.must_cover = CoverArea::frame;
  plan.choose.min_minutes_per_card = 1;
  return plan;
}

void rank_times(std::int64_t times, const Catalogue& catalogue) {
  const Plan plan = busy_plan();
  for (std::int64_t i = 0; i < times; ++i) keep(rank(plan, catalogue));
}

}  // namespace

void rank_10000(std::int64_t times) {
  static const Catalogue kCatalogue = catalogue_of(10'000);
  rank_times(times, kCatalogue);
}

void rank_100000(std::int64_t times) {
  static const Catalogue kCatalogue = catalogue_of(100'000);
  rank_times(times, kCatalogue);
}

void rank_library(std::int64_t times) { rank_times(times, library()); }

void change_one(std::int64_t times) {
  const Plan plan = busy_plan();
  static const FormatChoice kRejected = rank(plan, library()).formats.back().format;
  for (std::int64_t i = 0; i < times; ++i) keep(smallest_changes(plan, library(), kRejected));
}

}  // namespace widegate::bench
