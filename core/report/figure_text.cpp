#include "core/report/figure_text.h"

#include <array>
#include <cmath>
#include <optional>
#include <variant>

#include "core/base/number_text.h"

namespace widegate {
namespace {

/// A pair is shown as "width × height".
struct Pair {
  double first = 0;
  double second = 0;
};
struct Bytes {
  Span span;
};
struct Money {
  Span span;
};
using Value = std::variant<std::monostate, double, Pair, Span, Bytes, Money, std::string>;

struct ReadingRow {
  std::string_view section;
  std::string_view key;
  std::string_view label;
  std::string_view unit;
  int decimals;
  bool main;
  Value (*read)(const Report&);
};

Value optional_value(const std::optional<double>& value) { return value ? Value(*value) : Value(); }

Value count(ByteRange range) {
  return Span{static_cast<double>(range.least), static_cast<double>(range.most)};
}

Value pixels(std::int64_t width, std::int64_t height) {
  return Pair{static_cast<double>(width), static_cast<double>(height)};
}

/// Nothing unless the lens's circle is known.
Value if_known(const CoverReport& cover, double value) {
  return cover.known ? Value(value) : Value();
}

std::string join(const std::vector<double>& values, int decimals) {
  std::string text;
  for (const double value : values) {
    if (!text.empty()) text += ", ";
    text += short_number(value, decimals);
  }
  return text;
}

Value safe_rates(const Report& r) {
  std::vector<double> rates;
  for (const Rational rate : r.run.flicker.nearest_safe_rates) rates.push_back(rate.to_double());
  return rates.empty() ? Value() : Value(join(rates, 3));
}

Value safe_angles(const Report& r) {
  if (!r.run.flicker.pulses_hz) return {};
  std::vector<double> angles;
  for (const SafeShutter& safe : r.run.flicker.nearest_safe_shutters) {
    angles.push_back(safe.angle_deg.to_double());
  }
  return Value(angles.empty() ? std::string("none") : join(angles, 2));
}

Value ripple(const Report& r) {
  return r.run.flicker.pulses_hz ? Value(r.run.flicker.depth_percent) : Value();
}

Value beat(const Report& r) {
  if (!r.run.flicker.pulses_hz) return {};
  return r.run.flicker.beat_s ? Value(*r.run.flicker.beat_s) : Value(std::string("stands still"));
}

Value wanted(const std::optional<double>& value) { return optional_value(value); }

Value timecode(const std::string& text) { return text.empty() ? Value() : Value(text); }

Value far_limit(const DepthOfField& depth) {
  return depth.far_m ? Value(*depth.far_m) : Value(std::string("∞"));
}

Value tape_only(const Report& r, Value value) {
  return r.store.tapes.most > 0 ? std::move(value) : Value();
}

Value card_only(const Report& r, Value value) {
  return r.store.no_cards ? Value() : std::move(value);
}

/// A figure of the film; nothing on a digital camera, or where the frames of a foot are not known.
template <class Figure>
Value film_only(const Report& r, Figure FilmReport::*figure) {
  if (!r.film || !r.film->frames_per_foot) return {};
  return Value(static_cast<double>((*r.film).*figure));
}
Value film_money(const Report& r, double FilmReport::*figure) {
  if (!r.film || !r.film->frames_per_foot) return {};
  const double sum = (*r.film).*figure;
  return sum > 0 ? Value(Money{{sum, sum}}) : Value(std::string("no price entered"));
}

using R = const Report&;

constexpr auto kFormatRows = std::to_array<ReadingRow>({
    {"format", "mode.width_photosites", "Photosites read", "", 0, true,
     [](R r) { return pixels(r.mode.width_photosites, r.mode.height_photosites); }},
    {"format", "mode.width_mm", "Area read", "mm", 2, true,
     [](R r) {
       return Value(Pair{r.mode.width_mm, r.mode.height_mm});
     }},
    {"format", "mode.diagonal_mm", "Diagonal", "mm", 2, true,
     [](R r) { return Value(r.mode.diagonal_mm); }},
    {"format", "resolve.recorded_width_pixels", "Recorded raster", "px", 0, true,
     [](R r) { return pixels(r.resolve.recorded_width_pixels, r.resolve.recorded_height_pixels); }},
    {"format", "mode.pitch_um", "Photosite pitch", "µm", 2, false,
     [](R r) { return Value(r.mode.pitch_um); }},
    {"format", "mode.desqueezed_aspect", "De-squeezed aspect ratio", "", 3, false,
     [](R r) { return Value(r.mode.desqueezed_aspect); }},
});

constexpr auto kFrameRows = std::to_array<ReadingRow>({
    {"frame", "frame.width_photosites", "Frame line", "photosites", 1, true,
     [](R r) {
       const ExactRect& rect = r.frames.front().photosites;
       return Value(Pair{rect.width.to_double(), rect.height.to_double()});
     }},
    {"frame", "frame.width_even_pixels", "In the file", "px", 0, true,
     [](R r) {
       return pixels(r.frames.front().pixels.even_width, r.frames.front().pixels.even_height);
     }},
    {"frame", "frame.left_even_pixels", "Its top left corner", "px", 0, false,
     [](R r) {
       return Value(std::to_string(r.frames.front().pixels.even_left) + ", " +
                    std::to_string(r.frames.front().pixels.even_top));
     }},
    {"frame", "frame.width_mm", "On the sensor", "mm", 2, false,
     [](R r) {
       return Value(Pair{r.frames.front().width_mm, r.frames.front().height_mm});
     }},
    {"frame", "frame.protected_width_photosites", "Protected area", "photosites", 1, false,
     [](R r) {
       const ExactRect& rect = r.frames.front().protected_photosites;
       return Value(Pair{rect.width.to_double(), rect.height.to_double()});
     }},
    {"frame", "frame.protected_width_even_pixels", "Protected in the file", "px", 0, false,
     [](R r) {
       const PixelRect& rect = r.frames.front().protected_pixels;
       return pixels(rect.even_width, rect.even_height);
     }},
    {"frame", "frame.push_in_percent", "Push-in without upscaling", "%", 1, true,
     [](R r) { return Value(r.frames.front().push_in_percent); }},
    {"frame", "frame.room_protected_percent", "Room to the edge of the protected area", "%", 1,
     true, [](R r) { return Value(r.frames.front().room_protected_percent); }},
    {"frame", "frame.room_horizontal_percent", "Room to the edge of the mode", "%", 1, true,
     [](R r) {
       const FrameReport& frame = r.frames.front();
       return Value(Pair{frame.room_horizontal_percent, frame.room_vertical_percent});
     }},
    {"frame", "frame.shift_horizontal_percent", "Can shift sideways, of its width", "%", 1, true,
     [](R r) { return Value(r.frames.front().shift_horizontal_percent); }},
    {"frame", "frame.shift_vertical_percent", "Can shift up and down, of its height", "%", 1, true,
     [](R r) { return Value(r.frames.front().shift_vertical_percent); }},
    {"frame", "frame.max_rotation_deg", "Largest rotation", "°", 2, true,
     [](R r) { return Value(r.frames.front().max_rotation_deg); }},
});

constexpr auto kCoverRows = std::to_array<ReadingRow>({
    {"cover", "cover.image_circle_mm", "Image circle", "mm", 2, true,
     [](R r) { return if_known(r.cover, r.cover.image_circle_mm); }},
    {"cover", "cover.frame.diagonal_mm", "Frame line needs", "mm", 2, true,
     [](R r) { return Value(r.cover.frame.diagonal_mm); }},
    {"cover", "cover.frame.margin_mm", "Margin at the frame line", "mm", 2, true,
     [](R r) { return if_known(r.cover, r.cover.frame.margin_mm); }},
    {"cover", "cover.protected.margin_mm", "Margin at the protected area", "mm", 2, false,
     [](R r) { return if_known(r.cover, r.cover.protected_area.margin_mm); }},
    {"cover", "cover.mode.diagonal_mm", "Whole mode needs", "mm", 2, false,
     [](R r) { return Value(r.cover.mode.diagonal_mm); }},
    {"cover", "cover.mode.margin_mm", "Margin at the mode", "mm", 2, true,
     [](R r) { return if_known(r.cover, r.cover.mode.margin_mm); }},
    {"cover", "cover.frame.uncovered_area_percent", "Frame line not covered", "%", 2, true,
     [](R r) { return if_known(r.cover, r.cover.frame.uncovered_area_percent); }},
    {"cover", "cover.mode.uncovered_area_percent", "Mode not covered", "%", 2, true,
     [](R r) { return if_known(r.cover, r.cover.mode.uncovered_area_percent); }},
    {"cover", "cover.lost_padding_percent", "Padding not covered", "%", 2, false,
     [](R r) { return if_known(r.cover, r.cover.lost_padding_percent); }},
    {"cover", "cover.largest_frame_width_mm", "Largest covered frame", "mm", 2, false,
     [](R r) {
       return r.cover.known
                  ? Value(Pair{r.cover.largest_frame_width_mm, r.cover.largest_frame_height_mm})
                  : Value();
     }},
    {"cover", "cover.frame.largest_covered_scale", "Largest covered scale", "×", 3, false,
     [](R r) { return if_known(r.cover, r.cover.frame.largest_covered_scale); }},
    {"cover", "cover.longest_uncovering_focal_mm", "Longest lens of the set that does not cover",
     "mm", 1, false, [](R r) { return optional_value(r.cover.longest_uncovering_focal_mm); }},
});

constexpr auto kSeeRows = std::to_array<ReadingRow>({
    {"see", "see.frame_horizontal_fov_deg", "Frame line sees", "°", 1, true,
     [](R r) {
       return Value(Pair{r.see.frame_horizontal_fov_deg, r.see.frame_vertical_fov_deg});
     }},
    {"see", "see.horizontal_fov_deg", "Whole mode sees", "°", 1, true,
     [](R r) {
       return Value(Pair{r.see.horizontal_fov_deg, r.see.vertical_fov_deg});
     }},
    {"see", "see.frame_diagonal_fov_deg", "Frame line, diagonal", "°", 1, false,
     [](R r) { return Value(r.see.frame_diagonal_fov_deg); }},
    {"see", "see.diagonal_fov_deg", "Mode, diagonal", "°", 1, false,
     [](R r) { return Value(r.see.diagonal_fov_deg); }},
    {"see", "see.width_at_focus_m", "In the frame at the focus", "m", 2, true,
     [](R r) {
       return Value(Pair{r.see.width_at_focus_m, r.see.height_at_focus_m});
     }},
    {"see", "see.mode_width_at_focus_m", "In the mode at the focus", "m", 2, false,
     [](R r) {
       return Value(Pair{r.see.mode_width_at_focus_m, r.see.mode_height_at_focus_m});
     }},
    {"see", "see.near_m", "Sharp from", "m", 2, true,
     [](R r) { return Value(r.see.depth.near_m); }},
    {"see", "see.far_m", "Sharp to", "m", 2, true, [](R r) { return far_limit(r.see.depth); }},
    {"see", "see.hyperfocal_m", "Hyperfocal distance", "m", 2, true,
     [](R r) { return Value(r.see.depth.hyperfocal_m); }},
    {"see", "see.horizontal_depth.near_m", "Horizontally sharp from", "m", 2, false,
     [](R r) { return r.mode.squeeze > 1 ? Value(r.see.horizontal_depth.near_m) : Value(); }},
    {"see", "see.horizontal_depth.far_m", "Horizontally sharp to", "m", 2, false,
     [](R r) { return r.mode.squeeze > 1 ? far_limit(r.see.horizontal_depth) : Value(); }},
    {"see", "see.focal_mm", "Focal length with the extender", "mm", 1, false,
     [](R r) { return r.see.extender == 1 ? Value() : Value(r.see.focal_mm); }},
    {"see", "see.f_number", "f-number with the extender", "", 2, false,
     [](R r) { return r.see.extender == 1 ? Value() : Value(r.see.f_number); }},
    {"see", "see.circle_of_confusion_mm", "Circle of confusion", "mm", 4, false,
     [](R r) { return Value(r.see.circle_of_confusion_mm); }},
    {"see", "see.magnification", "Magnification", "×", 5, false,
     [](R r) { return Value(r.see.magnification); }},
    {"see", "see.distance_for_wanted_width_m", "Distance for the wanted width", "m", 2, true,
     [](R r) { return wanted(r.see.distance_for_wanted_width_m); }},
    {"see", "see.focal_for_wanted_width_mm", "Focal length for the wanted width", "mm", 1, true,
     [](R r) { return wanted(r.see.focal_for_wanted_width_mm); }},
    {"see", "see.distance_for_wanted_height_m", "Distance for the wanted height", "m", 2, true,
     [](R r) { return wanted(r.see.distance_for_wanted_height_m); }},
    {"see", "see.focal_for_wanted_height_mm", "Focal length for the wanted height", "mm", 1, true,
     [](R r) { return wanted(r.see.focal_for_wanted_height_mm); }},
});

constexpr auto kResolveRows = std::to_array<ReadingRow>({
    {"resolve", "headline.frame_megapixels", "In the frame line", "MP", 2, true,
     [](R r) { return Value(r.headline.frame_megapixels); }},
    {"resolve", "headline.mode_megapixels", "In the mode", "MP", 2, true,
     [](R r) { return Value(r.headline.mode_megapixels); }},
    {"resolve", "resolve.mandate.required", "Required", "photosites", 0, true,
     [](R r) {
       return r.resolve.mandate.required > 0
                  ? Value(static_cast<double>(r.resolve.mandate.required))
                  : Value();
     }},
    {"resolve", "resolve.mandate.have", "Counted", "photosites", 0, true,
     [](R r) { return r.resolve.mandate.required > 0 ? Value(r.resolve.mandate.have) : Value(); }},
    {"resolve", "resolve.picture_width_pixels", "Picture in the deliverable", "px", 1, false,
     [](R r) {
       return Value(Pair{r.resolve.picture_width_pixels, r.resolve.picture_height_pixels});
     }},
    {"resolve", "resolve.horizontal_scale", "Scale, file to deliverable", "×", 3, true,
     [](R r) {
       return Value(Pair{r.resolve.horizontal_scale, r.resolve.vertical_scale});
     }},
    {"resolve", "resolve.horizontal_sampled_scale", "Scale, photosites to deliverable", "×", 3,
     true,
     [](R r) {
       return Value(Pair{r.resolve.horizontal_sampled_scale, r.resolve.vertical_sampled_scale});
     }},
    {"resolve", "resolve.horizontal_resample", "Resampled in camera", "×", 3, false,
     [](R r) {
       return Value(Pair{r.resolve.horizontal_resample, r.resolve.vertical_resample});
     }},
    {"resolve", "resolve.recorded_squeeze", "Squeeze left in the file", "×", 2, false,
     [](R r) { return Value(r.resolve.recorded_squeeze); }},
    {"resolve", "resolve.nyquist_cycles_per_mm", "Nyquist limit", "cycles/mm", 1, false,
     [](R r) { return Value(r.resolve.nyquist_cycles_per_mm); }},
    {"resolve", "resolve.diffraction_limit_f_number", "Diffraction limits from f/", "", 1, false,
     [](R r) { return Value(r.resolve.diffraction_limit_f_number); }},
});

constexpr auto kRunRows = std::to_array<ReadingRow>({
    {"run", "run.exposure_s_exact", "Exposure", "s", 0, true,
     [](R r) { return Value(print_rational(r.run.exposure_s)); }},
    {"run", "run.shutter_deg", "Shutter angle", "°", 2, false,
     [](R r) { return Value(r.run.shutter_deg); }},
    {"run", "run.exposure_change_stops", "Exposure change", "stops", 2, true,
     [](R r) { return Value(r.run.exposure_change_stops); }},
    {"run", "run.speed_factor", "Speed factor", "×", 3, true,
     [](R r) { return Value(r.run.speed_factor); }},
    {"run", "run.rate_ceiling_fps", "Highest rate", "fps", 3, true,
     [](R r) { return r.run.rate_ceiling ? Value(r.run.rate_ceiling->to_double()) : Value(); }},
    {"run", "run.flicker.depth_percent", "Ripple of the lights", "%", 2, true, ripple},
    {"run", "run.flicker.beat_s", "The ripple comes back every", "s", 2, true, beat},
    {"run", "run.flicker.band_count", "Bands over the picture", "", 1, false,
     [](R r) { return r.run.flicker.bands ? optional_value(r.run.flicker.band_count) : Value(); }},
    {"run", "run.flicker.nearest_safe_shutter_deg", "Angles without flicker", "°", 2, true,
     safe_angles},
    {"run", "run.flicker.nearest_safe_rates", "Rates without flicker", "fps", 3, false, safe_rates},
    {"run", "run.screen_minutes_per_card", "A card plays for", "min", 1, false,
     [](R r) { return card_only(r, Value(r.run.screen_minutes_per_card)); }},
    {"run", "run.card_timecode", "A card as timecode", "", 0, false,
     [](R r) { return card_only(r, timecode(r.run.card_timecode)); }},
    {"run", "run.card_timecode_drop", "In drop-frame timecode", "", 0, false,
     [](R r) { return card_only(r, timecode(r.run.card_timecode_drop)); }},
});

constexpr auto kFilmRows = std::to_array<ReadingRow>({
    {"store", "film.feet_per_minute", "Film, a minute", "ft", 1, true,
     [](R r) { return film_only(r, &FilmReport::feet_per_minute); }},
    {"store", "film.metres_per_minute", "Film, a minute", "m", 1, false,
     [](R r) { return film_only(r, &FilmReport::metres_per_minute); }},
    {"store", "film.magazine_minutes", "A magazine runs for", "min", 1, true,
     [](R r) { return film_only(r, &FilmReport::magazine_minutes); }},
    {"store", "film.magazines_per_day", "Magazines a day, each camera", "", 0, true,
     [](R r) { return film_only(r, &FilmReport::magazines_per_day); }},
    {"store", "film.feet", "Stock, the whole shoot", "ft", 0, true,
     [](R r) { return film_only(r, &FilmReport::feet); }},
    {"store", "film.metres", "Stock, the whole shoot", "m", 0, false,
     [](R r) { return film_only(r, &FilmReport::metres); }},
    {"store", "film.frame_picture_pixels", "Picture in the scan, inside the frame line", "px", 0,
     false, [](R r) { return r.film ? Value(r.film->frame_picture_pixels) : Value(); }},
    {"store", "film.stock_cost", "Stock, cost", "", 0, false,
     [](R r) { return film_money(r, &FilmReport::stock_cost); }},
    {"store", "film.processing_cost", "Processing, cost", "", 0, false,
     [](R r) { return film_money(r, &FilmReport::processing_cost); }},
    {"store", "film.scanning_cost", "Scanning, cost", "", 0, false,
     [](R r) { return film_money(r, &FilmReport::scanning_cost); }},
});

constexpr auto kStoreRows = std::to_array<ReadingRow>({
    {"store", "headline.data_rate_megabits_per_s", "Data rate", "Mbit/s", 0, true,
     [](R r) { return Value(r.headline.data_rate_megabits_per_s); }},
    {"store", "store.bytes_per_frame", "One frame", "", 0, false,
     [](R r) { return Value(Bytes{std::get<Span>(count(r.store.bytes_per_frame))}); }},
    {"store", "store.bytes_per_minute", "One minute", "", 0, true,
     [](R r) { return Value(Bytes{r.store.bytes_per_minute}); }},
    {"store", "store.frames_per_card", "Frames on a card", "", 0, false,
     [](R r) { return card_only(r, count(r.store.frames_per_card)); }},
    {"store", "store.write_headroom", "Card speed over data rate", "×", 2, true,
     [](R r) { return card_only(r, Value(r.store.write_headroom)); }},
    {"store", "store.cards_per_day", "Cards a day, each camera", "", 0, true,
     [](R r) { return card_only(r, count(r.store.cards_per_day)); }},
    {"store", "store.cards_in_rotation", "Cards in rotation, each camera", "", 0, true,
     [](R r) {
       return card_only(r, r.store.rotation_sustainable
                               ? count(r.store.cards_in_rotation)
                               : Value(std::string("no number is enough")));
     }},
    {"store", "store.cards_in_all", "Cards to have, all cameras", "", 0, true,
     [](R r) {
       return r.store.rotation_sustainable ? card_only(r, count(r.store.cards_in_all)) : Value();
     }},
    {"store", "store.offload_minutes_per_card", "Copy and verify a card", "min", 1, true,
     [](R r) { return card_only(r, Value(r.store.offload_minutes_per_card)); }},
    {"store", "store.offload_limited_by", "Copying is limited by the", "", 0, false,
     [](R r) { return card_only(r, Value(r.store.offload_limited_by)); }},
    {"store", "store.offload_hours_per_day", "Copying a day, each unit", "h", 1, true,
     [](R r) { return card_only(r, Value(r.store.offload_hours_per_day)); }},
    {"store", "store.recorded_hours_per_day", "Recorded a day, each camera", "h", 2, false,
     [](R r) { return Value(r.store.recorded_hours_per_day); }},
    {"store", "store.shoot_total_bytes", "Whole shoot", "", 0, true,
     [](R r) { return Value(Bytes{r.store.shoot_total_bytes}); }},
    {"store", "store.copies", "Copies", "", 0, false,
     [](R r) { return Value(static_cast<double>(r.store.copies)); }},
    {"store", "store.copies_total_bytes", "All copies", "", 0, true,
     [](R r) { return Value(Bytes{r.store.copies_total_bytes}); }},
    {"store", "store.drives", "Drives", "", 0, true, [](R r) { return count(r.store.drives); }},
    {"store", "store.fewest_drives", "Drives, at the very least", "", 0, false,
     [](R r) { return count(r.store.fewest_drives); }},
    {"store", "store.drive_gib", "A drive, as computers may report it", "GiB", 0, false,
     [](R r) { return Value(r.store.drive_gib); }},
    {"store", "store.tapes", "Tapes", "", 0, true,
     [](R r) { return tape_only(r, count(r.store.tapes)); }},
    {"store", "store.fewest_tapes", "Tapes, at the very least", "", 0, false,
     [](R r) { return tape_only(r, count(r.store.fewest_tapes)); }},
    {"store", "store.tape_hours", "Writing and checking tapes", "h", 1, false,
     [](R r) { return tape_only(r, Value(r.store.tape_hours)); }},
    {"store", "store.upload_total_bytes", "Uploaded", "", 0, false,
     [](R r) { return Value(Bytes{r.store.upload_total_bytes}); }},
    {"store", "store.upload_hours", "Upload", "h", 1, false,
     [](R r) { return Value(r.store.upload_hours); }},
    {"store", "store.card_cost", "Cards, cost", "", 0, false,
     [](R r) { return card_only(r, Value(Money{r.store.card_cost})); }},
    {"store", "store.drive_cost", "Drives, cost", "", 0, false,
     [](R r) { return Value(Money{r.store.drive_cost}); }},
    {"store", "store.tape_cost", "Tapes, cost", "", 0, false,
     [](R r) { return tape_only(r, Value(Money{r.store.tape_cost})); }},
    {"store", "store.wrangler_cost", "Data wrangler", "", 0, false,
     [](R r) { return card_only(r, Value(Money{r.store.wrangler_cost})); }},
    {"store", "store.upload_cost", "Upload, cost", "", 0, false,
     [](R r) { return Value(Money{r.store.upload_cost}); }},
    {"store", "store.cost", "Everything together", "", 0, true,
     [](R r) { return Value(Money{r.store.cost}); }},
});

constexpr auto kHeadlineRows = std::to_array<ReadingRow>({
    {"see", "see.frame_horizontal_fov_deg", "Field of view", "°", 1, true,
     [](R r) { return Value(r.see.frame_horizontal_fov_deg); }},
    {"resolve", "headline.frame_megapixels", "Frame line", "MP", 1, true,
     [](R r) { return Value(r.headline.frame_megapixels); }},
    {"store", "headline.minutes_per_card", "On a card", "min", 1, true,
     [](R r) { return Value(r.headline.minutes_per_card); }},
});

/// Whole numbers from ten thousand on are grouped in threes.
std::string number_text(double value, int decimals) {
  constexpr double kGroupFrom = 10'000;
  constexpr double kGroupTo = 9e15;
  if (std::abs(value) >= kGroupFrom && std::abs(value) < kGroupTo) {
    return print_grouped(std::llround(value));
  }
  return short_number(value, decimals);
}

std::string range_text(const std::string& least, const std::string& most) {
  return least == most ? least : least + "–" + most;
}

void put(Reading& figure, const ReadingRow& row, const Value& value, const Plan& plan) {
  struct Writer {
    Reading& figure;
    const ReadingRow& row;
    const Plan& plan;
    void operator()(std::monostate) const {}
    void operator()(double number) const {
      if (row.unit == "min") return (*this)(Span{number, number});
      figure.text = number_text(number, row.decimals);
    }
    void operator()(const Pair& pair) const {
      figure.pair = true;
      const std::string first = short_number(pair.first, row.decimals);
      const std::string second = short_number(pair.second, row.decimals);
      const bool factors = row.unit == "×";
      if (factors && first == second) {
        figure.text = first;
      } else {
        figure.text = factors ? first + " across, " + second + " down" : first + " × " + second;
      }
    }
    void operator()(const Span& span) const {
      if (row.unit == "min") {
        ScaledTime scaled = scaled_minutes(span, row.decimals);
        figure.text = std::move(scaled.text);
        figure.unit = scaled.unit;
        return;
      }
      figure.text =
          range_text(number_text(span.least, row.decimals), number_text(span.most, row.decimals));
    }
    void operator()(const Bytes& bytes) const {
      ScaledBytes scaled = scaled_bytes(bytes.span);
      figure.text = std::move(scaled.text);
      figure.unit = scaled.unit;
    }
    void operator()(const Money& money) const {
      figure.text = range_text(number_text(money.span.least, 0), number_text(money.span.most, 0));
      figure.unit = plan.store.currency;
    }
    void operator()(const std::string& text) const { figure.text = text; }
  };
  figure = {row.key, row.section, row.label, {}, row.unit, row.main, false};
  std::visit(Writer{figure, row, plan}, value);
}

template <class Rows>
void add(std::vector<Reading>& out, const Rows& rows, const Plan& plan, const Report& report) {
  for (const ReadingRow& row : rows) {
    const Value value = row.read(report);
    if (std::holds_alternative<std::monostate>(value)) continue;
    put(out.emplace_back(), row, value, plan);
  }
}

}  // namespace

std::string short_number(double value, int decimals) {
  std::string text = print_fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string_view working_key(std::string_view reading_key) {
  struct Row {
    std::string_view reading, working;
  };
  constexpr auto kElsewhere = std::to_array<Row>({
      {"run.exposure_s_exact", "run.exposure_s"},
      {"run.flicker.nearest_safe_shutter_deg", "run.flicker.nearest_safe_shutter_deg.0"},
      {"run.flicker.nearest_safe_rates", ""},
      {"run.card_timecode", "store.frames_per_card"},
      {"run.card_timecode_drop", "store.frames_per_card"},
      {"store.offload_limited_by", "store.offload_minutes_per_card"},
  });
  for (const Row& row : kElsewhere) {
    if (row.reading == reading_key) return row.working;
  }
  return reading_key;
}

ScaledTime scaled_minutes(Span minutes, int decimals) {
  constexpr double kHoursFrom = 120;
  const bool hours = minutes.least >= kHoursFrom;
  const auto text = [&](double value) {
    return hours ? number_text(value / 60, 1) : number_text(value, decimals);
  };
  return {range_text(text(minutes.least), text(minutes.most)), hours ? "h" : "min"};
}

ScaledBytes scaled_bytes(Span bytes) {
  struct Prefix {
    double factor;
    std::string_view unit;
  };
  constexpr auto kPrefixes = std::to_array<Prefix>(
      {{1e15, "PB"}, {1e12, "TB"}, {1e9, "GB"}, {1e6, "MB"}, {1e3, "kB"}, {1, "B"}});
  std::size_t at = 0;
  while (at + 1 < kPrefixes.size() && bytes.most < kPrefixes[at].factor) ++at;
  const auto text = [factor = kPrefixes[at].factor](double value) {
    const double scaled = value / factor;
    return number_text(scaled, factor <= 1 || scaled >= 100 ? 0 : scaled >= 10 ? 1 : 2);
  };
  return {range_text(text(bytes.least), text(bytes.most)), kPrefixes[at].unit};
}

std::vector<Reading> readings(const Plan& plan, const Report& report) {
  std::vector<Reading> out;
  if (!report.problems.empty() || report.frames.empty()) return out;
  out.reserve(kFormatRows.size() + kFrameRows.size() + kCoverRows.size() + kSeeRows.size() +
              kResolveRows.size() + kRunRows.size() + kFilmRows.size() + kStoreRows.size());
  add(out, kFormatRows, plan, report);
  add(out, kFrameRows, plan, report);
  add(out, kCoverRows, plan, report);
  add(out, kSeeRows, plan, report);
  add(out, kResolveRows, plan, report);
  add(out, kRunRows, plan, report);
  add(out, kFilmRows, plan, report);
  add(out, kStoreRows, plan, report);
  return out;
}

std::vector<Reading> headline_readings(const Report& report) {
  std::vector<Reading> out;
  const Plan no_plan;
  if (!report.problems.empty()) return out;
  add(out, kHeadlineRows, no_plan, report);
  if (report.film && !out.empty()) out.back().label = "On a magazine";
  const auto& ceiling = report.run.rate_ceiling;
  if (ceiling && report.run.sensor_rate > *ceiling) {
    out.back().text = "–";
    out.back().unit = {};
    out.back().label = "Cannot run so fast";
  }
  return out;
}

}  // namespace widegate
