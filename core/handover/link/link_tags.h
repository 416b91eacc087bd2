// The numbers that stand for fields in links: the place of a field's pointer in its list. Links
// live for ever, so lists only grow at the end and nothing in them moves; a field without a place
// does not pass the tests.
#pragma once

#include <array>
#include <span>
#include <string_view>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/codec.h"
#include "core/plan/plan.h"

namespace widegate {

inline constexpr std::string_view kPlanTags[] = {
    "/title",
    "/format/camera",
    "/format/mode",
    "/format/recording",
    "/format/codec",
    "/deliverable/width_pixels",
    "/deliverable/height_pixels",
    "/lens/set",
    "/lens/focal_mm",
    "/lens/squeeze",
    "/lens/image_circle_mm",
    "/lens/f_number",
    "/lens/focus_m",
    "/lens/circle_of_confusion_mm",
    "/lens/match",
    "/lens/wanted_width_m",
    "/lens/wanted_height_m",
    "/mandate/photosites",
    "/mandate/photosites_across",
    "/run/project_rate",
    "/run/sensor_rate",
    "/run/shutter_kind",
    "/run/shutter_angle_deg",
    "/run/shutter_time_s",
    "/run/base_angle_deg",
    "/run/mains_hz",
    "/run/audio_channels",
    "/shooting/days",
    "/shooting/units",
    "/shooting/cameras_per_unit",
    "/shooting/by",
    "/shooting/recorded_hours_per_day",
    "/shooting/script_minutes",
    "/shooting/shooting_ratio",
    "/shooting/day_hours",
    "/store/container",
    "/store/card",
    "/store/link",
    "/store/drive",
    "/store/tape",
    "/store/checksum",
    "/store/verification",
    "/store/drive_copies",
    "/store/tape_copies",
    "/store/travel_minutes",
    "/store/return_minutes",
    "/store/upload_megabits_per_s",
    "/store/upload_share",
    "/store/currency",
    "/store/wrangler_price_per_hour",
    "/store/upload_price_per_terabyte",
    "/choose/must_cover",
    "/choose/must_meet_mandate",
    "/choose/min_minutes_per_card",
    "/choose/min_push_in_percent",
    "/choose/weight_area",
    "/choose/weight_pixels",
    "/choose/weight_speed",
    "/choose/weight_data",
    "/commission/id",
    "/commission/photosites",
    "/commission/counted_on",
    "/commission/recorded_width_pixels",
    "/commission/recorded_height_pixels",
    "/commission/largest_upscaling",
    "/commission/bit_depth",
    "/commission/chroma",
    "/commission/sensor_raw",
    "/commission/compression",
    "/commission/lossless",
    "/commission/intra",
    "/commission/plays_at_once",
    "/commission/in_camera_desqueeze",
    "/commission/protection",
    "/commission/film_pixels_per_mm",
    "/choose/min_room_percent",
    "/choose/compare",
    "/choose/weights",
    "/choose/fastest_rate",
    "/choose/weight_fidelity",
    "/lens/extender",
    "/run/lights",
    "/run/pulses_hz",
    "/store/copy_places",
    "/store/hold_hours",
    "/store/spare_cards",
    "/store/upload_what",
    "/store/proxy_megabits_per_s",
    "/film/magazine_feet",
    "/film/stock_price_per_foot",
    "/film/processing_price_per_foot",
    "/film/scanning_price_per_foot",
};

inline constexpr std::string_view kFrameLineTags[] = {
    "/deliverable/frame_lines/#/name",         "/deliverable/frame_lines/#/aspect",
    "/deliverable/frame_lines/#/protection",   "/deliverable/frame_lines/#/anchor/kind",
    "/deliverable/frame_lines/#/anchor/x",     "/deliverable/frame_lines/#/anchor/y",
    "/deliverable/frame_lines/#/width_pixels", "/deliverable/frame_lines/#/height_pixels",
};

/// The list of a catalogue row type.
template <class Row>
[[nodiscard]] std::span<const std::string_view> link_tags() = delete;

template <>
std::span<const std::string_view> link_tags<Camera>();
template <>
std::span<const std::string_view> link_tags<SensorMode>();
template <>
std::span<const std::string_view> link_tags<Recording>();
template <>
std::span<const std::string_view> link_tags<LensSet>();
template <>
std::span<const std::string_view> link_tags<Lens>();
template <>
std::span<const std::string_view> link_tags<Codec>();
template <>
std::span<const std::string_view> link_tags<PackedForm>();
template <>
std::span<const std::string_view> link_tags<RatioForm>();
template <>
std::span<const std::string_view> link_tags<LosslessForm>();
template <>
std::span<const std::string_view> link_tags<MacroblockForm>();
template <>
std::span<const std::string_view> link_tags<TableForm>();
template <>
std::span<const std::string_view> link_tags<TableForm::Row>();
template <>
std::span<const std::string_view> link_tags<BitRateForm>();
template <>
std::span<const std::string_view> link_tags<MeasuredForm>();
template <>
std::span<const std::string_view> link_tags<Card>();
template <>
std::span<const std::string_view> link_tags<Link>();
template <>
std::span<const std::string_view> link_tags<Drive>();
template <>
std::span<const std::string_view> link_tags<Tape>();
template <>
std::span<const std::string_view> link_tags<Checksum>();
template <>
std::span<const std::string_view> link_tags<Container>();
template <>
std::span<const std::string_view> link_tags<Commission>();

}  // namespace widegate
