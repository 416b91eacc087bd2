#include "core/lesson/lessons.h"

#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kView = "see.horizontal_fov_deg";  // of the mode
constexpr std::string_view kHeight = "see.vertical_fov_deg";
constexpr std::string_view kMode = "headline.mode_megapixels";
constexpr std::string_view kFrameMp = "headline.frame_megapixels";
constexpr std::string_view kMinutes = "headline.minutes_per_card";
constexpr std::string_view kRate = "headline.data_rate_megabits_per_s";
constexpr std::string_view kBytes = "store.bytes_per_frame";
constexpr std::string_view kMargin = "cover.mode.margin_mm";
constexpr std::string_view kDepth = "run.flicker.depth_percent";
constexpr std::string_view kScale = "resolve.nominal_scale";
constexpr std::string_view kPhotosites = "resolve.frame_photosites";
constexpr std::string_view kRoll = "frame.max_rotation_deg";
constexpr std::string_view kHeadroom = "store.write_headroom";
constexpr std::string_view kCeiling = "run.rate_ceiling_fps";
constexpr std::string_view kExposure = "run.exposure_s";

constexpr std::string_view kModeChoice = "/format/mode";
constexpr std::string_view kRecording = "/format/recording";
constexpr std::string_view kCodec = "/format/codec";
constexpr std::string_view kAspect = "/deliverable/frame_lines/0/aspect";
constexpr std::string_view kProtection = "/deliverable/frame_lines/0/protection";
constexpr std::string_view kLensSet = "/lens/set";
constexpr std::string_view kFocal = "/lens/focal_mm";
constexpr std::string_view kSensorRate = "/run/sensor_rate";
constexpr std::string_view kShutter = "/run/shutter_angle_deg";

constexpr LessonMove kSame = LessonMove::same;
constexpr LessonMove kRises = LessonMove::rises;
constexpr LessonMove kFalls = LessonMove::falls;

Lesson area_and_raster() {
  return {
      .id = "area-and-raster",
      .title = "Area and raster",
      .aim = "The mode decides the lens; the raster decides the file.",
      .steps = {
          {.title = "Everything is read",
           .words = "The whole sensor is read and every photosite is written. Look at the field of "
                    "view, the megapixels and the minutes on a card.",
           .figure = kView,
           .control = kFocal,
           .edits = {{"/title", "Area and raster"}, {kAspect, "16/9"}}},
          {.title = "The same area, a smaller raster",
           .words = "The same area is read, but written 4096 pixels across. The view has not "
                    "moved. The file is smaller and the card lasts longer, also because a "
                    "resampled picture gets another codec.",
           .figure = "resolve.horizontal_resample",
           .control = kRecording,
           .picture = LessonPicture::magnifier,
           .edits = {{kRecording, "resample-4096"}, {kCodec, "vc-3-1271"}},
           .claims = {{kView, kSame}, {kMode, kSame}, {kBytes, kFalls}, {kMinutes, kRises}}},
          {.title = "A lower area, the same raster width",
           .words = "Only a 16:9 strip is read now, still written 4096 across. Top and bottom of "
                    "the view are gone, left and right are not.",
           .figure = kHeight,
           .control = kModeChoice,
           .edits = {{kModeChoice, "wide-16x9"},
                     {kRecording, "resample-4096"},
                     {kCodec, "vc-3-1271"}},
           .claims = {{kView, kSame}, {kHeight, kFalls}, {kMode, kFalls}, {kMinutes, kRises}}},
          {.title = "The same raster from a smaller area",
           .words = "The same 4096 by 2304 pixels, but now they are the photosites in the middle. "
                    "The raster is the same; the view is narrower, as if the lens were longer.",
           .figure = kView,
           .control = kModeChoice,
           .picture = LessonPicture::both_sensors,
           .against = 2,
           .edits = {{kModeChoice, "centre-4096"},
                     {kRecording, "as-read"},
                     {kCodec, "bayer-12-3-1"}},
           .claims = {{"resolve.recorded_width_pixels", kSame}, {kView, kFalls}, {kMode, kFalls}}},
      }};
}

