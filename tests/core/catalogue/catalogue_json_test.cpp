// Catalogues as JSON documents: round trips, sizes given in any two of three ways, and every kind
// of wrong row named where it is.
#include "core/catalogue/catalogue_json.h"

#include <doctest/doctest.h>

#include <array>

#include "core/catalogue/catalogue_check.h"
#include "tests/core/support/random_plans.h"

using namespace widegate;
using widegate::testing::Dice;

namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

std::string document(std::string_view members) {
  return "{\"widegate_catalogue\": 1, " + std::string(members) + "}";
}

/// A camera with these members beside its id, name, source and modes.
std::string camera_with(std::string_view members, std::string_view mode_members) {
  return document(R"("cameras": [{"id": "c", "name": "C", "source": "test", )" +
                  std::string(members) + R"(, "modes": [{"id": "m", "name": "M", )" +
                  std::string(mode_members) +
                  R"(, "recordings": [{"id": "r", "name": "R", "codecs": ["dpx-10"]}]}]}])");
}

Problems problems_of(std::string_view text) {
  const auto catalogue = catalogue_from_json(text, library());
  return catalogue ? Problems{} : catalogue.error();
}

constexpr std::string_view kSize =
    R"("width_photosites": 4000, "height_photosites": 2000, "pitch_um": 5)";
constexpr std::string_view kModeSize = R"("width_photosites": 2000, "height_photosites": 1000)";

}  // namespace

TEST_CASE("the built-in library and random ones come back from their own text") {
  const std::string text = catalogue_to_json(library());
  const auto again = catalogue_from_json(text, {});
  REQUIRE(again.has_value());
  CHECK(*again == library());
  CHECK(catalogue_to_json(*again) == text);
  Dice dice(9);
  for (int i = 0; i < 500; ++i) {
    const Catalogue random = testing::random_library(dice);
    REQUIRE(check_catalogue(random, library(), "").empty());
    REQUIRE(catalogue_from_json(catalogue_to_json(random), library()) == random);
  }
}

TEST_CASE("photosites, pitch and millimetres: any two give the third") {
  const auto by_pitch = catalogue_from_json(camera_with(kSize, kModeSize), library());
  const auto by_mm =
      catalogue_from_json(camera_with(R"("width_photosites": 4000, "height_photosites": 2000,
                     "width_mm": 20, "height_mm": 10)",
                                      kModeSize),
                          library());
  const auto by_both = catalogue_from_json(
      camera_with(R"("width_mm": 20, "height_mm": 10, "pitch_um": 5)", kModeSize), library());
  REQUIRE(by_pitch.has_value());
  REQUIRE(by_mm.has_value());
  REQUIRE(by_both.has_value());
  CHECK(*by_pitch == *by_mm);
  CHECK(*by_pitch == *by_both);
  CHECK(by_pitch->cameras[0].width_mm == 20);
  CHECK(by_pitch->cameras[0].modes[0].width_mm == 10);
  CHECK(by_pitch->cameras[0].modes[0].height_mm == 5);
}

TEST_CASE("a mode may join photosites: its own pitch or millimetres, inside the sensor") {
  const auto joined = catalogue_from_json(
      camera_with(kSize, R"("width_photosites": 2000, "height_photosites": 1000, "pitch_um": 10)"),
      library());
  REQUIRE(joined.has_value());
  CHECK(joined->cameras[0].modes[0].width_mm == 20);
  const Problems wider = problems_of(
      camera_with(kSize, R"("width_photosites": 2000, "height_photosites": 1000, "pitch_um": 11)"));
  REQUIRE_FALSE(wider.empty());
  CHECK(wider.front().pointer == "/cameras/0/modes/0/width_mm");
  CHECK(wider.front().value == "22");
}

TEST_CASE("published millimetres that are rounded pass, contradictions do not") {
  CHECK(problems_of(camera_with(R"("width_photosites": 4000, "height_photosites": 2000,
                                   "width_mm": 20.05, "height_mm": 9.98, "pitch_um": 5)",
                                kModeSize))
            .empty());
  const Problems contradiction =
      problems_of(camera_with(R"("width_photosites": 4000, "height_photosites": 2000,
                                 "width_mm": 21, "height_mm": 10, "pitch_um": 5)",
                              kModeSize));
  REQUIRE(contradiction.size() == 1);
  CHECK(to_line(contradiction.front()) ==
        "/cameras/0/width_mm: 21 is not accepted; expected about 20 mm, photosites times pitch");
  const Problems missing =
      problems_of(camera_with(R"("width_photosites": 4000, "height_photosites": 2000)", kModeSize));
  REQUIRE(missing.size() >= 2);
  CHECK(missing[0].pointer == "/cameras/0/width_mm");
  CHECK(missing[0].value == "nothing");
  CHECK(missing[0].accepted.find("or pitch_um in its place") != std::string::npos);
}

