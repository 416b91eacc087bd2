#include "tests/core/choose/sample.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/catalogue_json.h"
#include "core/choose/ranking.h"

namespace widegate::choose_sample {
namespace {

int any(std::mt19937& random, int low, int high) {
  return std::uniform_int_distribution<int>(low, high)(random);
}

template <class Row>
const Row& any_of(std::mt19937& random, const std::vector<Row>& rows) {
  return rows[static_cast<std::size_t>(any(random, 0, static_cast<int>(rows.size()) - 1))];
}

// Invented figures; what follows from them is said where it is tested.
constexpr std::string_view kEverythingButCameras = R"({
  "widegate_catalogue": 1,
  "lens_sets": [
    {"id": "lens", "name": "Lens", "source": "invented", "lenses": [
      {"focal_mm": 25, "image_circle_mm": 26, "widest_t_stop": 2, "close_focus_m": 0.3},
      {"focal_mm": 35, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 0.3},
      {"focal_mm": 50, "image_circle_mm": 34, "widest_t_stop": 2, "close_focus_m": 0.3}]},
    {"id": "wide", "name": "Wide", "source": "invented", "lenses": [
      {"focal_mm": 35, "image_circle_mm": 40, "widest_t_stop": 2, "close_focus_m": 0.3}]}],
  "codecs": [
    {"id": "raw-12", "name": "Raw 12-bit", "source": "invented",
     "packed": {"block_pixels": 2, "block_bytes": 3}}],
  "cards": [
    {"id": "card", "name": "Card", "source": "invented", "capacity_bytes": 500000000000,
     "write_bytes_per_s": 600000000, "read_bytes_per_s": 900000000, "guarantee": "class 600"},
    {"id": "quick", "name": "Quick card", "source": "invented", "capacity_bytes": 1000000000000,
     "write_bytes_per_s": 1200000000, "read_bytes_per_s": 900000000, "guarantee": "class 1200"}],
  "links": [
    {"id": "link", "name": "Link", "source": "invented", "payload_bytes_per_s": 1000000000}],
  "drives": [
    {"id": "drive", "name": "Drive", "source": "invented", "capacity_bytes": 16000000000000,
     "write_bytes_per_s": 1000000000, "read_bytes_per_s": 1000000000}],
  "checksums": [{"id": "sum", "name": "Sum", "source": "invented", "bytes_per_s": 5000000000}],
  "containers": [{"id": "box", "name": "Box", "source": "invented"}],
  "commissions": [{"id": "none", "name": "None", "source": "invented"}]})";

constexpr std::string_view kOneCamera = R"({
  "widegate_catalogue": 1,
  "cameras": [
    {"id": "camera", "name": "Camera", "source": "invented", "width_photosites": 4000,
     "height_photosites": 3000, "width_mm": 24, "height_mm": 18, "modes": [
       {"id": "full", "name": "Full", "width_photosites": 4000, "height_photosites": 3000,
        "width_mm": 24, "height_mm": 18, "max_rate": 60, "recordings": [
          {"id": "as-read", "name": "As read", "codecs": ["raw-12"]}]}]}]})";

// One of every form; the table and the range make some formats fail or vary.
constexpr std::string_view kEveryForm = R"({
  "widegate_catalogue": 1,
  "codecs": [
    {"id": "raw-12", "name": "Raw 12-bit", "source": "invented",
     "packed": {"block_pixels": 2, "block_bytes": 3}},
    {"id": "raw-3-to-1", "name": "Raw 3:1", "source": "invented",
     "ratio": {"bits_per_pixel": 12, "ratio": 3}},
    {"id": "lossless", "name": "Lossless", "source": "invented",
     "lossless": {"bits_per_pixel": 12, "worst_ratio": 1, "best_ratio": 2}},
    {"id": "blocks", "name": "Blocks", "source": "invented", "macroblock": {"numerator": 28672}},
    {"id": "table", "name": "Table", "source": "invented", "table": {"rows": [
      {"width_pixels": 2048, "height_pixels": 1024, "rates": [24, "30000/1001"], "bytes": 900000},
      {"width_pixels": 2048, "height_pixels": 1024, "rates": [48], "bytes": 500000}]}},
    {"id": "constant", "name": "Constant", "source": "invented",
     "bit_rate": {"bits_per_s": 100000000}},
    {"id": "measured", "name": "Measured", "source": "invented",
     "measured": {"bytes": 1000000000, "frames": 240, "width_pixels": 3840,
                  "height_pixels": 2160}}]})";