Lesson bigger_circle() {
  return {
      .id = "area-and-circle",
      .title = "A bigger area wants a bigger circle",
      .aim = "A lens covers a diagonal, not a name.",
      .steps = {
          {.title = "A lens that covers",
           .words =
               "A 35 mm size lens on a 35 mm size sensor. The circle reaches past the corners of "
               "the mode; the spare is the margin.",
           .figure = kMargin,
           .control = kFocal,
           .edits = {{"/title", "A bigger area wants a bigger circle"}}},
          {.title = "The same lens on a bigger area",
           .words = "The sensor is now 36 mm wide. The circle is what it was, the corners are not: "
                    "they are dark. No focal length of this set reaches them.",
           .figure = kMargin,
           .control = kFocal,
           .picture = LessonPicture::scene_recorded,
           .edits = {{"/format/camera", "birch"}},
           .claims = {{kView, kRises}, {kMargin, kFalls}}},
          {.title = "Read less of it",
           .words = "The 35 mm size mode of the same sensor fits inside the circle again. The "
                    "price is the view and the photosites.",
           .figure = kMargin,
           .control = kModeChoice,
           .edits = {{kModeChoice, "size-35-16x9"}},
           .claims = {{kMargin, kRises}, {kView, kFalls}, {kMode, kFalls}, {kFrameMp, kFalls}}},
          {.title = "Or change the lens",
           .words = "The whole sensor again, and a set made for 36 by 24 mm: its circle reaches "
                    "the corners. The focal length gives the view it gave before; only the cover "
                    "is another.",
           .figure = kMargin,
           .control = kLensSet,
           .edits = {{kModeChoice, "open-gate"}, {kLensSet, "severn"}},
           .claims = {{kView, kRises}, {kMode, kRises}, {"cover.image_circle_mm", kRises}}},
      }};
}

Lesson squeeze() {
  return {
      .id = "squeeze",
      .title = "Squeeze and de-squeeze",
      .aim = "An anamorphic lens widens the view, not the count of photosites across.",
      .steps = {
          {.title = "A wide frame from a spherical lens",
           .words = "2.39:1 cut from the whole sensor: the top and the bottom are thrown away.",
           .figure = "frame.height_photosites",
           .control = kAspect,
           .edits = {{"/title", "Squeeze and de-squeeze"}, {kFocal, "50"}}},
          {.title = "The same shape, squeezed",
           .words = "A 2x lens squeezes twice the width onto the sensor. There the frame line is "
                    "only 1.2 times as wide as high, and uses the whole height.",
           .figure = "frame.height_photosites",
           .control = "/lens/squeeze",
           .picture = LessonPicture::scene_recorded,
           .edits = {{kLensSet, "wye"}},
           .claims = {{"frame.height_photosites", kRises}, {kView, kRises}, {kFrameMp, kRises}}},
          {.title = "A mode of that shape",
           .words = "A mode that is only as wide as the frame needs: the picture is the same, the "
                    "photosites beside it are no longer read or stored.",
           .figure = kBytes,
           .control = kModeChoice,
           .picture = LessonPicture::scene_recorded,
           .edits = {{kModeChoice, "squeeze-2-239"}},
           .claims = {{kView, kFalls}, {kMode, kFalls}, {kBytes, kFalls}, {kMinutes, kRises}}},
          {.title = "De-squeezed in camera",
           .words = "The camera undoes the squeeze and writes 4096 by 1714 pixels: nine tenths of "
                    "the width that was sampled, less than half of the height.",
           .figure = "resolve.vertical_resample",
           .control = kRecording,
           .picture = LessonPicture::scene_desqueezed,
           .edits = {{kRecording, "desqueeze-4096"}, {kCodec, "vc-3-1270"}},
           .claims = {{kView, kSame},
                      {"resolve.recorded_squeeze", kFalls},
                      {"resolve.vertical_resample", kFalls}}},
      }};
}

Lesson mandate() {
  return {
      .id = "mandate",
      .title = "Oversampling and the mandate",
      .aim = "Count what is read, then what is recorded; then see whether anything is enlarged.",
      .steps = {
          {.title = "More photosites than pixels",
           .words =
               "A 16:9 frame on a 4992 wide area, delivered at 3840. Every delivered pixel is made "
               "of more than one photosite: oversampling.",
           .figure = kScale,
           .control = "/deliverable/width_pixels",
           .picture = LessonPicture::magnifier,
           .edits = {{"/title", "Oversampling and the mandate"},
                     {kModeChoice, "wide-16x9"},
                     {kAspect, "16/9"}}},
          {.title = "Enough in the mode",
           .words =
               "A 4096 by 2304 area holds 9.4 million photosites, above the usual 8.29 million. "
               "Most commissioners count them here, on what the camera reads; ask yours.",
           .figure = "headline.mode_megapixels",
           .control = kModeChoice,
           .picture = LessonPicture::magnifier,
           .edits = {{kModeChoice, "centre-4096"}},
           .claims = {{kFrameMp, kFalls}, {kScale, kRises}}},
          {.title = "Not enough in the file",
           .words =
               "The same area, resampled in camera to 2048: read as much as before, but the file "
               "has to be enlarged 1.88 times. No count of photosites makes that a 4K picture.",
           .figure = kScale,
           .control = kRecording,
           .picture = LessonPicture::magnifier,
           .edits = {{kRecording, "resample-2048"}},
           .claims = {{kMode, kSame}, {kPhotosites, kSame}, {kScale, kRises}}},
          {.title = "A wide frame needs less",
           .words =
               "As read again, and a 2.39:1 frame cut from it. Fewer photosites are inside the "
               "line, but its picture is only 1607 pixels high: nothing is enlarged.",
           .figure = kScale,
           .control = kAspect,
           .edits = {{kRecording, "as-read"}, {kAspect, "239/100"}},
           .claims = {{kMode, kSame}, {kFrameMp, kFalls}, {kScale, kFalls}}},
          {.title = "Protection costs pixels",
           .words = "Ten percent of protection takes a tenth off the width and a tenth off the "
                    "height of the frame line, and now the picture is enlarged by 4 percent.",
           .figure = kScale,
           .control = kProtection,
           .edits = {{kProtection, "1/10"}},
           .claims = {{kMode, kSame},
                      {kPhotosites, kFalls},
                      {kScale, kRises},
                      {"frame.room_protected_percent", kRises}}},
      }};
}

