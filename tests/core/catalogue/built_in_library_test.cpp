// The built-in library: its rows hold together, every format evaluates, film apertures are their
// standards', and the demo scenario has an honest case for every capability.
#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "core/catalogue/catalogue_json.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "tests/core/support/tables.h"

using namespace widegate;

namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

bool is_film(const Camera& camera) { return camera.id.substr(0, 5) == "film-"; }

/// Every camera that was invented for the demo scenario.
std::vector<const Camera*> demo_cameras() {
  std::vector<const Camera*> cameras;
  for (const Camera& camera : library().cameras) {
    if (!is_film(camera)) cameras.push_back(&camera);
  }
  return cameras;
}

Plan plan_with(std::initializer_list<TypedField> fields) {
  const std::vector<TypedField> list(fields);
  const auto plan = with_fields(Plan{}, list, library());
  if (!plan) {
    for (const Problem& problem : plan.error()) MESSAGE(to_line(problem));
  }
  REQUIRE(plan.has_value());
  return *plan;
}

Report report_with(std::initializer_list<TypedField> fields) {
  return evaluate(plan_with(fields), library());
}

template <class Row>
void check_named(const std::vector<Row>& rows) {
  CHECK_FALSE(rows.empty());
  std::set<std::string> names;
  for (const Row& row : rows) {
    CAPTURE(row.id);
    CHECK_FALSE(row.source.empty());
    CHECK(names.insert(row.name).second);
  }
}

double aspect_after(const SensorMode& mode, Rational squeeze) {
  return squeeze.to_double() * static_cast<double>(mode.width_photosites) /
         static_cast<double>(mode.height_photosites);
}

}  // namespace

TEST_CASE("every row has a source and a name of its own") {
  const auto& [cameras, lens_sets, codecs, cards, links, drives, tapes, checksums, containers,
               commissions] = library();
  check_named(cameras);
  check_named(lens_sets);
  check_named(codecs);
  check_named(cards);
  check_named(links);
  check_named(drives);
  check_named(tapes);
  check_named(checksums);
  check_named(containers);
  check_named(commissions);
}

TEST_CASE(
    "the demo sensors have the sizes of the scenario, pitch times photosites is millimetres") {
  struct Sensor {
    std::string_view id;
    std::int64_t width, height;
    Rational pitch_um;
  };
  for (const Sensor& sensor : {Sensor{"alder", 4992, 3744, Rational(54, 10)},
                               Sensor{"birch", 6240, 4160, Rational(58, 10)},
                               Sensor{"cedar", 8704, 4096, Rational(62, 10)},
                               Sensor{"dogwood", 2816, 1664, Rational(46, 10)}}) {
    CAPTURE(sensor.id);
    const Camera* camera = find_row(library().cameras, sensor.id);
    REQUIRE(camera != nullptr);
    CHECK(camera->width_photosites == sensor.width);
    CHECK(camera->height_photosites == sensor.height);
    CHECK(camera->width_mm == (sensor.pitch_um * Rational(sensor.width, 1000)).to_double());
    CHECK(camera->height_mm == (sensor.pitch_um * Rational(sensor.height, 1000)).to_double());
    for (const SensorMode& mode : camera->modes) {
      CAPTURE(mode.id);
      const double pitch = sensor.pitch_um.to_double() / 1000;
      const double joined = mode.id == "fast-binned" ? 2 : 1;
      CHECK(mode.width_mm ==
            doctest::Approx(static_cast<double>(mode.width_photosites) * pitch * joined));
      CHECK(mode.height_mm ==
            doctest::Approx(static_cast<double>(mode.height_photosites) * pitch * joined));
    }
  }
}

