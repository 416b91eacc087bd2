#include "core/lessons.h"

#include "core/plan_fields.h"

namespace widegate {
namespace {

constexpr std::string_view kView = "headline.horizontal_fov_deg";
constexpr std::string_view kHeight = "headline.vertical_fov_deg";
constexpr std::string_view kMode = "headline.mode_megapixels";
constexpr std::string_view kFrameMp = "headline.frame_megapixels";
constexpr std::string_view kMinutes = "headline.minutes_per_card";
constexpr std::string_view kRate = "headline.data_rate_megabits_per_s";
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
           .question = Question::see,
           .figure = kView,
           .edits = {{"/title", "Area and raster"}},
           .claims = {}},
          {.title = "The same area, a smaller raster",
           .words =
               "The camera reads the same area but writes 4096 pixels across. The view has not "
               "moved at all; the file is smaller and the card lasts longer.",
           .question = Question::resolve,
           .figure = "resolve.horizontal_resample",
           .edits = {{"/format/recording", "resample-4096"}, {"/format/codec", "vc-3-hqx"}},
           .claims = {{kView, kSame}, {kMode, kSame}, {kMinutes, kRises}}},
          {.title = "A lower area, the same raster width",
           .words =
               "Only a 16:9 strip is read now, still written 4096 across. Top and bottom of the "
               "view are gone, left and right are not.",
           .question = Question::see,
           .figure = kHeight,
           .edits = {{"/format/mode", "wide-16x9"},
                     {"/format/recording", "resample-4096"},
                     {"/format/codec", "vc-3-hqx"}},
           .claims = {{kView, kSame}, {kHeight, kFalls}, {kMode, kFalls}, {kMinutes, kRises}}},
          {.title = "The same raster from a smaller area",
           .words =
               "The same 4096 by 2304 pixels, but now they are the photosites in the middle. The "
               "file calls itself the same size; the lens has become longer.",
           .question = Question::see,
           .figure = kView,
           .edits = {{"/format/mode", "centre-4096"},
                     {"/format/recording", "as-read"},
                     {"/format/codec", "bayer-12-3-1"}},
           .claims = {{kView, kFalls}, {kMode, kFalls}}},
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
           .question = Question::cover,
           .figure = "cover.mode.margin_mm",
           .edits = {{"/title", "A bigger area wants a bigger circle"}},
           .claims = {}},
          {.title = "The same lens on a bigger area",
           .words = "The sensor is now 36 mm wide. The circle is what it was, the corners are not: "
                    "they are dark, and no setting brings them back.",
           .question = Question::cover,
           .figure = "cover.mode.margin_mm",
           .edits = {{"/format/camera", "birch"}},
           .claims = {{kView, kRises}, {"cover.mode.margin_mm", kFalls}}},
          {.title = "Read less of it",
           .words = "A smaller area of the same sensor fits inside the circle again. The price is "
                    "the view and the photosites.",
           .question = Question::cover,
           .figure = "cover.frame.margin_mm",
           .edits = {{"/deliverable/frame_lines/0/protection", "1/4"}},
           .claims = {{"cover.frame.margin_mm", kRises}, {kFrameMp, kFalls}}},
          {.title = "Or change the lens",
           .words =
               "A set made for 36 by 24 mm has the circle. Same focal length, same view: only the "
               "cover has changed.",
           .question = Question::cover,
           .figure = "cover.mode.margin_mm",
           .edits = {{"/deliverable/frame_lines/0/protection", "0"}, {"/lens/set", "severn"}},
           .claims = {{kView, kSame}, {"cover.mode.margin_mm", kRises}}},
      }};
}

