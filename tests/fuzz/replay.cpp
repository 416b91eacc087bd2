// Runs a fuzz target over the files of a folder and over seeded mutations of them, for compilers
// without a fuzzer. usage: NAME_replay FOLDER MUTATIONS_PER_FILE
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void run(const std::string& bytes) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

std::size_t below(std::mt19937_64& random, std::size_t limit) { return random() % limit; }

/// One to four small changes: a byte replaced, a stretch cut, a stretch copied elsewhere.
std::string mutated(std::string bytes, std::mt19937_64& random) {
  constexpr std::string_view kTelling = "0123456789-.eE\"\\{}[]:,_ntf\x00\xff";
  for (std::size_t changes = 1 + below(random, 4); changes > 0 && !bytes.empty(); --changes) {
    const std::size_t at = below(random, bytes.size());
    const std::size_t length = 1 + below(random, std::min<std::size_t>(40, bytes.size() - at));
    switch (below(random, 3)) {
      case 0:
        bytes[at] = kTelling[below(random, kTelling.size())];
        break;
      case 1:
        bytes.erase(at, length);
        break;
      default:
        bytes.insert(below(random, bytes.size()), bytes.substr(at, length));
        break;
    }
  }
  return bytes;
}

std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) files.push_back(entry);
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 3) {
    std::fputs("usage: replay FOLDER MUTATIONS_PER_FILE\n", stderr);
    return 2;
  }
  const int mutations = std::atoi(arguments[2]);
  std::mt19937_64 random(2020);
  int files = 0;
  for (const auto& path : files_in(arguments[1])) {
    std::ifstream stream(path, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(stream), {}};
    run(bytes);
    for (int i = 0; i < mutations; ++i) run(mutated(bytes, random));
    ++files;
  }
  std::printf("%d files, %d mutations of each\n", files, mutations);
  return files == 0 ? 1 : 0;
}
