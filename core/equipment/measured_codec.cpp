#include "core/equipment/measured_codec.h"

#include <span>
#include <string>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_fields.h"
#include "core/encode/json_path.h"

namespace widegate {
namespace {

/// A value against the limits that the row of the catalogue has for it.
void check(Problems& problems, std::string_view pointer, const FieldSpec& spec,
           const FieldValue& value) {
  if (value_accepted(spec, value)) return;
  add_problem(problems, JsonPath(pointer), shown_value(spec, value), accepted_values(spec));
}

const FieldSpec& spec_of(std::string_view pointer) {
  const auto fields = row_fields<MeasuredForm>();
  for (const auto& field : fields) {
    if (field.pointer == pointer) return field;
  }
  return fields.front();
}

void check_positive(Problems& problems, std::string_view pointer, Rational value) {
  if (value.ok() && value > Rational(0)) return;
  add_problem(problems, JsonPath(pointer), print_rational(value), "a number above 0");
}

}  // namespace

std::int64_t frames_in(Rational seconds, Rational rate) {
  return (seconds * rate + Rational(1, 2)).floor();
}

Checked<MeasuredForm> measured_form(const MeasuredClip& clip) {
  Problems problems;
  check(problems, "/bytes", spec_of("/bytes"), clip.bytes);
  check_positive(problems, "/seconds", clip.seconds);
  check(problems, "/rate", table_rate_spec(), clip.rate);
  check(problems, "/width_pixels", spec_of("/width_pixels"), clip.width_pixels);
  check(problems, "/height_pixels", spec_of("/height_pixels"), clip.height_pixels);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  const std::int64_t frames = frames_in(clip.seconds, clip.rate);
  if (!value_accepted(spec_of("/frames"), frames)) {
    add_problem(
        problems, JsonPath("/seconds"), print_rational(clip.seconds) + " s",
        "a running time of 1 to 1000000000 whole frames; this is " + std::to_string(frames));
    return tl::make_unexpected(std::move(problems));
  }
  return MeasuredForm{.bytes = clip.bytes,
                      .frames = frames,
                      .width_pixels = clip.width_pixels,
                      .height_pixels = clip.height_pixels};
}

Rational bits_per_second(std::int64_t bytes_per_frame, Rational rate) {
  return Rational(bytes_per_frame) * Rational(8) * rate;
}

}  // namespace widegate
