// A canvas template of one document applied to a canvas of another: the result is a new document
// with the source canvas, the new canvas made from it, and the template.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "core/handover/fdl/apply_template.h"
#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// What this program calls itself in the documents it writes.
inline constexpr std::string_view kCreator = "Widegate";

/// Which parts are meant; an empty text leaves the choice open. Open choices are the first canvas
/// that has a decision, its decision for the default framing intent or else its first one, and the
/// first template.
struct ApplyChoice {
  std::string context;          ///< Label of the context.
  std::string canvas;           ///< Id of the canvas.
  std::string decision;         ///< Id of the decision, or of its framing intent.
  std::string canvas_template;  ///< Id of the template.
  std::string new_canvas_id;  ///< 1 to 32 letters, digits, underscores; empty: made from the input.
};

/// Problems by the document their pointers belong to.
struct ApplyProblems {
  Problems source;
  Problems templates;
};

/// The new document and the numbers behind its new canvas.
struct AppliedDocument {
  Document document;
  AppliedTemplate numbers;
  std::string canvas_id;  ///< Of the new canvas.
};

/// The same as text.
struct AppliedText {
  std::string text;
  Problems source_warnings;
  Problems template_warnings;
};

/// Applies one template. The document keeps the rules of the standard: canvases the source canvas
/// was derived from come along, and its UUID is a hash of both documents.
[[nodiscard]] tl::expected<AppliedDocument, ApplyProblems> apply_to_document(
    const Document& source, const Document& templates, const ApplyChoice& choice);

/// Reads both documents, applies the template and writes the result.
[[nodiscard]] tl::expected<AppliedText, ApplyProblems> apply_text(std::string_view source,
                                                                  std::string_view templates,
                                                                  const ApplyChoice& choice);

}  // namespace widegate::fdl
