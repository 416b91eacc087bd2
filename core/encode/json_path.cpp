#include "core/encode/json_path.h"

#include "core/base/plain_text.h"

namespace widegate {
namespace {

/// A member's name as one step of a JSON pointer (RFC 6901: "~" is "~0", "/" is "~1").
std::string escaped(std::string_view name) {
  const std::string printable = in_quotes(name);
  std::string result = "/";
  for (const char c : std::string_view(printable).substr(1, printable.size() - 2)) {
    if (c == '~') {
      result += "~0";
    } else if (c == '/') {
      result += "~1";
    } else {
      result += c;
    }
  }
  return result;
}

}  // namespace

std::string JsonPath::text() const {
  std::string above = parent_ != nullptr ? parent_->text() : std::string();
  switch (step_) {
    case Step::pointer:
      return above + std::string(text_);
    case Step::member:
      return above + escaped(text_);
    case Step::item:
      return above + "/" + std::to_string(index_);
  }
  return above;
}

void add_problem(Problems& problems, const JsonPath& path, std::string value,
                 std::string accepted) {
  if (problems.size() >= kMaxProblems) return;
  problems.push_back({path.text(), std::move(value), std::move(accepted)});
}

}  // namespace widegate