TEST_CASE("every format of every camera evaluates") {
  int formats = 0;
  for (const Camera& camera : library().cameras) {
    for (const SensorMode& mode : camera.modes) {
      for (const Recording& recording : mode.recordings) {
        for (const std::string& codec : recording.codecs) {
          Plan plan;
          plan.format = {camera.id, mode.id, recording.id, codec};
          // The intra classes of AVC have no frame size at exactly 24 frames per second.
          if (codec.substr(0, 9) == "avc-intra") plan.run.sensor_rate = plan.run.project_rate = 25;
          const Report report = evaluate(plan, library());
          CAPTURE(camera.id);
          CAPTURE(mode.id);
          CAPTURE(recording.id);
          CAPTURE(codec);
          CHECK(report.problems == Problems{});
          ++formats;
        }
      }
    }
  }
  CHECK(formats > 1000);
}

TEST_CASE(
    "resampled and de-squeezed rasters keep the shape to a line, and no row of codecs is left "
    "out") {
  std::set<std::string> used;
  for (const Camera* camera : demo_cameras()) {
    for (const SensorMode& mode : camera->modes) {
      for (const Recording& recording : mode.recordings) {
        used.insert(recording.codecs.begin(), recording.codecs.end());
        if (recording.width_pixels == 0) continue;
        CAPTURE(camera->id);
        CAPTURE(mode.id);
        CAPTURE(recording.id);
        const double height =
            static_cast<double>(recording.width_pixels) / aspect_after(mode, recording.desqueeze);
        CHECK(std::abs(static_cast<double>(recording.height_pixels) - height) <= 1);
        CHECK(recording.height_pixels % 2 == 0);
      }
    }
  }
  for (const Codec& codec : library().codecs) {
    const bool of_raw_or_camera =
        codec.id.substr(0, 5) == "bayer" || codec.id.substr(0, 4) == "vc-3";
    if (of_raw_or_camera) CHECK(used.count(codec.id) == 1);
  }
}

TEST_CASE("film apertures are the published ones, scanned with square pixels") {
  struct Aperture {
    std::string_view camera;
    std::string_view published;
  };
  for (const Aperture& row :
       {Aperture{"film-35-4-perf", "35 mm 4-perf full aperture"},
        Aperture{"film-35-academy", "35 mm 4-perf academy (0.866)"},
        Aperture{"film-35-anamorphic", "35 mm 4-perf anamorphic camera"},
        Aperture{"film-35-3-perf", "35 mm 3-perf full width"},
        Aperture{"film-35-2-perf", "35 mm 2-perf"},
        Aperture{"film-35-8-perf", "35 mm 8-perf horizontal"},
        Aperture{"film-65-5-perf", "65 mm 5-perf (2.066)"},
        Aperture{"film-65-8-perf", "65 mm 8-perf"},
        Aperture{"film-65-15-perf", "65 mm 15-perf horizontal"},
        Aperture{"film-16", "16 mm standard"}, Aperture{"film-super-16", "Super 16 (0.493x0.292)"},
        Aperture{"film-super-8", "Super 8"}}) {
    CAPTURE(row.camera);
    const Camera* camera = find_row(library().cameras, row.camera);
    REQUIRE(camera != nullptr);
    const auto published =
        std::find_if(testing::kApertures.begin(), testing::kApertures.end(),
                     [&](const testing::ApertureRow& it) { return it.name == row.published; });
    REQUIRE(published != testing::kApertures.end());
    CHECK(camera->width_mm == doctest::Approx(published->width_mm).epsilon(1e-5));
    CHECK(camera->height_mm == doctest::Approx(published->height_mm).epsilon(1e-5));
    CHECK(std::hypot(camera->width_mm, camera->height_mm) ==
          doctest::Approx(published->diagonal_mm).epsilon(1e-5));
    for (const SensorMode& mode : camera->modes) {
      CAPTURE(mode.id);
      CHECK(mode.width_mm == camera->width_mm);
      CHECK_FALSE(mode.max_rate.has_value());
      const double pixel_shape = mode.width_mm / static_cast<double>(mode.width_photosites) /
                                 (mode.height_mm / static_cast<double>(mode.height_photosites));
      CHECK(pixel_shape == doctest::Approx(1).epsilon(1e-3));
    }
  }
}

