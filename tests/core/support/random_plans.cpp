#include "tests/core/support/random_plans.h"

#include <array>
#include <string>

#include "core/catalogue/catalogue_fields.h"
#include "core/plan/plan_check.h"
#include "core/plan/plan_fields.h"

namespace widegate::testing {
namespace {

constexpr auto kLetters = std::to_array<std::string_view>(
    {"a", "Z", "0", " ",  "-",    "\"", "\\", "/", "~",      "<",
     "'", "é", "∶", "漢", "🎞", "=",  "&",  "%", "\u00a0", "\u202e"});

std::string draw_text(Dice& dice, const FieldSpec& spec) {
  const auto least = static_cast<std::size_t>(spec.low.num());
  const auto most = static_cast<std::size_t>(spec.high.num());
  const auto wanted = static_cast<std::size_t>(
      dice.whole(spec.low.num(), dice.one_in(3) ? spec.high.num() : spec.low.num() + 12));
  std::string text;
  while (text.size() < wanted) {
    const std::string_view letter = dice.pick(kLetters);
    if (text.size() + letter.size() > most) break;
    text += letter;
  }
  while (text.size() < least) text += "x";
  return text;
}

double draw_decimal(Dice& dice, const FieldSpec& spec) {
  const double low = spec.low.to_double();
  const double high = spec.high.to_double();
  while (true) {
    const double share = static_cast<double>(dice.whole(0, 1'000'000'007)) / 1'000'000'007;
    const double value =
        dice.one_in(2) ? dice.between(low, high) : low + (high - low) * share * share * share;
    if (value_accepted(spec, value)) return value;
  }
}

/// A value of any kind but id and text (these need something to point at).
FieldValue draw_value(Dice& dice, const FieldSpec& spec) {
  if (spec.optional && dice.one_in(3)) return {};
  switch (spec.kind) {
    case FieldKind::decimal:
      return draw_decimal(dice, spec);
    case FieldKind::fraction:
    case FieldKind::rate:
      return draw_fraction(dice, spec);
    case FieldKind::whole:
      return dice.one_in(6) ? spec.high.num() : dice.whole(spec.low.num(), spec.high.num());
    case FieldKind::choice:
      return dice.whole(0, static_cast<std::int64_t>(spec.choices.size()) - 1);
    case FieldKind::flag:
      return dice.one_in(2);
    case FieldKind::text:
    case FieldKind::id:
      break;
  }
  return std::string_view();
}

template <class Row>
Row random_row(Dice& dice, std::string_view id) {
  Row row;
  for (const Field<Row>& info : row_fields<Row>()) {
    if (info.ids == IdList::self) {
      info.write(row, 0, id);
    } else if (info.ids == IdList::card_kind) {
      info.write(row, 0, std::string_view(dice.one_in(2) ? "sd" : ""));
    } else if (info.kind == FieldKind::text) {
      const std::string text = draw_text(dice, info);
      info.write(row, 0, std::string_view(text));
    } else {
      info.write(row, 0, draw_value(dice, info));
    }
  }
  return row;
}

LosslessForm random_lossless(Dice& dice) {
  auto form = random_row<LosslessForm>(dice, {});
  if (form.best_ratio < form.worst_ratio) std::swap(form.best_ratio, form.worst_ratio);
  return form;
}

TableForm random_table(Dice& dice) {
  TableForm form;
  const std::int64_t rows = dice.whole(1, 4);
  for (std::int64_t i = 0; i < rows; ++i) {
    auto row = random_row<TableForm::Row>(dice, {});
    row.width_pixels = 100 + i;
    if (dice.one_in(2)) row.rates = {24, Rational(24000, 1001)};
    form.rows.push_back(row);
  }
  return form;
}

CodecForm random_form(Dice& dice, std::size_t index) {
  switch (index) {
    case 0:
      return random_row<PackedForm>(dice, {});
    case 1:
      return random_row<RatioForm>(dice, {});
    case 2:
      return random_lossless(dice);
    case 3:
      return random_row<MacroblockForm>(dice, {});
    case 4:
      return random_table(dice);
    case 5:
      return random_row<BitRateForm>(dice, {});
    default:
      return random_row<MeasuredForm>(dice, {});
  }
}

Recording random_recording(Dice& dice, std::string_view id, const std::vector<Codec>& codecs) {
  auto recording = random_row<Recording>(dice, id);
  if (dice.one_in(2)) {
    recording.width_pixels = recording.height_pixels = 0;
    recording.desqueeze = 1;
  } else {
    recording.width_pixels = dice.whole(16, 9000);
    recording.height_pixels = dice.whole(16, 9000);
  }
  for (const Codec& codec : codecs) {
    if (dice.one_in(2)) recording.codecs.push_back(codec.id);
  }
  if (recording.codecs.empty()) recording.codecs = {"bayer-12-packed"};
  return recording;
}

Camera random_camera(Dice& dice, std::string_view id, const std::vector<Codec>& codecs) {
  auto camera = random_row<Camera>(dice, id);
  for (const char* kind : {"sd", "rowan", "express-b"}) {
    if (dice.one_in(2)) camera.media.emplace_back(kind);
  }
  const std::int64_t modes = dice.whole(1, 3);
  for (std::int64_t i = 0; i < modes; ++i) {
    auto mode = random_row<SensorMode>(dice, "mode-" + std::to_string(i));
    mode.width_photosites = dice.whole(16, camera.width_photosites);
    mode.height_photosites = dice.whole(16, camera.height_photosites);
    mode.width_mm = dice.between(0.5, camera.width_mm);
    mode.height_mm = dice.between(0.5, camera.height_mm);
    mode.recordings.push_back(random_recording(dice, "first", codecs));
    if (dice.one_in(2)) mode.recordings.push_back(random_recording(dice, "second", codecs));
    camera.modes.push_back(mode);
  }
  return camera;
}

LensSet random_lens_set(Dice& dice, std::string_view id) {
  auto set = random_row<LensSet>(dice, id);
  if (dice.one_in(2)) set.extenders.push_back(Rational(7, 5));
  if (dice.one_in(2)) set.extenders.push_back(Rational(71, 100));
  double focal = dice.between(1, 60);
  for (std::int64_t i = dice.whole(1, 5); i > 0; --i) {
    auto lens = random_row<Lens>(dice, {});
    lens.focal_mm = focal;
    focal += dice.between(0.25, 200);
    set.lenses.push_back(lens);
  }
  return set;
}

/// Adds, removes or moves a frame line, or changes the list of cameras.
void change_list(Dice& dice, Plan& plan, const Catalogue& catalogue) {
  auto& lines = plan.deliverable.frame_lines;
  if (dice.one_in(2)) {
    if (lines.size() < kMaxFrameLines && dice.one_in(2)) {
      lines.push_back(draw_frame_line(dice));
    } else if (lines.size() > 1) {
      lines.erase(lines.begin());
    }
    return;
  }
  plan.choose.cameras.clear();
  for (const Camera& camera : catalogue.cameras) {
    if (dice.one_in(4)) plan.choose.cameras.push_back(camera.id);
  }
}

}  // namespace

Catalogue random_library(Dice& dice) {
  Catalogue library;
  for (std::size_t i = 0; i < std::variant_size_v<CodecForm>; ++i) {
    auto codec = random_row<Codec>(dice, "own-codec-" + std::to_string(i));
    codec.form = random_form(dice, i);
    library.codecs.push_back(codec);
  }
  library.cameras.push_back(random_camera(dice, "own-camera", library.codecs));
  library.lens_sets.push_back(random_lens_set(dice, "own-lenses"));
  library.cards.push_back(random_row<Card>(dice, "own-card"));
  library.links.push_back(random_row<Link>(dice, "own-link"));
  library.drives.push_back(random_row<Drive>(dice, "own-drive"));
  library.tapes.push_back(random_row<Tape>(dice, "own-tape"));
  library.checksums.push_back(random_row<Checksum>(dice, "own-checksum"));
  library.containers.push_back(random_row<Container>(dice, "own-container"));
  return library;
}

void change_something(Dice& dice, Plan& plan, const Catalogue& catalogue) {
  Plan changed = plan;
  if (dice.one_in(12)) {
    change_list(dice, changed, catalogue);
  } else {
    const FieldInfo& info = dice.pick(plan_fields());
    const auto line = static_cast<std::size_t>(
        dice.whole(0, static_cast<std::int64_t>(plan.deliverable.frame_lines.size()) - 1));
    const auto options = field_options(plan, catalogue, info);
    if (info.kind == FieldKind::id || info.kind == FieldKind::choice) {
      const auto next =
          with_field(plan, pointer_of(info, line), dice.pick(options).value, catalogue);
      if (next) plan = *next;
      return;
    }
    if (info.kind == FieldKind::text) {
      const std::string text = draw_text(dice, info);
      info.write(changed, line, std::string_view(text));
    } else {
      info.write(changed, line, draw_value(dice, info));
    }
  }
  if (check_plan(changed, catalogue).empty()) plan = changed;
}

Plan random_plan(Dice& dice, const Catalogue& catalogue) {
  Plan plan;
  if (dice.one_in(4)) plan.own = random_library(dice);
  for (std::int64_t changes = dice.whole(0, 40); changes > 0; --changes) {
    change_something(dice, plan, catalogue);
  }
  return plan;
}

}  // namespace widegate::testing
