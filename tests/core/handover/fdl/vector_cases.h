// The numeric vectors published beside the ASC FDL standard (public repository ascmitc/fdl), as
// plain rows, and the check each kind of row gets. The rows of vector_tables.cpp and those read
// from the published files (vector_files_test.cpp) go through the same checks.
#pragma once

#include <span>
#include <string>

#include "core/handover/fdl/boxes.h"
#include "core/handover/fdl/document.h"
#include "core/handover/fdl/rounding.h"

namespace widegate::fdl {

struct RoundingCase {
  double value;
  RoundRule rule;
  double expected;
};

struct GapCase {
  std::string name;
  Layers input;
  Point origin;
  Layers expected;
};

struct ScaleCase {
  std::string name;
  Layers input;
  double source_squeeze;
  double scale;
  double target_squeeze;
  Layers expected;
};

struct RoundLayersCase {
  std::string name;
  Layers input;
  RoundRule rule;
  Layers expected;
};

struct OffsetCase {
  std::string name;
  Layers input;
  Point offset;
  Layers expected;
  Point effective;
  Point protection;
  Point framing;
};

struct CropCase {
  std::string name;
  Layers input;
  Point effective;
  Point protection;
  Point framing;
  Layers expected;
};

struct PathCase {
  std::string name;
  Layers input;
  std::string path;
  Box expected;
};

struct IntentCase {
  std::string name;
  Size canvas;
  Size working;
  double squeeze;
  WholeSize aspect;
  double protection;
  RoundRule rule;
  Box framing;
  Box outer;  ///< Zero when no protection is expected.
};

/// A size of 0 x 0 stands for a missing layer or maximum.
struct TemplateCase {
  std::string name;
  Layers source;
  double source_squeeze;
  WholeSize target;
  double target_squeeze;
  std::string fit_source;
  std::string fit_method;
  std::string horizontal;
  std::string vertical;
  std::string preserve;  ///< Empty for none.
  WholeSize maximum;
  bool pad;
  RoundRule rule;
  double scale;
  Size bounding_box;
  Point translation;
  Layers expected;
};

void check_case(const RoundingCase& row);
void check_case(const GapCase& row);
void check_case(const ScaleCase& row);
void check_case(const RoundLayersCase& row);
void check_case(const OffsetCase& row);
void check_case(const CropCase& row);
void check_case(const PathCase& row);
void check_case(const IntentCase& row);
void check_case(const TemplateCase& row);

/// The canvas, decision and template of a row.
[[nodiscard]] Canvas canvas_of(const TemplateCase& row);
[[nodiscard]] FramingDecision decision_of(const TemplateCase& row);
[[nodiscard]] CanvasTemplate template_of(const TemplateCase& row);

/// The rows this repository carries.
[[nodiscard]] std::span<const RoundingCase> rounding_cases();
[[nodiscard]] std::span<const GapCase> gap_cases();
[[nodiscard]] std::span<const ScaleCase> scale_cases();
[[nodiscard]] std::span<const RoundLayersCase> round_layers_cases();
[[nodiscard]] std::span<const OffsetCase> offset_cases();
[[nodiscard]] std::span<const CropCase> crop_cases();
[[nodiscard]] std::span<const PathCase> path_cases();
[[nodiscard]] std::span<const IntentCase> intent_cases();
[[nodiscard]] std::span<const TemplateCase> template_cases();

}  // namespace widegate::fdl
