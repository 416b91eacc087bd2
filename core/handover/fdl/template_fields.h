// The editable values of a canvas template as a table: labels, limits and choices in the standard's
// words, how each is read and set from typed text. For forms; documents are read by read.h.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/base/problem.h"
#include "core/handover/fdl/document.h"

namespace widegate::fdl {

enum class TemplateFieldKind { count, ratio, choice, flag };

/// One value a choice may take.
struct TemplateOption {
  std::string_view value;  ///< The word of the standard's schema; empty: left out.
  std::string_view label;
};

/// One editable value.
struct TemplateField {
  std::string_view key;  ///< Pointer below the template: "target_dimensions/width".
  std::string_view label;
  TemplateFieldKind kind = TemplateFieldKind::count;
  double low = 0, high = 0;              ///< Accepted, of a count (pixels) or ratio.
  double usual_low = 0, usual_high = 0;  ///< A slider's range.
  double step = 1;
  std::string_view unit = {};
  std::span<const TemplateOption> options = {};  ///< Of a number: usual values.
  /// The value as text that set_template_field takes: "3840", "1.5", "fit_all", "true".
  std::string (*read)(const CanvasTemplate&) = nullptr;
  /// Stores an accepted value: the text of a choice, the number of a count or ratio, 1 or 0.
  void (*write)(CanvasTemplate&, std::string_view text, double number) = nullptr;
  /// False when the value has no meaning in this template; null for always.
  bool (*wanted)(const CanvasTemplate&) = nullptr;
};

/// All of them, in the order a form asks for them.
[[nodiscard]] std::span<const TemplateField> template_fields();

/// The field with this key, or nullptr.
[[nodiscard]] const TemplateField* find_template_field(std::string_view key);

/// The template with one value changed to a typed text. Counts are whole pixels, 1 to 32768; the
/// squeeze 0.25 to 4, as a decimal or a fraction. Setting a maximum starts it at the target.
/// @return a problem with the field's key as pointer for any other text or key.
[[nodiscard]] Checked<CanvasTemplate> with_template_field(const CanvasTemplate& entry,
                                                          std::string_view key,
                                                          std::string_view text);

}  // namespace widegate::fdl
