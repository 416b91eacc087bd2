#include "core/catalogue/catalogue_fields.h"

#include <array>

namespace widegate {
namespace {

constexpr std::int64_t kMaxBytes = 9'007'199'254'740'992;  // 2^53: exact as a double and in JSON
constexpr std::int64_t kMaxBytesPerSecond = 1'000'000'000'000;
constexpr std::int64_t kMaxSide = 65535;
constexpr std::int64_t kBillion = 1'000'000'000;

constexpr FieldSpec id_spec() { return {.pointer = "/id", .label = "Id", .ids = IdList::self}; }
constexpr FieldSpec name_spec() {
  return {.pointer = "/name", .label = "Name", .low = 1, .high = 80};
}
constexpr FieldSpec source_spec() {
  return {.pointer = "/source", .label = "Source", .low = 1, .high = 300};
}
constexpr FieldSpec number(std::string_view pointer, std::string_view label, std::string_view unit,
                           Rational low, Rational high) {
  return {.pointer = pointer, .label = label, .unit = unit, .low = low, .high = high};
}
constexpr FieldSpec fraction(std::string_view pointer, std::string_view label,
                             std::string_view unit, Rational low, Rational high,
                             std::int64_t max_num, std::int64_t max_den) {
  FieldSpec spec = number(pointer, label, unit, low, high);
  spec.max_num = max_num;
  spec.max_den = max_den;
  return spec;
}
constexpr FieldSpec rate(std::string_view pointer, std::string_view label) {
  return fraction(pointer, label, "fps", Rational(1, 100), 10'000, 10'000'000, 10'010);
}
constexpr FieldSpec squeeze(std::string_view pointer, std::string_view label) {
  return fraction(pointer, label, "x", 1, 4, 400, 100);
}
constexpr FieldSpec side(std::string_view pointer, std::string_view label, std::int64_t low) {
  return number(pointer, label, "px", low, kMaxSide);
}
constexpr FieldSpec millimetres(std::string_view pointer, std::string_view label) {
  return number(pointer, label, "mm", Rational(1, 2), 500);
}
constexpr FieldSpec capacity() {
  return number("/capacity_bytes", "Capacity", "bytes", 1'000'000, kMaxBytes);
}
constexpr FieldSpec speed(std::string_view pointer, std::string_view label) {
  return number(pointer, label, "bytes/s", 1000, kMaxBytesPerSecond);
}
constexpr FieldSpec price() { return number("/price", "Price", "", 0, kBillion); }
constexpr FieldSpec above_low(FieldSpec spec) {
  spec.low_excluded = true;
  return spec;
}

constexpr FieldSpec of_kind(FieldKind kind, FieldSpec spec) {
  spec.kind = kind;
  return spec;
}

constexpr FieldSpec kTableRate = of_kind(FieldKind::rate, rate("", "Frame rate"));
constexpr FieldSpec kPitch =
    of_kind(FieldKind::decimal, number("/pitch_um", "Photosite pitch", "um", Rational(1, 2), 100));

constexpr ChoiceName kChromas[] = {
    {"4:2:0", "4:2:0"}, {"4:2:2", "4:2:2"}, {"4:4:4", "4:4:4"}, {"raw", "Raw of the sensor"}};
constexpr ChoiceName kMedia[] = {{"digital", "Digital"}, {"film", "Film"}};

constexpr FieldSpec choice(std::string_view pointer, std::string_view label,
                           std::span<const ChoiceName> choices) {
  return {.pointer = pointer, .label = label, .choices = choices};
}
constexpr FieldSpec flag(std::string_view pointer, std::string_view label) {
  return {.pointer = pointer, .label = label};
}
constexpr FieldSpec optional_text(std::string_view pointer, std::string_view label,
                                  std::int64_t bytes) {
  return {.pointer = pointer, .label = label, .high = bytes};
}

constexpr FieldSpec kCardKind = {.pointer = "/kind",
                                 .label = "Kind of card",
                                 .kind = FieldKind::id,
                                 .optional = true,
                                 .ids = IdList::card_kind};
constexpr FieldSpec kExtender =
    of_kind(FieldKind::fraction,
            fraction("", "Factor of an extender or reducer", "x", Rational(1, 4), 4, 4000, 1000));

constexpr std::array kCamera = {
    field<&Camera::id>(id_spec()),
    field<&Camera::name>(name_spec()),
    field<&Camera::source>(source_spec()),
    field<&Camera::width_photosites>(side("/width_photosites", "Sensor width", 16)),
    field<&Camera::height_photosites>(side("/height_photosites", "Sensor height", 16)),
    field<&Camera::width_mm>(millimetres("/width_mm", "Sensor width")),
    field<&Camera::height_mm>(millimetres("/height_mm", "Sensor height")),
    field<&Camera::medium>(choice("/medium", "Records on", kMedia)),
    field<&Camera::film, &FilmGauge::gauge_mm>(
        number("/film/gauge_mm", "Film gauge", "mm", 1, 200)),
    field<&Camera::film, &FilmGauge::perforations_per_frame>(
        number("/film/perforations_per_frame", "Perforations for a frame", "", 1, 100)),
    field<&Camera::film, &FilmGauge::frames_per_foot>(
        fraction("/film/frames_per_foot", "Frames in a foot", "", 1, 1000, 1'000'000, 1000)),
    field<&Camera::film, &FilmGauge::source>(
        optional_text("/film/source", "Source of the film's figures", 300)),
    field<&Camera::max_rate>(rate("/max_rate", "Highest rate of the camera")),
    field<&Camera::read_out_ms>(
        above_low(number("/read_out_ms", "Read-out of the whole sensor", "ms", 0, 1000))),
};
constexpr std::array kSensorMode = {
    field<&SensorMode::id>(id_spec()),
    field<&SensorMode::name>(name_spec()),
    field<&SensorMode::width_photosites>(side("/width_photosites", "Mode width", 16)),
    field<&SensorMode::height_photosites>(side("/height_photosites", "Mode height", 16)),
    field<&SensorMode::width_mm>(millimetres("/width_mm", "Mode width")),
    field<&SensorMode::height_mm>(millimetres("/height_mm", "Mode height")),
    field<&SensorMode::max_rate>(rate("/max_rate", "Highest rate of the mode")),
    field<&SensorMode::squeeze>(squeeze("/squeeze", "Shaped for a squeeze of")),
    field<&SensorMode::binned>(flag("/binned", "Photosites joined")),
};
constexpr std::array kRecording = {
    field<&Recording::id>(id_spec()),
    field<&Recording::name>(name_spec()),
    field<&Recording::width_pixels>(side("/width_pixels", "Recorded width", 0)),
    field<&Recording::height_pixels>(side("/height_pixels", "Recorded height", 0)),
    field<&Recording::desqueeze>(squeeze("/desqueeze", "Squeeze removed in camera")),
    field<&Recording::max_rate>(rate("/max_rate", "Highest rate of the option")),
};
constexpr std::array kLensSet = {
    field<&LensSet::id>(id_spec()),
    field<&LensSet::name>(name_spec()),
    field<&LensSet::source>(source_spec()),
    field<&LensSet::squeeze>(squeeze("/squeeze", "Squeeze")),
};
constexpr std::array kLens = {
    field<&Lens::focal_mm>(number("/focal_mm", "Focal length", "mm", 1, 3000)),
    field<&Lens::image_circle_mm>(number("/image_circle_mm", "Image circle", "mm", 1, 500)),
    field<&Lens::widest_t_stop>(number("/widest_t_stop", "Widest T-stop", "", Rational(1, 2), 64)),
    field<&Lens::close_focus_m>(
        number("/close_focus_m", "Close focus", "m", Rational(1, 100), 100)),
};
constexpr std::array kCodec = {
    field<&Codec::id>(id_spec()),
    field<&Codec::name>(name_spec()),
    field<&Codec::source>(source_spec()),
    field<&Codec::facts, &CodecFacts::bit_depth>(
        number("/facts/bit_depth", "Bit depth", "bit", 1, 32)),
    field<&Codec::facts, &CodecFacts::chroma>(choice("/facts/chroma", "Chroma", kChromas)),
    field<&Codec::facts, &CodecFacts::lossless>(flag("/facts/lossless", "Lossless")),
    field<&Codec::facts, &CodecFacts::intra>(flag("/facts/intra", "Every frame coded by itself")),
    field<&Codec::facts, &CodecFacts::plays_at_once>(
        flag("/facts/plays_at_once", "Plays at once in an edit suite")),
    field<&Codec::facts, &CodecFacts::facts_source>(
        optional_text("/facts/source", "Source of these facts", 300)),
};
constexpr std::array kPackedForm = {
    field<&PackedForm::block_pixels>(number("/block_pixels", "Pixels in a block", "", 1, 4096)),
    field<&PackedForm::block_bytes>(number("/block_bytes", "Bytes of a block", "bytes", 1, 65536)),
    field<&PackedForm::row_multiple_bytes>(
        number("/row_multiple_bytes", "Rows filled to a multiple of", "bytes", 1, 65536)),
    field<&PackedForm::row_extra_bytes>(
        number("/row_extra_bytes", "Added to each row", "bytes", 0, 1'000'000)),
    field<&PackedForm::frame_extra_bytes>(
        number("/frame_extra_bytes", "Added to each frame", "bytes", 0, kBillion)),
};
constexpr std::array kRatioForm = {
    field<&RatioForm::bits_per_pixel>(above_low(
        fraction("/bits_per_pixel", "Bits before compression", "bit", 0, 256, 25'600, 100))),
    field<&RatioForm::ratio>(fraction("/ratio", "Compression ratio", "", 1, 1000, 100'000, 1000)),
};
constexpr std::array kLosslessForm = {
    field<&LosslessForm::bits_per_pixel>(
        above_low(fraction("/bits_per_pixel", "Bits before coding", "bit", 0, 256, 25'600, 100))),
    field<&LosslessForm::worst_ratio>(
        fraction("/worst_ratio", "Worst ratio", "", Rational(1, 10), 1000, 100'000, 1000)),
    field<&LosslessForm::best_ratio>(
        fraction("/best_ratio", "Best ratio", "", Rational(1, 10), 1000, 100'000, 1000)),
};
constexpr std::array kMacroblockForm = {
    field<&MacroblockForm::numerator>(number("/numerator", "Multiplier", "", 1, kBillion)),
    field<&MacroblockForm::denominator>(number("/denominator", "Divisor", "", 1, kBillion)),
    field<&MacroblockForm::step_bytes>(number("/step_bytes", "Step", "bytes", 1, kBillion)),
    field<&MacroblockForm::minimum_bytes>(
        number("/minimum_bytes", "Smallest frame", "bytes", 0, kBillion)),
};
constexpr std::array kTableRow = {
    field<&TableForm::Row::width_pixels>(side("/width_pixels", "Raster width", 16)),
    field<&TableForm::Row::height_pixels>(side("/height_pixels", "Raster height", 16)),
    field<&TableForm::Row::bytes>(
        number("/bytes", "Bytes of a frame", "bytes", 1, kMaxBytesPerSecond)),
};
constexpr std::array kBitRateForm = {
    field<&BitRateForm::bits_per_s>(
        number("/bits_per_s", "Bit rate", "bit/s", 1000, kMaxBytesPerSecond)),
};
constexpr std::array kMeasuredForm = {
    field<&MeasuredForm::bytes>(number("/bytes", "Bytes measured", "bytes", 1, kMaxBytes)),
    field<&MeasuredForm::frames>(number("/frames", "Frames measured", "", 1, kBillion)),
    field<&MeasuredForm::width_pixels>(side("/width_pixels", "Raster width", 16)),
    field<&MeasuredForm::height_pixels>(side("/height_pixels", "Raster height", 16)),
};
constexpr std::array kCard = {
    field<&Card::id>(id_spec()),
    field<&Card::name>(name_spec()),
    field<&Card::source>(source_spec()),
    field<&Card::kind>(kCardKind),
    field<&Card::capacity_bytes>(capacity()),
    field<&Card::usable_share>(
        above_low(fraction("/usable_share", "Usable share", "", 0, 1, 10'000, 10'000))),
    field<&Card::write_bytes_per_s>(speed("/write_bytes_per_s", "Sustained write speed")),
    field<&Card::read_bytes_per_s>(speed("/read_bytes_per_s", "Read speed")),
    field<&Card::guarantee>(
        FieldSpec{.pointer = "/guarantee", .label = "Speed guaranteed by", .high = 40}),
    field<&Card::price>(price()),
};
constexpr std::array kLink = {
    field<&Link::id>(id_spec()),
    field<&Link::name>(name_spec()),
    field<&Link::source>(source_spec()),
    field<&Link::payload_bytes_per_s>(speed("/payload_bytes_per_s", "Payload")),
};
constexpr std::array kDrive = {
    field<&Drive::id>(id_spec()),
    field<&Drive::name>(name_spec()),
    field<&Drive::source>(source_spec()),
    field<&Drive::capacity_bytes>(capacity()),
    field<&Drive::write_bytes_per_s>(speed("/write_bytes_per_s", "Write speed")),
    field<&Drive::read_bytes_per_s>(speed("/read_bytes_per_s", "Read speed")),
    field<&Drive::price>(price()),
};
constexpr std::array kTape = {
    field<&Tape::id>(id_spec()),
    field<&Tape::name>(name_spec()),
    field<&Tape::source>(source_spec()),
    field<&Tape::capacity_bytes>(capacity()),
    field<&Tape::write_bytes_per_s>(speed("/write_bytes_per_s", "Write speed")),
    field<&Tape::price>(price()),
};
constexpr std::array kChecksum = {
    field<&Checksum::id>(id_spec()),
    field<&Checksum::name>(name_spec()),
    field<&Checksum::source>(source_spec()),
    field<&Checksum::bytes_per_s>(speed("/bytes_per_s", "Speed of one stream")),
};
constexpr std::array kContainer = {
    field<&Container::id>(id_spec()),
    field<&Container::name>(name_spec()),
    field<&Container::source>(source_spec()),
    field<&Container::bytes_per_frame>(
        number("/bytes_per_frame", "Added to each frame", "bytes", 0, kBillion)),
    field<&Container::audio_bytes_per_frame_and_channel>(
        number("/audio_bytes_per_frame_and_channel", "Added to each frame for an audio channel",
               "bytes", 0, kBillion)),
};

WIDEGATE_EVERY_MEMBER(Camera, rows_of<Camera>(kCamera), 3, id, name, source, width_photosites,
                      height_photosites, width_mm, height_mm, medium, film, max_rate, read_out_ms,
                      media, modes);
WIDEGATE_EVERY_MEMBER(FilmGauge, rows_of<FilmGauge>(kCamera), 0, gauge_mm, perforations_per_frame,
                      frames_per_foot, source);
WIDEGATE_EVERY_MEMBER(SensorMode, kSensorMode.size(), 1, id, name, width_photosites,
                      height_photosites, width_mm, height_mm, max_rate, squeeze, binned,
                      recordings);
WIDEGATE_EVERY_MEMBER(Recording, kRecording.size(), 1, id, name, width_pixels, height_pixels,
                      desqueeze, max_rate, codecs);
WIDEGATE_EVERY_MEMBER(LensSet, kLensSet.size(), 2, id, name, source, squeeze, extenders, lenses);
WIDEGATE_EVERY_MEMBER(Lens, kLens.size(), 0, focal_mm, image_circle_mm, widest_t_stop,
                      close_focus_m);
WIDEGATE_EVERY_MEMBER(Codec, rows_of<Codec>(kCodec), 2, id, name, source, form, facts);
WIDEGATE_EVERY_MEMBER(CodecFacts, rows_of<CodecFacts>(kCodec), 0, bit_depth, chroma, lossless,
                      intra, plays_at_once, facts_source);
WIDEGATE_EVERY_MEMBER(PackedForm, kPackedForm.size(), 0, block_pixels, block_bytes,
                      row_multiple_bytes, row_extra_bytes, frame_extra_bytes);
WIDEGATE_EVERY_MEMBER(RatioForm, kRatioForm.size(), 0, bits_per_pixel, ratio);
WIDEGATE_EVERY_MEMBER(LosslessForm, kLosslessForm.size(), 0, bits_per_pixel, worst_ratio,
                      best_ratio);
WIDEGATE_EVERY_MEMBER(MacroblockForm, kMacroblockForm.size(), 0, numerator, denominator, step_bytes,
                      minimum_bytes);
WIDEGATE_EVERY_MEMBER(TableForm, std::size_t{0}, 1, rows);
WIDEGATE_EVERY_MEMBER(TableForm::Row, kTableRow.size(), 1, width_pixels, height_pixels, rates,
                      bytes);
WIDEGATE_EVERY_MEMBER(BitRateForm, kBitRateForm.size(), 0, bits_per_s);
WIDEGATE_EVERY_MEMBER(MeasuredForm, kMeasuredForm.size(), 0, bytes, frames, width_pixels,
                      height_pixels);
WIDEGATE_EVERY_MEMBER(Card, kCard.size(), 0, id, name, source, kind, capacity_bytes, usable_share,
                      write_bytes_per_s, read_bytes_per_s, guarantee, price);
WIDEGATE_EVERY_MEMBER(Link, kLink.size(), 0, id, name, source, payload_bytes_per_s);
WIDEGATE_EVERY_MEMBER(Drive, kDrive.size(), 0, id, name, source, capacity_bytes, write_bytes_per_s,
                      read_bytes_per_s, price);
WIDEGATE_EVERY_MEMBER(Tape, kTape.size(), 0, id, name, source, capacity_bytes, write_bytes_per_s,
                      price);
WIDEGATE_EVERY_MEMBER(Checksum, kChecksum.size(), 0, id, name, source, bytes_per_s);
WIDEGATE_EVERY_MEMBER(Container, kContainer.size(), 0, id, name, source, bytes_per_frame,
                      audio_bytes_per_frame_and_channel);

}  // namespace

template <>
std::span<const Field<Camera>> row_fields() {
  return kCamera;
}
template <>
std::span<const Field<SensorMode>> row_fields() {
  return kSensorMode;
}
template <>
std::span<const Field<Recording>> row_fields() {
  return kRecording;
}
template <>
std::span<const Field<LensSet>> row_fields() {
  return kLensSet;
}
template <>
std::span<const Field<Lens>> row_fields() {
  return kLens;
}
template <>
std::span<const Field<Codec>> row_fields() {
  return kCodec;
}
template <>
std::span<const Field<PackedForm>> row_fields() {
  return kPackedForm;
}
template <>
std::span<const Field<RatioForm>> row_fields() {
  return kRatioForm;
}
template <>
std::span<const Field<LosslessForm>> row_fields() {
  return kLosslessForm;
}
template <>
std::span<const Field<MacroblockForm>> row_fields() {
  return kMacroblockForm;
}
template <>
std::span<const Field<BitRateForm>> row_fields() {
  return kBitRateForm;
}
template <>
std::span<const Field<MeasuredForm>> row_fields() {
  return kMeasuredForm;
}
template <>
std::span<const Field<Card>> row_fields() {
  return kCard;
}
template <>
std::span<const Field<Link>> row_fields() {
  return kLink;
}
template <>
std::span<const Field<Drive>> row_fields() {
  return kDrive;
}
template <>
std::span<const Field<Tape>> row_fields() {
  return kTape;
}
template <>
std::span<const Field<Checksum>> row_fields() {
  return kChecksum;
}
template <>
std::span<const Field<Container>> row_fields() {
  return kContainer;
}
template <>
std::span<const Field<TableForm::Row>> row_fields() {
  return kTableRow;
}
template <>
std::span<const Field<TableForm>> row_fields() {
  return {};
}

const FieldSpec& table_rate_spec() { return kTableRate; }
const FieldSpec& pitch_spec() { return kPitch; }
const FieldSpec& card_kind_spec() { return kCardKind; }
const FieldSpec& extender_spec() { return kExtender; }

}  // namespace widegate
