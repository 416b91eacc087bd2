// Every number and verdict that follows from a plan, as plain data with the unit in each name.
// Filled by evaluate.h; listed once, with JSON keys, in report_fields.h; explained in working.h.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/codec.h"
#include "core/plan.h"
#include "core/problem.h"
#include "core/rational.h"

namespace widegate {

/// How much a note matters.
enum class Severity { ok, caution, fail };

/// A quantity that is a range when the codec is one.
struct Span {
  double least = 0;
  double most = 0;
  friend bool operator==(Span, Span) = default;
};

/// The three numbers that are always in sight, and their neighbours.
struct Headline {
  double horizontal_fov_deg = 0;  ///< What the main frame line sees.
  double vertical_fov_deg = 0;
  double diagonal_fov_deg = 0;
  double mode_megapixels = 0;
  double frame_megapixels = 0;  ///< Photosites inside the main frame line, in millions.
  Span minutes_per_card;  ///< Of a magazine, on film.
  Span data_rate_megabits_per_s;
};

/// The sensor mode as the lens meets it.
struct ModeReport {
  std::int64_t width_photosites = 0;
  std::int64_t height_photosites = 0;
  double width_mm = 0;
  double height_mm = 0;
  double diagonal_mm = 0;
  double pitch_um = 0;  ///< Horizontal photosite pitch.
  double squeeze = 1;
  double desqueezed_aspect = 0;
};

/// An exact rectangle; left and top are measured from the mode's top left corner.
struct ExactRect {
  Rational left, top, width, height;
};

/// A rectangle in recorded pixels. `even` edges are rounded inward to even pixels.
struct PixelRect {
  double left = 0, top = 0, width = 0, height = 0;
  std::int64_t even_left = 0, even_top = 0, even_width = 0, even_height = 0;
};

/// One frame line on the sensor mode and in the recorded raster.
struct FrameReport {
  std::string name;
  double aspect = 0;
  double protection = 0;
  ExactRect photosites;            ///< Frame line, exact.
  ExactRect protected_photosites;  ///< Protected area, exact.
  PixelRect pixels;
  PixelRect protected_pixels;
  double width_mm = 0;
  double height_mm = 0;
  double diagonal_mm = 0;
  /// What is left around the line, in percent: 100 (1 - w/w0) inside the protected area, 100
  /// (1 - w/W) inside the mode, and the part of the latter on each side.
  double room_protected_percent = 0;
  double room_horizontal_percent = 0;
  double room_vertical_percent = 0;
  double room_left_percent = 0, room_right_percent = 0;
  double room_top_percent = 0, room_bottom_percent = 0;
  /// The line's own deliverable raster, and how many pixels of it one pixel inside the line makes
  /// after de-squeeze: above 1 the picture is enlarged. See set_nominal_scale() in resolve.h.
  double picture_width_pixels = 0;
  double picture_height_pixels = 0;
  double nominal_horizontal_scale = 0;
  double nominal_vertical_scale = 0;
  double nominal_scale = 0;             ///< The larger of both.
  double push_in_percent = 0;           ///< 100 (1 - nominal_scale), nought when upscaled.
  double shift_horizontal_percent = 0;  ///< Room to each side over the frame's width.
  double shift_vertical_percent = 0;
  double max_rotation_deg = 0;  ///< Largest roll that keeps the frame line inside the mode.
  /// Share of the room beside the protected area that lies to its left, above it (0 to 1).
  double left_share = 0.5;
  double top_share = 0.5;
  /// From the middle of the frame line to the nearest side of the mode, on the sensor.
  double room_horizontal_mm = 0;
  double room_vertical_mm = 0;
  bool anchor_limited = false;  ///< Common top could not be reached without leaving the mode.
};

/// Circle against one rectangle.
struct CoverFigures {
  double left_mm = 0, top_mm = 0, right_mm = 0, bottom_mm = 0;  ///< From the optical axis.
  bool covered = false;
  double area_mm2 = 0;     ///< Of the rectangle.
  double overlap_mm2 = 0;  ///< Of the rectangle inside the circle.
  double diagonal_mm = 0;  ///< Diameter the rectangle asks for: twice its farthest corner.
  double margin_mm = 0;    ///< Circle radius less farthest corner; negative when it fails.
  double uncovered_area_percent = 0;
  double largest_covered_scale = 0;  ///< Of the same rectangle about the optical axis.
};

/// One focal length of the lens set against this mode.
struct LensCover {
  double focal_mm = 0;         ///< As marked on the lens.
  double image_circle_mm = 0;  ///< With the extender.
  bool covers_mode = false;
  bool covers_protected = false;
  bool covers_frame = false;
};

/// The lens's image circle. Nothing in it holds when `known` is false.
struct CoverReport {
  bool known = false;
  bool interpolated = false;  ///< Unlisted focal length; the smaller neighbour's circle is used.
  double image_circle_mm = 0;
  CoverFigures mode;
  CoverFigures protected_area;
  CoverFigures frame;
  double largest_frame_width_mm = 0;  ///< Largest covered frame of the wanted shape in the mode.
  double largest_frame_height_mm = 0;
  double lost_padding_percent = 0;  ///< Of the mode outside the frame line, what stays dark.
  std::vector<LensCover> lens_set;
  std::optional<double>
      longest_uncovering_focal_mm;  ///< Longest focal that fails the main frame line.
};

/// The same view in another mode, with a lens of this squeeze. Both ids are views into the list
/// they come from. A mode made for another squeeze than the plan's lens has two rows: for a
/// spherical lens and for one of its own squeeze.
struct EquivalentFocal {
  std::string_view camera;
  std::string_view mode;
  double squeeze = 1;
  double matched_extent_mm = 0;  ///< Width (times squeeze), height or diagonal of that mode.
  double focal_mm = 0;
};

/// The rows of EquivalentFocal. The ids of all of them stand in one text: there is a row for nearly
/// every mode of the library in each report, and a report for each frame of a drag.
class EquivalentFocals {
 public:
  void reserve(std::size_t rows, std::size_t id_bytes) {
    rows_.reserve(rows);
    ids_.reserve(id_bytes);
  }
  void add(const EquivalentFocal& row) {
    rows_.push_back({row.squeeze, row.matched_extent_mm, row.focal_mm, ids_.size(),
                     row.camera.size(), row.mode.size()});
    ids_ += row.camera;
    ids_ += row.mode;
  }
  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  /// Row i, below size().
  [[nodiscard]] EquivalentFocal operator[](std::size_t i) const {
    const Row& row = rows_[i];
    const std::string_view ids = ids_;
    return {ids.substr(row.at, row.camera_bytes),
            ids.substr(row.at + row.camera_bytes, row.mode_bytes), row.squeeze,
            row.matched_extent_mm, row.focal_mm};
  }

