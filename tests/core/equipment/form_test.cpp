// Amounts as they are typed, measured codecs, and the form for equipment of one's own.
#include "core/equipment/form.h"

#include <doctest/doctest.h>

#include "core/catalogue/catalogue_check.h"
#include "core/catalogue/catalogue_json.h"
#include "core/catalogue/merge.h"
#include "core/equipment/measured_codec.h"
#include "core/equipment/typed_amount.h"
#include "core/plan/plan_check.h"
#include "core/report/evaluate.h"
#include "tests/core/support/random_plans.h"

namespace {

using namespace widegate;

const Catalogue& library() {
  static const Catalogue kLibrary = built_in_catalogue().value_or(Catalogue{});
  return kLibrary;
}

/// A form with these texts put in; every pointer must be one of the form's.
OwnForm filled(OwnKind kind, const std::vector<std::pair<const char*, const char*>>& texts) {
  OwnForm form = blank_form(kind);
  for (const auto& entry : texts) {
    const auto& pointer = entry.first;
    const auto& text = entry.second;
    CAPTURE(pointer);
    CHECK(set_form_text(form, pointer, text));
  }
  return form;
}

OwnForm small_camera() {
  return filled(OwnKind::camera, {{"/name", "Hazel"},
                                  {"/width_photosites", "4992"},
                                  {"/height_photosites", "3 744"},
                                  {"/pitch_um", "5,4"},
                                  {"/max_rate", "59.94"},
                                  {"/modes/0/recordings/0/codecs", "bayer-12-packed"}});
}

std::string problem_at(const OwnForm& form, std::string_view pointer) {
  const auto row = row_from_form(form, library());
  if (row) return "none";
  for (const Problem& problem : row.error()) {
    if (problem.pointer == pointer) return problem.value + " | " + problem.accepted;
  }
  return "elsewhere: " + to_line(row.error().front());
}

/// Blanks at the ends of a text are not kept by a form.
Catalogue with_plain_texts(Catalogue own) {
  const auto plain = [](auto& rows) {
    for (auto& row : rows) row.name = row.source = "Plain";
  };
  plain(own.cards);
  plain(own.drives);
  plain(own.tapes);
  plain(own.links);
  plain(own.commissions);
  own.cards.front().guarantee = "VPG400";
  return own;
}

struct AmountRow {
  const char* text;
  AmountUnit unit;
  std::int64_t value;  ///< Bytes, bytes a second, seconds; -1: not understood.
};
const AmountRow kAmounts[] = {
    {"512", AmountUnit::gigabytes, 512'000'000'000},
    {"11.2 GB", AmountUnit::gigabytes, 11'200'000'000},
    {"1,5TB", AmountUnit::gigabytes, 1'500'000'000'000},
    {"1 GiB", AmountUnit::gigabytes, 1'073'741'824},
    {"700 MB", AmountUnit::gigabytes, 700'000'000},
    {"12345 B", AmountUnit::gigabytes, 12'345},
    {"8 Gb/s", AmountUnit::megabytes_per_s, 1'000'000'000},
    {"1400", AmountUnit::megabytes_per_s, 1'400'000'000},
    {"100 Mbit/s", AmountUnit::megabits_per_s, 12'500'000},
    {"100", AmountUnit::megabits_per_s, 12'500'000},
    {"1", AmountUnit::minutes, 60},
    {"30 s", AmountUnit::minutes, 30},
    {"1:30", AmountUnit::minutes, 90},
    {"2 h", AmountUnit::minutes, 7200},
    {"1:75", AmountUnit::minutes, -1},
    {"1:5", AmountUnit::minutes, -1},
    {":30", AmountUnit::minutes, -1},
    {"1:30 min", AmountUnit::minutes, -1},
    {"8 Gb", AmountUnit::gigabytes, -1},
    {"8 GB/s", AmountUnit::gigabytes, -1},
    {"-8", AmountUnit::gigabytes, -1},
    {"GB", AmountUnit::gigabytes, -1},
    {"", AmountUnit::gigabytes, -1},
    {"1e9", AmountUnit::gigabytes, -1},
    {"1.2.3", AmountUnit::gigabytes, -1},
    {"99999999999999999999", AmountUnit::gigabytes, -1},
    {"9999999999999999 TB", AmountUnit::gigabytes, -1},
};

}  // namespace

TEST_CASE("sizes, speeds and times as they are typed") {
  for (const AmountRow& row : kAmounts) {
    CAPTURE(row.text);
    const auto value = parse_amount(row.text, row.unit);
    CHECK(value.has_value() == (row.value >= 0));
    if (value) CHECK(*value == Rational(row.value));
  }
  CHECK(amount_scale(AmountUnit::gigabytes) == Rational(1'000'000'000));
}

TEST_CASE("thousands may be set apart in whole numbers, and nothing else may") {
  for (const char* good : {"4992", "4 992", "4,992", "4.992", "4'992", " 4992 "}) {
    CHECK(parse_grouped(good) == 4992);
  }
  CHECK(parse_grouped("1,234,567") == 1'234'567);
  for (const char* bad : {"", "4,99", "4,9922", "49922,000", "1,234.567", ",992", "4,,992", "-4992",
                          "4992 px", "4 992 ,000"}) {
    CAPTURE(bad);
    CHECK_FALSE(parse_grouped(bad).has_value());
  }
}

TEST_CASE("one minute was 11.2 GB") {
  CHECK(frames_in(60, 24) == 1440);
  CHECK(frames_in(60, Rational(24000, 1001)) == 1439);
  CHECK(frames_in(Rational(1, 100), 24) == 0);
  const auto form = measured_form({11'200'000'000, 60, 24, 3840, 2160});
  REQUIRE(form.has_value());
  const auto frame = bytes_per_frame(*form, 3840, 2160, 24);
  REQUIRE(frame.has_value());
  CHECK(frame->most == 7'777'778);
  CHECK(bits_per_second(7'777'778, 24) == Rational(1'493'333'376));
  CHECK(bytes_per_frame(*form, 1920, 1080, 24)->most == 1'944'445);
  CHECK(measured_form({0, 60, 24, 3840, 2160}).error().front().pointer == "/bytes");
  CHECK(measured_form({1, 0, 24, 3840, 2160}).error().front().pointer == "/seconds");
  CHECK(measured_form({1, Rational(1, 100), 24, 3840, 2160}).error().front().pointer == "/seconds");
  CHECK(measured_form({1, 60, Rational(0, 0), 3840, 2160}).error().front().pointer == "/rate");
  CHECK(measured_form({1, 60, 24, 3, 0}).error().size() == 2);
}

TEST_CASE("a camera from what a sheet prints") {
  const auto row = row_from_form(small_camera(), library());
  REQUIRE_MESSAGE(row.has_value(), to_line(row.error().front()));
  const Camera& camera = row->cameras.front();
  CHECK(camera.id == "hazel");
  CHECK(camera.width_photosites == 4992);
  CHECK(camera.height_photosites == 3744);
  CHECK(camera.width_mm == 26.9568);
  CHECK(camera.modes.front().name == "Whole sensor");
  CHECK(camera.modes.front().max_rate == Rational(60000, 1001));
  CHECK(camera.modes.front().recordings.front().name == "As read");
  Plan plan;
  plan.format = {"hazel", "whole-sensor", "as-read", "bayer-12-packed"};
  plan.own = *row;
  CHECK(check_plan(plan, library()).empty());
  CHECK(evaluate(plan, library()).mode.width_photosites == 4992);
  CHECK(row_findings(*row).front().find("5.40 µm apart, 26.96 × 20.22 mm") != std::string::npos);
}

TEST_CASE("whichever two of photosites, millimetres and pitch are known give the third") {
  OwnForm form = small_camera();
  set_form_text(form, "/pitch_um", "");
  CHECK(problem_at(form, "/width_mm").find("two of photosites") != std::string::npos);
  set_form_text(form, "/width_mm", "26.96");
  set_form_text(form, "/height_mm", "20.22");
  const auto by_mm = row_from_form(form, library());
  REQUIRE(by_mm.has_value());
  CHECK(by_mm->cameras.front().width_mm == 26.96);
  set_form_text(form, "/width_photosites", "");
  set_form_text(form, "/height_photosites", "");
  CHECK(problem_at(form, "/width_photosites").find("two of photosites") != std::string::npos);
  set_form_text(form, "/pitch_um", "5.4");
  const auto by_pitch = row_from_form(form, library());
  REQUIRE(by_pitch.has_value());
  CHECK(by_pitch->cameras.front().width_photosites == 4993);
  CHECK(by_pitch->cameras.front().modes.front().width_photosites == 4993);
}

TEST_CASE("a contradiction is pointed out with both numbers") {
  OwnForm form = small_camera();
  set_form_text(form, "/width_mm", "36");
  const std::string said = problem_at(form, "/width_mm");
  CHECK(said.find("36") == 0);
  CHECK(said.find("26.9568") != std::string::npos);
  form = small_camera();
  set_form_text(form, "/pitch_um", "");
  set_form_text(form, "/width_mm", "36");
  set_form_text(form, "/height_mm", "24");
  const std::string square = problem_at(form, "/height_mm");
  CHECK(square.find("24") == 0);
  CHECK(square.find("27.00 mm") != std::string::npos);
  CHECK(square.find("7.21 µm apart across and 6.41 µm down") != std::string::npos);
}

TEST_CASE("what is wrong is named by field, value and what is accepted") {
  struct Row {
    const char* pointer;
    const char* text;
    const char* words;
  };
  const Row rows[] = {
      {"/name", "", "nothing | a text of 1 to 80"},
      {"/name", "Alder, 35 mm size", "no other camera"},
      {"/name", "two\nlines", "a text of 1 to 80"},
      {"/width_photosites", "wide", "\"wide\" | a whole number from 16 to 65535"},
      {"/width_photosites", "70000", "\"70000\" | a whole number from 16 to 65535"},
      {"/pitch_um", "0", "a number from 0.5 to 100 µm"},
      {"/pitch_um", "NaN", "a number from 0.5 to 100 µm"},
      {"/max_rate", "0/0", "a number from 0.01 to 10000 fps"},
      {"/modes/0/width_photosites", "5000", "at most the sensor's 4992"},
      {"/modes/0/recordings/0/desqueeze", "2", "a raster of its own"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.pointer);
    CAPTURE(row.text);
    OwnForm form = small_camera();
    REQUIRE(set_form_text(form, row.pointer, row.text));
    CHECK_MESSAGE(problem_at(form, row.pointer).find(row.words) != std::string::npos,
                  problem_at(form, row.pointer));
  }
  OwnForm form = small_camera();
  set_form_text(form, "/modes/0/recordings/0/width_pixels", "1920");
  CHECK(problem_at(form, "/modes/0/recordings/0/height_pixels").find("both sides") !=
        std::string::npos);
  form = small_camera();
  REQUIRE(press_form(form, "/modes/0/recordings/0/codecs/0/-"));
  CHECK(problem_at(form, "/modes/0/recordings/0/codecs") == "nothing | a codec");
  REQUIRE(set_form_text(form, "/modes/0/recordings/0/codecs", "no-such-codec"));
  CHECK(problem_at(form, "/modes/0/recordings/0/codecs").find("no-such-codec") !=
        std::string::npos);
}

TEST_CASE("codecs, cards and lens sets from their sheets") {
  const OwnForm clip = filled(OwnKind::codec, {{"/name", "Test clip"},
                                               {"/bytes", "11.2"},
                                               {"/seconds", "1 min"},
                                               {"/rate", "24"},
                                               {"/width_pixels", "3840"},
                                               {"/height_pixels", "2160"}});
  const auto codec = row_from_form(clip, library());
  REQUIRE_MESSAGE(codec.has_value(), to_line(codec.error().front()));
  CHECK(codec->codecs.front().form == CodecForm(MeasuredForm{11'200'000'000, 1440, 3840, 2160}));
  OwnForm frames = clip;
  set_form_text(frames, "/frames", "1500");
  CHECK(problem_at(frames, "/frames").find("1440") != std::string::npos);
  const auto rate = row_from_form(
      filled(OwnKind::codec, {{"/name", "R"}, {"/way", "bit_rate"}, {"/bits_per_s", "100"}}),
      library());
  REQUIRE(rate.has_value());
  CHECK(rate->codecs.front().form == CodecForm(BitRateForm{100'000'000}));
  CHECK(problem_at(filled(OwnKind::codec, {{"/name", "R"}, {"/way", "guess"}}), "/way")
            .find("guess") != std::string::npos);
  const auto card = row_from_form(filled(OwnKind::card, {{"/name", "Card of the truck"},
                                                         {"/capacity_bytes", "1 TB"},
                                                         {"/write_bytes_per_s", "400"},
                                                         {"/usable_share", "95 %"},
                                                         {"/price", "199,90"}}),
                                  library());
  REQUIRE_MESSAGE(card.has_value(), to_line(card.error().front()));
  CHECK(card->cards.front().capacity_bytes == 1'000'000'000'000);
  CHECK(card->cards.front().read_bytes_per_s == 400'000'000);
  CHECK(card->cards.front().usable_share == Rational(19, 20));
  CHECK(card->cards.front().price == 199.9);
  OwnForm set = filled(OwnKind::lens_set, {{"/name", "Rental"},
                                           {"/squeeze", "2"},
                                           {"/lenses/0/focal_mm", "40"},
                                           {"/lenses/0/image_circle_mm", "33"},
                                           {"/lenses/0/widest_t_stop", "2.3"},
                                           {"/lenses/0/close_focus_m", "0.8"}});
  REQUIRE(press_form(set, "/lenses/+"));
  REQUIRE(set_form_text(set, "/lenses/1/focal_mm", "50"));
  const auto lenses = row_from_form(set, library());
  REQUIRE_MESSAGE(lenses.has_value(), to_line(lenses.error().front()));
  CHECK(lenses->lens_sets.front().lenses[1].image_circle_mm == 33);
  set_form_text(set, "/lenses/1/focal_mm", "35");
  CHECK(problem_at(set, "/lenses/1/focal_mm").find("more than the 40") != std::string::npos);
}

TEST_CASE("facts are asked for, and each may be left not known") {
  OwnForm form =
      filled(OwnKind::codec, {{"/name", "R"}, {"/way", "bit_rate"}, {"/bits_per_s", "100"}});
  CHECK(row_from_form(form, library())->codecs.front().facts == CodecFacts{});
  set_form_text(form, "/facts/bit_depth", "10");
  set_form_text(form, "/facts/chroma", "4:2:2");
  set_form_text(form, "/facts/lossless", "false");
  set_form_text(form, "/facts/plays_at_once", "true");
  set_form_text(form, "/facts/source", "its sheet");
  const auto codec = row_from_form(form, library());
  REQUIRE_MESSAGE(codec.has_value(), to_line(codec.error().front()));
  const CodecFacts& facts = codec->codecs.front().facts;
  CHECK(facts.bit_depth == 10);
  CHECK(facts.chroma == Chroma::c422);
  CHECK(facts.lossless == false);
  CHECK_FALSE(facts.intra.has_value());
  CHECK(facts.plays_at_once == true);
  CHECK(facts.facts_source == "its sheet");
  set_form_text(form, "/facts/bit_depth", "ten");
  CHECK(problem_at(form, "/facts/bit_depth") == "\"ten\" | a whole number from 1 to 32 bit");
  set_form_text(form, "/facts/bit_depth", "33");
  CHECK(problem_at(form, "/facts/bit_depth") == "\"33\" | a whole number from 1 to 32 bit");
  set_form_text(form, "/facts/bit_depth", "");
  set_form_text(form, "/facts/chroma", "4:1:1");
  CHECK(problem_at(form, "/facts/chroma").find("one of 4:2:0, 4:2:2, 4:4:4, raw") !=
        std::string::npos);
}

TEST_CASE("what advice needs of cameras, cards and lenses is asked for too") {
  OwnForm form = small_camera();
  CHECK(row_from_form(form, library())->cameras.front().media.empty());
  CHECK(set_form_text(form, "/media", "sd"));
  CHECK(set_form_text(form, "/media", "rowan"));
  CHECK_FALSE(set_form_text(form, "/media", "sd"));
  CHECK_FALSE(set_form_text(form, "/media", "SD card"));
  CHECK(set_form_text(form, "/read_out_ms", "12.5"));
  CHECK(set_form_text(form, "/modes/0/squeeze", "1.8"));
  CHECK(set_form_text(form, "/modes/0/binned", "true"));
  const auto row = row_from_form(form, library());
  REQUIRE_MESSAGE(row.has_value(), to_line(row.error().front()));
  const Camera& camera = row->cameras.front();
  CHECK(camera.media == std::vector<std::string>{"sd", "rowan"});
  CHECK(camera.read_out_ms == 12.5);
  CHECK(camera.medium == Medium::digital);
  CHECK(camera.modes.front().squeeze == Rational(9, 5));
  CHECK(camera.modes.front().binned);
  REQUIRE(press_form(form, "/media/0/-"));
  CHECK(row_from_form(form, library())->cameras.front().media == std::vector<std::string>{"rowan"});

  set_form_text(form, "/medium", "film");
  set_form_text(form, "/film/frames_per_foot", "64/3");
  const auto film = row_from_form(form, library());
  REQUIRE_MESSAGE(film.has_value(), to_line(film.error().front()));
  CHECK(film->cameras.front().medium == Medium::film);
  CHECK(film->cameras.front().film.frames_per_foot == Rational(64, 3));
  CHECK(film->cameras.front().max_rate == Rational(60000, 1001));
  CHECK_FALSE(film->cameras.front().modes.front().max_rate.has_value());

  OwnForm card = filled(
      OwnKind::card,
      {{"/name", "Card of the truck"}, {"/capacity_bytes", "1 TB"}, {"/write_bytes_per_s", "400"}});
  CHECK(row_from_form(card, library())->cards.front().kind.empty());
  set_form_text(card, "/kind", "express-b");
  CHECK(row_from_form(card, library())->cards.front().kind == "express-b");
  const auto items = form_items(card, library());
  const auto kind = std::find_if(items.begin(), items.end(),
                                 [](const FormItem& item) { return item.pointer == "/kind"; });
  REQUIRE(kind != items.end());
  REQUIRE(kind->choices.size() == 7);
  CHECK(kind->choices.front().value.empty());
  CHECK(kind->choices.back().label == "A kind of its own");
  set_form_text(card, "/kind", kind->choices.back().value);
  CHECK(row_from_form(card, library())->cards.front().kind == "card-of-the-truck");

  OwnForm set = filled(OwnKind::lens_set, {{"/name", "Rental"},
                                           {"/extenders", "1,4 2"},
                                           {"/lenses/0/focal_mm", "40"},
                                           {"/lenses/0/image_circle_mm", "33"},
                                           {"/lenses/0/widest_t_stop", "2.3"},
                                           {"/lenses/0/close_focus_m", "0.8"}});
  const auto lenses = row_from_form(set, library());
  REQUIRE_MESSAGE(lenses.has_value(), to_line(lenses.error().front()));
  CHECK(lenses->lens_sets.front().extenders == std::vector<Rational>{Rational(7, 5), 2});
  set_form_text(set, "/extenders", "1.4, 9");
  CHECK(problem_at(set, "/extenders").find("each from 1/4 to 4") != std::string::npos);
  set_form_text(set, "/extenders", "1");
  CHECK(problem_at(set, "/extenders").find("not 1") != std::string::npos);
}

TEST_CASE("modes and recording options are added and taken out, and never below one") {
  OwnForm form = small_camera();
  CHECK_FALSE(press_form(form, "/modes/0/-"));
  REQUIRE(press_form(form, "/modes/+"));
  CHECK(form.root.parts[1].parts[0].ids == std::vector<std::string>{"bayer-12-packed"});
  REQUIRE(set_form_text(form, "/modes/1/height_photosites", "2808"));
  const auto row = row_from_form(form, library());
  REQUIRE(row.has_value());
  CHECK(row->cameras.front().modes[1].id == "4992-2808");
  REQUIRE(press_form(form, "/modes/1/recordings/+"));
  REQUIRE(press_form(form, "/modes/1/recordings/0/-"));
  REQUIRE(press_form(form, "/modes/1/-"));
  CHECK(form == small_camera());
  for (int i = 0; i < 100; ++i) press_form(form, "/modes/+");
  CHECK(form.root.parts.size() < 100);
  for (const char* junk : {"", "/", "modes/+", "/modes", "/modes/x/-", "/modes/99/-", "/modes/-1/-",
                           "/modes/0/recordings/0/codecs/9/-", "/name/-", "/modes/+/+"}) {
    CAPTURE(junk);
    OwnForm same = form;
    CHECK_FALSE(press_form(same, junk));
    CHECK(same == form);
    CHECK_FALSE(set_form_text(same, junk, "1"));
    CHECK(same == form);
  }
}

TEST_CASE("every input and press of a form does something, and only they") {
  for (int kind = 0; kind <= static_cast<int>(OwnKind::commission); ++kind) {
    OwnForm form = blank_form(static_cast<OwnKind>(kind));
    for (const FormItem& item : form_items(form, library())) {
      CAPTURE(item.pointer);
      OwnForm copy = form;
      if (item.type == FormItem::Type::input) {
        const std::string text = item.input == FormInput::choice ? item.choices.back().value : "7";
        CHECK(set_form_text(copy, item.pointer, text));
        CHECK_FALSE(item.label.empty());
      } else if (item.type == FormItem::Type::press) {
        CHECK(press_form(copy, item.pointer));
      }
    }
    CHECK_FALSE(row_from_form(form, library()).has_value());
    form.root.texts.pop_back();
    CHECK_FALSE(row_from_form(form, library()).has_value());
  }
}

TEST_CASE("a commission from its written requirements, one answer at a time") {
  OwnForm form = blank_form(OwnKind::commission);
  CHECK(problem_at(form, "/name") == "nothing | a text of 1 to 80 letters");
  form = filled(OwnKind::commission, {{"/name", "Estuary"},
                                      {"/photosites", "8 294 400"},
                                      {"/recorded_width_pixels", "3840"},
                                      {"/recorded_height_pixels", "2160"},
                                      {"/largest_upscaling", "1.05"},
                                      {"/bit_depth", "10"},
                                      {"/chroma", "4:2:2"},
                                      {"/sensor_raw", "refused"},
                                      {"/intra", "true"},
                                      {"/protection", "5"},
                                      {"/rates", "23.976 25"}});
  const auto made = row_from_form(form, library());
  REQUIRE_MESSAGE(made.has_value(), to_line(made.error().front()));
  const Commission& row = made->commissions.front();
  CHECK(row.id == "estuary");
  CHECK(row.source == "the commissioner's written requirements");
  CHECK_FALSE(row.follows_deliverable);
  CHECK(row.terms.photosites == 8'294'400);
  CHECK(row.terms.largest_upscaling == Rational(21, 20));
  CHECK(row.terms.chroma == Chroma::c422);
  CHECK(row.terms.sensor_raw == Wish::refused);
  CHECK(row.terms.protection == Rational(1, 20));
  CHECK_FALSE(row.terms.compression.has_value());
  CHECK(row.rates == std::vector<Rational>{Rational(24000, 1001), 25});
  Plan plan;
  plan.own = *made;
  plan.commission.id = "estuary";
  plan.run.project_rate = plan.run.sensor_rate = 25;
  const Report report = evaluate(plan, library());
  REQUIRE(report.problems.empty());
  CHECK(report.commission.name == "Estuary");
  CHECK(report.commission.findings.missed(Requirement::sensor_raw));
  CHECK_FALSE(report.commission.findings.missed(Requirement::project_rate));
  CHECK(problem_at(filled(OwnKind::commission, {{"/name", "E"}, {"/rates", "24 none"}}), "/rates")
            .starts_with("\"24 none\" | numbers such as 24 25 23.976"));
}

TEST_CASE("a row opened in a form and closed again is the same row") {
  const auto same_again = [](const Catalogue& rows, OwnKind kind, const std::string& id) {
    CAPTURE(id);
    const auto form = form_of_row(rows, kind, id);
    REQUIRE(form.has_value());
    const auto again = row_from_form(*form, rows);
    REQUIRE_MESSAGE(again.has_value(), to_line(again.error().front()));
    return *again;
  };
  for (const Camera& camera : library().cameras) {
    CHECK(same_again(library(), OwnKind::camera, camera.id).cameras.front() == camera);
  }
  for (const LensSet& set : library().lens_sets) {
    CHECK(same_again(library(), OwnKind::lens_set, set.id).lens_sets.front() == set);
  }
  for (const Card& card : library().cards) {
    CHECK(same_again(library(), OwnKind::card, card.id).cards.front() == card);
  }
  for (const Drive& drive : library().drives) {
    CHECK(same_again(library(), OwnKind::drive, drive.id).drives.front() == drive);
  }
  for (const Codec& codec : library().codecs) {
    const auto form = form_of_row(library(), OwnKind::codec, codec.id);
    const bool typed = std::holds_alternative<RatioForm>(codec.form) ||
                       std::holds_alternative<BitRateForm>(codec.form) ||
                       std::holds_alternative<MeasuredForm>(codec.form);
    CHECK(form.has_value() == typed);
    if (typed) CHECK(same_again(library(), OwnKind::codec, codec.id).codecs.front() == codec);
  }
  for (const Commission& row : library().commissions) {
    CHECK(same_again(library(), OwnKind::commission, row.id).commissions.front() == row);
  }
  CHECK_FALSE(form_of_row(library(), OwnKind::camera, "elm").has_value());
  const auto copy = row_from_form(
      as_new_form(*form_of_row(library(), OwnKind::card, "express-b-512")), library());
  REQUIRE(copy.has_value());
  CHECK(copy->cards.front().id != "express-b-512");
}

TEST_CASE("random rows come back from their forms, and random texts never crash") {
  testing::Dice dice(20261125);
  constexpr auto kPieces = std::to_array<const char*>(
      {"",    "0", "1",    "24", "-3",   "4992",    "5.4", "1/0",    "9999999999999999999", "1e400",
       "NaN", "é", "\xff", "\"", "1:30", "11.2 GB", " ",   "2,39:1", "60000/1001",          "\n"});
  int came_back = 0;
  for (int i = 0; i < 2000; ++i) {
    const Catalogue own = with_plain_texts(testing::random_library(dice));
    const Catalogue all = merged_catalogue(library(), own);
    for (const OwnKind kind :
         {OwnKind::card, OwnKind::drive, OwnKind::tape, OwnKind::link, OwnKind::commission}) {
      const auto form = form_of_row(own, kind, "own-" + std::string(own_words(kind)));
      if (!form) continue;
      const auto again = row_from_form(*form, own);
      if (!again) continue;
      for (const LibraryChange& change : library_changes(own, *again)) {
        CHECK(change.change == RowChange::same);
        ++came_back;
      }
    }
    OwnForm form = blank_form(static_cast<OwnKind>(dice.whole(0, 7)));
    for (int change = 0; change < 30; ++change) {
      const auto items = form_items(form, all);
      const FormItem item = dice.pick(items);
      if (item.type == FormItem::Type::press) {
        press_form(form, item.pointer);
      } else {
        set_form_text(form, item.pointer, dice.pick(kPieces));
      }
    }
    const auto row = row_from_form(form, all);
    if (row) CHECK(check_catalogue(*row, all, "").empty());
  }
  CHECK(came_back > 2000);
}
