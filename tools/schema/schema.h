// The published JSON Schemas (2020-12), made from the same tables that read and check documents.
#pragma once

#include "core/encode/json_text.h"
#include "core/field/field.h"

namespace widegate::schema {

/// Schema of one field's value: type, limits, words.
[[nodiscard]] Json field_schema(const FieldSpec& spec);

/// An object that takes no keys but those later added to its "properties".
[[nodiscard]] Json closed_object();

/// The head of a published schema: dialect, id, title, description, then a closed object with a
/// version key that must be 1.
[[nodiscard]] Json document_schema(const char* file, const char* title, const char* description,
                                   const char* version_key);

/// Properties for every list of a catalogue, each a reference to `rows_at` ("#/$defs/" and the
/// like) and the row's name.
void add_list_properties(Json& properties, const std::string& rows_at);

[[nodiscard]] Json plan_schema();
[[nodiscard]] Json show_schema();
[[nodiscard]] Json catalogue_schema();
[[nodiscard]] Json report_schema();
[[nodiscard]] Json lesson_schema();

}  // namespace widegate::schema
