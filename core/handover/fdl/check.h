// The rules between the objects of a framing decision list that its JSON Schema cannot state: ids,
// references, the order of sizes. Works on a document that keeps the schema.
#pragma once

#include "core/handover/fdl/document.h"
#include "core/handover/fdl/document_problems.h"

namespace widegate::fdl {

/// Problems (ASC FDL 2.0.1, sections 7.1 to 7.4): repeated intent, canvas, decision or template
/// ids; a default intent, a decision's intent or a source canvas that is not in the document; a
/// decision id other than canvas id, '-', intent id (not looked at when the intent is missing);
/// canvas, effective area, protection and framing not in falling order of size; an anchor beyond
/// the canvas. Warnings: a box that starts inside the canvas and ends outside it, a maximum below
/// the target.
void check_document(const Document& document, Findings& findings);

}  // namespace widegate::fdl