TEST_CASE("every squeeze has a mode of its own shape for 2.39, 2:1 and 16:9") {
  const double wanted[] = {2.39, 2, 16.0 / 9};
  for (const Rational squeeze : {Rational(2), Rational(9, 5), Rational(3, 2)}) {
    CAPTURE(squeeze.to_double());
    for (const double aspect : wanted) {
      if (squeeze == Rational(9, 5) && aspect < 1.9) continue;  // nobody shoots 16:9 with 1.8x
      CAPTURE(aspect);
      bool found = false;
      for (const Camera* camera : demo_cameras()) {
        for (const SensorMode& mode : camera->modes) {
          const bool shaped = mode.id.substr(0, 7) == "squeeze";
          const double off = std::abs(aspect_after(mode, squeeze) / aspect - 1);
          found = found || (shaped && off < 0.005);
        }
      }
      CHECK(found);
    }
  }
}

TEST_CASE("in-camera resampling reaches 4096, 3840, 2048 and 1920, and de-squeeze goes with it") {
  std::set<std::int64_t> plain, desqueezed;
  std::set<double> squeezes;
  for (const Camera* camera : demo_cameras()) {
    for (const SensorMode& mode : camera->modes) {
      for (const Recording& recording : mode.recordings) {
        const bool plain_raster = recording.desqueeze == Rational(1);
        (plain_raster ? plain : desqueezed).insert(recording.width_pixels);
        if (!plain_raster) squeezes.insert(recording.desqueeze.to_double());
      }
    }
  }
  for (const std::int64_t width : {0, 4096, 3840, 2048, 1920}) CHECK(plain.count(width) == 1);
  for (const std::int64_t width : {4096, 3840, 2048, 1920}) CHECK(desqueezed.count(width) == 1);
  CHECK(squeezes == std::set<double>{2, 1.8, 1.5});
}

TEST_CASE("a de-squeezed recording is spherical in the file") {
  const Report report = report_with({{"/lens/set", "wye"},
                                     {"/lens/focal_mm", "50"},
                                     {"/format/mode", "squeeze-2-239"},
                                     {"/format/recording", "desqueeze-4096"}});
  CHECK(report.resolve.recorded_squeeze == 1);
  CHECK(report.mode.squeeze == 2);
  CHECK(report.cover.frame.covered);
}

TEST_CASE("a high-speed option has another ceiling than its mode") {
  const Report raw = report_with({{"/format/mode", "fast-2048"}, {"/store/card", "hazel-4"}});
  CHECK(raw.run.rate_ceiling == Rational(120));
  CHECK(raw.run.rate_limited_by == RateLimit::recording);
  const Report resampled = report_with({{"/format/mode", "fast-2048"},
                                        {"/format/recording", "resample-1920"},
                                        {"/store/card", "hazel-4"}});
  CHECK(resampled.run.rate_ceiling == Rational(162));
  CHECK(resampled.run.rate_limited_by == RateLimit::mode);
}

TEST_CASE("one mode passes the pixel mandate while the 2.39 frame cut from it fails") {
  CHECK(report_with({{"/format/mode", "centre-4096"}}).resolve.mandate.met);
  const Report report =
      report_with({{"/format/mode", "centre-4096"}, {"/commission/counted_on", "frame"}});
  CHECK_FALSE(report.resolve.mandate.met);
  const Report whole =
      report_with({{"/format/mode", "centre-4096"}, {"/deliverable/frame_lines/0/aspect", "16:9"}});
  CHECK(whole.resolve.mandate.met);
}

TEST_CASE("a lens just fails to cover, by less than half a millimetre") {
  const Report frame = report_with({{"/lens/focal_mm", "14"}});
  CHECK_FALSE(frame.cover.frame.covered);
  CHECK(frame.cover.frame.margin_mm > -0.5);
  const Report gate = report_with({{"/lens/focal_mm", "18"}});
  CHECK(gate.cover.frame.covered);
  CHECK_FALSE(gate.cover.mode.covered);
  CHECK(gate.cover.mode.margin_mm > -0.5);
}