Lesson squeeze() {
  return {
      .id = "squeeze",
      .title = "Squeeze and de-squeeze",
      .aim = "An anamorphic lens widens the view, not the count of samples.",
      .steps = {
          {.title = "A wide frame from a spherical lens",
           .words = "2.39:1 cut from the whole sensor: the top and the bottom are thrown away.",
           .question = Question::frame,
           .figure = "frame.height_photosites",
           .edits = {{"/title", "Squeeze and de-squeeze"}, {"/lens/focal_mm", "50"}},
           .claims = {}},
          {.title = "The same frame, squeezed",
           .words =
               "A 2x lens squeezes twice the width onto the sensor. Now the frame line is nearly "
               "square, and nearly the whole height is used.",
           .question = Question::frame,
           .figure = "frame.height_photosites",
           .edits = {{"/lens/set", "wye"}},
           .claims = {{"frame.height_photosites", kRises}, {kView, kRises}, {kFrameMp, kRises}}},
          {.title = "A mode of that shape",
           .words = "A mode that is only as wide as the frame needs: the picture is the same, the "
                    "photosites beside it are no longer read or stored.",
           .question = Question::store,
           .figure = "store.bytes_per_frame",
           .edits = {{"/format/mode", "squeeze-2-239"}},
           .claims = {{kView, kFalls}, {kMode, kFalls}, {kMinutes, kRises}}},
          {.title = "De-squeezed in camera",
           .words = "The camera stretches the picture and writes 4096 across. The file looks wide; "
                    "the scale from what was sampled tells what is really there.",
           .question = Question::resolve,
           .figure = "resolve.horizontal_sampled_scale",
           .edits = {{"/format/recording", "desqueeze-4096"}, {"/format/codec", "vc-3-444-12"}},
           .claims = {{kView, kSame}, {"resolve.recorded_squeeze", kFalls}}},
      }};
}

Lesson mandate() {
  return {
      .id = "mandate",
      .title = "Oversampling and the mandate",
      .aim = "Count photosites behind the frame line, not pixels in the file.",
      .steps = {
          {.title = "More photosites than pixels",
           .words =
               "A 16:9 frame on a 4992 wide area, delivered at 3840. Every delivered pixel is made "
               "of more than one photosite: oversampling.",
           .question = Question::resolve,
           .figure = "resolve.horizontal_sampled_scale",
           .edits = {{"/title", "Oversampling and the mandate"},
                     {"/format/mode", "wide-16x9"},
                     {"/deliverable/frame_lines/0/aspect", "16/9"}},
           .claims = {}},
          {.title = "Enough in the mode",
           .words =
               "A 4096 by 2304 area holds 9.4 million photosites, above the usual 8.29 million. So "
               "far the commissioner is content.",
           .question = Question::resolve,
           .figure = kFrameMp,
           .edits = {{"/format/mode", "centre-4096"}},
           .claims = {{kFrameMp, kFalls}, {"resolve.horizontal_sampled_scale", kRises}}},
          {.title = "Not enough in the frame",
           .words =
               "The same mode, but a 2.39:1 frame cut from it. The mode still passes, the frame "
               "does not: this is what a requirement counts.",
           .question = Question::resolve,
           .figure = "resolve.frame_photosites",
           .edits = {{"/deliverable/frame_lines/0/aspect", "239/100"}},
           .claims = {{kMode, kSame}, {kFrameMp, kFalls}}},
          {.title = "Padding counts twice",
           .words =
               "Ten percent of protection shrinks the frame line on both sides, so a fifth of its "
               "photosites go.",
           .question = Question::frame,
           .figure = "frame.width_photosites",
           .edits = {{"/deliverable/frame_lines/0/protection", "1/10"}},
           .claims = {{kMode, kSame}, {kFrameMp, kFalls}, {"frame.push_in_percent", kRises}}},
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
                    "minutes.",
           .question = Question::store,
           .figure = kMinutes,
           .edits = {{"/title", "Frame rate, data and cards"}},
           .claims = {}},
          {.title = "Twice the rate",
           .words = "At 48 frames a second the same card lasts half as long. What it plays back at "
                    "24 is as long as before, only slower.",
           .question = Question::run,
           .figure = "run.screen_minutes_per_card",
           .edits = {{"/run/sensor_rate", "48"}},
           .claims = {{kRate, kRises}, {kMinutes, kFalls}}},
          {.title = "Coded without loss",
           .words =
               "Lossless coding saves what the picture allows, so the answer is a range. Plan with "
               "the worse end.",
           .question = Question::store,
           .figure = "store.bytes_per_frame",
           .edits = {{"/format/codec", "bayer-12-lossless"}},
           .claims = {{kMinutes, kRises}}},
          {.title = "Coded with loss",
           .words =
               "Three to one is a promise the codec keeps whatever it sees: one number again, and "
               "three times the minutes of the uncompressed frame.",
           .question = Question::store,
           .figure = "store.bytes_per_frame",
           .edits = {{"/format/codec", "bayer-12-3-1"}},
           .claims = {{kMinutes, kRises}, {kRate, kFalls}}},
          {.title = "A card that cannot keep up",
           .words =
               "A card with a lower guaranteed speed holds the same minutes and still fails: it "
               "cannot be filled as fast as the camera writes.",
           .question = Question::store,
           .figure = "store.write_headroom",
           .edits = {{"/store/card", "sd-v60-256"}},
           .claims = {{"store.write_headroom", kFalls}, {kRate, kSame}}},
      }};
}

