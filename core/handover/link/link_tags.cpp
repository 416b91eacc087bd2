#include "core/handover/link/link_tags.h"

namespace widegate {
namespace {

constexpr std::string_view kCamera[] = {"/id",
                                        "/name",
                                        "/source",
                                        "/width_photosites",
                                        "/height_photosites",
                                        "/width_mm",
                                        "/height_mm",
                                        "/medium",
                                        "/film/gauge_mm",
                                        "/film/perforations_per_frame",
                                        "/film/frames_per_foot",
                                        "/film/source",
                                        "/max_rate",
                                        "/read_out_ms",
                                        "/media"};
constexpr std::string_view kSensorMode[] = {
    "/id",       "/name",      "/width_photosites", "/height_photosites",
    "/width_mm", "/height_mm", "/max_rate",         "/squeeze",
    "/binned"};
constexpr std::string_view kRecording[] = {
    "/id", "/name", "/width_pixels", "/height_pixels", "/desqueeze", "/max_rate"};
constexpr std::string_view kLensSet[] = {"/id", "/name", "/source", "/squeeze", "/extenders"};
constexpr std::string_view kLens[] = {"/focal_mm", "/image_circle_mm", "/widest_t_stop",
                                      "/close_focus_m"};
constexpr std::string_view kCodec[] = {
    "/id",           "/name",           "/source",      "/facts/bit_depth",
    "/facts/chroma", "/facts/lossless", "/facts/intra", "/facts/plays_at_once",
    "/facts/source"};
constexpr std::string_view kPackedForm[] = {"/block_pixels", "/block_bytes", "/row_multiple_bytes",
                                            "/row_extra_bytes", "/frame_extra_bytes"};
constexpr std::string_view kRatioForm[] = {"/bits_per_pixel", "/ratio"};
constexpr std::string_view kLosslessForm[] = {"/bits_per_pixel", "/worst_ratio", "/best_ratio"};
constexpr std::string_view kMacroblockForm[] = {"/numerator", "/denominator", "/step_bytes",
                                                "/minimum_bytes"};
constexpr std::string_view kTableFormRow[] = {"/width_pixels", "/height_pixels", "/bytes"};
constexpr std::string_view kBitRateForm[] = {"/bits_per_s"};
constexpr std::string_view kMeasuredForm[] = {"/bytes", "/frames", "/width_pixels",
                                              "/height_pixels"};
constexpr std::string_view kCard[] = {"/id",
                                      "/name",
                                      "/source",
                                      "/capacity_bytes",
                                      "/usable_share",
                                      "/write_bytes_per_s",
                                      "/read_bytes_per_s",
                                      "/guarantee",
                                      "/price",
                                      "/kind"};
constexpr std::string_view kLink[] = {"/id", "/name", "/source", "/payload_bytes_per_s"};
constexpr std::string_view kDrive[] = {
    "/id",   "/name", "/source", "/capacity_bytes", "/write_bytes_per_s", "/read_bytes_per_s",
    "/price"};
constexpr std::string_view kTape[] = {
    "/id", "/name", "/source", "/capacity_bytes", "/write_bytes_per_s", "/price"};
constexpr std::string_view kChecksum[] = {"/id", "/name", "/source", "/bytes_per_s"};
constexpr std::string_view kContainer[] = {"/id", "/name", "/source", "/bytes_per_frame",
                                           "/audio_bytes_per_frame_and_channel"};

}  // namespace

template <>
std::span<const std::string_view> link_tags<Camera>() {
  return kCamera;
}
template <>
std::span<const std::string_view> link_tags<SensorMode>() {
  return kSensorMode;
}
template <>
std::span<const std::string_view> link_tags<Recording>() {
  return kRecording;
}
template <>
std::span<const std::string_view> link_tags<LensSet>() {
  return kLensSet;
}
template <>
std::span<const std::string_view> link_tags<Lens>() {
  return kLens;
}
template <>
std::span<const std::string_view> link_tags<Codec>() {
  return kCodec;
}
template <>
std::span<const std::string_view> link_tags<PackedForm>() {
  return kPackedForm;
}
template <>
std::span<const std::string_view> link_tags<RatioForm>() {
  return kRatioForm;
}
template <>
std::span<const std::string_view> link_tags<LosslessForm>() {
  return kLosslessForm;
}
template <>
std::span<const std::string_view> link_tags<MacroblockForm>() {
  return kMacroblockForm;
}
template <>
std::span<const std::string_view> link_tags<TableForm>() {
  return {};
}
template <>
std::span<const std::string_view> link_tags<TableForm::Row>() {
  return kTableFormRow;
}
template <>
std::span<const std::string_view> link_tags<BitRateForm>() {
  return kBitRateForm;
}
template <>
std::span<const std::string_view> link_tags<MeasuredForm>() {
  return kMeasuredForm;
}
template <>
std::span<const std::string_view> link_tags<Card>() {
  return kCard;
}
template <>
std::span<const std::string_view> link_tags<Link>() {
  return kLink;
}
template <>
std::span<const std::string_view> link_tags<Drive>() {
  return kDrive;
}
template <>
std::span<const std::string_view> link_tags<Tape>() {
  return kTape;
}
template <>
std::span<const std::string_view> link_tags<Checksum>() {
  return kChecksum;
}
template <>
std::span<const std::string_view> link_tags<Container>() {
  return kContainer;
}

}  // namespace widegate
