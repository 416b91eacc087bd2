// Verdicts: which notes a report deserves and how they read.
#include "core/report/notes.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>

#include "core/base/number_text.h"

namespace widegate {
namespace {

/// A report of which every requirement is met.
Report sound_report() {
  Report report;
  report.mode = {.width_photosites = 4000, .height_photosites = 3000};
  report.frames.emplace_back();
  report.cover.known = true;
  report.cover.image_circle_mm = 40;
  for (CoverFigures* area :
       {&report.cover.mode, &report.cover.protected_area, &report.cover.frame}) {
    area->covered = true;
    area->diagonal_mm = 30;
  }
  report.see.f_number = 2.8;
  report.see.focus_m = 10;
  ResolveReport& resolve = report.resolve;
  resolve.recorded_width_pixels = 4000;
  resolve.recorded_height_pixels = 3000;
  resolve.nominal_scale = 0.96;
  resolve.mandate = {.required = 8'294'400, .have = 12e6, .mode_have = 12e6, .frame_have = 9e6};
  report.commission.findings.set(Requirement::photosites,
                                 {.have = 12e6, .need = 8'294'400, .met = Met::met});
  report.run.project_rate = 24;
  report.run.sensor_rate = 24;
  report.run.rate_ceiling = Rational(60);
  report.run.shutter_deg = 172.8;
  report.run.flicker.lights = Lights::mains;
  report.run.flicker.pulses_hz = Rational(100);
  report.run.flicker.nearest_safe_shutters = {
      {.angle_deg = Rational(864, 5), .exact_deg = Rational(864, 5), .time_s = Rational(1, 50)}};
  report.store.write_headroom = {2, 2};
  report.store.copies = 3;
  report.store.cards_in_rotation = {.least = 3, .most = 4};
  return report;
}

std::vector<Note> notes_with(Topic topic, const Plan& plan, const Report& report) {
  std::vector<Note> notes = make_notes(plan, report);
  std::erase_if(notes, [topic](const Note& note) { return note.topic != topic; });
  return notes;
}

/// The one note about a topic.
Note note_about(Topic topic, const Plan& plan, const Report& report) {
  const auto notes = notes_with(topic, plan, report);
  REQUIRE(notes.size() == 1);
  return notes.front();
}

constexpr auto kQuestions =
    std::to_array<Question>({Question::frame, Question::cover, Question::see, Question::resolve,
                             Question::run, Question::store, Question::choose});

TEST_CASE("A sound report has only good verdicts, and the usual cautions") {
  const auto notes = make_notes(Plan{}, sound_report());
  for (const Note& note : notes) {
    CAPTURE(topic_key(note.topic));
    CHECK(note.severity == Severity::ok);
  }
  for (const Topic topic : {Topic::see_t_stop, Topic::resolve_written_requirements,
                            Topic::run_test_lights, Topic::store_two_copies}) {
    CHECK(topic_standing(topic));
    CHECK(std::any_of(notes.begin(), notes.end(),
                      [&](const Note& note) { return note.topic == topic; }));
  }
  for (const Question question : kQuestions) CHECK(worst_severity(notes, question) == Severity::ok);
}

TEST_CASE("Notes come in the order of the questions") {
  const auto notes = make_notes(Plan{}, sound_report());
  CHECK(std::is_sorted(notes.begin(), notes.end(), [](const Note& a, const Note& b) {
    return topic_question(a.topic) < topic_question(b.topic);
  }));
}

TEST_CASE("Every topic has a key of its own") {
  std::vector<std::string_view> keys;
  for (int i = 0; i <= static_cast<int>(Topic::resolve_written_requirements); ++i) {
    keys.push_back(topic_key(static_cast<Topic>(i)));
  }
  std::sort(keys.begin(), keys.end());
  CHECK(std::adjacent_find(keys.begin(), keys.end()) == keys.end());
  CHECK(keys.front() != "");
}

TEST_CASE("What must be covered decides between failure and caution") {
  struct Row {
    CoverArea must_cover;
    Severity frame, protected_area, mode;
  };
  for (const Row& row : std::to_array<Row>({
           {CoverArea::none, Severity::caution, Severity::caution, Severity::caution},
           {CoverArea::frame, Severity::fail, Severity::caution, Severity::caution},
           {CoverArea::protected_area, Severity::fail, Severity::fail, Severity::caution},
           {CoverArea::mode, Severity::fail, Severity::fail, Severity::fail},
       })) {
    Plan plan;
    plan.choose.must_cover = row.must_cover;
    Report report = sound_report();
    report.cover.image_circle_mm = 29;
    report.cover.frame.covered = false;
    report.cover.protected_area.covered = false;
    report.cover.mode.covered = false;
    CHECK(note_about(Topic::cover_frame, plan, report).severity == row.frame);
    CHECK(note_about(Topic::cover_protected, plan, report).severity == row.protected_area);
    CHECK(note_about(Topic::cover_mode, plan, report).severity == row.mode);
  }
}

TEST_CASE("An unknown circle is a caution and nothing else about cover") {
  Report report = sound_report();
  report.cover.known = false;
  const auto notes = make_notes(Plan{}, report);
  CHECK(worst_severity(notes, Question::cover) == Severity::caution);
  CHECK(notes_with(Topic::cover_frame, Plan{}, report).empty());
  CHECK(notes_with(Topic::cover_unknown, Plan{}, report).size() == 1);
}

/// A report in which one requirement is missed.
Report missing(Requirement requirement, double have, double need) {
  Report report = sound_report();
  report.commission.findings.set(requirement, {.have = have, .need = need, .met = Met::missed});
  return report;
}

TEST_CASE("Too few photosites are told, cut down to whole ones") {
  const Report report = missing(Requirement::photosites, 8'294'399.6, 8'294'400);
  const Note fail = note_about(Topic::resolve_mandate, Plan{}, report);
  CHECK(fail.severity == Severity::fail);
  CHECK(note_text(fail) == "8 294 399 photosites are counted; 8 294 400 are required: 1 too few.");
  CHECK(note_about(Topic::commission_missed, Plan{}, report).severity == Severity::fail);
}

TEST_CASE("A file that is too small is told once, whatever it is too small in") {
  Report report = missing(Requirement::raster_width, 2048, 3840);
  report.commission.findings.set(Requirement::raster_count,
                                 {.have = 2e6, .need = 8e6, .met = Met::missed});
  const Note fail = note_about(Topic::resolve_raster, Plan{}, report);
  CHECK(fail.have == 2048);
  CHECK(note_about(Topic::commission_missed, Plan{}, report).have == 2);
}

TEST_CASE("What is not known is a caution") {
  Report report = sound_report();
  report.commission.findings.set(Requirement::bit_depth, {.need = 10, .met = Met::not_known});
  CHECK(note_about(Topic::commission_unknown, Plan{}, report).severity == Severity::caution);
  CHECK(note_about(Topic::commission_missed, Plan{}, report).severity == Severity::ok);
}

TEST_CASE("Close range is told only where breathing shows, and is nothing wrong") {
  Report report = sound_report();
  report.see.magnification = 0.0118;  // 35 mm at 3 m
  CHECK(notes_with(Topic::see_close_range, Plan{}, report).empty());
  report.see.magnification = 0.0526;  // 50 mm at 1 m
  CHECK(note_about(Topic::see_close_range, Plan{}, report).severity == Severity::ok);
}

TEST_CASE("No mandate, no verdict on it") {
  Report report = sound_report();
  report.resolve.mandate = {};
  report.commission.findings = {};
  const Plan plan;
  CHECK(notes_with(Topic::resolve_mandate, plan, report).empty());
  CHECK(notes_with(Topic::resolve_written_requirements, plan, report).empty());
}

TEST_CASE("An enlargement by the rounding of rasters is not upscaling; one by a hundredth is") {
  Report report = sound_report();
  report.resolve.nominal_scale = 1.0004;  // 3840 x 2158 for 3840 x 2160
  CHECK(note_about(Topic::resolve_upscaled, Plan{}, report).severity == Severity::ok);
  report.resolve.nominal_scale = 1.005;
  CHECK(note_about(Topic::resolve_upscaled, Plan{}, report).severity == Severity::ok);
  report.resolve.nominal_scale = 1.01;
  CHECK(note_about(Topic::resolve_upscaled, Plan{}, report).severity == Severity::caution);
}

TEST_CASE("Squeeze left in the file, taken out, or taken out twice") {
  Report report = sound_report();
  report.mode.squeeze = 2;
  report.resolve.recorded_squeeze = 2;
  CHECK(note_about(Topic::resolve_squeeze_left, Plan{}, report).have == 2);
  report.resolve.recorded_squeeze = 1;
  CHECK(notes_with(Topic::resolve_squeeze_left, Plan{}, report).empty());
  report.mode.squeeze = 1;
  report.resolve.recorded_squeeze = 0.5;
  const Note mismatch = note_about(Topic::resolve_squeeze_mismatch, Plan{}, report);
  CHECK(mismatch.severity == Severity::fail);
  CHECK(
      note_text(mismatch) ==
      "This recording option de-squeezes 2.00 times but the lens squeezes 1.00 times: the picture "
      "comes out distorted.");
}

TEST_CASE("A recorded raster of another shape than its mode stretches the picture") {
  Report report = sound_report();
  CHECK(notes_with(Topic::resolve_raster_shape, Plan{}, report).empty());
  report.commission.cautions.add(Caution::other_shape);
  report.commission.raster_stretch = 4.0 / 3;
  const Note note = note_about(Topic::resolve_raster_shape, Plan{}, report);
  CHECK(note.severity == Severity::caution);
  CHECK(note.have == 4.0 / 3);
}

TEST_CASE("What a ranking warns of is a caution of the report") {
  struct Row {
    Caution caution;
    Topic topic;
    const char* text;
  };
  constexpr Row kRows[] = {
      {Caution::other_squeeze, Topic::resolve_other_squeeze,
       "This mode is shaped for a lens that squeezes 1.50 times; this one squeezes 2.00 times, so "
       "much of what is read lies outside the frame line."},
      {Caution::few_bits, Topic::resolve_few_bits,
       "The codec keeps 8 bits; with fewer than 10 a sky shows steps once it is graded."},
      {Caution::much_compressed, Topic::resolve_much_compressed,
       "The codec compresses 22.2∶1; beyond 11.0∶1 grain and fine detail suffer."},
      {Caution::binned, Topic::resolve_binned,
       "This mode joins photosites before they are read: less detail, and false patterns on fine "
       "cloth and roofs. Test it on such a subject."},
      {Caution::claimed_card, Topic::store_card_claim,
       "The card is said to write 2.00 times the data rate, but neither a standard's class nor the "
       "camera's maker vouches for it; full and warm a card may hold a third. Test it, or have "
       "3.00 times."},
  };
  for (const Row& row : kRows) {
    Report report = sound_report();
    CHECK(notes_with(row.topic, Plan{}, report).empty());
    report.commission.cautions.add(row.caution);
    report.commission.bit_depth = 8;
    report.commission.compression = 22.2;
    report.commission.made_for_squeeze = 1.5;
    report.mode.squeeze = 2;
    const Note note = note_about(row.topic, Plan{}, report);
    CHECK(note.severity == Severity::caution);
    CHECK(note_text(note) == row.text);
  }
}

TEST_CASE("A card that cannot be put in, and a recording that is not what was asked for") {
  Report report = sound_report();
  CHECK(notes_with(Topic::store_media, Plan{}, report).empty());
  report.commission.findings.set(Requirement::media, {.need = 1, .met = Met::missed});
  CHECK(note_about(Topic::store_media, Plan{}, report).severity == Severity::fail);
  CHECK(notes_with(Topic::resolve_recording, Plan{}, report).empty());
  report.commission.findings.set(Requirement::chroma, {.need = 1, .met = Met::missed});
  report.commission.findings.set(Requirement::bit_depth, {.need = 10, .met = Met::missed});
  const Note note = note_about(Topic::resolve_recording, Plan{}, report);
  CHECK(note.severity == Severity::fail);
  CHECK(note.have == 2);
}

TEST_CASE("Lights: fine, better at another angle, bands, no angle at all") {
  Report report = sound_report();
  Flicker& flicker = report.run.flicker;
  CHECK(note_about(Topic::run_flicker, Plan{}, report).severity == Severity::ok);
  report.run.shutter_deg = 180;
  flicker.grade = Severity::caution;
  const Note avoidable = note_about(Topic::run_flicker, Plan{}, report);
  CHECK(avoidable.severity == Severity::caution);
  CHECK(avoidable.need == 172.8);
  CHECK(note_text(avoidable) ==
        "At 180.00 degrees these lights pulse a little in the picture; 172.80 degrees is safe.");
  flicker.grade = Severity::fail;
  CHECK(note_about(Topic::run_flicker, Plan{}, report).severity == Severity::fail);
  flicker.grade = Severity::caution;
  flicker.bands = true;
  CHECK(notes_with(Topic::run_flicker, Plan{}, report).empty());
  CHECK(note_about(Topic::run_bands, Plan{}, report).severity == Severity::caution);
  flicker.nearest_safe_shutters.clear();
  CHECK(note_about(Topic::run_no_safe_angle, Plan{}, report).severity == Severity::caution);
}

TEST_CASE("A stop or a distance the lens does not have") {
  Report report = sound_report();
  report.see.marked_f_number = 2;
  CHECK(notes_with(Topic::see_widest_stop, Plan{}, report).empty());
  report.see.widest_stop = 2;
  report.see.close_focus_m = 10;
  CHECK(notes_with(Topic::see_widest_stop, Plan{}, report).empty());
  CHECK(notes_with(Topic::see_close_focus, Plan{}, report).empty());
  report.see.widest_stop = 2.8;
  report.see.close_focus_m = 10.5;
  CHECK(note_text(note_about(Topic::see_widest_stop, Plan{}, report)) ==
        "The lens opens to 2.8; 2.0 is set.");
  CHECK(note_about(Topic::see_close_focus, Plan{}, report).severity == Severity::fail);
}

TEST_CASE("A circle that only just covers what it must is to be tested") {
  Report report = sound_report();
  report.cover.image_circle_mm = 30.3;
  CHECK(notes_with(Topic::cover_marginal, Plan{}, report).empty());
  report.cover.image_circle_mm = 30.002;
  CHECK(note_about(Topic::cover_marginal, Plan{}, report).severity == Severity::caution);
  report.cover.frame.covered = false;
  CHECK(notes_with(Topic::cover_marginal, Plan{}, report).empty());
}

TEST_CASE("One copy is a failure, two in one place are a caution") {
  Report report = sound_report();
  Plan plan;
  CHECK(note_about(Topic::store_copies, plan, report).severity == Severity::ok);
  CHECK(notes_with(Topic::store_one_place, plan, report).empty());
  plan.store.copy_places = 1;
  CHECK(note_about(Topic::store_one_place, plan, report).severity == Severity::caution);
  for (const std::int64_t copies : {0, 1}) {
    report.store.copies = copies;
    CHECK(note_about(Topic::store_copies, plan, report).severity == Severity::fail);
    CHECK(notes_with(Topic::store_one_place, plan, report).empty());
  }
}

TEST_CASE("Film meets no card, and its scan is told by what holds picture") {
  Report report = sound_report();
  report.store.no_cards = true;
  report.store.write_headroom = {0, 0};
  report.commission.cautions.add(Caution::claimed_card);
  report.resolve.frame_photosites = 9e6;
  report.film = FilmReport{};
  report.film->frame_picture_pixels = 8e6;
  CHECK(notes_with(Topic::store_write_headroom, Plan{}, report).empty());
  CHECK(notes_with(Topic::store_card_claim, Plan{}, report).empty());
  CHECK(notes_with(Topic::store_rotation, Plan{}, report).empty());
  CHECK(note_about(Topic::resolve_scan, Plan{}, report).severity == Severity::ok);
}

TEST_CASE("The rate ceiling") {
  Report report = sound_report();
  CHECK(note_about(Topic::run_rate_ceiling, Plan{}, report).severity == Severity::ok);
  report.run.sensor_rate = 120;
  report.run.rate_allowed = false;
  CHECK(note_text(note_about(Topic::run_rate_ceiling, Plan{}, report)) ==
        "The format runs to 60.000 frames/s at most; 120.000 is set.");
  report.run.rate_ceiling.reset();
  CHECK(notes_with(Topic::run_rate_ceiling, Plan{}, report).empty());
}

TEST_CASE("Off speed there is no sound") {
  Report report = sound_report();
  report.run.sensor_rate = 48;
  Plan plan;
  CHECK(notes_with(Topic::run_audio_dropped, plan, report).size() == 1);
  plan.run.audio_channels = 0;
  CHECK(notes_with(Topic::run_audio_dropped, plan, report).empty());
}

TEST_CASE("Write headroom at its turning points") {
  struct Row {
    double headroom;
    Severity severity;
    double need;
    std::string_view text;
  };
  for (const Row& row : std::to_array<Row>({
           {0.5, Severity::fail, 1, "The card writes 0.50 times the data rate: it cannot keep up."},
           {0.9996, Severity::fail, 1,
            "The card writes 0.9996 times the data rate: it cannot keep up."},
           {1, Severity::caution, 1.2,
            "The card writes only 1.00 times the data rate; below 1.20 there is little to spare."},
           {1.1999, Severity::caution, 1.2,
            "The card writes only 1.1999 times the data rate; below 1.2000 there is little to "
            "spare."},
           {1.2, Severity::ok, 1.2, "The card writes 1.20 times the data rate."},
       })) {
    Report report = sound_report();
    report.store.write_headroom = {row.headroom, row.headroom + 1};
    const Note note = note_about(Topic::store_write_headroom, Plan{}, report);
    CHECK(note.severity == row.severity);
    CHECK(note.need == row.need);
    CHECK(note_text(note) == row.text);
  }
}

TEST_CASE("Cards: rotation, claims, ranges and verification") {
  Report report = sound_report();
  CHECK(note_text(note_about(Topic::store_rotation, Plan{}, report)) ==
        "4 cards for each camera always leave one ready.");
  report.store.rotation_sustainable = false;
  CHECK(note_about(Topic::store_rotation, Plan{}, report).severity == Severity::fail);
  CHECK(notes_with(Topic::store_codec_range, Plan{}, report).empty());
  report.store.bytes_per_frame = {.least = 1, .most = 2};
  CHECK(notes_with(Topic::store_codec_range, Plan{}, report).size() == 1);
  Plan plan;
  CHECK(notes_with(Topic::store_verification, plan, report).empty());
  plan.store.verification = Verification::none;
  CHECK(notes_with(Topic::store_verification, plan, report).size() == 1);
}

TEST_CASE("More footage than the shooting day, or any day, has time for") {
  Plan plan;
  plan.shooting.day_hours = 10;
  Report report = sound_report();
  report.store.recorded_hours_per_day = 10;
  CHECK(notes_with(Topic::store_day_too_short, plan, report).empty());
  report.store.recorded_hours_per_day = 10.5;
  CHECK(note_about(Topic::store_day_too_short, plan, report).severity == Severity::caution);
  report.store.recorded_hours_per_day = 24.5;
  CHECK(note_about(Topic::store_day_too_short, plan, report).severity == Severity::fail);
}

TEST_CASE("Common top is said aloud, and so is a frame line held back by the mode") {
  Plan plan;
  plan.deliverable.frame_lines.resize(2);
  plan.deliverable.frame_lines[1].anchor.kind = AnchorKind::common_top;
  Report report = sound_report();
  CHECK(notes_with(Topic::common_top, plan, report).size() == 1);
  CHECK(notes_with(Topic::anchor_limited, plan, report).empty());
  report.frames.emplace_back().anchor_limited = true;
  CHECK(notes_with(Topic::anchor_limited, plan, report).size() == 1);
}

TEST_CASE("A shortfall too small for the usual decimals is still told") {
  const Note note{
      .severity = Severity::fail, .topic = Topic::cover_frame, .have = 43.26, .need = 43.2666};
  CHECK(note_text(note) ==
        "The 43.26 mm circle does not cover the frame line, which needs 43.27 mm: 0.01 mm short.");
}

/// Reports that between them give every topic at every severity it has.
std::vector<Report> varied_reports() {
  std::vector<Report> reports(4, sound_report());
  Report& bad = reports[1];
  bad.frames.front().anchor_limited = true;
  bad.cover.interpolated = true;
  bad.cover.frame.covered = bad.cover.protected_area.covered = bad.cover.mode.covered = false;
  bad.see.magnification = 0.2;
  for (const Requirement requirement : {Requirement::photosites, Requirement::raster_width,
                                        Requirement::push_in, Requirement::room}) {
    bad.commission.findings.set(requirement, {.have = 3, .need = 4, .met = Met::missed});
  }
  bad.commission.findings.set(Requirement::intra, {.need = 1, .met = Met::not_known});
  bad.resolve.nominal_scale = 1.5;
  bad.resolve.recorded_squeeze = 0.5;
  bad.run.rate_allowed = false;
  bad.run.flicker.grade = Severity::fail;
  bad.see.widest_stop = 4;
  bad.see.close_focus_m = 12;
  bad.store.copies = 1;
  bad.store.write_headroom = {0.8, 0.8};
  bad.store.rotation_sustainable = false;
  for (std::size_t i = 0; i < kCautionCount; ++i) {
    bad.commission.cautions.add(static_cast<Caution>(i));
  }
  for (const Requirement requirement : {Requirement::media, Requirement::chroma}) {
    bad.commission.findings.set(requirement, {.need = 1, .met = Met::missed});
  }
  bad.store.bytes_per_frame = {.least = 1, .most = 2};
  bad.store.recorded_hours_per_day = 30;
  reports[2] = bad;
  reports[2].store.recorded_hours_per_day = 12;
  reports[2].run.flicker.nearest_safe_shutters.clear();
  reports[2].cover.image_circle_mm = 30.1;
  reports[2].cover.frame.covered = reports[2].cover.mode.covered = true;
  reports[2].mode.squeeze = 2;
  reports[2].film = FilmReport{};
  reports[2].resolve.frame_photosites = 1e6;
  reports[2].store.write_headroom = {1.1, 1.1};
  reports[3].cover.known = false;
  reports[3].resolve.recorded_squeeze = 2;
  reports[3].run.sensor_rate = 48;
  for (const Requirement requirement : {Requirement::push_in, Requirement::room}) {
    reports[3].commission.findings.set(requirement, {.have = 4, .need = 3, .met = Met::met});
  }
  reports[3].run.flicker.grade = Severity::caution;
  reports[3].run.flicker.bands = true;
  reports[3].resolve.recorded_height_pixels = 2000;
  return reports;
}

TEST_CASE("Every note is a whole sentence without a gap") {
  Plan plan;
  plan.deliverable.frame_lines.front().anchor.kind = AnchorKind::common_top;
  plan.store.verification = Verification::none;
  plan.store.copy_places = 1;
  std::vector<Topic> seen;
  for (const CoverArea must_cover : {CoverArea::none, CoverArea::mode}) {
    plan.choose.must_cover = must_cover;
    for (const Report& report : varied_reports()) {
      for (const Note& note : make_notes(plan, report)) {
        seen.push_back(note.topic);
        const std::string text = note_text(note);
        CAPTURE(topic_key(note.topic));
        CAPTURE(severity_key(note.severity));
        REQUIRE(text.size() > 10);
        CHECK(text.find_first_of("{}") == std::string::npos);
        CHECK(text.ends_with('.'));
        CHECK(text.find("null") == std::string::npos);
      }
    }
  }
  std::sort(seen.begin(), seen.end());
  seen.erase(std::unique(seen.begin(), seen.end()), seen.end());
  std::vector<Topic> unseen;
  for (int i = 0; i <= static_cast<int>(Topic::commission_unknown); ++i) {
    const auto topic = static_cast<Topic>(i);
    if (!std::binary_search(seen.begin(), seen.end(), topic)) unseen.push_back(topic);
  }
  // Both have a test of their own: they are told only where a plan asks for it.
  CHECK(unseen == std::vector{Topic::store_minutes, Topic::store_upload});
}

TEST_CASE("The worst note of a question, whatever the others say") {
  const std::vector<Note> notes = {{.severity = Severity::caution, .topic = Topic::cover_mode},
                                   {.severity = Severity::fail, .topic = Topic::cover_frame},
                                   {.severity = Severity::ok, .topic = Topic::run_flicker},
                                   {.severity = Severity::ok, .topic = Topic::run_test_lights}};
  CHECK(worst_severity(notes, Question::cover) == Severity::fail);
  CHECK(worst_severity(notes, Question::run) == Severity::ok);
  CHECK(worst_severity(notes, Question::frame) == Severity::ok);
  CHECK(severity_key(Severity::ok) == "ok");
  CHECK(severity_key(Severity::caution) == "caution");
  CHECK(severity_key(Severity::fail) == "fail");
}

TEST_CASE("minutes and push-in that were asked for are judged, and only then") {
  Report report = sound_report();
  report.store.minutes_per_card = {20, 30};
  CHECK(notes_with(Topic::frame_push_in, Plan{}, report).empty());
  CHECK(notes_with(Topic::store_minutes, Plan{}, report).empty());
  struct Row {
    double asked_minutes, asked_percent;
    Severity minutes, percent;
  };
  for (const Row& row : std::to_array<Row>({{20, 10, Severity::ok, Severity::ok},
                                            {25, 5, Severity::fail, Severity::ok},
                                            {5, 10.5, Severity::ok, Severity::fail}})) {
    CAPTURE(row.asked_minutes);
    Plan plan;
    plan.choose.min_minutes_per_card = row.asked_minutes;
    plan.choose.min_push_in_percent = row.asked_percent;
    report.commission.findings.set(Requirement::push_in,
                                   {.have = 10,
                                    .need = row.asked_percent,
                                    .met = row.asked_percent > 10 ? Met::missed : Met::met});
    CHECK(note_about(Topic::store_minutes, plan, report).severity == row.minutes);
    CHECK(note_about(Topic::frame_push_in, plan, report).severity == row.percent);
  }
}

}  // namespace
}  // namespace widegate
