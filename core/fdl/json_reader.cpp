#include "core/fdl/json_reader.h"

#include <algorithm>

namespace widegate::fdl {
namespace {

constexpr std::size_t kShownBytes = 80;
constexpr std::size_t kDeepest = 64;
constexpr int kMostMembers = 2000;

/// Cuts at a character, not inside one.
std::string shortened(std::string text) {
  if (text.size() <= kShownBytes) return text;
  std::size_t end = kShownBytes - 3;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end) + "...";
}

/// What a hostile document may not do: serialising recurses once per level, and each new member of
/// an object is compared with all before it.
class Bounds {
 public:
  /// False once the text breaks a bound.
  bool admit(char c) {
    if (in_string_) {
      pass_string(c);
    } else if (c == '"') {
      in_string_ = true;
    } else if (c == '[' || c == '{') {
      commas_.push_back(0);
    } else if ((c == ']' || c == '}') && !commas_.empty()) {
      commas_.pop_back();
    } else if (c == ',' && !commas_.empty()) {
      ++commas_.back();
    } else if (c == ':' && !commas_.empty()) {
      return commas_.back() < kMostMembers;
    }
    return commas_.size() <= kDeepest;
  }

 private:
  void pass_string(char c) {
    if (escaped_) {
      escaped_ = false;
    } else if (c == '\\') {
      escaped_ = true;
    } else if (c == '"') {
      in_string_ = false;
    }
  }

  std::vector<int> commas_;  // one entry per open level
  bool in_string_ = false;
  bool escaped_ = false;
};

bool within_bounds(std::string_view text) {
  Bounds bounds;
  return std::all_of(text.begin(), text.end(), [&](char c) { return bounds.admit(c); });
}

/// Finds where the text stops being JSON; only used once parsing has failed.
class FaultFinder : public nlohmann::json_sax<Json> {
 public:
  bool null() override { return true; }
  bool boolean(bool) override { return true; }
  bool number_integer(std::int64_t) override { return true; }
  bool number_unsigned(std::uint64_t) override { return true; }
  bool number_float(double, const std::string&) override { return true; }
  bool string(std::string&) override { return true; }
  bool binary(Json::binary_t&) override { return true; }
  bool start_object(std::size_t) override { return true; }
  bool key(std::string&) override { return true; }
  bool end_object() override { return true; }
  bool start_array(std::size_t) override { return true; }
  bool end_array() override { return true; }
  bool parse_error(std::size_t position, const std::string&, const Json::exception&) override {
    position_ = position;
    return false;
  }
  [[nodiscard]] std::size_t position() const { return position_; }

 private:
  std::size_t position_ = 0;
};

std::string fault_place(std::string_view text) {
  FaultFinder finder;
  (void)Json::sax_parse(text.begin(), text.end(), &finder);
  const std::string_view before = text.substr(0, std::min(finder.position(), text.size()));
  const auto line = std::count(before.begin(), before.end(), '\n') + 1;
  return "text that stops being JSON in line " + std::to_string(line);
}

}  // namespace

std::string shown(const Json& json) {
  if (json.is_object()) return "an object";
  if (json.is_array()) return "an array";
  return shortened(json.dump(-1, ' ', false, Json::error_handler_t::replace));
}

void refuse(const Node& node, std::string value, std::string accepted) {
  add_problem(node.findings.problems, node.path, std::move(value), std::move(accepted));
}

void refuse(const Node& node, std::string accepted) {
  add_problem(node.findings.problems, node.path, shown(node.json), std::move(accepted));
}

void warn(const Node& node, std::string accepted) {
  add_problem(node.findings.warnings, node.path, shown(node.json), std::move(accepted));
}

Json parse_json(std::string_view text, Findings& findings) {
  if (!within_bounds(text)) {
    findings.problems.push_back(
        {"", "an oversized document", "at most 64 levels deep and 2000 members in an object"});
    return Json(Json::value_t::discarded);
  }
  Json json = Json::parse(text.begin(), text.end(), nullptr, false);
  if (json.is_discarded()) {
    findings.problems.push_back({"", fault_place(text), "a JSON document in UTF-8"});
  }
  return json;
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
