// Everything a person chose, as plain data. Limits and checks are in plan_check.h, JSON in
// plan_json.h, what follows from a plan in evaluate.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/rational.h"
#include "core/catalogue/catalogue.h"

namespace widegate {

/// Sensor mode plus recording option plus codec, by their ids in the catalogue.
struct FormatChoice {
  std::string camera = "alder";
  std::string mode = "open-gate";
  std::string recording = "as-read";
  std::string codec = "bayer-12-packed";
  friend bool operator==(const FormatChoice&, const FormatChoice&) = default;
};

/// Where a frame line sits in its sensor mode.
enum class AnchorKind {
  centre,      ///< In the middle of the mode.
  top,         ///< Protected area against the top edge of the mode.
  common_top,  ///< Top of the frame line level with the main frame line's top.
  free,        ///< At x and y.
};

/// x and y run from -1 (left, top) through 0 (middle) to 1 (right, bottom) of the room the
/// protected area has in the mode. Only `free` uses them; otherwise both are 0.
struct Anchor {
  AnchorKind kind = AnchorKind::centre;
  Rational x = 0;
  Rational y = 0;
  friend bool operator==(const Anchor&, const Anchor&) = default;
};

/// One deliverable frame: its aspect ratio after de-squeeze and the protection around it.
struct FrameLine {
  std::string name = "Main";
  Rational aspect = Rational(239, 100);
  Rational protection = 0;  ///< Linear share taken off each side's length, inward; ASC FDL meaning.
  Anchor anchor;
  /// Raster that this line is delivered in; the deliverable's side where one is not said. The
  /// picture is fitted inside it.
  std::optional<std::int64_t> width_pixels;
  std::optional<std::int64_t> height_pixels;
  friend bool operator==(const FrameLine&, const FrameLine&) = default;
};

/// What is handed to the commissioner.
struct Deliverable {
  std::int64_t width_pixels = 3840;  ///< Raster of the file; the picture is fitted inside it.
  std::int64_t height_pixels = 2160;
  std::vector<FrameLine> frame_lines = {FrameLine{}};  ///< One to eight; the first is the main one.
  friend bool operator==(const Deliverable&, const Deliverable&) = default;
};

/// Which extent is matched when another mode should give the same view.
enum class MatchBy { width, height, diagonal };

/// The lens and where it is focused.
struct LensChoice {
  std::string set = "tamar";  ///< Lens set id; empty for a lens that is not in the library.
  double focal_mm = 35;
  std::optional<Rational> squeeze;        ///< Overrides the set's; 1 when there is no set.
  std::optional<double> image_circle_mm;  ///< Overrides the set's figure for this focal length.
  double f_number = 2.8;
  double focus_m = 3;
  std::optional<double> circle_of_confusion_mm;  ///< Overrides the convention of see.h.
  /// Of an extender (2) or a reducer (0.71) behind the lens: its focal length, image circle and
  /// stop are all times this. focal_mm is the mark on the lens without it.
  Rational extender = 1;
  MatchBy match = MatchBy::width;
  std::optional<double> wanted_width_m;   ///< Scene width the main frame line should show.
  std::optional<double> wanted_height_m;  ///< Scene height it should show.
  friend bool operator==(const LensChoice&, const LensChoice&) = default;
};

/// What the commissioner asks for.
struct Commissioned {
  std::string id;         ///< Row of the catalogue; empty: what follows from the deliverable.
  CommissionTerms terms;  ///< What this plan asks for in place of the row's.
  double film_pixels_per_mm =
      165;  ///< Most that a scan of film counts; common practice, no source.
  friend bool operator==(const Commissioned&, const Commissioned&) = default;
};

/// How the shutter is stated.
enum class ShutterKind { angle, time };

/// What is known of the lights.
enum class Lights {
  not_said,   ///< Taken for mains, and flicker is no worse than a caution.
  steady,     ///< None that pulse: daylight.
  mains,      ///< Pulsing twice in each cycle of the mains.
  frequency,  ///< Pulsing at a frequency of their own.
};

/// Frame rate, shutter and lights.
struct Running {
  Rational project_rate = 24;  ///< Frames per second played back.
  Rational sensor_rate = 24;   ///< Frames per second read; differs for slow or fast motion.
  ShutterKind shutter_kind = ShutterKind::angle;
  Rational shutter_angle_deg = 180;           ///< Above 0 to 360.
  Rational shutter_time_s = Rational(1, 48);  ///< Not longer than a frame.
  Rational base_angle_deg = 180;  ///< Exposure is compared with this angle at the project rate.
  Lights lights = Lights::not_said;
  Rational mains_hz = 50;    ///< Frequency of the mains that feed the lights.
  Rational pulses_hz = 120;  ///< Pulses a second of lights with a frequency of their own.
  std::int64_t audio_channels = 2;
  friend bool operator==(const Running&, const Running&) = default;
};

/// How the amount of footage is stated.
enum class ShootingBy {
  recorded_hours,  ///< Hours of running camera, each camera and day.
  ratio,           ///< Script length times shooting ratio, over the whole shoot and all cameras.
};

/// Days, cameras and footage.
struct Shooting {
  std::int64_t days = 42;
  std::int64_t units = 2;
  std::int64_t cameras_per_unit = 1;
  ShootingBy by = ShootingBy::recorded_hours;
  double recorded_hours_per_day = 2;  ///< Sensor running time of each camera.
  double script_minutes = 330;        ///< Minutes on screen.
  double shooting_ratio = 10;         ///< Minutes played back for each minute on screen.
  double day_hours = 10;  ///< From first to last shot; footage is spread evenly over it.
  friend bool operator==(const Shooting&, const Shooting&) = default;
};

/// How the copies are checked before a card may be wiped.
enum class Verification {
  none,         ///< Copied only. Always a caution.
  destination,  ///< Every copy read back and compared with the checksum taken while copying.
  full,         ///< Card and every copy read back.
};

/// What goes over the line to the cutting room.
enum class UploadWhat { proxies, originals };

/// Cards, copying, archive and money.
struct Storing {
  std::string container = "mxf";
  std::string card = "express-b-512";
  std::string link = "usb-3-2-gen-2x1";
  std::string drive = "ssd-array-16";
  std::string tape = "lto-8";
  std::string checksum = "xxh64";
  Verification verification = Verification::destination;
  std::int64_t drive_copies = 2;
  std::int64_t tape_copies = 1;
  double travel_minutes = 20;    ///< From camera to copying station.
  double return_minutes = 20;    ///< From station back to camera, wiped and ready.
  std::int64_t copy_places = 2;  ///< Different places the copies are kept in.
  double hold_hours = 0;         ///< A copied card is kept until the archive confirms.
  std::int64_t spare_cards = 0;  ///< Of each camera, beside those in rotation.
  UploadWhat upload_what = UploadWhat::proxies;
  double proxy_megabits_per_s = 10;  ///< Data rate of the proxies, sound included.
  double upload_megabits_per_s = 100;
  double upload_share = 1;       ///< Share of the footage that is uploaded, 0 to 1.
  std::string currency = "EUR";  ///< ISO 4217 code or any short word; prices carry it.
  double wrangler_price_per_hour = 35;
  double upload_price_per_terabyte = 0;
  friend bool operator==(const Storing&, const Storing&) = default;
};

/// What the camera film costs and how it is loaded; nothing of it holds for a digital camera.
/// Prices are for a foot, in the plan's currency; 0 where none was entered.
struct Filming {
  std::int64_t magazine_feet = 400;
  double stock_price_per_foot = 0;
  double processing_price_per_foot = 0;
  double scanning_price_per_foot = 0;
  friend bool operator==(const Filming&, const Filming&) = default;
};

/// Which area the lens must cover; each one holds those before it.
enum class CoverArea { none, frame, protected_area, mode };

/// Sets of weights by name, and one's own.
enum class WeightSet {
  balanced,
  best_picture,
  biggest_image,
  highest_speed,
  least_data,
  soonest_in_edit,  ///< Also asks for what plays at once.
  own,
};

/// With which lens formats are compared.
enum class CompareWith {
  same_view,  ///< The focal length of the set that comes nearest to the plan's view.
  same_lens,
};

/// What rejects a format, and what ranks the others.
struct Choosing {
  std::vector<std::string> cameras;  ///< Cameras considered; empty: all of the plan's medium.
  CoverArea must_cover = CoverArea::frame;
  double min_minutes_per_card = 0;  ///< 0: none.
  double min_push_in_percent = 0;   ///< Enlarging in post without upscaling; 0: none.
  double min_room_percent = 0;      ///< Around the frame line, each way, of the mode; 0: none.
  CompareWith compare = CompareWith::same_view;
  WeightSet weights = WeightSet::balanced;
  std::optional<Rational> fastest_rate;  ///< Wanted when speed decides; 5 project rates otherwise.
  double weight_area = 1;                ///< One's own weights are 0 to 10.
  double weight_pixels = 1;
  double weight_fidelity = 1;
  double weight_speed = 1;
  double weight_data = 1;
  friend bool operator==(const Choosing&, const Choosing&) = default;
};

/// One plan.
struct Plan {
  std::string title = "Untitled plan";
  FormatChoice format;
  Deliverable deliverable;
  LensChoice lens;
  Commissioned commission;
  Running run;
  Shooting shooting;
  Storing store;
  Filming film;
  Choosing choose;
  Catalogue own;  ///< One's own cameras, codecs, cards and lenses; found before the library's.
  friend bool operator==(const Plan&, const Plan&) = default;
};

}  // namespace widegate
