// JSON text to a framing decision list. Checks everything the ASC FDL 2.0.1 JSON Schema asks for,
// then the rules between objects (check.h); nothing that breaks either gets through.
#pragma once

#include <string_view>

#include "core/base/problem.h"
#include "core/handover/fdl/document.h"

namespace widegate::fdl {

/// A document and what is odd about it but no reason to refuse it.
struct Reading {
  Document document;
  Problems warnings;
};

/// Reads and checks `text` (UTF-8). Schema problems are reported all at once; the rules between
/// objects are only looked at when there are none.
///
/// Taken with a warning: a uuid that is not hexadecimal (8-4-4-4-12), a null default framing intent
/// (dropped), "none" for preserve_from_source_canvas (version 2.0; dropped), a maximum of 0 by 0
/// (dropped), a target squeeze of 0 (7.4.5 allows it, the schema does not), and what check.h warns
/// of.
[[nodiscard]] Checked<Reading> read_document(std::string_view text);

}  // namespace widegate::fdl
