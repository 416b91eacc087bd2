// Answers that are another format: the best of the ranking that mends what this one lacks, and the
// smallest changes with which this one passes.
#include "core/answer/finder.h"
#include "core/base/number_text.h"
#include "core/choose/smallest_change.h"
#include "core/plan/plan_changes.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

/// To a format and the lens it was ranked with.
AnswerChange format_change(const Plan& plan, const RankedFormat& ranked) {
  const FormatChoice& format = ranked.format;
  AnswerChange change{{"/format/camera", format.camera},
                      {"/format/mode", format.mode},
                      {"/format/recording", format.recording},
                      {"/format/codec", format.codec}};
  const Plan with = with_format(plan, ranked);
  if (with.lens.focal_mm != plan.lens.focal_mm) {
    change.push_back({"/lens/focal_mm", print_number(with.lens.focal_mm)});
  }
  return change;
}

/// "Use Alder, Wide 16:9" and "3840 wide, VC-3 HQX; 29 mm".
void add_format(Finder& finder, const Note& note, const RankedFormat& ranked) {
  const Plan& plan = finder.plan();
  const Catalogue& library = finder.catalogue();
  const Camera* camera = find_row(plan.own.cameras, library.cameras, ranked.format.camera);
  const SensorMode* mode = find_row(camera->modes, ranked.format.mode);
  const Recording* recording = find_row(mode->recordings, ranked.format.recording);
  const Codec* codec = find_row(plan.own.codecs, library.codecs, ranked.format.codec);
  AnswerChange change = format_change(plan, ranked);
  std::string outcome = recording->name + ", " + codec->name;
  if (change.size() > 4) outcome += ", with the " + change.back().text + " mm";
  finder.add_if_mended(note, "Use " + camera->name + ", " + mode->name, std::move(outcome),
                       std::move(change));
}

/// What turns a figure of the equipment itself is no answer: nobody can dial a lens's circle. Nor
/// is a rate below the project's: nobody asked for fast motion.
bool can_be_done(const Change& change, const Plan& plan) {
  if (change.input == Input::image_circle || change.patch.empty()) return false;
  const auto rate = parse_rational(change.value);
  return change.input != Input::sensor_rate || !rate || *rate >= plan.run.project_rate;
}

}  // namespace

void find_formats(Finder& finder, const Note& note) {
  const RankedFormat* of_camera = nullptr;
  const RankedFormat* of_any = nullptr;
  for (const RankedFormat& each : finder.ranking().formats) {
    if (!each.accepted) break;
    if (of_any == nullptr) of_any = &each;
    if (of_camera == nullptr && each.format.camera == finder.plan().format.camera) {
      of_camera = &each;
    }
  }
  // The camera that is there first, and the best of all.
  if (of_camera != nullptr) add_format(finder, note, *of_camera);
  if (of_any != nullptr && of_any != of_camera) add_format(finder, note, *of_any);
}

void find_smallest_changes(Finder& finder, const Note& note) {
  find_formats(finder, note);
  const Plan& plan = finder.plan();
  for (const Change& change : smallest_changes(plan, finder.catalogue(), plan.format)) {
    if (!can_be_done(change, plan)) continue;
    const Checked<Plan> changed = with_fields(plan, change.patch, finder.catalogue());
    if (!changed) continue;
    finder.add_if_mended(note, change_words(plan, *changed, finder.catalogue()),
                         "then this format passes", change.patch);
  }
}

void find_level_lines(Finder& finder, const Note& note) {
  AnswerChange change;
  const auto& lines = finder.plan().deliverable.frame_lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!finder.report().frames[i].anchor_limited) continue;
    change.push_back({"/deliverable/frame_lines/" + std::to_string(i) + "/anchor/kind", "centre"});
  }
  finder.add_if_mended(note, "Centre it", "in the middle of the mode", std::move(change));
}

}  // namespace widegate
