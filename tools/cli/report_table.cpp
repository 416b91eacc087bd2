#include "tools/cli/report_table.h"

#include <cmath>

#include "core/answer/answers.h"
#include "core/base/number_text.h"
#include "core/handover/sheet/sheet_text.h"
#include "core/report/notes.h"
#include "core/report/requirement_lines.h"
#include "tools/cli/text_table.h"

namespace widegate::cli {
namespace {

std::string size_text(double width, double height, int decimals, std::string_view unit) {
  return print_fixed(width, decimals) + " x " + with_unit(height, decimals, unit);
}

std::string size_text(std::int64_t width, std::int64_t height, std::string_view unit) {
  return std::to_string(width) + " x " + std::to_string(height) + " " + std::string(unit);
}

/// The name of a row, or its id when it is gone.
template <class Row>
std::string name_of(const std::vector<Row>& own, const std::vector<Row>& library,
                    const std::string& id) {
  const Row* row = find_row(own, library, id);
  return row != nullptr ? row->name : id;
}

std::string format_text(const Plan& plan, const Catalogue& library) {
  const FormatChoice& format = plan.format;
  const Camera* camera = find_row(plan.own.cameras, library.cameras, format.camera);
  const SensorMode* mode = camera != nullptr ? find_row(camera->modes, format.mode) : nullptr;
  const Recording* recording =
      mode != nullptr ? find_row(mode->recordings, format.recording) : nullptr;
  if (recording == nullptr) return format.camera;
  return camera->name + "; " + mode->name + "; " + recording->name + "; " +
         name_of(plan.own.codecs, library.codecs, format.codec);
}

void add_headline(TextTable& table, const Headline& headline, bool on_film) {
  table.section("At a glance");
  table.row("Field of view",
            size_text(headline.horizontal_fov_deg, headline.vertical_fov_deg, 1, "deg, diagonal ") +
                with_unit(headline.diagonal_fov_deg, 1, "deg"));
  table.row("Megapixels", print_fixed(headline.mode_megapixels, 2) + " in the mode, " +
                              print_fixed(headline.frame_megapixels, 2) + " in the frame line");
  table.row(on_film ? "Minutes per magazine" : "Minutes per card",
            with_unit(headline.minutes_per_card, 1, "min"));
  table.row("Data rate", with_unit(headline.data_rate_megabits_per_s, 0, "Mbit/s"));
}

void add_frame_line(TextTable& table, const FrameReport& frame) {
  table.row(frame.name, aspect_text(frame.aspect) + ", protection " +
                            print_number(100 * frame.protection) + " %");
  table.row("  on the sensor", size_text(frame.photosites.width.to_double(),
                                         frame.photosites.height.to_double(), 1, "photosites, ") +
                                   size_text(frame.width_mm, frame.height_mm, 2, "mm"));
  const PixelRect& pixels = frame.pixels;
  table.row("  in the file", size_text(pixels.even_width, pixels.even_height, "pixels") +
                                 ", left " + std::to_string(pixels.even_left) + ", top " +
                                 std::to_string(pixels.even_top));
  table.row("  push-in without upscaling", with_unit(frame.push_in_percent, 1, "%"));
  table.row("  room to the edge", with_unit(frame.room_protected_percent, 1, "% protected; ") +
                                      size_text(frame.room_horizontal_percent,
                                                frame.room_vertical_percent, 1, "% of the mode"));
  table.row("  shift, rotation",
            size_text(frame.shift_horizontal_percent, frame.shift_vertical_percent, 1, "%; ") +
                with_unit(frame.max_rotation_deg, 1, "deg"));
}

void add_frame(TextTable& table, const Report& report) {
  table.section("Frame");
  const ModeReport& mode = report.mode;
  table.row("Sensor mode", size_text(mode.width_photosites, mode.height_photosites, "photosites"));
  table.row("  on the sensor", size_text(mode.width_mm, mode.height_mm, 3, "mm, diagonal ") +
                                   with_unit(mode.diagonal_mm, 2, "mm"));
  table.row("  after de-squeeze",
            aspect_text(mode.desqueezed_aspect) + ", squeeze " + print_number(mode.squeeze) + "x");
  for (const FrameReport& frame : report.frames) add_frame_line(table, frame);
}

std::string cover_text(const CoverFigures& figures) {
  const std::string margin = with_unit(std::abs(figures.margin_mm), 2, "mm");
  if (figures.covered) return "covered, " + margin + " to spare at the corner";
  return "not covered, " + margin + " short, " +
         with_unit(figures.uncovered_area_percent, 2, "% dark");
}

std::string covering_focals(const CoverReport& cover) {
  std::string focals;
  for (const LensCover& lens : cover.lens_set) {
    if (!lens.covers_frame) continue;
    focals += (focals.empty() ? "" : ", ") + print_number(lens.focal_mm);
  }
  return focals.empty() ? "none of the set" : focals + " mm";
}

void add_cover(TextTable& table, const CoverReport& cover) {
  table.section("Cover");
  if (!cover.known) {
    table.row("Image circle", "not known");
    return;
  }
  table.row("Image circle", with_unit(cover.image_circle_mm, 1, "mm"));
  table.row("Sensor mode", cover_text(cover.mode));
  table.row("Protected area", cover_text(cover.protected_area));
  table.row("Frame line", cover_text(cover.frame));
  table.row("Largest frame covered",
            size_text(cover.largest_frame_width_mm, cover.largest_frame_height_mm, 2, "mm"));
  if (!cover.lens_set.empty()) table.row("Frame line covered by", covering_focals(cover));
}

std::string depth_text(const DepthOfField& depth) {
  return with_unit(depth.near_m, 2, "m to ") +
         (depth.far_m ? with_unit(*depth.far_m, 2, "m") : "infinity") + ", hyperfocal " +
         with_unit(depth.hyperfocal_m, 2, "m");
}

void add_wanted(TextTable& table, const char* label, std::optional<double> wanted,
                std::optional<double> distance, std::optional<double> focal) {
  if (!wanted) return;
  table.row(label, with_unit(*wanted, 2, "m: ") +
                       (distance ? "from " + with_unit(*distance, 2, "m") : "from nowhere") +
                       (focal ? ", or with " + with_unit(*focal, 1, "mm from here") : ""));
}

void add_see(TextTable& table, const Plan& plan, const Report& report, const Catalogue& library) {
  const SeeReport& see = report.see;
  table.section("See");
  const bool no_set = plan.lens.set.empty();
  table.row("Lens", (no_set ? "not in the library"
                            : name_of(plan.own.lens_sets, library.lens_sets, plan.lens.set)) +
                        "; " + with_unit(see.focal_mm, 1, "mm, f/") + print_number(see.f_number) +
                        ", focus " + with_unit(see.focus_m, 2, "m"));
  table.row("Frame line sees",
            size_text(see.frame_horizontal_fov_deg, see.frame_vertical_fov_deg, 1, "deg; ") +
                size_text(see.width_at_focus_m, see.height_at_focus_m, 2, "m at the focus"));
  add_wanted(table, "Scene width wanted", see.wanted_width_m, see.distance_for_wanted_width_m,
             see.focal_for_wanted_width_mm);
  add_wanted(table, "Scene height wanted", see.wanted_height_m, see.distance_for_wanted_height_m,
             see.focal_for_wanted_height_mm);
  table.row("Depth of field", depth_text(see.depth));
  if (report.mode.squeeze > 1) table.row("  across", depth_text(see.horizontal_depth));
  table.row("Circle of confusion", with_unit(see.circle_of_confusion_mm, 4, "mm"));
}

/// Both counts, whichever the commission goes by.
std::string photosites_text(const MandateFigures& mandate) {
  const auto count = [](double photosites) { return print_grouped(std::llround(photosites)); };
  return count(mandate.mode_have) + " in the mode, " + count(mandate.frame_have) +
         " in the frame line";
}

void add_commission(TextTable& table, const Report& report) {
  table.section("Asked for");
  table.row("Commission", report.commission.name);
  for (const RequirementLine& line : requirement_lines(report)) table.row(line.label, line.text);
}

void add_resolve(TextTable& table, const ResolveReport& resolve) {
  table.section("Resolve");
  table.row("Recorded",
            size_text(resolve.recorded_width_pixels, resolve.recorded_height_pixels, "pixels") +
                ", squeeze left " + print_number(round_12(resolve.recorded_squeeze)) + "x");
  table.row("Photosites", photosites_text(resolve.mandate));
  table.row("Picture in the deliverable",
            size_text(resolve.picture_width_pixels, resolve.picture_height_pixels, 0, "pixels"));
  table.row("Scale to it", size_text(resolve.horizontal_scale, resolve.vertical_scale, 3,
                                     "(above 1 is upscaling)"));
  table.row("Diffraction reaches Nyquist",
            "f/" + print_fixed(resolve.diffraction_limit_f_number, 1));
}

std::string limit_text(const RunReport& run) {
  if (!run.rate_ceiling) return "no limit known";
  static constexpr const char* kLimits[] = {"", ", set by the mode",
                                            ", set by the recording option", ", set by the card",
                                            ", set by the camera"};
  return rate_text(*run.rate_ceiling) + kLimits[static_cast<std::size_t>(run.rate_limited_by)];
}

std::string lights_text(const Flicker& flicker) {
  if (!flicker.pulses_hz) return "none that pulse";
  std::string text = print_number(flicker.pulses_hz->to_double()) + " pulses a second";
  if (flicker.lights == Lights::not_said) text += ", if they are on the mains";
  return text;
}

void add_lights(TextTable& table, const Flicker& flicker) {
  table.row("Lights", lights_text(flicker));
  if (!flicker.pulses_hz) return;
  const std::string beat = flicker.beat_s ? "beats every " + with_unit(*flicker.beat_s, 2, "s")
                                          : std::string("does not beat");
  table.row("  ripple", with_unit(flicker.depth_percent, 2, "%, ") + beat +
                            (flicker.bands ? ", stands as bands" : ""));
  std::string angles;
  for (const SafeShutter& safe : flicker.nearest_safe_shutters) {
    angles += (angles.empty() ? "" : ", ") + print_fixed(safe.angle_deg.to_double(), 1);
  }
  table.row("  safe angles near here", angles.empty() ? "none" : angles + " deg");
}

void add_run(TextTable& table, const RunReport& run) {
  table.section("Run");
  table.row("Project and sensor rate",
            rate_text(run.project_rate) + "; " + rate_text(run.sensor_rate));
  table.row("Highest rate", limit_text(run));
  table.row("Shutter", with_unit(run.shutter_deg, 1, "deg, ") + print_rational(run.exposure_s) +
                           " s, " + with_unit(run.exposure_change_stops, 2, "stops"));
  add_lights(table, run.flicker);
  table.row("A full card plays for",
            with_unit(run.screen_minutes_per_card, 1, "min") +
                (run.card_timecode.empty() ? "" : ", " + run.card_timecode));
}

void add_store_costs(TextTable& table, const StoreReport& store, const std::string& currency) {
  table.row("Cost", with_unit(store.cost, 0, currency));
  const auto amount = [](Span cost) { return with_unit(cost, 0, ""); };
  table.row("  cards, drives, tapes", amount(store.card_cost) + "; " + amount(store.drive_cost) +
                                          "; " + amount(store.tape_cost));
  table.row("  wrangler, upload", amount(store.wrangler_cost) + "; " + amount(store.upload_cost));
}

void add_cards(TextTable& table, const StoreReport& store) {
  table.row("A card", with_unit(store.minutes_per_card, 1, "min; ") +
                          count_text(store.frames_per_card) + " frames");
  table.row("Write headroom", with_unit(store.write_headroom, 2, "x"));
  table.row("Cards a day, each camera", count_text(store.cards_per_day));
  table.row("Cards in rotation", store.rotation_sustainable ? count_text(store.cards_in_rotation)
                                                            : "copying never keeps up");
  table.row("Offload of a card",
            with_unit(store.offload_minutes_per_card, 1, "min, limited by the ") +
                store.offload_limited_by);
  table.row("Offload a day, each unit", with_unit(store.offload_hours_per_day, 1, "h"));
}

void add_film(TextTable& table, const FilmReport& film, const std::string& currency) {
  table.section("Film");
  table.row("Picture in the scan", print_grouped(std::llround(film.frame_picture_pixels)) +
                                       " pixels inside the frame line, at most " +
                                       print_number(film.scan_pixels_per_mm) + " a millimetre");
  if (!film.frames_per_foot) return table.row("A minute", "not known: frames on a foot not said");
  table.row("A minute",
            with_unit(film.feet_per_minute, 1, "ft, ") + with_unit(film.metres_per_minute, 1, "m"));
  for (const FilmMagazine& magazine : film.magazines) {
    table.row("  " + std::to_string(magazine.feet) + " ft", with_unit(magazine.minutes, 1, "min"));
  }
  table.row("Magazines a day, each camera", std::to_string(film.magazines_per_day) + " of " +
                                                std::to_string(film.magazine_feet) + " ft");
  table.row("The whole shoot", print_grouped(std::llround(film.feet)) + " ft, " +
                                   print_grouped(std::llround(film.metres)) + " m");
  const auto price = [&](double cost) {
    return cost > 0 ? with_unit(cost, 0, currency) : std::string("no price");
  };
  table.row("Stock, processing, scan", price(film.stock_cost) + "; " + price(film.processing_cost) +
                                           "; " + price(film.scanning_cost));
}

void add_store(TextTable& table, const StoreReport& store, const std::string& currency) {
  table.section("Store");
  table.row("A frame", bytes_text({static_cast<double>(store.bytes_per_frame.least),
                                   static_cast<double>(store.bytes_per_frame.most)}));
  table.row("A second, a minute",
            bytes_text(store.bytes_per_s) + "; " + bytes_text(store.bytes_per_minute));
  if (!store.no_cards) add_cards(table, store);
  table.row("The whole shoot", bytes_text(store.shoot_total_bytes) + "; all copies " +
                                   bytes_text(store.copies_total_bytes));
  table.row("Copies", std::to_string(store.copies));
  table.row("Drives, tapes", count_text(store.drives) + "; " + count_text(store.tapes));
  table.row("A drive in binary units", with_unit(store.drive_gib, 0, "GiB"));
  table.row("Tape writing, upload",
            with_unit(store.tape_hours, 1, "h; ") + with_unit(store.upload_hours, 1, "h"));
  add_store_costs(table, store, currency);
}

void add_notes(TextTable& table, const std::vector<Note>& notes) {
  table.section("Verdicts");
  for (const Note& note : notes) {
    if (!topic_standing(note.topic)) table.marked(severity_key(note.severity), note_text(note));
  }
  table.marked("always", standing_text(notes));
}

/// What would mend a note, as fields for --set.
void add_answers(TextTable& table, const std::vector<Answer>& found) {
  if (found.empty()) return;
  table.section("Try");
  for (const Answer& answer : found) {
    std::string sets;
    for (const TypedField& field : answer.change) {
      sets += " --set " + field.pointer + "=" + field.text;
    }
    table.marked("try", answer.text + ": " + answer.outcome + "; " + sets.substr(1));
  }
}

}  // namespace

std::string report_table(const Plan& plan, const Report& report, const Catalogue& catalogue) {
  TextTable table;
  table.paragraph(plan.title);
  table.paragraph(format_text(plan, catalogue));
  add_headline(table, report.headline, report.film.has_value());
  add_frame(table, report);
  add_cover(table, report.cover);
  add_see(table, plan, report, catalogue);
  add_resolve(table, report.resolve);
  add_commission(table, report);
  add_run(table, report.run);
  if (report.film) add_film(table, *report.film, plan.store.currency);
  add_store(table, report.store, plan.store.currency);
  add_notes(table, report.notes);
  add_answers(table, answers(plan, report, catalogue));
  return table.str();
}

}  // namespace widegate::cli
