#include "core/report/report_fields.h"

#include <array>

#include "core/report/notes.h"

namespace widegate {
namespace {

using Visitor = ReportVisitor;

void optional_number(Visitor& v, std::string_view key, const std::optional<double>& value) {
  if (value) {
    v.number(key, *value);
  } else {
    v.nothing(key);
  }
}

void visit_format(const FormatChoice& format, Visitor& v) {
  v.begin_object("format");
  v.text("camera", format.camera);
  v.text("mode", format.mode);
  v.text("recording", format.recording);
  v.text("codec", format.codec);
  v.end_object();
}

void visit_headline(const Headline& headline, Visitor& v) {
  v.begin_object("headline");
  v.number("horizontal_fov_deg", headline.horizontal_fov_deg);
  v.number("vertical_fov_deg", headline.vertical_fov_deg);
  v.number("diagonal_fov_deg", headline.diagonal_fov_deg);
  v.number("mode_megapixels", headline.mode_megapixels);
  v.number("frame_megapixels", headline.frame_megapixels);
  v.span("minutes_per_card", headline.minutes_per_card);
  v.span("data_rate_megabits_per_s", headline.data_rate_megabits_per_s);
  v.end_object();
}

void visit_mode(const ModeReport& mode, Visitor& v) {
  v.begin_object("mode");
  v.whole("width_photosites", mode.width_photosites);
  v.whole("height_photosites", mode.height_photosites);
  v.number("width_mm", mode.width_mm);
  v.number("height_mm", mode.height_mm);
  v.number("diagonal_mm", mode.diagonal_mm);
  v.number("pitch_um", mode.pitch_um);
  v.number("squeeze", mode.squeeze);
  v.number("desqueezed_aspect", mode.desqueezed_aspect);
  v.end_object();
}

/// The keys of one rectangle: on the sensor, then in the file.
struct RectKeys {
  std::string_view left, top, width, height;
};
constexpr RectKeys kPhotosites{"left_photosites", "top_photosites", "width_photosites",
                               "height_photosites"};
constexpr RectKeys kPhotositesExact{"left_photosites_exact", "top_photosites_exact",
                                    "width_photosites_exact", "height_photosites_exact"};
constexpr RectKeys kPixels{"left_pixels", "top_pixels", "width_pixels", "height_pixels"};
constexpr RectKeys kEven{"left_even_pixels", "top_even_pixels", "width_even_pixels",
                         "height_even_pixels"};
constexpr RectKeys kProtected{"protected_left_photosites", "protected_top_photosites",
                              "protected_width_photosites", "protected_height_photosites"};
constexpr RectKeys kProtectedExact{
    "protected_left_photosites_exact", "protected_top_photosites_exact",
    "protected_width_photosites_exact", "protected_height_photosites_exact"};
constexpr RectKeys kProtectedPixels{"protected_left_pixels", "protected_top_pixels",
                                    "protected_width_pixels", "protected_height_pixels"};
constexpr RectKeys kProtectedEven{"protected_left_even_pixels", "protected_top_even_pixels",
                                  "protected_width_even_pixels", "protected_height_even_pixels"};

void visit_exact(const ExactRect& rect, const RectKeys& keys, const RectKeys& exact, Visitor& v) {
  v.number(keys.left, rect.left.to_double());
  v.number(keys.top, rect.top.to_double());
  v.number(keys.width, rect.width.to_double());
  v.number(keys.height, rect.height.to_double());
  v.fraction(exact.left, rect.left);
  v.fraction(exact.top, rect.top);
  v.fraction(exact.width, rect.width);
  v.fraction(exact.height, rect.height);
}

void visit_pixels(const PixelRect& rect, const RectKeys& keys, const RectKeys& even, Visitor& v) {
  v.number(keys.left, rect.left);
  v.number(keys.top, rect.top);
  v.number(keys.width, rect.width);
  v.number(keys.height, rect.height);
  v.whole(even.left, rect.even_left);
  v.whole(even.top, rect.even_top);
  v.whole(even.width, rect.even_width);
  v.whole(even.height, rect.even_height);
}

void visit_frame(const FrameReport& frame, std::string_view key, Visitor& v) {
  v.begin_object(key);
  v.text("name", frame.name);
  v.number("aspect", frame.aspect);
  v.number("protection", frame.protection);
  visit_exact(frame.photosites, kPhotosites, kPhotositesExact, v);
  visit_pixels(frame.pixels, kPixels, kEven, v);
  visit_exact(frame.protected_photosites, kProtected, kProtectedExact, v);
  visit_pixels(frame.protected_pixels, kProtectedPixels, kProtectedEven, v);
  v.number("width_mm", frame.width_mm);
  v.number("height_mm", frame.height_mm);
  v.number("diagonal_mm", frame.diagonal_mm);
  v.number("picture_width_pixels", frame.picture_width_pixels);
  v.number("picture_height_pixels", frame.picture_height_pixels);
  v.number("nominal_horizontal_scale", frame.nominal_horizontal_scale);
  v.number("nominal_vertical_scale", frame.nominal_vertical_scale);
  v.number("nominal_scale", frame.nominal_scale);
  v.number("push_in_percent", frame.push_in_percent);
  v.number("room_protected_percent", frame.room_protected_percent);
  v.number("room_horizontal_percent", frame.room_horizontal_percent);
  v.number("room_vertical_percent", frame.room_vertical_percent);
  v.number("room_left_percent", frame.room_left_percent);
  v.number("room_right_percent", frame.room_right_percent);
  v.number("room_top_percent", frame.room_top_percent);
  v.number("room_bottom_percent", frame.room_bottom_percent);
  v.number("shift_horizontal_percent", frame.shift_horizontal_percent);
  v.number("shift_vertical_percent", frame.shift_vertical_percent);
  v.number("max_rotation_deg", frame.max_rotation_deg);
  v.number("left_share", frame.left_share);
  v.number("top_share", frame.top_share);
  v.number("room_horizontal_mm", frame.room_horizontal_mm);
  v.number("room_vertical_mm", frame.room_vertical_mm);
  v.flag("anchor_limited", frame.anchor_limited);
  v.end_object();
}

void visit_frames(const std::vector<FrameReport>& frames, Visitor& v) {
  visit_frame(frames.front(), "frame", v);
  v.begin_list("frame_lines");
  for (const FrameReport& frame : frames) visit_frame(frame, "", v);
  v.end_list();
}

void visit_cover_figures(const CoverFigures& figures, bool known, std::string_view key,
                         Visitor& v) {
  v.begin_object(key);
  v.number("left_mm", figures.left_mm);
  v.number("top_mm", figures.top_mm);
  v.number("right_mm", figures.right_mm);
  v.number("bottom_mm", figures.bottom_mm);
  v.number("diagonal_mm", figures.diagonal_mm);
  v.number("area_mm2", figures.area_mm2);
  if (known) {
    v.flag("covered", figures.covered);
    v.number("margin_mm", figures.margin_mm);
    v.number("overlap_mm2", figures.overlap_mm2);
    v.number("uncovered_area_percent", figures.uncovered_area_percent);
    v.number("largest_covered_scale", figures.largest_covered_scale);
  } else {
    for (const auto name : {"covered", "margin_mm", "overlap_mm2", "uncovered_area_percent",
                            "largest_covered_scale"}) {
      v.nothing(name);
    }
  }
  v.end_object();
}

void visit_lens_set(const std::vector<LensCover>& lenses, Visitor& v) {
  v.begin_list("lens_set");
  for (const LensCover& lens : lenses) {
    v.begin_object("");
    v.number("focal_mm", lens.focal_mm);
    v.number("image_circle_mm", lens.image_circle_mm);
    v.flag("covers_mode", lens.covers_mode);
    v.flag("covers_protected", lens.covers_protected);
    v.flag("covers_frame", lens.covers_frame);
    v.end_object();
  }
  v.end_list();
}

void visit_cover(const CoverReport& cover, Visitor& v) {
  v.begin_object("cover");
  v.flag("known", cover.known);
  v.flag("interpolated", cover.interpolated);
  if (cover.known) {
    v.number("image_circle_mm", cover.image_circle_mm);
    v.number("largest_frame_width_mm", cover.largest_frame_width_mm);
    v.number("largest_frame_height_mm", cover.largest_frame_height_mm);
    v.number("lost_padding_percent", cover.lost_padding_percent);
  } else {
    for (const auto name : {"image_circle_mm", "largest_frame_width_mm", "largest_frame_height_mm",
                            "lost_padding_percent"}) {
      v.nothing(name);
    }
  }
  visit_cover_figures(cover.mode, cover.known, "mode", v);
  visit_cover_figures(cover.protected_area, cover.known, "protected", v);
  visit_cover_figures(cover.frame, cover.known, "frame", v);
  visit_lens_set(cover.lens_set, v);
  optional_number(v, "longest_uncovering_focal_mm", cover.longest_uncovering_focal_mm);
  v.end_object();
}

void visit_depth(const DepthOfField& depth, Visitor& v) {
  v.number("hyperfocal_m", depth.hyperfocal_m);
  v.number("near_m", depth.near_m);
  optional_number(v, "far_m", depth.far_m);
}

void visit_equivalents(const EquivalentFocals& rows, Visitor& v) {
  v.begin_list("equivalent_focal_mm");
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const EquivalentFocal row = rows[i];
    v.begin_object("");
    v.text("camera", row.camera);
    v.text("mode", row.mode);
    v.number("squeeze", row.squeeze);
    v.number("matched_extent_mm", row.matched_extent_mm);
    v.number("focal_mm", row.focal_mm);
    v.end_object();
  }
  v.end_list();
}

std::string_view match_key(MatchBy match) {
  switch (match) {
    case MatchBy::width:
      return "width";
    case MatchBy::height:
      return "height";
    case MatchBy::diagonal:
      return "diagonal";
  }
  return "width";
}

void visit_see(const SeeReport& see, Visitor& v) {
  v.begin_object("see");
  v.number("marked_focal_mm", see.marked_focal_mm);
  v.number("marked_f_number", see.marked_f_number);
  v.number("extender", see.extender);
  v.flag("extended", see.extender != 1);
  v.number("focal_mm", see.focal_mm);
  v.number("f_number", see.f_number);
  v.number("focus_m", see.focus_m);
  optional_number(v, "widest_stop", see.widest_stop);
  optional_number(v, "close_focus_m", see.close_focus_m);
  v.number("horizontal_fov_deg", see.horizontal_fov_deg);
  v.number("vertical_fov_deg", see.vertical_fov_deg);
  v.number("diagonal_fov_deg", see.diagonal_fov_deg);
  v.number("frame_horizontal_fov_deg", see.frame_horizontal_fov_deg);
  v.number("frame_vertical_fov_deg", see.frame_vertical_fov_deg);
  v.number("frame_diagonal_fov_deg", see.frame_diagonal_fov_deg);
  v.number("magnification", see.magnification);
  v.number("width_at_focus_m", see.width_at_focus_m);
  v.number("height_at_focus_m", see.height_at_focus_m);
  v.number("mode_width_at_focus_m", see.mode_width_at_focus_m);
  v.number("mode_height_at_focus_m", see.mode_height_at_focus_m);
  optional_number(v, "wanted_width_m", see.wanted_width_m);
  optional_number(v, "wanted_height_m", see.wanted_height_m);
  optional_number(v, "distance_for_wanted_width_m", see.distance_for_wanted_width_m);
  optional_number(v, "focal_for_wanted_width_mm", see.focal_for_wanted_width_mm);
  optional_number(v, "distance_for_wanted_height_m", see.distance_for_wanted_height_m);
  optional_number(v, "focal_for_wanted_height_mm", see.focal_for_wanted_height_mm);
  v.flag("circle_chosen", see.circle_chosen);
  v.number("circle_of_confusion_mm", see.circle_of_confusion_mm);
  visit_depth(see.depth, v);
  v.begin_object("horizontal_depth");
  visit_depth(see.horizontal_depth, v);
  v.end_object();
  v.text("match", match_key(see.match));
  v.number("matched_extent_mm", see.matched_extent_mm);
  visit_equivalents(see.equivalent_focal, v);
  v.end_object();
}

void visit_mandate(const MandateFigures& mandate, std::string_view key, Visitor& v) {
  v.begin_object(key);
  v.whole("required", mandate.required);
  v.number("have", mandate.have);
  v.number("mode_have", mandate.mode_have);
  v.flag("met", mandate.met);
  v.number("frame_have", mandate.frame_have);
  v.flag("counted_on_frame", mandate.counted_on_frame);
  v.end_object();
}

void visit_resolve(const ResolveReport& resolve, Visitor& v) {
  v.begin_object("resolve");
  v.whole("recorded_width_pixels", resolve.recorded_width_pixels);
  v.whole("recorded_height_pixels", resolve.recorded_height_pixels);
  v.number("in_camera_desqueeze", resolve.in_camera_desqueeze);
  v.number("recorded_squeeze", resolve.recorded_squeeze);
  v.number("horizontal_resample", resolve.horizontal_resample);
  v.number("vertical_resample", resolve.vertical_resample);
  v.number("frame_photosites", resolve.frame_photosites);
  v.whole("mode_photosites", resolve.mode_photosites);
  v.whole("deliverable_width_pixels", resolve.deliverable_width_pixels);
  v.whole("deliverable_height_pixels", resolve.deliverable_height_pixels);
  v.number("picture_width_pixels", resolve.picture_width_pixels);
  v.number("picture_height_pixels", resolve.picture_height_pixels);
  v.number("horizontal_scale", resolve.horizontal_scale);
  v.number("vertical_scale", resolve.vertical_scale);
  v.number("nominal_scale", resolve.nominal_scale);
  v.number("horizontal_sampled_scale", resolve.horizontal_sampled_scale);
  v.number("vertical_sampled_scale", resolve.vertical_sampled_scale);
  visit_mandate(resolve.mandate, "mandate", v);
  v.number("nyquist_cycles_per_mm", resolve.nyquist_cycles_per_mm);
  v.number("diffraction_limit_f_number", resolve.diffraction_limit_f_number);
  v.end_object();
}

std::string_view lights_key(Lights lights) {
  constexpr auto kKeys =
      std::to_array<std::string_view>({"not_said", "steady", "mains", "frequency"});
  return kKeys[static_cast<std::size_t>(lights)];
}

void visit_pulses(const Flicker& flicker, Visitor& v) {
  constexpr auto kKeys = std::to_array<std::string_view>(
      {"pulses_hz", "pulses_per_exposure", "pulses_per_frame", "depth_percent", "beat_hz"});
  if (!flicker.pulses_hz) {
    for (const std::string_view key : kKeys) v.nothing(key);
    return;
  }
  const auto values =
      std::to_array<double>({flicker.pulses_hz->to_double(), flicker.pulses_per_exposure,
                             flicker.pulses_per_frame, flicker.depth_percent, flicker.beat_hz});
  for (std::size_t i = 0; i < kKeys.size(); ++i) v.number(kKeys[i], values[i]);
}

void visit_flicker(const Flicker& flicker, Visitor& v) {
  v.begin_object("flicker");
  v.text("lights", lights_key(flicker.lights));
  v.number("mains_hz", flicker.mains_hz);
  v.text("grade", severity_key(flicker.grade));
  v.flag("safe", flicker.grade == Severity::ok);
  visit_pulses(flicker, v);
  optional_number(v, "beat_s", flicker.beat_s);
  v.flag("bands", flicker.bands);
  optional_number(v, "read_out_s", flicker.read_out_s);
  optional_number(v, "band_count", flicker.band_count);
  const auto each_shutter = [&](std::string_view key, auto write) {
    v.begin_list(key);
    for (const SafeShutter& shutter : flicker.nearest_safe_shutters) write(shutter);
    v.end_list();
  };
  each_shutter("nearest_safe_shutter_deg",
               [&](const SafeShutter& s) { v.number("", s.angle_deg.to_double()); });
  each_shutter("nearest_safe_exact_deg",
               [&](const SafeShutter& s) { v.number("", s.exact_deg.to_double()); });
  each_shutter("nearest_safe_shutter_s", [&](const SafeShutter& s) { v.fraction("", s.time_s); });
  v.begin_list("nearest_safe_rates");
  for (const Rational rate : flicker.nearest_safe_rates) v.fraction("", rate);
  v.end_list();
  v.end_object();
}

void visit_requirement(const Report& report, Requirement requirement, const Finding& finding,
                       Visitor& v) {
  const RequirementInfo& info = requirement_info(requirement);
  v.begin_object("");
  v.text("requirement", info.key);
  v.text("label", info.label);
  if (info.of_a_line) {
    v.text("line", report.frames[finding.line].name);
  } else {
    v.nothing("line");
  }
  if (finding.met == Met::not_known) {
    v.nothing("met");
    v.nothing("have");
  } else {
    v.flag("met", !finding.missed());
    v.number("have", finding.have);
  }
  v.number("need", finding.need);
  v.number("margin", margin(requirement, finding));
  v.text("unit", info.unit_key);
  v.text("have_text", have_text(requirement, finding));
  v.text("need_text", need_text(requirement, finding));
  v.flag("of_the_plan", is_of_the_plan(requirement));
  v.end_object();
}

void visit_commission(const Report& report, Visitor& v) {
  const CommissionReport& commission = report.commission;
  v.begin_object("commission");
  v.text("name", commission.name);
  v.flag("format_accepted", commission.format_accepted);
  v.flag("met", commission.met);
  v.begin_list("cautions");
  for_each_caution(commission.cautions, [&v](Caution each) { v.text("", caution_info(each).key); });
  v.end_list();
  v.begin_list("requirements");
  for_each_asked(commission.findings, [&](Requirement requirement, const Finding& finding) {
    visit_requirement(report, requirement, finding, v);
  });
  v.end_list();
  v.end_object();
}

void visit_run(const RunReport& run, bool no_cards, Visitor& v) {
  v.begin_object("run");
  v.fraction("project_rate", run.project_rate);
  v.number("project_rate_fps", run.project_rate.to_double());
  v.fraction("sensor_rate", run.sensor_rate);
  v.number("sensor_rate_fps", run.sensor_rate.to_double());
  v.number("exposure_s", run.exposure_s.to_double());
  v.fraction("exposure_s_exact", run.exposure_s);
  v.flag("shutter_is_time", run.shutter_is_time);
  v.number("shutter_deg", run.shutter_deg);
  v.number("base_angle_deg", run.base_angle_deg);
  v.number("speed_factor", run.speed_factor);
  v.number("exposure_change_stops", run.exposure_change_stops);
  visit_flicker(run.flicker, v);
  if (run.rate_ceiling) {
    v.number("rate_ceiling_fps", run.rate_ceiling->to_double());
  } else {
    v.nothing("rate_ceiling_fps");
  }
  v.text("rate_limited_by", rate_limit_key(run.rate_limited_by));
  v.flag("rate_allowed", run.rate_allowed);
  if (no_cards) {
    v.nothing("screen_minutes_per_card");
  } else {
    v.span("screen_minutes_per_card", run.screen_minutes_per_card);
  }
  v.text("card_timecode", run.card_timecode);
  v.text("card_timecode_drop", run.card_timecode_drop);
  v.end_object();
}

void visit_costs(const StoreReport& store, Visitor& v) {
  v.span("card_cost", store.card_cost);
  v.span("drive_cost", store.drive_cost);
  v.span("tape_cost", store.tape_cost);
  v.span("wrangler_cost", store.wrangler_cost);
  v.span("upload_cost", store.upload_cost);
  v.span("cost", store.cost);
}

/// What means nothing on film.
void visit_card(const StoreReport& store, Visitor& v) {
  if (store.no_cards) {
    for (const auto key : {"usable_card_bytes", "frames_per_card", "minutes_per_card",
                           "write_headroom", "card_change_minutes"}) {
      v.nothing(key);
    }
    return;
  }
  v.whole("usable_card_bytes", store.usable_card_bytes);
  v.counts("frames_per_card", store.frames_per_card);
  v.span("minutes_per_card", store.minutes_per_card);
  v.span("write_headroom", store.write_headroom);
  v.span("card_change_minutes", store.card_change_minutes);
}

void visit_store(const StoreReport& store, Visitor& v) {
  v.begin_object("store");
  v.counts("bytes_per_frame", store.bytes_per_frame);
  v.counts("bytes_per_frame_stored", store.bytes_per_frame_stored);
  v.number("audio_bytes_per_s", store.audio_bytes_per_s);
  v.span("bytes_per_s", store.bytes_per_s);
  v.span("bytes_per_minute", store.bytes_per_minute);
  v.flag("no_cards", store.no_cards);
  v.flag("card_guaranteed", store.card_guaranteed);
  visit_card(store, v);
  v.counts("cards_per_day", store.cards_per_day);
  v.counts("cards_in_rotation", store.cards_in_rotation);
  v.counts("cards_in_all", store.cards_in_all);
  v.flag("rotation_sustainable", store.rotation_sustainable);
  v.span("offload_minutes_per_card", store.offload_minutes_per_card);
  v.whole("offload_bytes_per_s", store.offload_bytes_per_s);
  v.whole("offload_passes", store.offload_passes);
  v.text("offload_limited_by", store.offload_limited_by);
  v.span("offload_hours_per_day", store.offload_hours_per_day);
  v.number("recorded_hours_per_day", store.recorded_hours_per_day);
  v.number("playing_hours", store.playing_hours);
  v.span("shoot_total_bytes", store.shoot_total_bytes);
  v.whole("copies", store.copies);
  v.span("copies_total_bytes", store.copies_total_bytes);
  v.counts("drives", store.drives);
  v.counts("fewest_drives", store.fewest_drives);
  v.number("drive_gib", store.drive_gib);
  v.counts("tapes", store.tapes);
  v.counts("fewest_tapes", store.fewest_tapes);
  v.span("tape_hours", store.tape_hours);
  v.span("upload_total_bytes", store.upload_total_bytes);
  v.span("upload_hours", store.upload_hours);
  visit_costs(store, v);
  v.end_object();
}

void visit_magazines(const FilmReport& film, Visitor& v) {
  v.whole("magazine_feet", film.magazine_feet);
  v.number("magazine_minutes", film.magazine_minutes);
  v.begin_list("magazines");
  for (const FilmMagazine& magazine : film.magazines) {
    v.begin_object("");
    v.whole("feet", magazine.feet);
    v.number("minutes", magazine.minutes);
    v.end_object();
  }
  v.end_list();
}

void visit_film_lengths(const FilmReport& film, Visitor& v) {
  v.fraction("frames_per_foot", *film.frames_per_foot);
  v.number("frames_per_foot_number", film.frames_per_foot->to_double());
  v.number("feet_per_minute", film.feet_per_minute);
  v.number("metres_per_minute", film.metres_per_minute);
  visit_magazines(film, v);
  v.number("feet_per_day", film.feet_per_day);
  v.whole("magazines_per_day", film.magazines_per_day);
  v.number("feet", film.feet);
  v.number("metres", film.metres);
  v.number("stock_cost", film.stock_cost);
  v.number("processing_cost", film.processing_cost);
  v.number("scanning_cost", film.scanning_cost);
  v.number("cost", film.cost);
}

void visit_film(const std::optional<FilmReport>& film, Visitor& v) {
  if (!film) return v.nothing("film");
  v.begin_object("film");
  optional_number(v, "gauge_mm", film->gauge_mm);
  if (film->perforations) {
    v.whole("perforations", *film->perforations);
  } else {
    v.nothing("perforations");
  }
  v.flag("known", film->frames_per_foot.has_value());
  v.number("scan_pixels_per_mm", film->scan_pixels_per_mm);
  v.number("frame_picture_pixels", film->frame_picture_pixels);
  v.number("mode_picture_pixels", film->mode_picture_pixels);
  if (film->frames_per_foot) visit_film_lengths(*film, v);
  v.end_object();
}

void visit_notes(const std::vector<Note>& notes, Visitor& v) {
  v.begin_list("notes");
  for (const Note& note : notes) {
    v.begin_object("");
    v.text("severity", severity_key(note.severity));
    v.text("topic", topic_key(note.topic));
    v.flag("standing", topic_standing(note.topic));
    v.text("text", note_text(note));
    v.number("have", note.have);
    v.number("need", note.need);
    v.text("unit", topic_unit(note.topic));
    v.end_object();
  }
  v.end_list();
}

void visit_given(const Report& report, Visitor& v) {
  v.begin_object("given");
  for (const GivenNumber& given : report.given) v.span(given.key, given.value);
  for (const GivenWord& given : report.given_words) v.text(given.key, given.value);
  v.end_object();
}

void visit_problems(const Problems& problems, Visitor& v) {
  v.begin_list("problems");
  for (const Problem& problem : problems) {
    v.begin_object("");
    v.text("pointer", problem.pointer);
    v.text("value", problem.value);
    v.text("accepted", problem.accepted);
    v.end_object();
  }
  v.end_list();
}

}  // namespace

std::string_view rate_limit_key(RateLimit limit) {
  switch (limit) {
    case RateLimit::none:
      return "none";
    case RateLimit::mode:
      return "mode";
    case RateLimit::recording:
      return "recording";
    case RateLimit::card:
      return "card";
    case RateLimit::camera:
      return "camera";
  }
  return "none";
}

void visit_report(const Report& report, ReportVisitor& visitor) {
  if (!report.problems.empty()) return visit_problems(report.problems, visitor);
  visit_format(report.format, visitor);
  visit_headline(report.headline, visitor);
  visit_mode(report.mode, visitor);
  visit_frames(report.frames, visitor);
  visit_cover(report.cover, visitor);
  visit_see(report.see, visitor);
  visit_resolve(report.resolve, visitor);
  visit_commission(report, visitor);
  visit_run(report.run, report.store.no_cards, visitor);
  visit_store(report.store, visitor);
  visit_film(report.film, visitor);
  visit_notes(report.notes, visitor);
  visit_given(report, visitor);
}

}  // namespace widegate
