// Where a value is inside a JSON document: a chain on the stack that becomes text only when there
// is something to complain about.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/problem.h"

namespace widegate {

/// One step from the root of a document to a value.
class JsonPath {
 public:
  /// The root; `base` is a JSON pointer itself ("" or "/own") and must outlive the path.
  explicit constexpr JsonPath(std::string_view base = {}) : text_(base) {}

  /// Below this path: a ready-made pointer ("/lens/focal_mm").
  [[nodiscard]] constexpr JsonPath below(std::string_view pointer) const {
    return JsonPath(this, Step::pointer, pointer, 0);
  }
  /// Below this path: a member by its name, unescaped.
  [[nodiscard]] constexpr JsonPath member(std::string_view name) const {
    return JsonPath(this, Step::member, name, 0);
  }
  /// Below this path: an item of a list.
  [[nodiscard]] constexpr JsonPath item(std::size_t index) const {
    return JsonPath(this, Step::item, {}, index);
  }

  /// The RFC 6901 pointer; unprintable characters of hostile names become '?'.
  [[nodiscard]] std::string text() const;

 private:
  enum class Step { pointer, member, item };
  constexpr JsonPath(const JsonPath* parent, Step step, std::string_view text, std::size_t index)
      : parent_(parent), step_(step), text_(text), index_(index) {}

  const JsonPath* parent_ = nullptr;
  Step step_ = Step::pointer;
  std::string_view text_;
  std::size_t index_ = 0;
};

/// More problems than this are not collected: a hostile document must not fill the memory.
inline constexpr std::size_t kMaxProblems = 100;

/// Adds one problem, unless there are kMaxProblems already.
void add_problem(Problems& problems, const JsonPath& path, std::string value, std::string accepted);

}  // namespace widegate