 private:
  struct Row {
    double squeeze, matched_extent_mm, focal_mm;
    std::size_t at, camera_bytes, mode_bytes;
  };
  std::vector<Row> rows_;
  std::string ids_;
};

/// Depth of field for one circle of confusion and focal length.
struct DepthOfField {
  double hyperfocal_m = 0;
  double near_m = 0;
  std::optional<double> far_m;  ///< Nothing when it reaches infinity.
};

/// What the lens sees.
struct SeeReport {
  /// As marked on the lens, and what the extender or reducer behind it makes of that.
  double marked_focal_mm = 0;
  double marked_f_number = 0;
  double extender = 1;
  double focal_mm = 0;
  double f_number = 0;
  double focus_m = 0;
  std::optional<double> widest_stop;    ///< Mark of the listed lens; nothing when not known.
  std::optional<double> close_focus_m;  ///< Likewise.
  double horizontal_fov_deg = 0, vertical_fov_deg = 0, diagonal_fov_deg = 0;  ///< Of the mode.
  double frame_horizontal_fov_deg = 0, frame_vertical_fov_deg = 0, frame_diagonal_fov_deg = 0;
  double magnification = 0;
  double width_at_focus_m = 0;  ///< Of the main frame line, in the scene.
  double height_at_focus_m = 0;
  double mode_width_at_focus_m = 0;  ///< Of the whole sensor mode.
  double mode_height_at_focus_m = 0;
  std::optional<double> wanted_width_m, wanted_height_m;
  /// For the plan's wanted scene width or height: how far to stand, or which focal length from
  /// here.
  std::optional<double> distance_for_wanted_width_m, focal_for_wanted_width_mm;
  std::optional<double> distance_for_wanted_height_m, focal_for_wanted_height_mm;
  bool circle_chosen = false;  ///< The plan overrides the conventional circle of confusion.
  double circle_of_confusion_mm = 0;
  DepthOfField depth;             ///< Vertical (marked) focal length; used for the verdict.
  DepthOfField horizontal_depth;  ///< For an anamorphic lens: focal length over squeeze.
  double matched_extent_mm = 0;   ///< Of this mode; see EquivalentFocal.
  EquivalentFocals equivalent_focal;
  MatchBy match = MatchBy::width;
};

/// A requirement with what there is.
struct MandateFigures {
  std::int64_t required = 0;
  double have = 0;
  double mode_have = 0;
  bool met = true;
  bool mode_meets = true;
};

/// Photosites, resampling, sampling.
struct ResolveReport {
  std::int64_t recorded_width_pixels = 0;
  std::int64_t recorded_height_pixels = 0;
  double in_camera_desqueeze = 1;
  double recorded_squeeze = 1;     ///< Left in the file; 1 after in-camera de-squeeze.
  double horizontal_resample = 1;  ///< Recorded pixels per photosite.
  double vertical_resample = 1;
  double frame_photosites = 0;
  std::int64_t mode_photosites = 0;
  std::int64_t deliverable_width_pixels = 0;
  std::int64_t deliverable_height_pixels = 0;
  double picture_width_pixels = 0;  ///< The main frame fitted into the deliverable raster.
  double picture_height_pixels = 0;
  double horizontal_scale = 0;  ///< De-squeezed recording to deliverable; above 1 is upscaling.
  double vertical_scale = 0;
  double nominal_scale = 0;             ///< The largest of all frame lines; see FrameReport.
  double horizontal_sampled_scale = 0;  ///< Photosites really read to deliverable, per axis.
  double vertical_sampled_scale = 0;
  MandateFigures mandate;
  MandateFigures mandate_across;
  double nyquist_cycles_per_mm = 0;       ///< Of the photosites, 1 / (2 pitch).
  double diffraction_limit_f_number = 0;  ///< Where the diffraction cut-off falls to Nyquist.
};

/// What limits the frame rate.
enum class RateLimit { none, mode, recording, card, camera };

/// A shutter that holds whole pulses, or so nearly that nobody sees the rest.
struct SafeShutter {
  Rational angle_deg;  ///< As it can be dialled.
  Rational exact_deg;  ///< That of whole pulses.
  Rational time_s;     ///< Exposure at angle_deg.
  friend bool operator==(const SafeShutter&, const SafeShutter&) = default;
};

/// Lights that pulse. Only `lights`, `mains_hz` and `grade` hold when they do not.
struct Flicker {
  Lights lights = Lights::not_said;
  double mains_hz = 0;
  std::optional<Rational> pulses_hz;  ///< Nothing for lights that do not pulse.
  Severity grade = Severity::ok;
  double pulses_per_exposure = 0;
  double pulses_per_frame = 0;
  double depth_percent = 0;  ///< Half of most less least, over the mean, for light 1 + cos.
  double beat_hz = 0;
  std::optional<double> beat_s;  ///< Nothing when every frame starts at the same point of a pulse.
  /// The ripple does not beat but stands as bands across the picture of a rolling shutter.
  bool bands = false;
  std::optional<double> read_out_s;  ///< Of the rolling shutter; nothing when not known.
  std::optional<double> band_count;  ///< Pulses while the sensor is read out.
  std::vector<SafeShutter> nearest_safe_shutters;  ///< Best first; empty when none is safe.
  std::vector<Rational> nearest_safe_rates;  ///< Rising; rates near this one safe at this shutter.
};

/// Rates and exposure.
struct RunReport {
  Rational project_rate;
  Rational sensor_rate;
  Rational exposure_s;
  bool shutter_is_time = false;  ///< The plan states a time; the angle follows from it.
  double shutter_deg = 0;
  double base_angle_deg = 0;
  double speed_factor = 1;
  double exposure_change_stops = 0;
  Flicker flicker;
  std::optional<Rational> rate_ceiling;  ///< Highest whole-system rate; nothing when unlimited.
  RateLimit rate_limited_by = RateLimit::none;
  bool rate_allowed = true;
  Span screen_minutes_per_card;  ///< Playing time of a full card at the project rate.
  /// Length of a full card (least) at the project rate, non-drop and drop-frame; empty when the
  /// rate has no such time code.
  std::string card_timecode, card_timecode_drop;
};

/// Cards, copies, archive, money. Spans are ranges only for codecs that are ranges.
struct StoreReport {
  ByteRange bytes_per_frame;         ///< Coded frame.
  ByteRange bytes_per_frame_stored;  ///< With the container's share.
  double audio_bytes_per_s = 0;
  Span bytes_per_s;
  Span bytes_per_minute;
  bool no_cards = false;  ///< Film: what a card takes means nothing.
  bool card_guaranteed = false;  ///< A standard's class guarantees the card's speed.
  std::int64_t usable_card_bytes = 0;
  ByteRange frames_per_card;  ///< Whole frames; a count, not bytes.
  Span minutes_per_card;
  Span write_headroom;               ///< Card speed over data rate.
  ByteRange cards_per_day;           ///< Each camera.
  Span card_change_minutes;          ///< By the clock, from one card change to the next.
  ByteRange cards_in_rotation;       ///< Each camera.
  ByteRange cards_in_all;            ///< What the rotations of all cameras take together.
  bool rotation_sustainable = true;  ///< False when copying can never keep up, whatever the cards.
  Span offload_minutes_per_card;     ///< All passes over a full card.
  std::int64_t offload_bytes_per_s = 0;  ///< Of the slowest part.
  std::int64_t offload_passes = 0;       ///< Copy, and what the verification reads again.
  std::string offload_limited_by;        ///< "card reader", "link", "drive", "checksum".
  Span offload_hours_per_day;            ///< Each unit.
  double recorded_hours_per_day = 0;     ///< Sensor running time of each camera.
  double playing_hours = 0;              ///< Of all footage, at the project rate.
  Span shoot_total_bytes;
  std::int64_t copies = 0;  ///< Of everything, on drives and tapes.
  Span copies_total_bytes;
  ByteRange drives;      ///< Over all copies.
  double drive_gib = 0;  ///< Capacity of one, in the binary unit some computers report.
  ByteRange tapes;       ///< Over all tape copies.
  Span tape_hours;       ///< Writing, and reading back where copies are verified.
  Span upload_total_bytes;
  Span upload_hours;
  Span card_cost, drive_cost, tape_cost, wrangler_cost, upload_cost;
  Span cost;
};

/// How long a length of film runs.
struct FilmMagazine {
  std::int64_t feet = 0;
  double minutes = 0;
};

/// Film: stock, magazines, money, and the picture that a scan holds. From feet_per_minute on
/// nothing holds where the frames of a foot are not known.
struct FilmReport {
  std::optional<double> gauge_mm;
  std::optional<std::int64_t> perforations;  ///< Of a frame.
  double scan_pixels_per_mm = 0;             ///< No more than these are counted as picture.
  double frame_picture_pixels = 0;           ///< Inside the main frame line.
  double mode_picture_pixels = 0;
  std::optional<Rational> frames_per_foot;
  double feet_per_minute = 0;
  double metres_per_minute = 0;
  std::int64_t magazine_feet = 0;
  double magazine_minutes = 0;           ///< Running time of one.
  std::vector<FilmMagazine> magazines;   ///< Of the lengths that stock is sold in.
  double feet_per_day = 0;               ///< Each camera.
  std::int64_t magazines_per_day = 0;    ///< Each camera.
  double feet = 0;                       ///< The whole shoot.
  double metres = 0;
  double stock_cost = 0, processing_cost = 0, scanning_cost = 0;
  double cost = 0;
};

/// A number of the plan or the library that a working puts in; key and words are static.
struct GivenNumber {
  std::string_view key;
  std::string_view label;
  std::string_view unit;
  std::string_view source;
  Span value;  ///< A range only for the ratio of a lossless codec.
};

/// Which form of a formula a working shows; both are static.
struct GivenWord {
  std::string_view key;
  std::string_view value;
};

/// What a note is about; its words are made by note_text() in notes.h.
enum class Topic {
  cover_frame,
  cover_protected,
  cover_mode,
  cover_unknown,
  cover_neighbour_circle,
  cover_marginal,
  anchor_limited,
  common_top,
  see_close_range,
  see_widest_stop,
  see_close_focus,
  see_anamorphic_depth,
  see_t_stop,
  resolve_mandate,
  resolve_mode_only,
  resolve_mandate_across,
  resolve_upscaled,
  resolve_squeeze_left,
  resolve_scan,
  resolve_squeeze_mismatch,
  resolve_raster_shape,
  run_rate_ceiling,
  run_flicker,
  run_bands,
  run_no_safe_angle,
  run_test_lights,
  run_audio_dropped,
  store_day_too_short,
  store_write_headroom,
  store_card_claim,
  store_codec_range,
  store_rotation,
  store_two_copies,
  store_verification,
  store_copies,
  store_one_place,
  resolve_written_requirements,
  frame_push_in,
  store_minutes,
  store_upload,
};

/// One verdict. have, need are in `unit` ("" for none).
struct Note {
  Severity severity = Severity::ok;
  Topic topic = Topic::cover_frame;
  double have = 0;
  double need = 0;
};

/// Everything that follows from one plan.
struct Report {
  Problems problems;  ///< Why nothing else here holds; empty for a valid plan.
  FormatChoice format;
  Headline headline;
  ModeReport mode;
  std::vector<FrameReport> frames;  ///< As the plan's frame lines; the first is the main one.
  CoverReport cover;
  SeeReport see;
  ResolveReport resolve;
  RunReport run;
  StoreReport store;
  std::optional<FilmReport> film;  ///< Nothing for a digital camera.
  std::vector<Note> notes;
  std::vector<GivenNumber> given;  ///< See given.h.
  std::vector<GivenWord> given_words;
};

}  // namespace widegate
