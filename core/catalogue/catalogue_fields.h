// The tables of every scalar value of a catalogue's rows, one table per row type, as
// plan_fields.h is for a plan. A member without a row does not compile. Lists inside rows (modes,
// lenses, codec forms, table rows) are handled beside the tables, by name.
#pragma once

#include <span>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/codec.h"
#include "core/field/field.h"

namespace widegate {

/// Every row of the table for this row type, in the order of the document.
template <class Row>
[[nodiscard]] std::span<const Field<Row>> row_fields() = delete;

template <>
std::span<const Field<Camera>> row_fields();
template <>
std::span<const Field<SensorMode>> row_fields();
template <>
std::span<const Field<Recording>> row_fields();
template <>
std::span<const Field<LensSet>> row_fields();
template <>
std::span<const Field<Lens>> row_fields();
template <>
std::span<const Field<Codec>> row_fields();
template <>
std::span<const Field<PackedForm>> row_fields();
template <>
std::span<const Field<RatioForm>> row_fields();
template <>
std::span<const Field<LosslessForm>> row_fields();
template <>
std::span<const Field<MacroblockForm>> row_fields();
template <>
std::span<const Field<TableForm>> row_fields();
template <>
std::span<const Field<TableForm::Row>> row_fields();
template <>
std::span<const Field<BitRateForm>> row_fields();
template <>
std::span<const Field<MeasuredForm>> row_fields();
template <>
std::span<const Field<Card>> row_fields();
template <>
std::span<const Field<Link>> row_fields();
template <>
std::span<const Field<Drive>> row_fields();
template <>
std::span<const Field<Tape>> row_fields();
template <>
std::span<const Field<Checksum>> row_fields();
template <>
std::span<const Field<Container>> row_fields();

/// The key of a codec's form in its row, in the order of CodecForm's alternatives.
inline constexpr std::string_view kFormKeys[] = {"packed", "ratio",    "lossless", "macroblock",
                                                 "table",  "bit_rate", "measured"};
static_assert(std::size(kFormKeys) == std::variant_size_v<CodecForm>);

/// What a rate in a codec's table (a list, so outside the tables of scalars) accepts.
[[nodiscard]] const FieldSpec& table_rate_spec();

/// What a pitch in micrometres, given in place of millimetres or photosites, accepts.
[[nodiscard]] const FieldSpec& pitch_spec();

/// What an item of Camera::media accepts (as a card's kind, which may also be empty), and an item
/// of LensSet::extenders, which is not 1 either.
[[nodiscard]] const FieldSpec& card_kind_spec();
[[nodiscard]] const FieldSpec& extender_spec();

}  // namespace widegate
