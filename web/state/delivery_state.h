// What a person chose to deliver, and what the last framing list that was opened turned up. Plain
// data, part of the screen's state; kept on the device by delivery_actions.h.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/handover/fdl/plan_delivery.h"

namespace widegate {

struct DeliveryState {
  fdl::DeliveryChoice choice;
  std::uint64_t version = 0;  ///< Grows with every change of this struct.
  std::string rejected;       ///< Control whose typed text was not taken; empty for none.
  std::string accepted;       ///< What it takes instead.
  /// About the last opened list, each beginning with "Fine", "Caution" or "Fails".
  std::vector<std::string> import_notes;
};

// Ids of the controls and buttons. A field of the person's own template follows kOwnField.
inline constexpr std::string_view kDeliveryPrefix = "delivery:";
inline constexpr std::string_view kDeliveryTemplate = "delivery:template";
inline constexpr std::string_view kDeliverySource = "delivery:source";
inline constexpr std::string_view kDeliveryLine = "delivery:frame-line";
inline constexpr std::string_view kOwnField = "delivery:own/";
inline constexpr std::string_view kSaveDelivery = "command:save-delivery";
inline constexpr std::string_view kSaveDeliverySource = "command:save-delivery-source";
inline constexpr std::string_view kSaveTemplate = "command:save-template";
inline constexpr std::string_view kOwnFromThis = "command:own-from-this";
inline constexpr std::string_view kOpenFraming = "command:open-framing";
inline constexpr std::string_view kClearImport = "command:clear-import";

/// Id of the section, and purpose of a file opened as a framing list (Platform::open_file).
inline constexpr std::string_view kDeliverySection = "delivery";
inline constexpr std::string_view kFramingFile = "framing";

}  // namespace widegate
