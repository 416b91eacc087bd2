#include "tools/cli/files.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

namespace widegate::cli {
namespace {

struct CloseFile {
  void operator()(std::FILE* file) const {
    if (file != stdin && file != stdout) std::fclose(file);
  }
};
using FileHandle = std::unique_ptr<std::FILE, CloseFile>;

/// More than any document may have: a file without an end is given up at once.
constexpr std::size_t kMostBytes = 64U << 20U;

void print_failure(const std::string& file, const char* what) {
  std::fprintf(stderr, "%s: cannot be %s: %s\n", file.c_str(), what, std::strerror(errno));
}

}  // namespace

std::optional<std::string> read_text(const std::string& file) {
  const FileHandle handle(file == "-" ? stdin : std::fopen(file.c_str(), "rb"));
  std::string text;
  char buffer[65536];
  std::size_t length = 0;
  while (handle && (length = std::fread(buffer, 1, sizeof buffer, handle.get())) > 0) {
    text.append(buffer, length);
    if (text.size() <= kMostBytes) continue;
    std::fprintf(stderr, "%s: cannot be read: it has more than %zu bytes\n", file.c_str(),
                 kMostBytes);
    return std::nullopt;
  }
  if (handle && std::ferror(handle.get()) == 0) return text;
  print_failure(file, "read");
  return std::nullopt;
}

bool write_text(const std::string& file, std::string_view text) {
  const FileHandle handle(file == "-" ? stdout : std::fopen(file.c_str(), "wb"));
  const bool written = handle &&
                       std::fwrite(text.data(), 1, text.size(), handle.get()) == text.size() &&
                       std::fflush(handle.get()) == 0;
  if (!written) print_failure(file, "written");
  return written;
}

void print_problems(const std::string& file, const Problems& problems) {
  for (const Problem& problem : problems) {
    std::fprintf(stderr, "%s: %s\n", file.c_str(), to_line(problem).c_str());
  }
}

void print_cautions(const std::string& file, const Problems& warnings) {
  for (const Problem& warning : warnings) {
    std::fprintf(stderr, "%s: caution: %s: %s; expected %s\n", file.c_str(),
                 warning.pointer.c_str(), warning.value.c_str(), warning.accepted.c_str());
  }
}

}  // namespace widegate::cli
