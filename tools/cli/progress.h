// A line that tells how far long work has come. On a terminal only, never in a file or a pipe.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>

namespace widegate::cli {

/// Writes "WHAT: DONE of ALL" over itself on standard error, from a second after the start on and
/// at most ten times a second; wiped when the work ends.
class Progress {
 public:
  Progress(std::string what, std::size_t all);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();

  void update(std::size_t done);

 private:
  using Clock = std::chrono::steady_clock;

  std::string what_;
  std::size_t all_;
  bool on_terminal_;
  bool shown_ = false;
  Clock::time_point next_;
};

}  // namespace widegate::cli