Catalogue parsed(std::string_view text, const Catalogue& library) {
  auto catalogue = catalogue_from_json(text, library);
  for (const Problem& problem : catalogue ? Problems() : catalogue.error()) {
    FAIL(to_line(problem));
  }
  return *catalogue;
}

Catalogue without_cameras() { return parsed(kEverythingButCameras, {}); }

Recording any_recording(std::mt19937& random, const SensorMode& mode, std::size_t number) {
  Recording recording;
  recording.id = "option-" + std::to_string(number);
  recording.name = "Option";
  const int kind = any(random, 0, 3);
  if (kind == 1) {
    recording.width_pixels = 2048;
    recording.height_pixels = 1024;
  } else if (kind == 2) {
    recording.width_pixels = mode.width_photosites;
    recording.height_pixels = mode.height_photosites / 2 + 16;
    recording.desqueeze = 2;
  }
  if (any(random, 0, 2) == 0) recording.max_rate = Rational(any(random, 24, 120));
  if (any(random, 0, 9) == 0) recording.max_rate = Rational(60000, 1001);
  return recording;
}

SensorMode any_mode(std::mt19937& random, std::size_t number) {
  SensorMode mode;
  mode.id = "mode-" + std::to_string(number);
  mode.name = "Mode";
  mode.width_photosites = 16 * any(random, 60, 500);
  mode.height_photosites = 16 * any(random, 40, 250);
  const double pitch_mm = any(random, 40, 64) / 10'000.0;
  mode.width_mm = static_cast<double>(mode.width_photosites) * pitch_mm;
  mode.height_mm = static_cast<double>(mode.height_photosites) * pitch_mm;
  if (any(random, 0, 4) != 0) mode.max_rate = Rational(any(random, 24, 150));
  return mode;
}

Camera any_camera(std::mt19937& random, const std::vector<Codec>& codecs, std::size_t number) {
  Camera camera;
  camera.id = "camera-" + std::to_string(number);
  camera.name = "Camera";
  camera.source = "invented";
  camera.width_photosites = 8000;
  camera.height_photosites = 4000;
  camera.width_mm = 60;
  camera.height_mm = 40;
  for (std::size_t m = 0; m < 4; ++m) {
    SensorMode mode = any_mode(random, m);
    for (std::size_t r = 0; r < 3; ++r) {
      mode.recordings.push_back(any_recording(random, mode, r));
      for (const Codec& codec : codecs) {
        if (any(random, 0, 2) != 0) mode.recordings.back().codecs.push_back(codec.id);
      }
      if (mode.recordings.back().codecs.empty())
        mode.recordings.back().codecs = {codecs.front().id};
    }
    camera.modes.push_back(std::move(mode));
  }
  return camera;
}

std::size_t formats_of(const Camera& camera) {
  std::size_t count = 0;
  for (const SensorMode& mode : camera.modes) {
    for (const Recording& recording : mode.recordings) count += recording.codecs.size();
  }
  return count;
}

template <class Row>
void shuffle(std::vector<Row>& rows, std::mt19937& random) {
  std::shuffle(rows.begin(), rows.end(), random);
}

FormatChoice any_format(std::mt19937& random, const Catalogue& catalogue) {
  const Camera& camera = any_of(random, catalogue.cameras);
  const SensorMode& mode = any_of(random, camera.modes);
  const Recording& recording = any_of(random, mode.recordings);
  return {camera.id, mode.id, recording.id, any_of(random, recording.codecs)};
}

}  // namespace

Catalogue small_catalogue() {
  Catalogue catalogue = without_cameras();
  catalogue.cameras = parsed(kOneCamera, catalogue).cameras;
  return catalogue;
}

