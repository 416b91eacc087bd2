// Every number and verdict that follows from a plan, as plain data with the unit in each name.
// Filled by evaluate.h; listed once, with JSON keys, in report_fields.h; explained in working.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/base/severity.h"
#include "core/base/span.h"
#include "core/choose/report.h"
#include "core/cover/report.h"
#include "core/film/report.h"
#include "core/frame/report.h"
#include "core/plan/plan.h"
#include "core/resolve/report.h"
#include "core/run/report.h"
#include "core/see/report.h"
#include "core/store/report.h"

namespace widegate {

/// The three numbers that are always in sight, and their neighbours.
struct Headline {
  double horizontal_fov_deg = 0;  ///< What the main frame line sees.
  double vertical_fov_deg = 0;
  double diagonal_fov_deg = 0;
  double mode_megapixels = 0;
  double frame_megapixels = 0;  ///< Photosites inside the main frame line, in millions.
  Span minutes_per_card;        ///< Of a magazine, on film.
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
  resolve_raster,
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
  frame_room,
  store_minutes,
  store_upload,
  commission_missed,
  commission_unknown,
  resolve_other_squeeze,
  resolve_binned,
  resolve_few_bits,
  resolve_much_compressed,
  resolve_recording,
  store_media,
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
  CommissionReport commission;
  RunReport run;
  StoreReport store;
  std::optional<FilmReport> film;  ///< Nothing for a digital camera.
  std::vector<Note> notes;
  std::string currency;          ///< Of every sum of money.
  bool camera_invented = false;  ///< Its row says so; figures of it then say so too.
  bool lens_invented = false;
  std::vector<GivenNumber> given;  ///< See inputs.h.
  std::vector<GivenWord> given_words;
};

}  // namespace widegate