TEST_CASE("each lens set covers the sensor it is made for from its third focal length on") {
  struct Pair {
    const char* set;
    const char* camera;
    const char* mode;
    Rational squeeze;
  };
  for (const Pair& pair :
       {Pair{"tamar", "alder", "open-gate", 1}, Pair{"severn", "birch", "open-gate", 1},
        Pair{"trent", "cedar", "open-gate", 1}, Pair{"wye", "alder", "squeeze-2-239", 2},
        Pair{"teme", "alder", "squeeze-1.8-239", Rational(9, 5)},
        Pair{"usk", "birch", "squeeze-1.5-239", Rational(3, 2)},
        Pair{"dart", "dogwood", "open-gate", 1}}) {
    CAPTURE(pair.set);
    const LensSet* set = find_row(library().lens_sets, pair.set);
    const SensorMode* mode = find_row(find_row(library().cameras, pair.camera)->modes, pair.mode);
    REQUIRE(set != nullptr);
    REQUIRE(mode != nullptr);
    CHECK(set->squeeze == pair.squeeze);
    const double diagonal = std::hypot(mode->width_mm, mode->height_mm);
    CHECK(set->lenses.front().image_circle_mm < diagonal);
    for (std::size_t i = 2; i < set->lenses.size(); ++i) {
      CAPTURE(set->lenses[i].focal_mm);
      CHECK(set->lenses[i].image_circle_mm >= diagonal);
    }
  }
}

TEST_CASE("a small gate serves 16 mm lenses on a larger sensor") {
  const LensSet* dart = find_row(library().lens_sets, "dart");
  for (const char* id : {"alder", "birch"}) {
    const SensorMode* gate = find_row(find_row(library().cameras, id)->modes, "gate-16mm");
    REQUIRE(gate != nullptr);
    CHECK(std::hypot(gate->width_mm, gate->height_mm) < dart->lenses[2].image_circle_mm);
  }
}

TEST_CASE(
    "recording the 16:9 width resampled to 4096 saves about a third of the open gate's data") {
  // Common practice, no source: full-width 16:9 resampled against a 4:3-like open gate, one codec.
  const auto bytes = [](const char* mode, const char* recording) {
    return report_with({{"/format/mode", mode},
                        {"/format/recording", recording},
                        {"/format/codec", "jpeg-xs-422-10-6-1"}})
        .store.bytes_per_frame.most;
  };
  const double open_gate = static_cast<double>(bytes("open-gate", "resample-4096"));
  const double wide = static_cast<double>(bytes("wide-16x9", "resample-4096"));
  CHECK(open_gate / wide == doctest::Approx(1.333).epsilon(0.01));
  // Against the gate as it is read, at the same bits per pixel: 4992 x 3744 to 4096 x 2304.
  CHECK(4992.0 * 3744 / (4096.0 * 2304) > 1.5);
}

TEST_CASE("lossless raw saves up to about 40 percent") {
  const Report packed = report_with({});
  const Report coded = report_with({{"/format/codec", "bayer-12-lossless"}});
  CHECK(coded.store.bytes_per_frame.most == packed.store.bytes_per_frame.most);
  CHECK(static_cast<double>(coded.store.bytes_per_frame.least) /
            static_cast<double>(packed.store.bytes_per_frame.least) ==
        doctest::Approx(0.6).epsilon(1e-6));
}

TEST_CASE("every codec says what it keeps of the picture, and where that comes from") {
  for (const Codec& codec : library().codecs) {
    CAPTURE(codec.id);
    const CodecFacts& facts = codec.facts;
    REQUIRE(facts.bit_depth.has_value());
    REQUIRE(facts.chroma.has_value());
    REQUIRE(facts.lossless.has_value());
    REQUIRE(facts.intra.has_value());
    REQUIRE(facts.plays_at_once.has_value());
    CHECK_FALSE(facts.facts_source.empty());
    CHECK(*is_sensor_raw(facts) == (codec.id.substr(0, 6) == "bayer-"));
    // A mosaic is no picture: no edit suite shows it without making one first.
    if (*is_sensor_raw(facts)) CHECK_FALSE(*facts.plays_at_once);
    // The form says the same: what is lossless has no ratio, a ratio is of these samples.
    const Rational bits = Rational(*facts.bit_depth) * samples_per_pixel(*facts.chroma);
    if (const auto* ratio = std::get_if<RatioForm>(&codec.form)) {
      CHECK_FALSE(*facts.lossless);
      CHECK(ratio->bits_per_pixel == bits);
    }
    if (const auto* lossless = std::get_if<LosslessForm>(&codec.form)) {
      CHECK(*facts.lossless);
      CHECK(lossless->bits_per_pixel == bits);
    }
    if (const auto* packed = std::get_if<PackedForm>(&codec.form)) {
      CHECK(*facts.lossless);
      CHECK(Rational(packed->block_bytes * 8, packed->block_pixels) >= bits);
    }
  }
}