FormatChoice small_format() { return {"camera", "full", "as-read", "raw-12"}; }

Plan small_plan() {
  Plan plan;
  plan.format = small_format();
  plan.deliverable.frame_lines.front().aspect = 2;
  plan.lens.set = "lens";
  plan.commission.id = "none";
  plan.run.audio_channels = 0;
  plan.store.container = "box";
  plan.store.card = "card";
  plan.store.link = "link";
  plan.store.drive = "drive";
  plan.store.tape = "";
  plan.store.checksum = "sum";
  return plan;
}

Catalogue random_catalogue(std::mt19937& random, std::size_t formats) {
  Catalogue catalogue = without_cameras();
  catalogue.codecs = parsed(kEveryForm, {}).codecs;
  std::size_t count = 0;
  while (count < formats) {
    catalogue.cameras.push_back(any_camera(random, catalogue.codecs, catalogue.cameras.size()));
    count += formats_of(catalogue.cameras.back());
  }
  return catalogue;
}

Plan random_plan(std::mt19937& random, const Catalogue& catalogue) {
  Plan plan = small_plan();
  FrameLine& line = plan.deliverable.frame_lines.front();
  line.aspect = Rational(any(random, 100, 276), 100);
  line.protection = Rational(any(random, 0, 2) * 5, 100);
  plan.lens.focal_mm = any(random, 0, 1) == 0 ? 35 : 25;
  if (any(random, 0, 3) == 0) plan.lens.squeeze = 2;
  if (any(random, 0, 1) == 0) plan.lens.image_circle_mm = any(random, 200, 500) / 10.0;
  if (any(random, 0, 3) == 0) plan.commission.id = "";
  CommissionTerms& terms = plan.commission.terms;
  if (any(random, 0, 1) == 0) terms.photosites = any(random, 1'000'000, 12'000'000);
  if (any(random, 0, 3) == 0) terms.counted_on = CountedOn::frame;
  if (any(random, 0, 3) == 0) terms.recorded_width_pixels = any(random, 1000, 6000);
  if (any(random, 0, 3) == 0) terms.largest_upscaling = Rational(any(random, 100, 300), 100);
  plan.run.sensor_rate = any(random, 0, 3) == 0 ? 48 : 24;
  plan.run.audio_channels = any(random, 0, 8);
  plan.choose.must_cover = static_cast<CoverArea>(any(random, 0, 3));
  plan.choose.min_minutes_per_card = any(random, 0, 1) * any(random, 1, 60);
  plan.choose.min_push_in_percent = any(random, 0, 3) == 0 ? 5 : 0;
  plan.choose.min_room_percent = any(random, 0, 5) == 0 ? 5 : 0;
  plan.choose.compare = static_cast<CompareWith>(any(random, 0, 1));
  plan.choose.weights = static_cast<WeightSet>(any(random, 0, 6));
  if (plan.choose.weights == WeightSet::soonest_in_edit) plan.choose.weights = WeightSet::own;
  plan.choose.weight_area = any(random, 0, 10);
  plan.choose.weight_fidelity = any(random, 0, 10);
  plan.choose.weight_pixels = any(random, 0, 10);
  plan.choose.weight_speed = any(random, 0, 10);
  plan.choose.weight_data = any(random, 0, 10);
  plan.format = any_format(random, catalogue);
  while (!rank(plan, catalogue).problems.empty()) plan.format = any_format(random, catalogue);
  return plan;
}

Catalogue shuffled(Catalogue catalogue, std::mt19937& random) {
  shuffle(catalogue.cameras, random);
  shuffle(catalogue.codecs, random);
  shuffle(catalogue.cards, random);
  shuffle(catalogue.lens_sets, random);
  for (Camera& camera : catalogue.cameras) {
    shuffle(camera.modes, random);
    for (SensorMode& mode : camera.modes) {
      shuffle(mode.recordings, random);
      for (Recording& recording : mode.recordings) shuffle(recording.codecs, random);
    }
  }
  return catalogue;
}

}  // namespace widegate::choose_sample