Lesson padding() {
  return {
      .id = "padding",
      .title = "Padding",
      .aim = "Room around the frame is bought with photosites.",
      .steps = {
          {.title = "No room",
           .words =
               "The frame line is as wide as the mode. There is nothing to reframe with from side "
               "to side, and a tilted horizon cannot be put right without a loss.",
           .question = Question::frame,
           .figure = "frame.max_rotation_deg",
           .edits = {{"/title", "Padding"}, {"/format/mode", "wide-239"}},
           .claims = {}},
          {.title = "Five percent",
           .words = "A protected area is kept around the frame line. Now it can push in, shift and "
                    "roll a little, and the photosites behind it are fewer.",
           .question = Question::frame,
           .figure = "frame.push_in_percent",
           .edits = {{"/deliverable/frame_lines/0/protection", "1/20"}},
           .claims = {{"frame.push_in_percent", kRises},
                      {"frame.max_rotation_deg", kRises},
                      {kFrameMp, kFalls}}},
          {.title = "A taller mode",
           .words =
               "Reading the whole sensor adds room above and below for nothing but data. The roll "
               "is still held by the width.",
           .question = Question::frame,
           .figure = "frame.shift_vertical_percent",
           .edits = {{"/format/mode", "open-gate"}},
           .claims = {{"frame.shift_vertical_percent", kRises}, {kMinutes, kFalls}}},
          {.title = "Held at the top",
           .words =
               "With the protected area at the top of the mode all the room is below: headroom "
               "stays when a taller version is cut. The optical axis is no longer the middle.",
           .question = Question::frame,
           .figure = "frame.top_photosites",
           .edits = {{"/deliverable/frame_lines/0/anchor/kind", "top"}},
           .claims = {{"frame.top_photosites", kFalls}, {"frame.max_rotation_deg", kFalls}}},
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
               "2.08 pulses: some frames get more light than others.",
           .question = Question::run,
           .figure = "run.exposure_s",
           .edits = {{"/title", "Lights that pulse"}},
           .claims = {}},
          {.title = "A steady angle",
           .words = "At 172.8 degrees the exposure is a fiftieth of a second, exactly two pulses. "
                    "It costs "
                    "a twentieth of a stop.",
           .question = Question::run,
           .figure = "run.exposure_change_stops",
           .edits = {{"/run/shutter_angle_deg", "172.8"}},
           .claims = {{"run.exposure_s", kFalls}, {"run.exposure_change_stops", kFalls}}},
          {.title = "Or a steady rate",
           .words =
               "At 25 frames a second every frame meets the pulses at the same point, so any angle "
               "is safe. A test under the lamps that will be used still decides.",
           .question = Question::run,
           .figure = "run.speed_factor",
           .edits = {{"/run/sensor_rate", "25"},
                     {"/run/project_rate", "25"},
                     {"/run/shutter_angle_deg", "180"}},
           .claims = {{kMinutes, kFalls}}},
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
           .question = Question::see,
           .figure = kView,
           .edits = {{"/title", "The same view on another sensor"}},
           .claims = {}},
          {.title = "A bigger area, the same lens",
           .words = "On a 65 mm size sensor the same focal length sees much wider.",
           .question = Question::see,
           .figure = kView,
           .edits = {{"/format/camera", "cedar"}, {"/lens/set", "trent"}},
           .claims = {{kView, kRises}}},
          {.title = "The view matched",
           .words = "Focal length times the ratio of the widths brings the view back. The depth of "
                    "field is smaller than it was on the small sensor at the same f-number.",
           .question = Question::see,
           .figure = "see.near_m",
           .edits = {{"/lens/focal_mm", "70"}},
           .claims = {{kView, kFalls}, {"see.near_m", kRises}}},
      }};
}

}  // namespace

std::vector<Lesson> lessons() {
  return {area_and_raster(), bigger_circle(), squeeze(), mandate(),
          data_and_cards(),  padding(),       flicker(), same_view()};
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