Lesson data_and_cards() {
  return {
      .id = "data-and-cards",
      .title = "Frame rate, data and cards",
      .aim = "Frames fill cards; the sensor rate counts them.",
      .steps = {
          {.title = "A card at 24",
           .words = "Bytes in a frame, frames in a second, bytes on a card: three numbers make the "
                    "minutes. Sound is left out here.",
           .figure = kMinutes,
           .control = kSensorRate,
           .edits = {{"/title", "Frame rate, data and cards"}, {"/run/audio_channels", "0"}}},
          {.title = "Twice the rate",
           .words = "At 48 frames a second the same card lasts half as long. What it plays back at "
                    "24 is as long as before, only slower.",
           .figure = "run.screen_minutes_per_card",
           .control = kSensorRate,
           .edits = {{kSensorRate, "48"}},
           .claims = {{kRate, kRises}, {kMinutes, kFalls}, {"run.screen_minutes_per_card", kSame}}},
          {.title = "Coded without loss",
           .words =
               "Lossless coding saves what the picture allows, so the answer is a range. Plan with "
               "the worse end.",
           .figure = kBytes,
           .control = kCodec,
           .edits = {{kCodec, "bayer-12-lossless"}},
           .claims = {{kMinutes, kRises}}},
          {.title = "Coded with loss",
           .words =
               "Three to one is a promise the codec keeps whatever it sees: one number again, and "
               "three times the minutes of the uncompressed frame.",
           .figure = kBytes,
           .control = kCodec,
           .edits = {{kCodec, "bayer-12-3-1"}},
           .claims = {{kMinutes, kRises}, {kRate, kFalls}}},
          {.title = "A card that cannot keep up",
           .words = "A card of the same size with 400 MB a second guaranteed holds the same "
                    "minutes and still fails: the camera writes 449. Run fails with it, for this "
                    "card ends the rate below 43.",
           .figure = kHeadroom,
           .control = kSensorRate,
           .edits = {{"/store/card", "express-b-vpg400-512"}},
           .claims = {{kHeadroom, kFalls}, {kCeiling, kFalls}, {kMinutes, kSame}, {kRate, kSame}}},
      }};
}

Lesson room() {
  return {
      .id = "room",
      .title = "Protection and padding",
      .aim = "Room around the frame is bought with photosites and data.",
      .steps = {
          {.title = "No room",
           .words = "The frame line fills the mode. There is nothing to reframe with, and a tilted "
                    "horizon cannot be put right without a loss.",
           .figure = kRoll,
           .control = kProtection,
           .edits = {{"/title", "Protection and padding"}, {kModeChoice, "wide-239"}}},
          {.title = "Five percent of protection",
           .words = "The frame line draws in and leaves a protected area around itself. Post can "
                    "steady the picture, move it and level a horizon by a little. Nearly a tenth "
                    "of the photosites inside the line are gone.",
           .figure = "frame.room_protected_percent",
           .control = kProtection,
           .edits = {{kProtection, "1/20"}},
           .claims = {{"frame.room_protected_percent", kRises},
                      {"frame.shift_horizontal_percent", kRises},
                      {kRoll, kRises},
                      {kFrameMp, kFalls}}},
          {.title = "A taller mode",
           .words = "The whole sensor adds padding above and below the protected area. It costs "
                    "data and top speed. The roll grows to nearly nine degrees; now only the "
                    "width holds it.",
           .figure = "frame.shift_vertical_percent",
           .control = kModeChoice,
           .edits = {{kModeChoice, "open-gate"}},
           .claims = {{"frame.shift_vertical_percent", kRises},
                      {kRoll, kRises},
                      {kCeiling, kFalls},
                      {kMinutes, kFalls}}},
          {.title = "Held at the top",
           .words =
               "With the protected area at the top of the mode all the padding is below: headroom "
               "stays when a taller version is cut. The optical axis is no longer the middle.",
           .figure = "frame.top_photosites",
           .control = "/deliverable/frame_lines/0/anchor/kind",
           .edits = {{"/deliverable/frame_lines/0/anchor/kind", "top"}},
           .claims = {{"frame.top_photosites", kFalls}, {kRoll, kFalls}}},
      }};
}