TEST_CASE("cameras say what they take, and a card of each kind is there") {
  std::set<std::string> kinds;
  for (const Card& card : library().cards) {
    CAPTURE(card.id);
    CHECK(card.id.substr(0, card.kind.size()) == card.kind);
    kinds.insert(card.kind);
  }
  std::set<std::vector<std::string>> differing;
  std::set<double> read_outs;
  for (const Camera* camera : demo_cameras()) {
    CAPTURE(camera->id);
    CHECK(camera->medium == Medium::digital);
    CHECK_FALSE(camera->media.empty());
    for (const std::string& kind : camera->media) CHECK(kinds.count(kind) == 1);
    differing.insert(camera->media);
    REQUIRE(camera->read_out_ms.has_value());
    read_outs.insert(*camera->read_out_ms);
    for (const SensorMode& mode : camera->modes) {
      CAPTURE(mode.id);
      // Rows are read within one frame at the highest rate; joined ones differ from camera to
      // camera.
      const double share = static_cast<double>(mode.height_photosites) /
                           static_cast<double>(camera->height_photosites);
      if (!mode.binned) {
        CHECK(*camera->read_out_ms * share <= 1000 / mode.max_rate->to_double());
      }
      CHECK(mode.squeeze.has_value() == (mode.id.substr(0, 7) == "squeeze"));
      CHECK(mode.binned == (mode.id == "fast-binned"));
    }
  }
  CHECK(differing.size() == demo_cameras().size());
  CHECK(read_outs.size() == demo_cameras().size());
}

TEST_CASE("every price says that it is invented") {
  const auto check = [](const auto& rows) {
    for (const auto& row : rows) {
      CAPTURE(row.id);
      if (row.price > 0) CHECK(row.source.find("invented") != std::string::npos);
    }
  };
  check(library().cards);
  check(library().drives);
  check(library().tapes);
}

TEST_CASE("one lens set has an extender") {
  const LensSet* tamar = find_row(library().lens_sets, "tamar");
  CHECK(tamar->extenders == std::vector<Rational>{Rational(7, 5)});
}

TEST_CASE("film runs as handbooks say: frames a foot, feet a minute at 24") {
  struct Run {
    std::string_view id;
    double gauge_mm;
    std::int64_t perforations;
    Rational frames_per_foot, feet_per_minute;
  };
  // 35 mm 16 frames and 90 feet, 16 mm 40 frames and 36 feet: handbook values; 64 perforations a
  // foot of 35 and 65 mm film give the others.
  for (const Run& run :
       {Run{"film-35-4-perf", 35, 4, 16, 90}, Run{"film-35-academy", 35, 4, 16, 90},
        Run{"film-35-anamorphic", 35, 4, 16, 90},
        Run{"film-35-3-perf", 35, 3, Rational(64, 3), Rational(135, 2)},
        Run{"film-35-2-perf", 35, 2, 32, 45}, Run{"film-35-8-perf", 35, 8, 8, 180},
        Run{"film-65-5-perf", 65, 5, Rational(64, 5), Rational(225, 2)},
        Run{"film-65-8-perf", 65, 8, 8, 180},
        Run{"film-65-15-perf", 65, 15, Rational(64, 15), Rational(675, 2)},
        Run{"film-16", 16, 1, 40, 36}, Run{"film-super-16", 16, 1, 40, 36},
        Run{"film-super-8", 8, 1, 72, 20}}) {
    CAPTURE(run.id);
    const Camera* camera = find_row(library().cameras, run.id);
    REQUIRE(camera != nullptr);
    CHECK(camera->medium == Medium::film);
    CHECK(camera->film.gauge_mm == run.gauge_mm);
    CHECK(camera->film.perforations_per_frame == run.perforations);
    REQUIRE(camera->film.frames_per_foot.has_value());
    CHECK(*camera->film.frames_per_foot == run.frames_per_foot);
    CHECK(Rational(24 * 60) / *camera->film.frames_per_foot == run.feet_per_minute);
    CHECK_FALSE(camera->film.source.empty());
    CHECK(camera->max_rate.has_value());
    CHECK(camera->media.empty());
  }
  for (const Camera& camera : library().cameras) {
    CAPTURE(camera.id);
    CHECK((camera.medium == Medium::film) == is_film(camera));
  }
}

