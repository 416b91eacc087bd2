// Readers for the simple values of a framing decision list: text, ids, numbers. Each takes a JSON
// value, and either sets the field or reports what would have been accepted.
#pragma once

#include <string>

#include "core/handover/fdl/field_limits.h"
#include "core/handover/fdl/json_reader.h"

namespace widegate::fdl {

void read_text(const Node& node, std::string& out);
/// 1 to 32 letters, digits and underscores.
void read_id(const Node& node, std::string& out);
/// Two ids joined by '-', 3 to 65 characters.
void read_decision_id(const Node& node, std::string& out);
/// Any text; a warning when it is not 8-4-4-4-12 hexadecimal digits.
void read_uuid(const Node& node, std::string& out);
/// One Unicode character.
void read_one_character(const Node& node, std::string& out);

/// Above 0 to kLargest.
void read_positive(const Node& node, double& out);
/// 0 to kLargest.
void read_not_negative(const Node& node, double& out);
/// 0 to below 1; the specification bounds it, the schema only from below.
void read_protection(const Node& node, double& out);

/// Whole numbers as JSON Schema means them: 1920 and 1920.0 alike, up to kLargest.
void read_count_from_zero(const Node& node, std::int64_t& out);
void read_count_from_one(const Node& node, std::int64_t& out);

void read_flag(const Node& node, bool& out);

}  // namespace widegate::fdl
