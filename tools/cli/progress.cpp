#include "tools/cli/progress.h"

#include <unistd.h>

#include <cstdio>
#include <utility>

namespace widegate::cli {
namespace {

constexpr auto kFirst = std::chrono::seconds(1);
constexpr auto kBetween = std::chrono::milliseconds(100);

}  // namespace

Progress::Progress(std::string what, std::size_t all)
    : what_(std::move(what)),
      all_(all),
      on_terminal_(isatty(STDERR_FILENO) != 0),
      next_(Clock::now() + kFirst) {}

void Progress::update(std::size_t done) {
  if (!on_terminal_ || Clock::now() < next_) return;
  std::fprintf(stderr, "\r%s: %zu of %zu", what_.c_str(), done, all_);
  std::fflush(stderr);
  shown_ = true;
  next_ = Clock::now() + kBetween;
}

Progress::~Progress() {
  if (!shown_) return;
  const std::string blanks(what_.size() + 2 * std::to_string(all_).size() + 6, ' ');
  std::fprintf(stderr, "\r%s\r", blanks.c_str());
  std::fflush(stderr);
}

}  // namespace widegate::cli
