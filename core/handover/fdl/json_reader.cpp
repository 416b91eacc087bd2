#include "core/handover/fdl/json_reader.h"

#include <algorithm>

namespace widegate::fdl {

void refuse(const Node& node, std::string value, std::string accepted) {
  add_problem(node.findings.problems, node.path, std::move(value), std::move(accepted));
}

void refuse(const Node& node, std::string accepted) {
  add_problem(node.findings.problems, node.path, shown_json(node.json), std::move(accepted));
}

void warn(const Node& node, std::string accepted) {
  add_problem(node.findings.warnings, node.path, shown_json(node.json), std::move(accepted));
}

ObjectReader::ObjectReader(const Node& node) : node_(node), usable_(node.json.is_object()) {
  if (!usable_) refuse(node, "an object");
}

bool ObjectReader::has(std::string_view key) const {
  return usable_ && node_.json.find(key) != node_.json.end();
}

const Json* ObjectReader::take(std::string_view key) {
  known_.push_back(key);
  if (!usable_) return nullptr;
  const auto found = node_.json.find(key);
  return found == node_.json.end() ? nullptr : &*found;
}

Node ObjectReader::member(std::string_view key, const Json& json) const {
  return {json, node_.path.member(key), node_.findings};
}

std::optional<Node> ObjectReader::node_of(std::string_view key) {
  const Json* json = take(key);
  if (json == nullptr) return std::nullopt;
  return member(key, *json);
}

void ObjectReader::need(std::string_view key) {
  if (!usable_) return;
  if (!missing_.empty()) missing_ += ", ";
  missing_ += key;
}

void ObjectReader::finish(CustomFields& custom) {
  if (!usable_) return;
  if (!missing_.empty()) {
    refuse(node_, "an object without " + missing_, "an object that has " + missing_);
  }
  for (const auto& [key, value] : node_.json.items()) {
    if (key.starts_with('_')) {
      custom.push_back({key, value.dump(-1, ' ', false, Json::error_handler_t::replace)});
    } else if (std::find(known_.begin(), known_.end(), key) == known_.end()) {
      std::string accepted = "a key that starts with '_', or one of";
      for (const std::string_view known : known_) accepted.append(" ").append(known);
      refuse(member(key, value), std::move(accepted));
    }
  }
}

}  // namespace widegate::fdl