Lesson flicker() {
  return {
      .id = "flicker",
      .title = "Lights that pulse",
      .aim = "An exposure that holds whole pulses of light is a steady one.",
      .steps = {
          {.title = "24 under 50 Hz",
           .words =
               "Lamps on 50 Hz mains brighten 100 times a second. A 180 degree shutter at 24 holds "
               "2.08 pulses: some frames get up to 4 percent more light than the mean, others "
               "less, and it comes back four times a second.",
           .figure = kDepth,
           .control = kShutter,
           .edits = {{"/title", "Lights that pulse"}}},
          {.title = "A steady angle",
           .words = "At 172.8 degrees the exposure is a fiftieth of a second, exactly two pulses. "
                    "It costs six hundredths of a stop.",
           .figure = "run.exposure_change_stops",
           .control = kShutter,
           .edits = {{kShutter, "172.8"}},
           .claims = {{kExposure, kFalls},
                      {kDepth, kFalls},
                      {"run.exposure_change_stops", kFalls}}},
          {.title = "Or a steady rate",
           .words = "At 25 frames a second 180 degrees is a fiftieth of a second too: two pulses "
                    "again, and every frame meets them at the same point.",
           .figure = kDepth,
           .control = kShutter,
           .edits = {{kSensorRate, "25"}, {"/run/project_rate", "25"}, {kShutter, "180"}},
           .claims = {{kExposure, kSame}, {kMinutes, kFalls}}},
          {.title = "Steady frames, and bands",
           .words = "At 11.25 degrees each row of the sensor catches an eighth of a pulse. The "
                    "frames are alike, but a rolling shutter shows the pulse as bands across the "
                    "picture. A test under the real lamps decides.",
           .figure = kDepth,
           .control = kShutter,
           .edits = {{kShutter, "11.25"}},
           .claims = {{kExposure, kFalls}, {kDepth, kRises}}},
      }};
}

Lesson same_view() {
  return {
      .id = "same-view",
      .title = "The same view on another sensor",
      .aim = "A bigger area with a longer lens sees the same and keeps less in focus.",
      .steps = {
          {.title = "A view",
           .words = "A 35 mm lens at three metres. Note the field of view and how far the sharp "
                    "distance reaches.",
           .figure = kView,
           .control = kFocal,
           .edits = {{"/title", "The same view on another sensor"}, {"/store/card", "rowan-2"}}},
          {.title = "A bigger area, the same lens",
           .words = "On a 65 mm size sensor the same focal length sees much wider.",
           .figure = kView,
           .control = kFocal,
           .picture = LessonPicture::both_scenes,
           .edits = {{"/format/camera", "cedar"}, {kLensSet, "trent"}},
           .claims = {{kView, kRises}}},
          {.title = "The view matched",
           .words = "Focal length times the ratio of the widths brings the view back. The depth of "
                    "field is smaller than it was on the small sensor at the same f-number.",
           .figure = "see.near_m",
           .control = kFocal,
           .picture = LessonPicture::both_scenes,
           .edits = {{kFocal, "70"}},
           .claims = {{kView, kFalls}, {"see.near_m", kRises}, {"see.far_m", kFalls}}},
      }};
}

}  // namespace

std::vector<Lesson> lessons() {
  return {area_and_raster(), bigger_circle(), squeeze(), mandate(),
          data_and_cards(),  room(),          flicker(), same_view()};
}

Checked<Plan> lesson_plan(const Lesson& lesson, std::size_t step, const Catalogue& catalogue) {
  Checked<Plan> plan = Plan{};
  for (std::size_t i = 0; i <= step && i < lesson.steps.size(); ++i) {
    for (const LessonEdit& edit : lesson.steps[i].edits) {
      plan = with_field(*plan, edit.pointer, edit.text, catalogue);
      if (!plan) return plan;
    }
  }
  return plan;
}

}  // namespace widegate
