// The second plan, its report and its words, and the controls that choose it. No drawing; every
// figure comes from the core.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/report/differences.h"
#include "web/app/app.h"
#include "web/door/mirror.h"
#include "web/door/platform.h"
#include "web/state/comparison_state.h"
#include "web/view/outlines.h"

namespace widegate {

/// Both formats, ready to be shown.
struct Comparison {
  bool there = false;  ///< Both can be worked out; else nothing below holds.
  std::string first_name, second_name;
  Report second;
  PictureData second_picture;
  std::vector<Difference> rows;
};

[[nodiscard]] Comparison make_comparison(const App& app, const ComparisonState& state);

/// The table of differences, for the page.
[[nodiscard]] std::vector<ResultRow> comparison_rows(const Comparison& comparison);

/// Every control of the section.
[[nodiscard]] std::vector<Control> comparison_controls(const App& app,
                                                       const ComparisonState& state);

/// Sets one of them. False when the id is none of them.
bool set_comparison_control(std::string_view id, std::string_view text, const App& app,
                            ComparisonState& state);

/// Runs one of the section's actions. False when the id is none.
bool run_comparison_action(std::string_view id, const App& app, ComparisonState& state,
                           Commands& commands);

/// Keeps what is compared on the device, and brings it back. What cannot be read is forgotten.
void keep_comparison(const ComparisonState& state, Platform& platform);
void load_comparison(ComparisonState& state, const Platform& platform, const Catalogue& library);

}  // namespace widegate
