#include "core/handover/fdl/field_readers.h"

#include <cmath>

#include "core/base/plain_text.h"

namespace widegate::fdl {
namespace {

bool is_word_character(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
}

bool is_id(std::string_view text) {
  if (text.empty() || text.size() > 32) return false;
  for (const char c : text) {
    if (!is_word_character(c)) return false;
  }
  return true;
}

bool is_decision_id(std::string_view text) {
  const auto dash = text.find('-');
  if (dash == std::string_view::npos || text.size() > 65) return false;
  const auto all_words = [](std::string_view part) {
    for (const char c : part) {
      if (!is_word_character(c)) return false;
    }
    return !part.empty();
  };
  return all_words(text.substr(0, dash)) && all_words(text.substr(dash + 1));
}

bool is_hexadecimal(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

bool is_uuid(std::string_view text) {
  if (text.size() != 36) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool dash = i == 8 || i == 13 || i == 18 || i == 23;
    if (dash ? text[i] != '-' : !is_hexadecimal(text[i])) return false;
  }
  return true;
}

std::size_t characters(std::string_view utf8) {
  std::size_t count = 0;
  for (const char c : utf8) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
  }
  return count;
}

/// Schema "number": finite, from `least` (left out when `above`) to kLargest.
void read_number(const Node& node, double& out, double least, bool above, const char* accepted) {
  if (!node.json.is_number()) return refuse(node, accepted);
  const double value = node.json.get<double>();
  const bool low_enough = value <= kLargest;
  const bool high_enough = above ? value > least : value >= least;
  if (!low_enough || !high_enough) return refuse(node, accepted);
  out = value;
}

/// Schema "integer": 1920 and 1920.0 alike.
void read_count(const Node& node, std::int64_t& out, double least, const char* accepted) {
  if (!node.json.is_number()) return refuse(node, accepted);
  const double value = node.json.get<double>();
  if (!(value >= least && value <= kLargest) || value != std::trunc(value)) {
    return refuse(node, accepted);
  }
  out = static_cast<std::int64_t>(value);
}

}  // namespace

void read_text(const Node& node, std::string& out) {
  if (!node.json.is_string()) return refuse(node, "text");
  out = node.json.get_ref<const std::string&>();
}

void read_id(const Node& node, std::string& out) {
  if (!node.json.is_string() || !is_id(node.json.get_ref<const std::string&>())) {
    return refuse(node, "an id of 1 to 32 letters, digits and underscores");
  }
  out = node.json.get_ref<const std::string&>();
}

void read_decision_id(const Node& node, std::string& out) {
  if (!node.json.is_string() || !is_decision_id(node.json.get_ref<const std::string&>())) {
    return refuse(node, "a canvas id, '-' and a framing intent id, at most 65 characters");
  }
  out = node.json.get_ref<const std::string&>();
}

void read_uuid(const Node& node, std::string& out) {
  if (!node.json.is_string()) return refuse(node, "a UUID as text");
  out = node.json.get_ref<const std::string&>();
  if (!is_uuid(out)) warn(node, "a UUID of 8-4-4-4-12 hexadecimal digits");
}

void read_one_character(const Node& node, std::string& out) {
  if (!node.json.is_string() || characters(node.json.get_ref<const std::string&>()) != 1) {
    return refuse(node, "text of one character");
  }
  out = node.json.get_ref<const std::string&>();
}

void read_positive(const Node& node, double& out) {
  read_number(node, out, 0, true, "a number above 0, at most 2147483647");
}

void read_not_negative(const Node& node, double& out) {
  read_number(node, out, 0, false, "a number from 0 to 2147483647");
}

void read_count_from_zero(const Node& node, std::int64_t& out) {
  read_count(node, out, 0, "a whole number from 0 to 2147483647");
}

void read_count_from_one(const Node& node, std::int64_t& out) {
  read_count(node, out, 1, "a whole number from 1 to 2147483647");
}

void read_protection(const Node& node, double& out) {
  constexpr const char* kAccepted = "a number from 0 to below 1, the share taken off inward";
  read_not_negative(node, out);
  if (node.json.is_number() && out >= 1) refuse(node, kAccepted);
}

void read_flag(const Node& node, bool& out) {
  if (!node.json.is_boolean()) return refuse(node, "true or false");
  out = node.json.get<bool>();
}

}  // namespace widegate::fdl
