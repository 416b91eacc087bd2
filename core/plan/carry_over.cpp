#include "core/plan/carry_over.h"

#include <algorithm>
#include <array>

namespace widegate {
namespace {

constexpr std::string_view kPhotosites = "/mandate/photosites";
constexpr std::string_view kAcross = "/mandate/photosites_across";
constexpr std::string_view kMustMeet = "/choose/must_meet_mandate";

constexpr FieldSpec count(std::string_view pointer, std::string_view label, std::int64_t high) {
  return {.pointer = pointer, .label = label, .low = 0, .high = high};
}

constexpr std::array kRetired = {
    field<&RetiredChoices::photosites>(
        count(kPhotosites, "Photosites required", std::int64_t{65535} * 65535)),
    field<&RetiredChoices::photosites_across>(count(kAcross, "Photosites required across", 65535)),
    field<&RetiredChoices::must_meet_mandate>(
        FieldSpec{.pointer = kMustMeet, .label = "Must meet the mandate"}),
};
WIDEGATE_EVERY_MEMBER(RetiredChoices, kRetired.size(), 0, photosites, photosites_across,
                      must_meet_mandate);

constexpr std::string_view kNoCommission = "none";

}  // namespace

std::span<const Field<RetiredChoices>> retired_fields() { return kRetired; }

const Field<RetiredChoices>* retired_field(std::string_view pointer) {
  for (const Field<RetiredChoices>& row : kRetired) {
    if (row.pointer == pointer) return &row;
  }
  return nullptr;
}

void RetiredSeen::add(const Field<RetiredChoices>& row) {
  bits_ |= std::uint32_t{1} << static_cast<unsigned>(&row - kRetired.data());
}

bool RetiredSeen::has(std::string_view pointer) const {
  const auto* row = retired_field(pointer);
  return row != nullptr && (bits_ >> static_cast<unsigned>(row - kRetired.data()) & 1U) != 0;
}

void carry_over(Plan& plan, const RetiredChoices& retired, const RetiredSeen& seen) {
  const bool no_photosites = seen.has(kPhotosites) && retired.photosites == 0;
  const bool need_not_be_met = seen.has(kMustMeet) && !retired.must_meet_mandate;
  if (no_photosites || need_not_be_met) {
    plan.commission.id = kNoCommission;
  } else if (seen.has(kPhotosites)) {
    plan.commission.terms.photosites = retired.photosites;
  }
  if (seen.has(kAcross) && retired.photosites_across > 0 && !need_not_be_met) {
    plan.commission.terms.recorded_width_pixels = retired.photosites_across;
  }
}

void carry_over_weights(Plan& plan, bool set_said) {
  Choosing& choose = plan.choose;
  const auto weights = {choose.weight_area, choose.weight_pixels, choose.weight_fidelity,
                        choose.weight_speed, choose.weight_data};
  const bool touched = std::any_of(weights.begin(), weights.end(), [](double w) { return w != 1; });
  if (!set_said && touched) choose.weights = WeightSet::own;
}

}  // namespace widegate
