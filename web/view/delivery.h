// The Delivery section as data: its controls, figures and notes, made from the core's delivery. No
// drawing, no arithmetic.
#pragma once

#include <optional>
#include <vector>

#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/state/delivery_state.h"

namespace widegate {

/// The delivery of the plan as it stands; nothing for a plan that cannot be worked out.
[[nodiscard]] std::optional<fdl::Delivery> make_delivery(const App& app,
                                                         const DeliveryState& state);

/// The section's controls, in the order they are drawn.
[[nodiscard]] std::vector<Control> delivery_controls(const App& app, const DeliveryState& state);

/// The section's figures, for the page's table.
[[nodiscard]] std::vector<ResultRow> delivery_rows(const std::optional<fdl::Delivery>& delivery);

/// Why nothing can be delivered, what to look out for, what an opened list turned up.
[[nodiscard]] std::vector<std::string> delivery_notes(const std::optional<fdl::Delivery>& delivery,
                                                      const DeliveryState& state);

}  // namespace widegate
