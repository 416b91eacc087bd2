#include "core/base/problem.h"

namespace widegate {

std::string to_line(const Problem& problem) {
  const std::string where = problem.pointer.empty() ? "/" : problem.pointer;
  return where + ": " + problem.value + " is not accepted; expected " + problem.accepted;
}

}  // namespace widegate
