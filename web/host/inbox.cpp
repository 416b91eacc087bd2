#include "web/host/inbox.h"

#include <emscripten/em_macros.h>

#include <deque>
#include <utility>

namespace {

// The page cannot hold a C++ object, so its half-written strings live here.
std::deque<std::string>& pushed() {
  static std::deque<std::string> strings;
  return strings;
}

}  // namespace

/// Room for a string of `size` bytes that the caller fills before its next call.
extern "C" EMSCRIPTEN_KEEPALIVE char* wg_push(int size) {
  pushed().emplace_back(static_cast<std::size_t>(size > 0 ? size : 0), '\0');
  return pushed().back().data();
}

namespace widegate {

std::string take_pushed() {
  if (pushed().empty()) return {};
  std::string text = std::move(pushed().front());
  pushed().pop_front();
  return text;
}

}  // namespace widegate