TEST_CASE("every kind of wrong row is refused where it stands") {
  constexpr std::string_view kCodec = R"("id": "c", "name": "C", "source": "s")";
  constexpr std::string_view kCard =
      R"("id": "c", "name": "C", "source": "s", "write_bytes_per_s": 9000, "read_bytes_per_s": 9000)";
  const auto codec = [&](std::string_view form) {
    return R"("codecs": [{)" + std::string(kCodec) + ", " + std::string(form) + "}]";
  };
  const auto card = [&](std::string_view more) {
    return R"("cards": [{)" + std::string(kCard) + ", " + std::string(more) + "}]";
  };
  struct Row {
    std::string members, pointer, value, accepted;
  };
  const std::vector<Row> rows = {
      {R"("camera": [])", "/camera", "a list", "one of the keys cameras, lens_sets"},
      {R"("cameras": {})", "/cameras", "an object", "a list"},
      {R"("cameras": [7])", "/cameras/0", "7", "an object"},
      {codec(""), "", "\"}]}\" at byte", "a JSON document"},
      {codec(R"("packed": {"block_bits": 3})"), "/codecs/0/packed/block_bits", "3",
       "one of the keys block_pixels"},
      {codec(R"("packed": {"block_bytes": 0})"), "/codecs/0/packed/block_bytes", "0",
       "a whole number from 1 to 65536 bytes"},
      {codec(R"("packed": 3)"), "/codecs/0/packed", "3", "an object"},
      {codec(R"("ratio": {"ratio": 3})"), "/codecs/0/ratio/bits_per_pixel", "nothing",
       "a number or a fraction \"a/b\" above 0"},
      {codec(R"("ratio": {"bits_per_pixel": 12, "ratio": "1/2"})"), "/codecs/0/ratio/ratio",
       "\"1/2\"", "a number or a fraction"},
      {codec(R"("lossless": {"bits_per_pixel": 12, "worst_ratio": 2, "best_ratio": 1})"),
       "/codecs/0/lossless/best_ratio", "1", "at least the worst ratio, 2"},
      {codec(R"("table": {"rows": []})"), "/codecs/0/table/rows", "an empty list", "at least one"},
      {codec(R"("table": {})"), "/codecs/0/table/rows", "nothing", "a list"},
      {codec(R"("table": {"rows": [
          {"width_pixels": 100, "height_pixels": 100, "rates": [24], "bytes": 5},
          {"width_pixels": 100, "height_pixels": 100, "rates": [25, 24], "bytes": 6}]})"),
       "/codecs/0/table/rows/1", "100 x 100 at 24", "each raster and rate in one row only"},
      {codec(R"("table": {"rows": [
          {"width_pixels": 100, "height_pixels": 100, "rates": ["0/0"], "bytes": 5}]})"),
       "/codecs/0/table/rows/0/rates/0", "\"0/0\"", "a whole number or an exact fraction"},
      {codec(R"("bit_rate": {"bits_per_s": 5e7}, "ratio": {"bits_per_pixel": 8})"), "/codecs/0",
       "a codec of two forms", "exactly one of the keys packed, ratio"},
      {R"("codecs": [{"id": "c", "name": "C", "source": "s"}])", "/codecs/0",
       "a codec without a form", "exactly one of the keys packed, ratio"},
      {R"("codecs": [{"id": "C!", "name": "C", "source": "s", "bit_rate": {"bits_per_s": 5e7}}])",
       "/codecs/0/id", "\"C!\"", "an id"},
      {R"("codecs": [{"id": "c", "name": "C", "source": "", "bit_rate": {"bits_per_s": 5e7}}])",
       "/codecs/0/source", "\"\"", "text on one line, 1 to 300"},
      {card(R"("capacity_bytes": -1)"), "/cards/0/capacity_bytes", "-1", "a whole number from"},
      {card(R"("capacity_bytes": 1e9, "usable_share": 1.01)"), "/cards/0/usable_share", "1.01",
       "a number or a fraction"},
      {card(R"("capacity_bytes": 1e9, "usable_share": 0)"), "/cards/0/usable_share", "0",
       "a number or a fraction"},
      {R"("lens_sets": [{"id": "l", "name": "L", "source": "s", "lenses": []}])",
       "/lens_sets/0/lenses", "an empty list", "at least one lens"},
      {R"("lens_sets": [{"id": "l", "name": "L", "source": "s", "lenses": [
          {"focal_mm": 50, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1},
          {"focal_mm": 50, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1}]}])",
       "/lens_sets/0/lenses/1/focal_mm", "50", "more than the 50 before it"},
      {codec(R"("facts": 12, "bit_rate": {"bits_per_s": 5e7})"), "/codecs/0/facts", "12",
       "an object"},
      {codec(R"("facts": {"depth": 12}, "bit_rate": {"bits_per_s": 5e7})"), "/codecs/0/facts/depth",
       "12", "one of the keys bit_depth, chroma, lossless, intra, plays"},
      {codec(R"("facts": {"bit_depth": 0}, "bit_rate": {"bits_per_s": 5e7})"),
       "/codecs/0/facts/bit_depth", "0", "a whole number from 1 to 32 bit, or nothing"},
      {codec(R"("facts": {"bit_depth": 12.5}, "bit_rate": {"bits_per_s": 5e7})"),
       "/codecs/0/facts/bit_depth", "12.5", "a whole number from 1 to 32 bit, or nothing"},
      {codec(R"("facts": {"chroma": "4:1:1"}, "bit_rate": {"bits_per_s": 5e7})"),
       "/codecs/0/facts/chroma", "\"4:1:1\"", "one of 4:2:0, 4:2:2, 4:4:4, raw, or nothing"},
      {codec(R"("facts": {"lossless": "yes"}, "bit_rate": {"bits_per_s": 5e7})"),
       "/codecs/0/facts/lossless", "\"yes\"", "true or false, or nothing"},
      {codec(R"("facts": {"source": "a\nb"}, "bit_rate": {"bits_per_s": 5e7})"),
       "/codecs/0/facts/source", "\"a?b\"", "text on one line, 0 to 300"},
      {card(R"("capacity_bytes": 1e9, "kind": "SD card")"), "/cards/0/kind", "\"SD card\"",
       "an id"},
      {R"("lens_sets": [{"id": "l", "name": "L", "source": "s", "extenders": [7], "lenses": [
          {"focal_mm": 50, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1}]}])",
       "/lens_sets/0/extenders/0", "7", "a number or a fraction \"a/b\" from 1/4 to 4 x"},
      {R"("lens_sets": [{"id": "l", "name": "L", "source": "s", "extenders": [1.4, "7/5"], "lenses": [
          {"focal_mm": 50, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1}]}])",
       "/lens_sets/0/extenders/1", "7/5", "a factor that is not 1, each once"},
      {R"("lens_sets": [{"id": "l", "name": "L", "source": "s", "extenders": 1.4, "lenses": [
          {"focal_mm": 50, "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1}]}])",
       "/lens_sets/0/extenders", "1.4", "a list"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.members);
    const Problems problems = problems_of(document(row.members));
    REQUIRE_FALSE(problems.empty());
    CHECK(problems.front().pointer == row.pointer);
    CHECK(problems.front().value.substr(0, row.value.size()) == row.value);
    CHECK(problems.front().accepted.substr(0, row.accepted.size()) == row.accepted);
  }
}

