// A plan delivered: the exported framing decision list of a plan, one canvas of it, one canvas
// template, and what comes out, with words for people. What the front end shows and hands over.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/handover/fdl/apply_template.h"
#include "core/handover/fdl/document.h"
#include "core/plan/plan.h"
#include "core/report/report.h"

namespace widegate::fdl {

/// Id of the template that a person fills in.
inline constexpr std::string_view kOwnTemplate = "OWN";

/// The canvas that a template is applied to.
enum class DeliverySource {
  recorded,  ///< The file the plan's recording option writes.
  sensor,    ///< The sensor mode, photosite for pixel.
};

/// UHD 16:9 with every setting spelled out, as a start for a person's own.
[[nodiscard]] CanvasTemplate usual_own_template();

/// What is to be delivered.
struct DeliveryChoice {
  std::string canvas_template = "UHD";  ///< Id of delivery_templates(), or kOwnTemplate.
  DeliverySource source = DeliverySource::recorded;
  std::size_t frame_line = 0;  ///< Of the plan; one beyond the last counts as the first.
  CanvasTemplate own = usual_own_template();
  friend bool operator==(const DeliveryChoice&, const DeliveryChoice&) = default;
};

/// One line of a delivery's table.
struct DeliveryFigure {
  std::string_view key;  ///< "delivery.canvas", "delivery.framing.at", ...
  std::string_view label;
  std::string text;
  std::string_view unit;
};

/// Something to know about a delivery.
struct DeliveryNote {
  Severity severity = Severity::caution;
  std::string text;
};

/// Everything about one delivery. Pixels of the new canvas, origin at its top left corner.
struct Delivery {
  Document source;                  ///< The plan as a list.
  std::vector<CanvasTemplate> all;  ///< The templates to choose from, the person's own last.
  CanvasTemplate chosen;
  std::string canvas_id;    ///< Of the source canvas, in `source`.
  std::string canvas_name;  ///< Of it, for people.
  std::string decision_id;  ///< Of the framing decision.
  /// Why the template cannot be applied, pointers into it; empty when `applied` holds.
  Problems problems;
  AppliedTemplate applied;
  Box picture;  ///< What the scaled picture fills of the canvas; the rest is padding.
  std::vector<DeliveryFigure> figures;
  std::vector<DeliveryNote> notes;
};

/// Works a delivery out.
/// @param report  of this plan and catalogue.
/// @return the report's problems when it has any; a template that cannot be applied is told in
///         `Delivery::problems`.
[[nodiscard]] Checked<Delivery> deliver(const Plan& plan, const Catalogue& catalogue,
                                        const Report& report, const DeliveryChoice& choice);

/// The result as a document (apply_document.h); only for a delivery without problems.
[[nodiscard]] Checked<Document> delivered_document(const Delivery& delivery);

/// What the scaled picture fills of the new canvas, in pixels of it.
[[nodiscard]] Box picture_on_canvas(const AppliedTemplate& applied);

}  // namespace widegate::fdl
