// One field's value in a JSON document, by its FieldSpec: reading with problems, and writing. For
// the core's own sources: it brings in the JSON library.
#pragma once

#include "core/encode/json_path.h"
#include "core/encode/json_text.h"
#include "core/field/field.h"

namespace widegate {

/// Reads and checks one value. Numbers are JSON numbers; fractions and rates are numbers or text
/// "a/b"; a rate that is a rounding of an exact one (23.976) is refused with the exact one named.
/// @return nothing after a problem. Text is a view into `json`.
[[nodiscard]] std::optional<FieldValue> value_from_json(const FieldSpec& spec, const Json& json,
                                                        const JsonPath& path, Problems& problems);

/// The value in its canonical form: whole numbers without a point, other fractions as "a/b",
/// nothing as null.
[[nodiscard]] Json value_to_json(const FieldSpec& spec, const FieldValue& value);

/// Adds the problem of a key that its object does not know; `known` lists those it does.
void add_unknown_key(Problems& problems, const JsonPath& path, const Json& value,
                     std::string_view known);

/// True when `json` is an object; otherwise one problem.
[[nodiscard]] bool is_object(const Json& json, const JsonPath& path, Problems& problems);

/// True when `json` is a list; otherwise one problem.
[[nodiscard]] bool is_list(const Json& json, const JsonPath& path, Problems& problems);

/// False when the document says it is of another version: one problem, and reading on would only
/// add misleading ones. A missing version is a problem too, but the rest can still be checked.
[[nodiscard]] bool version_readable(const Json& document, std::string_view key,
                                    std::int64_t version, Problems& problems,
                                    const JsonPath& path = JsonPath());

}  // namespace widegate
