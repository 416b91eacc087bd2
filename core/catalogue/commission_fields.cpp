// The table of a commission's scalar values; see catalogue_fields.h.
#include <array>

#include "core/catalogue/catalogue_fields.h"
#include "core/catalogue/commission_specs.h"

namespace widegate {
namespace {

namespace specs = commission_specs;

template <auto Term>
constexpr auto term(FieldSpec spec) {
  return field<&Commission::terms, Term>(spec);
}

constexpr std::array kCommission = {
    field<&Commission::id>({.pointer = "/id", .label = "Id", .ids = IdList::self}),
    field<&Commission::name>({.pointer = "/name", .label = "Name", .low = 1, .high = 80}),
    field<&Commission::source>({.pointer = "/source", .label = "Source", .low = 1, .high = 300}),
    field<&Commission::follows_deliverable>(
        specs::flag("/follows_deliverable", "Sizes follow the deliverable")),
    term<&CommissionTerms::photosites>(specs::photosites("/photosites")),
    term<&CommissionTerms::counted_on>(specs::counted_on("/counted_on")),
    term<&CommissionTerms::recorded_width_pixels>(specs::recorded_width("/recorded_width_pixels")),
    term<&CommissionTerms::recorded_height_pixels>(
        specs::recorded_height("/recorded_height_pixels")),
    term<&CommissionTerms::largest_upscaling>(specs::largest_upscaling("/largest_upscaling")),
    term<&CommissionTerms::bit_depth>(specs::bit_depth("/bit_depth")),
    term<&CommissionTerms::chroma>(specs::chroma("/chroma")),
    term<&CommissionTerms::sensor_raw>(specs::sensor_raw("/sensor_raw")),
    term<&CommissionTerms::compression>(specs::compression("/compression")),
    term<&CommissionTerms::lossless>(specs::lossless("/lossless")),
    term<&CommissionTerms::intra>(specs::intra("/intra")),
    term<&CommissionTerms::plays_at_once>(specs::plays_at_once("/plays_at_once")),
    term<&CommissionTerms::in_camera_desqueeze>(specs::in_camera_desqueeze("/in_camera_desqueeze")),
    term<&CommissionTerms::protection>(specs::protection("/protection")),
};

WIDEGATE_EVERY_MEMBER(Commission, rows_of<Commission>(kCommission), 2, id, name, source,
                      follows_deliverable, terms, rates);
WIDEGATE_EVERY_MEMBER(CommissionTerms, rows_of<CommissionTerms>(kCommission), 0, photosites,
                      counted_on, recorded_width_pixels, recorded_height_pixels, largest_upscaling,
                      bit_depth, chroma, sensor_raw, compression, lossless, intra, plays_at_once,
                      in_camera_desqueeze, protection);

}  // namespace

template <>
std::span<const Field<Commission>> row_fields() {
  return kCommission;
}

}  // namespace widegate
