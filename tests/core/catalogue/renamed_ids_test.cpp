// Ids that rows once had go on opening: in plans, links, libraries and on the command line.
#include "core/catalogue/renamed_ids.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/handover/link/link.h"
#include "core/plan/plan_fields.h"
#include "core/plan/plan_json.h"

using namespace widegate;

namespace {

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value();
  return kLibrary;
}

struct Row {
  std::string once, today;
};
const Row kRows[] = {{"vc-3-444-12", "vc-3-1270"},
                     {"vc-3-hqx", "vc-3-1271"},
                     {"vc-3-hq", "vc-3-1272"},
                     {"vc-3-sq", "vc-3-1273"},
                     {"vc-3-lb", "vc-3-1274"}};

/// A camera of one's own whose one recording option has these codecs.
std::string camera(const std::string& codecs) {
  return R"("cameras": [{"id": "c", "name": "C", "source": "test", "width_photosites": 4000,
      "height_photosites": 2000, "pitch_um": 5, "modes": [{"id": "m", "name": "M",
      "width_photosites": 4000, "height_photosites": 2000, "recordings": [
      {"id": "r", "name": "R", "codecs": [)" +
         codecs + "]}]}]}]";
}

}  // namespace

TEST_CASE("today's ids are rows of the library, the old ones are not") {
  for (const Row& row : kRows) {
    CAPTURE(row.once);
    CHECK(current_codec_id(row.once) == row.today);
    CHECK(current_codec_id(row.today) == row.today);
    CHECK(find_row(library().codecs, row.today) != nullptr);
    CHECK(find_row(library().codecs, row.once) == nullptr);
  }
  CHECK(current_codec_id("dpx-10") == "dpx-10");
  CHECK(current_codec_id("").empty());
}

TEST_CASE("plans with an old id open: as a document, from a link, typed") {
  for (const Row& row : kRows) {
    CAPTURE(row.once);
    const auto read = plan_from_json(
        R"({"widegate_plan": 1, "format": {"recording": "resample-4096", "codec": ")" + row.once +
            R"("}})",
        library());
    REQUIRE(read.has_value());
    CHECK(read->format.codec == row.today);

    Plan old = *read;
    old.format.codec = row.once;
    const auto opened = plan_from_link(plan_to_link(old), library());
    REQUIRE(opened.has_value());
    CHECK(*opened == *read);

    const auto typed = with_field(*read, "/format/codec", row.once, library());
    REQUIRE(typed.has_value());
    CHECK(*typed == *read);
  }
}

TEST_CASE("cameras and codecs of one's own with old ids come in, on their own and in a plan") {
  const std::string rows = camera(R"("vc-3-hqx", "dpx-10", "vc-3-lb")") +
                           R"(, "codecs": [{"id": "vc-3-lb", "name": "Mine", "source": "test",
                               "bit_rate": {"bits_per_s": 40000000}}])";
  const auto own = catalogue_from_json(R"({"widegate_catalogue": 1, )" + rows + "}", library());
  REQUIRE(own.has_value());
  CHECK(own->cameras[0].modes[0].recordings[0].codecs ==
        std::vector<std::string>{"vc-3-1271", "dpx-10", "vc-3-1274"});
  CHECK(own->codecs[0].id == "vc-3-1274");

  const auto plan = plan_from_json(
      R"({"widegate_plan": 1, "format": {"camera": "c", "mode": "m", "recording": "r",
          "codec": "vc-3-lb"}, "own": {)" +
          rows + "}}",
      library());
  REQUIRE(plan.has_value());
  CHECK(plan->own == *own);
  CHECK(plan->format.codec == "vc-3-1274");

  Plan old = *plan;
  old.format.codec = "vc-3-lb";
  old.own.codecs[0].id = "vc-3-lb";
  old.own.cameras[0].modes[0].recordings[0].codecs = {"vc-3-hqx", "dpx-10", "vc-3-lb"};
  const auto opened = plan_from_link(plan_to_link(old), library());
  REQUIRE(opened.has_value());
  CHECK(*opened == *plan);
}

TEST_CASE("an option that would name a codec twice names it once, what is written twice is told") {
  const auto both = catalogue_from_json(
      R"({"widegate_catalogue": 1, )" + camera(R"("vc-3-hqx", "vc-3-1271")") + "}", library());
  REQUIRE(both.has_value());
  CHECK(both->cameras[0].modes[0].recordings[0].codecs == std::vector<std::string>{"vc-3-1271"});
  const auto twice = catalogue_from_json(
      R"({"widegate_catalogue": 1, )" + camera(R"("vc-3-1271", "vc-3-1271")") + "}", library());
  REQUIRE_FALSE(twice.has_value());
  CHECK(twice.error().front().accepted == "each codec once");
}
