// Reads JSON objects field by field without exceptions: wrong types, missing and unknown members
// become problems that carry the RFC 6901 pointer; keys that start with '_' are kept as custom
// fields. What the fields mean is in read.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/encode/json_path.h"
#include "core/encode/json_text.h"
#include "core/handover/fdl/document.h"
#include "core/handover/fdl/document_problems.h"

namespace widegate::fdl {

/// One JSON value, where it stands, and where to report on it.
struct Node {
  const Json& json;
  JsonPath path;  ///< Lives no longer than the node it was reached from.
  Findings& findings;
};

/// Turns a JSON value into a field; reports and leaves the field alone when it cannot.
template <class T>
using Read = void (*)(const Node&, T&);

/// Records a problem of the node that is not simply its value.
void refuse(const Node& node, std::string value, std::string accepted);
/// Records that the node's value is refused.
void refuse(const Node& node, std::string accepted);
/// Records that the node was taken, but differently from how it stands.
void warn(const Node& node, std::string accepted);

/// One JSON object being read. Read every member, then call finish().
class ObjectReader {
 public:
  /// Reports when the node is not an object; all reads then do nothing.
  explicit ObjectReader(const Node& node);

  [[nodiscard]] bool has(std::string_view key) const;

  /// A member that must be there.
  template <class T>
  void required(std::string_view key, T& out, Read<T> read) {
    if (const Json* json = take(key)) {
      read(member(key, *json), out);
    } else {
      need(key);
    }
  }

  /// A member that may be left out.
  template <class T>
  void optional(std::string_view key, std::optional<T>& out, Read<T> read) {
    if (const Json* json = take(key)) read(member(key, *json), out.emplace());
  }

  /// An array that may be left out.
  template <class T>
  void list(std::string_view key, std::optional<std::vector<T>>& out, Read<T> read) {
    const Json* json = take(key);
    if (json == nullptr) return;
    const Node node = member(key, *json);
    if (!json->is_array()) return refuse(node, "an array");
    out.emplace(json->size());
    for (std::size_t i = 0; i < json->size(); ++i) {
      read({(*json)[i], node.path.item(i), node.findings}, (*out)[i]);
    }
  }

  /// Reports `key` as missing, together with all others at finish().
  void need(std::string_view key);

  /// The member as a node, marking the key as known; nothing when it is missing.
  [[nodiscard]] std::optional<Node> node_of(std::string_view key);

  /// Reports missing and unknown members and keeps the custom ones.
  void finish(CustomFields& custom);

 private:
  [[nodiscard]] const Json* take(std::string_view key);
  [[nodiscard]] Node member(std::string_view key, const Json& json) const;

  const Node& node_;
  bool usable_;
  std::vector<std::string_view> known_;
  std::string missing_;
};

}  // namespace widegate::fdl
