#include "tests/core/random_plan.h"

#include <cmath>
#include <string>

#include "core/catalogue_fields.h"
#include "core/plan_check.h"
#include "core/plan_fields.h"
#include "tests/core/draws.h"

namespace widegate::testing {
namespace {

constexpr const char* kWords[] = {
    "A", "Salt Ferry", "naïve — “quoted”", "日本", "a,b;c", "<b>&amp;", "=1+1", "x y"};

/// A number within the field's limits, with few digits or with many.
double draw_decimal(Dice& dice, const FieldSpec& spec) {
  const bool usual = spec.usual_low != spec.usual_high;
  const double low = (usual ? spec.usual_low : spec.low).to_double();
  const double high = (usual ? spec.usual_high : spec.high).to_double();
  const double value = dice.between(low, high);
  return dice.one_in(2) ? std::round(value * 100) / 100 : value;
}

/// A value for the field, in `text` when it is text; ids are left to the caller.
FieldValue draw_value(Dice& dice, const FieldSpec& spec, std::string& text) {
  if (spec.optional && dice.one_in(3)) return {};
  switch (spec.kind) {
    case FieldKind::decimal:
      return draw_decimal(dice, spec);
    case FieldKind::fraction:
      return draw_fraction(dice, spec);
    case FieldKind::rate:
      return dice.one_in(2) ? Rational(dice.whole(1, 240))
                            : Rational(dice.whole(1, 5) * 24000, 1001);
    case FieldKind::whole:
      return dice.whole(spec.low.ceil(), std::min<std::int64_t>(spec.high.floor(), 1'000'000'000));
    case FieldKind::choice:
      return dice.whole(0, static_cast<std::int64_t>(spec.choices.size()) - 1);
    case FieldKind::flag:
      return dice.one_in(2);
    case FieldKind::text:
      text = dice.pick(kWords);
      return std::string_view(text);
    case FieldKind::id:
      return {};
  }
  return {};
}

/// Draws the row's scalar values; one that does not fit its limits stays as it is.
template <class Row>
void draw_row(Dice& dice, Row& row) {
  for (const Field<Row>& field : row_fields<Row>()) {
    if (field.kind == FieldKind::id) continue;
    std::string text;
    const FieldValue value = draw_value(dice, field, text);
    if (value_accepted(field, value)) field.write(row, 0, value);
  }
}

std::string id_of(const char* kind, std::int64_t number) {
  return std::string(kind) + "-" + std::to_string(number);
}

Camera draw_camera(Dice& dice, std::int64_t number, const Catalogue& library) {
  Camera camera;
  draw_row(dice, camera);
  camera.id = id_of("own-camera", number);
  const double pitch_mm = dice.between(2, 12) / 1000;
  camera.width_mm =
      static_cast<double>(camera.width_photosites = dice.whole(1000, 9000)) * pitch_mm;
  camera.height_mm =
      static_cast<double>(camera.height_photosites = dice.whole(1000, 6000)) * pitch_mm;
  const std::int64_t modes = dice.whole(1, 4);
  for (std::int64_t m = 0; m < modes; ++m) {
    SensorMode& mode = camera.modes.emplace_back();
    draw_row(dice, mode);
    mode.id = id_of("mode", m);
    mode.width_photosites = dice.whole(500, camera.width_photosites);
    mode.height_photosites = dice.whole(500, camera.height_photosites);
    mode.width_mm = static_cast<double>(mode.width_photosites) * pitch_mm;
    mode.height_mm = static_cast<double>(mode.height_photosites) * pitch_mm;
    Recording& recording = mode.recordings.emplace_back();
    draw_row(dice, recording);
    recording.id = "as-read";
    recording.desqueeze = 1;
    recording.width_pixels = recording.height_pixels = 0;
    recording.codecs = {library.codecs.front().id, library.codecs.back().id};
  }
  return camera;
}

template <class Form>
Codec draw_codec(Dice& dice, std::int64_t number) {
  Form form;
  draw_row(dice, form);
  if constexpr (std::is_same_v<Form, TableForm>) {
    draw_row(dice, form.rows.emplace_back());
    form.rows.back().rates = {24, Rational(30000, 1001)};
  }
  if constexpr (std::is_same_v<Form, LosslessForm>) {
    if (form.best_ratio < form.worst_ratio) std::swap(form.best_ratio, form.worst_ratio);
  }
  Codec codec;
  draw_row(dice, codec);
  codec.id = id_of("own-codec", number);
  codec.form = form;
  return codec;
}

template <class... Forms>
void draw_codecs(Dice& dice, Catalogue& own, const std::variant<Forms...>* /*which forms*/) {
  (own.codecs.push_back(draw_codec<Forms>(dice, static_cast<std::int64_t>(own.codecs.size()))),
   ...);
}

template <class Row>
void draw_rows(Dice& dice, std::vector<Row>& rows, const char* kind) {
  const std::int64_t count = dice.whole(0, 2);
  for (std::int64_t i = 0; i < count; ++i) {
    draw_row(dice, rows.emplace_back());
    rows.back().id = id_of(kind, i);
  }
}

LensSet draw_lens_set(Dice& dice) {
  LensSet set;
  draw_row(dice, set);
  set.id = "own-lenses";
  double focal = 10;
  const std::int64_t count = dice.whole(1, 6);
  for (std::int64_t i = 0; i < count; ++i) {
    Lens& lens = set.lenses.emplace_back();
    draw_row(dice, lens);
    lens.focal_mm = focal += static_cast<double>(dice.whole(1, 40));
  }
  return set;
}

}  // namespace

Catalogue random_library(Dice& dice, const Catalogue& library) {
  Catalogue own;
  const std::int64_t cameras = dice.whole(0, 2);
  for (std::int64_t i = 0; i < cameras; ++i) own.cameras.push_back(draw_camera(dice, i, library));
  if (dice.one_in(2)) own.lens_sets.push_back(draw_lens_set(dice));
  if (dice.one_in(2)) draw_codecs(dice, own, static_cast<CodecForm*>(nullptr));
  draw_rows(dice, own.cards, "own-card");
  draw_rows(dice, own.links, "own-link");
  draw_rows(dice, own.drives, "own-drive");
  draw_rows(dice, own.tapes, "own-tape");
  draw_rows(dice, own.checksums, "own-checksum");
  draw_rows(dice, own.containers, "own-container");
  return own;
}

Plan random_plan(Dice& dice, const Catalogue& library) {
  Plan plan;
  plan.deliverable.frame_lines.clear();
  const std::int64_t lines = dice.one_in(2) ? 1 : dice.whole(2, 8);
  for (std::int64_t i = 0; i < lines; ++i) {
    plan.deliverable.frame_lines.push_back(draw_frame_line(dice));
  }
  if (dice.one_in(4)) plan.own = random_library(dice, library);
  if (dice.one_in(3)) plan.choose.cameras = {"alder", "cedar"};
  for (const FieldInfo& field : plan_fields()) {
    if (field.kind == FieldKind::id || per_frame_line(field) || !dice.one_in(3)) continue;
    std::string text;
    const FieldValue before = field.read(plan, 0);
    const std::string before_text = value_text(field, before);
    const FieldValue value = draw_value(dice, field, text);
    if (!value_accepted(field, value)) continue;
    const Plan kept = plan;
    field.write(plan, 0, value);
    if (field.kind != FieldKind::text && !check_plan(plan, library).empty()) plan = kept;
  }
  return plan;
}

}  // namespace widegate::testing