TEST_CASE("a camera's modes and recording options must fit it and one another") {
  const auto camera = [](std::string_view mode, std::string_view recording) {
    return document(R"("cameras": [{"id": "c", "name": "C", "source": "test", )" +
                    std::string(kSize) + R"(, "modes": [{"id": "m", "name": "M", )" +
                    std::string(mode) + R"(, "recordings": [)" + std::string(recording) + "]}]}]");
  };
  constexpr std::string_view kRecording = R"({"id": "r", "name": "R", "codecs": ["dpx-10"]})";
  struct Row {
    std::string text, pointer, value, accepted;
  };
  const std::string base = "/cameras/0/modes/0";
  const std::vector<Row> rows = {
      {camera(R"("width_photosites": 4001, "height_photosites": 1000, "width_mm": 20)", kRecording),
       base + "/width_photosites", "4001", "at most the sensor's 4000"},
      {camera(kModeSize, ""), base + "/recordings", "an empty list", "at least one recording"},
      {camera(kModeSize, R"({"id": "r", "name": "R", "codecs": []})"),
       base + "/recordings/0/codecs", "an empty list", "at least one codec id"},
      {camera(kModeSize, R"({"id": "r", "name": "R"})"), base + "/recordings/0/codecs", "nothing",
       "a list"},
      {camera(kModeSize, R"({"id": "r", "name": "R", "codecs": ["no-such"]})"),
       base + "/recordings/0/codecs/0", "\"no-such\"", "the id of a codec"},
      {camera(kModeSize, R"({"id": "r", "name": "R", "codecs": ["dpx-10", "dpx-10"]})"),
       base + "/recordings/0/codecs/1", "\"dpx-10\"", "each codec once"},
      {camera(kModeSize, std::string(kRecording) + ", " + std::string(kRecording)),
       base + "/recordings/1/id", "\"r\"", "an id that no earlier row"},
      {camera(kModeSize, R"({"id": "r", "name": "R", "width_pixels": 1920, "codecs": ["dpx-10"]})"),
       base + "/recordings/0/width_pixels", "1920 x 0", "a raster of at least 16 x 16"},
      {camera(kModeSize, R"({"id": "r", "name": "R", "desqueeze": 2, "codecs": ["dpx-10"]})"),
       base + "/recordings/0/desqueeze", "2", "1, or a raster of its own"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const Problems problems = problems_of(row.text);
    REQUIRE_FALSE(problems.empty());
    CHECK(problems.front().pointer == row.pointer);
    CHECK(problems.front().value == row.value);
    CHECK(problems.front().accepted.substr(0, row.accepted.size()) == row.accepted);
  }
}

TEST_CASE("what advice needs of a camera is refused where it is wrong") {
  struct Row {
    std::string camera, mode, pointer, value, accepted;
  };
  const std::string size(kSize);
  const std::string mode_size(kModeSize);
  const std::string base = "/cameras/0";
  const std::vector<Row> rows = {
      {size + R"(, "media": "sd")", mode_size, base + "/media", "\"sd\"", "a list"},
      {size + R"(, "media": ["SD"])", mode_size, base + "/media/0", "\"SD\"", "an id"},
      {size + R"(, "media": ["sd", "sd"])", mode_size, base + "/media/1", "\"sd\"",
       "each kind of card once"},
      {size + R"(, "read_out_ms": 0)", mode_size, base + "/read_out_ms", "0", "a number above 0"},
      {size + R"(, "medium": "tape")", mode_size, base + "/medium", "\"tape\"",
       "one of digital, film"},
      {size + R"(, "max_rate": 23.976)", mode_size, base + "/max_rate", "23.976",
       "the exact fraction"},
      {size + R"(, "film": {"frames_per_foot": 0})", mode_size, base + "/film/frames_per_foot", "0",
       "a number or a fraction"},
      {size + R"(, "film": {"perforations_per_frame": 2.5})", mode_size,
       base + "/film/perforations_per_frame", "2.5", "a whole number from 1 to 100"},
      {size, mode_size + R"(, "squeeze": 5)", base + "/modes/0/squeeze", "5",
       "a number or a fraction"},
      {size, mode_size + R"(, "binned": 1)", base + "/modes/0/binned", "1", "true or false"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.pointer);
    const Problems problems = problems_of(camera_with(row.camera, row.mode));
    REQUIRE_FALSE(problems.empty());
    CHECK(problems.front().pointer == row.pointer);
    CHECK(problems.front().value == row.value);
    CHECK(problems.front().accepted.substr(0, row.accepted.size()) == row.accepted);
  }
}

TEST_CASE("a document from before the facts opens, and says that they are not known") {
  const auto old = catalogue_from_json(
      document(R"("cameras": [{"id": "c", "name": "C", "source": "test", )" + std::string(kSize) +
               R"(, "modes": [{"id": "m", "name": "M", )" + std::string(kModeSize) +
               R"(, "recordings": [{"id": "r", "name": "R", "codecs": ["dpx-10"]}]}]}],
      "codecs": [{"id": "k", "name": "K", "source": "test", "bit_rate": {"bits_per_s": 5e7}}],
      "cards": [{"id": "d", "name": "D", "source": "test", "capacity_bytes": 1e12,
                 "write_bytes_per_s": 9e8, "read_bytes_per_s": 9e8}],
      "lens_sets": [{"id": "l", "name": "L", "source": "test", "lenses": [{"focal_mm": 50,
        "image_circle_mm": 30, "widest_t_stop": 2, "close_focus_m": 1}]}])"),
      library());
  REQUIRE(old.has_value());
  const Camera& camera = old->cameras.front();
  CHECK(camera.media.empty());
  CHECK(camera.medium == Medium::digital);
  CHECK(camera.film == FilmGauge{});
  CHECK_FALSE(camera.max_rate.has_value());
  CHECK_FALSE(camera.read_out_ms.has_value());
  CHECK_FALSE(camera.modes.front().squeeze.has_value());
  CHECK_FALSE(camera.modes.front().binned);
  CHECK(old->codecs.front().facts == CodecFacts{});
  CHECK_FALSE(is_sensor_raw(old->codecs.front().facts).has_value());
  CHECK(old->cards.front().kind.empty());
  CHECK(old->lens_sets.front().extenders.empty());
}

TEST_CASE("merging replaces rows of the same id and keeps the others in order") {
  Catalogue own;
  own.tapes.push_back(*find_row(library().tapes, "lto-8"));
  own.tapes.back().price = 1;
  own.tapes.push_back(own.tapes.back());
  own.tapes.back().id = "lto-x";
  const Catalogue both = merged_catalogue(library(), own);
  CHECK(both.tapes.size() == library().tapes.size() + 1);
  CHECK(find_row(both.tapes, "lto-8")->price == 1);
  CHECK(both.tapes.back().id == "lto-x");
  CHECK(both.tapes.front() == library().tapes.front());
  CHECK(both.cameras == library().cameras);
}
