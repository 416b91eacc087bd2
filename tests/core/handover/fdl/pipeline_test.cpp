// The vectors of the template's single steps published beside the ASC FDL standard (public
// repository ascmitc/fdl, pipeline vectors), under their own names: scale, output size, alignment.
#include <doctest/doctest.h>

#include "core/handover/fdl/apply_template.h"
#include "core/handover/fdl/placement.h"

namespace widegate::fdl {
namespace {

struct ScaleRow {
  const char* name;
  Size fit;
  Size target;
  FitMethod method;
  double expected;
};

constexpr ScaleRow kScales[] = {
    {"width_wider", {4096, 2160}, {1920, 1080}, FitMethod::width, 0.46875},
    {"width_narrower", {1920, 1080}, {3840, 2160}, FitMethod::width, 2},
    {"height_taller", {4096, 2160}, {1920, 1080}, FitMethod::height, 0.5},
    {"fit_all_letterbox", {4096, 1714}, {1920, 1080}, FitMethod::fit_all, 0.46875},
    {"fit_all_pillarbox", {2048, 2160}, {1920, 1080}, FitMethod::fit_all, 0.5},
    {"fill_letterbox", {4096, 1714}, {1920, 1080}, FitMethod::fill, 0.6301050175029171},
    {"fill_pillarbox", {2048, 2160}, {1920, 1080}, FitMethod::fill, 0.9375},
    {"width_identity", {1920, 1080}, {1920, 1080}, FitMethod::width, 1},
    {"fit_all_exact", {1920, 1080}, {1920, 1080}, FitMethod::fit_all, 1},
    {"anamorphic_norm", {5782.4, 3096}, {3840, 2160}, FitMethod::width, 0.6640841173215274},
};

/// A maximum of 0 stands for none.
struct OutputRow {
  const char* name;
  double box;
  double maximum;
  bool pad;
  double expected;
};

constexpr OutputRow kOutputs[] = {
    {"fit_no_max", 1920, 0, false, 1920},     {"pad_to_max", 1920, 3840, true, 3840},
    {"crop_to_max", 3840, 1920, false, 1920}, {"fit_within_max", 1920, 3840, false, 1920},
    {"pad_exact", 1920, 1920, true, 1920},    {"crop_exact", 1920, 1920, false, 1920},
};

struct ShiftRow {
  const char* name;
  double fit_size;
  double fit_anchor;
  double output;
  double box;
  double target;
  Alignment alignment;
  bool pad;
  double expected;
};

constexpr ShiftRow kShifts[] = {
    {"fit_no_shift", 1920, 0, 1920, 1920, 1920, Alignment::center, false, 0},
    {"pad_center", 1600, 160, 3840, 1920, 1920, Alignment::center, true, 960},
    {"pad_left_gap", 1600, 160, 3840, 1920, 1920, Alignment::start, true, 800},
    {"pad_right_gap", 1600, 160, 3840, 1920, 1920, Alignment::end, true, 1120},
    {"crop_fit_at_origin", 1920, 0, 1920, 2400, 1920, Alignment::center, false, 0},
    {"crop_fit_overflows", 2400, 0, 1920, 2400, 1920, Alignment::center, false, -240},
    {"crop_bbox_overflow_center", 1600, 400, 1920, 2400, 1920, Alignment::center, false, -240},
    {"crop_bbox_overflow_right", 1600, 400, 1920, 2400, 1920, Alignment::end, false, -80},
    {"fit_tiny_overflow", 1920, 0, 1920, 1920.005, 1920, Alignment::center, false, 0},
    {"pad_center_no_gap", 1920, 0, 3840, 1920, 1800, Alignment::center, true, 960},
};

}  // namespace

TEST_CASE("published vectors: scale factor") {
  for (const ScaleRow& row : kScales) {
    CAPTURE(row.name);
    CHECK(fit_scale(row.method, row.fit, 1, row.target, 1).value() == row.expected);
  }
}

TEST_CASE("published vectors: output size") {
  for (const OutputRow& row : kOutputs) {
    CAPTURE(row.name);
    AxisRequest request;
    request.box = request.fit_size = row.box;
    request.target = row.box;
    request.maximum = row.maximum;
    request.pad = row.pad;
    CHECK(place_axis(request).output == row.expected);
  }
}

TEST_CASE("published vectors: alignment shift") {
  for (const ShiftRow& row : kShifts) {
    CAPTURE(row.name);
    AxisRequest request;
    request.box = row.box;
    request.fit_size = row.fit_size;
    request.fit_anchor = row.fit_anchor;
    request.target = row.target;
    request.maximum = row.output;
    request.pad = row.pad;
    request.alignment = row.alignment;
    CHECK(place_axis(request).shift == row.expected);
  }
}

}  // namespace widegate::fdl
