// The ranking as JSON and as CSV, and the words of a rejection.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>
#include <vector>

#include "core/choose/ranking.h"
#include "core/choose/smallest_change.h"
#include "core/handover/json/ranking_json.h"
#include "core/handover/table/ranking_csv.h"
#include "tests/core/choose/sample.h"

namespace widegate {
namespace {

using choose_sample::small_catalogue;
using choose_sample::small_plan;
using Json = nlohmann::json;

/// One format that passes and one that does not: the second camera's mode is half as wide.
Catalogue two_cameras() {
  Catalogue catalogue = small_catalogue();
  catalogue.cameras.push_back(catalogue.cameras.front());
  Camera& narrow = catalogue.cameras.back();
  narrow.id = "narrow";
  narrow.modes.front().width_photosites = 2000;
  narrow.modes.front().width_mm = 12;
  return catalogue;
}

Plan with_mandate() {
  Plan plan = small_plan();
  plan.commission.terms.photosites = 8'000'000;
  return plan;
}

TEST_CASE("the ranking as JSON holds every figure with its unit, and changes where asked for") {
  const Ranking ranking = rank(with_mandate(), two_cameras());
  std::vector<std::vector<Change>> changes;
  for (const RankedFormat& row : ranking.formats) {
    changes.push_back(smallest_changes(with_mandate(), two_cameras(), row.format));
  }
  const std::vector<std::string> above = {"One \"line\"."};
  const Json json =
      Json::parse(ranking_to_json(with_mandate(), ranking, above, ranking.formats, changes, {}));
  CHECK(json["considered"] == 2);
  CHECK(json["accepted"] == 1);
  CHECK(json["rejected"] == 1);
  CHECK(json["image_circle_known"] == true);
  const Json& best = json["formats"][0];
  CHECK(best["place"] == 1);
  CHECK(best["format"]["camera"] == "camera");
  CHECK(best["score"].get<double>() > 0);
  CHECK(best["shares"]["speed"] == 1);
  CHECK(best["as_good"] == true);
  CHECK(best["cautions"] == Json{"tight_circle"});  // 30 mm for a diagonal of 30 mm
  CHECK(best["recorded_width_pixels"] == 4000);
  CHECK(best["upscaling_times"] == 0.96);
  CHECK(best["focal_mm"] == 35);
  CHECK(best["on_pareto_front"] == false);
  CHECK(best["frame_area_mm2"] == 288);
  CHECK(best["frame_megapixels"] == 8);
  CHECK(best["rate_ceiling_exact"] == "100/3");
  CHECK(best["rate_limited_by"] == "card");
  CHECK(best["data_rate_megabits_per_s"] == 3456);
  const Json& rejected = json["formats"][1];
  CHECK(rejected["place"].is_null());
  CHECK_FALSE(rejected.contains("score"));
  const Json& reasons = rejected["requirements"];
  const auto mandate = std::find_if(reasons.begin(), reasons.end(), [](const Json& row) {
    return row["requirement"] == "photosites";
  });
  REQUIRE(mandate != reasons.end());
  CHECK((*mandate)["met"] == false);
  CHECK((*mandate)["margin"] == -2'000'000);
  CHECK((*mandate)["unit"] == "photosites");
  const Json& changed = rejected["changes"];
  const auto fewer = std::find_if(changed.begin(), changed.end(), [](const Json& change) {
    return change["input"] == "photosites";
  });
  REQUIRE(fewer != changed.end());
  CHECK((*fewer)["value"] == "6000000");
  CHECK((*fewer)["patch"][0]["pointer"] == "/commission/photosites");
  CHECK((*fewer)["patch"][0]["value"] == "6000000");
}

TEST_CASE("a range is written as one, what does not exist as null") {
  Catalogue catalogue = small_catalogue();
  TableForm table;
  table.rows.push_back({.width_pixels = 16, .height_pixels = 16, .rates = {}, .bytes = 1000});
  const auto add = [&](const char* id, CodecForm form) {
    Codec codec = catalogue.codecs.front();
    codec.id = id;
    codec.form = std::move(form);
    catalogue.codecs.push_back(codec);
  };
  add("table", table);
  add("range", LosslessForm{.bits_per_pixel = 12, .worst_ratio = 1, .best_ratio = 2});
  auto& codecs = catalogue.cameras.front().modes.front().recordings.front().codecs;
  codecs = {"range", "table"};
  Plan plan = small_plan();
  plan.format.codec = "range";
  const Ranking ranking = rank(plan, catalogue);
  const Json json = Json::parse(ranking_to_json(plan, ranking, {}, ranking.formats, {}, {}));
  CHECK(json["formats"][0]["data_rate_megabits_per_s"]["least"] == 1728);
  CHECK(json["formats"][0]["data_rate_megabits_per_s"]["most"] == 3456);
  CHECK(json["formats"][1]["data_rate_megabits_per_s"].is_null());
  CHECK(json["formats"][1]["minutes_per_card"].is_null());
  CHECK_FALSE(json["formats"][0].contains("changes"));
}

TEST_CASE("an empty ranking is still a document") {
  const Json json = Json::parse(ranking_to_json(Plan{}, {}, {}, {}, {}, {}));
  CHECK(json["formats"].empty());
}

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> found(1);
  for (const char c : line) {
    if (c == ',') {
      found.emplace_back();
    } else {
      found.back() += c;
    }
  }
  return found;
}

TEST_CASE("the ranking as CSV: one line of names, one line for each format") {
  const Ranking ranking = rank(with_mandate(), two_cameras());
  const std::string text = ranking_to_csv(ranking.formats);
  std::vector<std::vector<std::string>> rows;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text.find("\r\n", at);
    REQUIRE(end != std::string::npos);
    rows.push_back(cells(text.substr(at, end - at)));
    at = end + 2;
  }
  REQUIRE(rows.size() == 3);
  CHECK(rows[1].size() == rows[0].size());
  CHECK(rows[2].size() == rows[0].size());
  const auto cell = [&](std::size_t row, const std::string& name) {
    const auto column = std::find(rows[0].begin(), rows[0].end(), name);
    REQUIRE(column != rows[0].end());
    return rows[row][static_cast<std::size_t>(column - rows[0].begin())];
  };
  CHECK(cell(1, "place") == "1");
  CHECK(cell(1, "accepted") == "yes");
  CHECK(cell(1, "camera") == "camera");
  CHECK(cell(1, "frame_area_mm2") == "288");
  CHECK(cell(1, "data_rate_most_megabits_per_s") == "3456");
  CHECK(cell(1, "margin_photosites_photosites") == "4000000");
  CHECK(cell(1, "failed").empty());
  CHECK(cell(2, "place").empty());
  CHECK(cell(2, "camera") == "narrow");
  CHECK(cell(2, "margin_photosites_photosites") == "-2000000");
  CHECK(cell(2, "margin_mode_rate_fps") == "36");
  CHECK(cell(2, "margin_desqueeze_times").empty());
  CHECK(cell(2, "failed") == "photosites");
}

