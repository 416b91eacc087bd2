#include "core/plan/plan_check.h"

#include <algorithm>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_check.h"
#include "core/encode/json_path.h"
#include "core/plan/plan_fields.h"

namespace widegate {
namespace {

void check_scalars(const Plan& plan, Problems& problems) {
  const JsonPath root;
  for (const FieldInfo& info : plan_fields()) {
    const std::size_t lines = per_frame_line(info) ? plan.deliverable.frame_lines.size() : 1;
    for (std::size_t line = 0; line < lines; ++line) {
      const FieldValue value = info.read(plan, line);
      if (value_accepted(info, value)) continue;
      add_problem(problems, root.below(pointer_of(info, line)), shown_value(info, value),
                  accepted_values(info));
    }
  }
}

void check_frame_lines(const Plan& plan, Problems& problems) {
  const auto& lines = plan.deliverable.frame_lines;
  const JsonPath root;
  const JsonPath list = root.below(kFrameLinesPointer);
  if (lines.empty() || lines.size() > kMaxFrameLines) {
    add_problem(problems, list, "a list of " + std::to_string(lines.size()),
                "a list of 1 to " + std::to_string(kMaxFrameLines) + " frame lines");
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Anchor& anchor = lines[i].anchor;
    if (anchor.kind == AnchorKind::free) continue;
    const JsonPath at = list.item(i);
    const JsonPath below = at.member("anchor");
    for (const auto& [key, value] : {std::pair("x", anchor.x), std::pair("y", anchor.y)}) {
      if (value == Rational(0)) continue;
      add_problem(problems, below.member(key), print_rational(value),
                  "0, or the anchor kind \"free\"");
    }
  }
}

/// "one of: alder, birch" with at most ten ids.
template <class Row>
std::string one_of(std::string_view what, const std::vector<Row>& own,
                   const std::vector<Row>& library) {
  constexpr std::size_t kShownIds = 10;
  std::string words(what);
  std::size_t count = 0;
  for (const auto* rows : {&own, &library}) {
    for (const Row& row : *rows) {
      if (count++ < kShownIds) words += (count == 1 ? ": " : ", ") + row.id;
    }
  }
  return count > kShownIds ? words + ", ..." : words;
}

/// The row that an id names; when there is none, a problem.
template <class Row>
const Row* checked_row(std::string_view pointer, const std::string& id, const std::vector<Row>& own,
                       const std::vector<Row>& library, std::string_view what, Problems& problems) {
  const Row* row = find_row(own, library, id);
  if (row == nullptr) {
    const JsonPath root;
    add_problem(problems, root.below(pointer), in_quotes(id), one_of(what, own, library));
  }
  return row;
}

void check_codec_choice(const Plan& plan, const Catalogue& catalogue, const SensorMode& mode,
                        const Recording& recording, Problems& problems) {
  const JsonPath root;
  const JsonPath at = root.below("/format/codec");
  const std::string& id = plan.format.codec;
  if (std::find(recording.codecs.begin(), recording.codecs.end(), id) == recording.codecs.end()) {
    std::string words = "a codec of this recording option";
    for (const std::string& codec : recording.codecs) {
      words += (&codec == recording.codecs.data() ? ": " : ", ") + codec;
    }
    add_problem(problems, at, in_quotes(id), words);
    return;
  }
  const Codec* codec = find_row(plan.own.codecs, catalogue.codecs, id);
  if (codec == nullptr) {
    add_problem(problems, at, in_quotes(id), "a codec of the library or of this plan");
    return;
  }
  const bool keeps_mode = recording.width_pixels == 0;
  const std::int64_t width = keeps_mode ? mode.width_photosites : recording.width_pixels;
  const std::int64_t height = keeps_mode ? mode.height_photosites : recording.height_pixels;
  if (bytes_per_frame(codec->form, width, height, plan.run.sensor_rate)) return;
  add_problem(problems, at, in_quotes(id),
              "a codec with a known frame size for " + std::to_string(width) + " x " +
                  std::to_string(height) + " at " + print_rational(plan.run.sensor_rate) + " fps");
}

void check_format(const Plan& plan, const Catalogue& catalogue, Problems& problems) {
  const FormatChoice& format = plan.format;
  const Camera* camera = checked_row("/format/camera", format.camera, plan.own.cameras,
                                     catalogue.cameras, "a camera", problems);
  if (camera == nullptr) return;
  const SensorMode* mode = checked_row("/format/mode", format.mode, camera->modes, {},
                                       "a sensor mode of this camera", problems);
  if (mode == nullptr) return;
  const Recording* recording = checked_row("/format/recording", format.recording, mode->recordings,
                                           {}, "a recording option of this mode", problems);
  if (recording != nullptr) check_codec_choice(plan, catalogue, *mode, *recording, problems);
}

void check_references(const Plan& plan, const Catalogue& library, Problems& problems) {
  const Catalogue& own = plan.own;
  const Storing& store = plan.store;
  if (!plan.lens.set.empty()) {
    checked_row("/lens/set", plan.lens.set, own.lens_sets, library.lens_sets,
                "empty text, or a lens set", problems);
  }
  checked_row("/store/container", store.container, own.containers, library.containers,
              "a container", problems);
  checked_row("/store/card", store.card, own.cards, library.cards, "a card", problems);
  checked_row("/store/link", store.link, own.links, library.links, "a link", problems);
  checked_row("/store/drive", store.drive, own.drives, library.drives, "a drive", problems);
  if (!store.tape.empty()) {
    checked_row("/store/tape", store.tape, own.tapes, library.tapes, "empty text, or a tape",
                problems);
  }
  checked_row("/store/checksum", store.checksum, own.checksums, library.checksums, "a checksum",
              problems);
  const auto& cameras = plan.choose.cameras;
  for (std::size_t i = 0; i < cameras.size(); ++i) {
    const std::string pointer = std::string(kCamerasPointer) + "/" + std::to_string(i);
    const JsonPath root;
    checked_row(pointer, cameras[i], own.cameras, library.cameras, "a camera", problems);
    if (std::find(cameras.data(), cameras.data() + i, cameras[i]) == cameras.data() + i) continue;
    add_problem(problems, root.below(pointer), in_quotes(cameras[i]), "each camera once");
  }
}

/// Values that are fine alone but not beside another.
void check_relations(const Plan& plan, Problems& problems) {
  const JsonPath root;
  const double focal_mm = plan.lens.focal_mm * plan.lens.extender.to_double();
  if (plan.lens.focus_m * 1000 <= focal_mm) {
    add_problem(
        problems, root.below("/lens/focus_m"), print_number(plan.lens.focus_m),
        "a distance beyond the focal length, more than " + print_number(focal_mm / 1000) + " m");
  }
  const Rational frame = Rational(1) / plan.run.sensor_rate;
  if (plan.run.shutter_kind == ShutterKind::time && plan.run.shutter_time_s > frame) {
    add_problem(problems, root.below("/run/shutter_time_s"),
                print_rational(plan.run.shutter_time_s),
                "at most one frame at the sensor rate, " + print_rational(frame) + " s");
  }
  if (plan.shooting.by == ShootingBy::recorded_hours &&
      plan.shooting.recorded_hours_per_day > plan.shooting.day_hours) {
    add_problem(problems, root.below("/shooting/recorded_hours_per_day"),
                print_number(plan.shooting.recorded_hours_per_day),
                "at most the shooting day of " + print_number(plan.shooting.day_hours) + " h");
  }
}

}  // namespace

Problems check_plan(const Plan& plan, const Catalogue& catalogue) {
  Problems problems = check_catalogue(plan.own, catalogue, "/own");
  check_scalars(plan, problems);
  check_frame_lines(plan, problems);
  if (!problems.empty()) return problems;
  check_format(plan, catalogue, problems);
  check_references(plan, catalogue, problems);
  check_relations(plan, problems);
  return problems;
}

}  // namespace widegate
