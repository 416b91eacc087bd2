// The show that is open beside the plan: which one, which part and price are picked, what waits.
// Plain data, part of the screen's state; kept on the device by show_actions.h.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/plan/plan.h"

namespace widegate {

struct OpenShow;

struct ShowState {
  /// The show with all that follows from it (web/view/show.h); nothing: none was made. What makes
  /// and destroys it is in the rest of the program.
  std::shared_ptr<const OpenShow> open;
  std::uint64_t version = 0;       ///< Grows with every change of this struct.
  std::size_t part = 0;            ///< Picked.
  std::string thing;               ///< Picked to be priced; empty for the first.
  std::optional<Plan> before;      ///< What was on the screen before a part was; comes back.
  std::size_t part_on_screen = 0;  ///< Of the part, while `before` holds a plan.
  std::string asked_link;          ///< A show's link that was opened; stays until the rest is here.
  std::string rejected;            ///< Control whose typed text was not taken; empty for none.
  std::string accepted;            ///< What it takes instead.
};

inline constexpr std::string_view kShowSection = "show";
inline constexpr std::string_view kShowPrefix = "show:";
inline constexpr std::string_view kShowCommand = "command:the-show-";
/// A kept plan that is ticked; its id follows.
inline constexpr std::string_view kShowTick = "show:plan/";
inline constexpr std::string_view kShowLinks = "show:links";
inline constexpr std::string_view kShowTitle = "show:title";
inline constexpr std::string_view kShowStart = "show:start";
inline constexpr std::string_view kShowWeekend = "show:weekend";
inline constexpr std::string_view kShowDrives = "show:drives";
inline constexpr std::string_view kShowTapes = "show:tapes";
inline constexpr std::string_view kShowStation = "show:station-hours";
inline constexpr std::string_view kShowPart = "show:part";
inline constexpr std::string_view kShowPartName = "show:part/name";
inline constexpr std::string_view kShowPartDay = "show:part/first-day";
inline constexpr std::string_view kShowThing = "show:thing";
inline constexpr std::string_view kShowPrice = "show:price";
inline constexpr std::string_view kShowPriceDate = "show:price/date";
inline constexpr std::string_view kShowPriceSource = "show:price/source";
inline constexpr std::string_view kShowPriceInvented = "show:price/invented";

inline constexpr std::string_view kShowAddCurrent = "command:the-show-add-current";
inline constexpr std::string_view kShowOpenFile = "command:the-show-open-file";
inline constexpr std::string_view kShowOpenPart = "command:the-show-open-part";
inline constexpr std::string_view kShowTakePart = "command:the-show-take-part";
inline constexpr std::string_view kShowLeavePart = "command:the-show-leave-part";
inline constexpr std::string_view kShowRemovePart = "command:the-show-remove-part";
inline constexpr std::string_view kShowLibraryPrices = "command:the-show-library-prices";
inline constexpr std::string_view kShowCopyLink = "command:the-show-copy-link";
inline constexpr std::string_view kShowShare = "command:the-show-share";
inline constexpr std::string_view kShowQrCode = "command:the-show-qr";
inline constexpr std::string_view kShowPrint = "command:the-show-print";
inline constexpr std::string_view kShowSave = "command:the-show-save";
inline constexpr std::string_view kShowSaveTable = "command:the-show-save-table";
inline constexpr std::string_view kShowSaveDays = "command:the-show-save-days";
inline constexpr std::string_view kShowClose = "command:the-show-close";

/// Purpose of a file opened as a show (Platform::open_file), and its key on the device.
inline constexpr std::string_view kShowFile = "show";
inline constexpr std::string_view kShowKey = "show";

}  // namespace widegate