TEST_CASE("a reason says what there is, what is needed and how much is short, never too little") {
  struct Row {
    Requirement requirement;
    double have;
    double need;
    const char* text;
  };
  constexpr Row kRows[] = {
      {Requirement::cover, 28.2, 31.1,
       "Image circle: 28.20 mm, 31.10 mm needed; 1.45 mm short at the corner"},
      {Requirement::photosites, 2346202.4, 8294400,
       "Photosites: 2 346 202, 8 294 400 needed; 5 948 198 short"},
      {Requirement::upscaling, 1.98, 1.12, "Upscaling: 1.980 x, at most 1.120 x; 0.860 x too much"},
      {Requirement::chroma, 0, 1, "Chroma: 4:2:0, 4:2:2 needed"},
      {Requirement::sensor_raw, 0, 1, "Raw of the sensor: a picture, not raw"},
      {Requirement::desqueeze, 2, 1,
       "De-squeeze in camera by the lens's squeeze: 2.00 x, 1.00 x needed"},
      {Requirement::card_speed, 0.7961, 1,
       "Card speed over data rate: 0.796 x, 1.000 x needed; 0.204 x short"},
      {Requirement::card_speed, 0.99996, 1,
       "Card speed over data rate: 0.99996 x, 1.00000 x needed; 0.00004 x short"},
      {Requirement::frame_size, 0, 1,
       "Frame size of the codec: none for this raster, rate or card"},
      {Requirement::media, 0, 1, "Card: of a kind that the camera does not take"},
      {Requirement::plays_at_once, 0, 1, "Played in the edit: after converting, not at once"},
      {Requirement::mode_rate, 50, 60,
       "Highest rate of the mode: 50.000 fps, 60.000 fps needed; 10.000 fps short"},
  };
  for (const Row& row : kRows) {
    const Finding finding{.have = row.have, .need = row.need, .met = Met::missed};
    CHECK(reason_text(row.requirement, finding) == row.text);
  }
}

TEST_CASE("a requirement is told with what there is and what is asked for") {
  struct Row {
    Requirement requirement;
    Finding finding;
    const char* text;
  };
  const Row rows[] = {
      {Requirement::card_speed,
       {.have = 4.3547, .need = 1, .met = Met::met},
       "met: 4.355 x, at least 1.000 x; 3.355 x to spare"},
      {Requirement::upscaling,
       {.have = 1.98, .need = 1.12, .met = Met::missed},
       "missed: 1.980 x, at most 1.120 x; 0.860 x too much"},
      {Requirement::desqueeze,
       {.have = 2, .need = 2, .met = Met::met},
       "met: 2.00 x, exactly 2.00 x"},
      {Requirement::chroma, {.have = 1, .need = 1, .met = Met::met}, "met: 4:2:2, at least 4:2:2"},
      {Requirement::media, {.have = 1, .need = 1, .met = Met::met}, "met: the camera takes it"},
      {Requirement::sensor_raw,
       {.have = 0, .need = 1, .met = Met::missed},
       "missed: a picture, not raw"},
      {Requirement::lossless,
       {.need = 1, .met = Met::not_known},
       "not known: lossless is asked for"},
  };
  for (const Row& row : rows) CHECK(finding_text(row.requirement, row.finding) == row.text);
}

TEST_CASE("the sign of a margin is the verdict, even where doubles cannot tell") {
  const Finding missed{.have = 8e6, .need = 8e6, .met = Met::missed};
  const Finding met{.have = 8e6, .need = 8e6 + 1e-9, .met = Met::met};
  CHECK(margin(Requirement::photosites, missed) < 0);
  CHECK(margin(Requirement::photosites, met) == 0);
}

}  // namespace
}  // namespace widegate