TEST_CASE("cards of a class carry the standard's guarantee, not the number on the box") {
  for (const Card& card : library().cards) {
    CAPTURE(card.id);
    if (card.guarantee.empty() || card.guarantee == "approved by the camera's maker") continue;
    const std::string digits = card.guarantee.substr(card.guarantee.find_first_of("0123456789"));
    CHECK(card.write_bytes_per_s == std::stoll(digits) * 1'000'000);
    CHECK(card.name.find(card.guarantee) != std::string::npos);
  }
}

TEST_CASE("tapes are the published generations") {
  // LTO programme: native capacity in bytes and rate in bytes per second.
  struct Generation {
    std::string_view id;
    std::int64_t gigabytes, megabytes_per_s;
  };
  for (const Generation& row : {Generation{"lto-5", 1500, 140}, Generation{"lto-6", 2500, 160},
                                Generation{"lto-7", 6000, 300}, Generation{"lto-7-m", 9000, 300},
                                Generation{"lto-8", 12000, 360}, Generation{"lto-9", 18000, 400},
                                Generation{"lto-10", 30000, 400}}) {
    CAPTURE(row.id);
    const Tape* tape = find_row(library().tapes, row.id);
    REQUIRE(tape != nullptr);
    CHECK(tape->capacity_bytes == row.gigabytes * 1'000'000'000);
    CHECK(tape->write_bytes_per_s == row.megabytes_per_s * 1'000'000);
  }
}

TEST_CASE("links carry what line coding leaves") {
  // Line rate times coding, in whole bytes per second; 10 gigabit Ethernet by its TCP payload.
  const auto payload = [](std::int64_t gigabaud, std::int64_t lanes, Rational coding) {
    return (Rational(gigabaud * 1'000'000'000 / 8 * lanes) * coding).floor();
  };
  const Rational b8(8, 10), b128(128, 130), b132(128, 132);
  struct Row {
    std::string_view id;
    std::int64_t bytes;
  };
  for (const Row& row :
       {Row{"usb-3-2-gen-1x1", payload(5, 1, b8)}, Row{"usb-3-2-gen-2x1", payload(10, 1, b132)},
        Row{"usb-3-2-gen-2x2", payload(10, 2, b132)}, Row{"usb4-gen-3x2", payload(20, 2, b132)},
        Row{"pcie-3-x2", payload(8, 2, b128)}, Row{"pcie-3-x4", payload(8, 4, b128)},
        Row{"pcie-4-x4", payload(16, 4, b128)}, Row{"sata-6g", payload(6, 1, b8)},
        Row{"ethernet-10g", payload(10, 1, Rational(1460, 1538))},
        Row{"ethernet-10g-jumbo", payload(10, 1, Rational(8960, 9038))},
        Row{"ethernet-1g", payload(1, 1, Rational(1460, 1538))}}) {
    CAPTURE(row.id);
    const Link* link = find_row(library().links, row.id);
    REQUIRE(link != nullptr);
    CHECK(link->payload_bytes_per_s == row.bytes);
  }
}
