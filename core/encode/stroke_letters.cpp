#include "core/encode/stroke_letters.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace widegate {
namespace {

/// A letter as lines of points, each two digits x and y; a space between points, a bar between
/// lines. A line of one point is a dot.
struct Letter {
  std::string_view character;
  std::string_view lines;
};

constexpr std::string_view kUnknown = "00 40 46 06 00";
constexpr auto kLetters = std::to_array<Letter>({
    {" ", ""},
    {"0", "10 30 41 45 36 16 05 01 10|14 32"},
    {"1", "11 20 26|16 36"},
    {"2", "01 10 30 41 42 06 46"},
    {"3", "00 40 22 32 43 45 36 16 05"},
    {"4", "36 30 04 44"},
    {"5", "40 00 02 32 43 45 36 06"},
    {"6", "40 20 02 05 16 36 45 44 33 03"},
    {"7", "00 40 16"},
    {"8", "13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33"},
    {"9", "43 13 02 01 10 30 41 44 26 06"},
    {"A", "06 20 46|14 34"},
    {"B", "03 33 42 41 30 00 06 36 45 44 33"},
    {"C", "41 30 10 01 05 16 36 45"},
    {"D", "00 06 36 45 41 30 00"},
    {"E", "40 00 06 46|03 33"},
    {"F", "40 00 06|03 33"},
    {"G", "41 30 10 01 05 16 36 45 43 23"},
    {"H", "00 06|40 46|03 43"},
    {"I", "10 30|20 26|16 36"},
    {"J", "40 45 36 16 05"},
    {"K", "00 06|40 03 46"},
    {"L", "00 06 46"},
    {"M", "06 00 23 40 46"},
    {"N", "06 00 46 40"},
    {"O", "10 30 41 45 36 16 05 01 10"},
    {"P", "06 00 30 41 42 33 03"},
    {"Q", "10 30 41 45 36 16 05 01 10|24 46"},
    {"R", "06 00 30 41 42 33 03|23 46"},
    {"S", "41 30 10 01 02 13 33 44 45 36 16 05"},
    {"T", "00 40|20 26"},
    {"U", "00 05 16 36 45 40"},
    {"V", "00 26 40"},
    {"W", "00 16 22 36 40"},
    {"X", "00 46|40 06"},
    {"Y", "00 23 40|23 26"},
    {"Z", "00 40 06 46"},
    {".", "26"},
    {",", "25 17"},
    {":", "22|25"},
    {";", "22|25 17"},
    {"-", "13 33"},
    {"–", "03 43"},
    {"+", "03 43|21 25"},
    {"=", "02 42|04 44"},
    {"/", "06 40"},
    {"(", "30 21 25 36"},
    {")", "10 21 25 16"},
    {"[", "30 10 16 36"},
    {"]", "10 30 36 16"},
    {"<", "41 03 45"},
    {">", "01 43 05"},
    {"%", "06 40|11|35"},
    {"'", "20 22"},
    {"\"", "10 12|30 32"},
    {"#", "10 16|30 36|02 42|04 44"},
    {"&", "46 02 01 10 30 31 04 05 16 26 44"},
    {"!", "20 24|26"},
    {"?", "01 10 30 41 42 23 24|26"},
    {"_", "06 46"},
    {"*", "12 34|32 14"},
    {"×", "12 34|32 14"},
    {"°", "20 11 22 31 20"},
});

/// Bytes of the UTF-8 character that begins a text; 1 for a byte that begins none.
std::size_t character_size(std::string_view text) {
  const auto first = static_cast<unsigned char>(text.front());
  const std::size_t size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
  return std::min(size, text.size());
}

std::string_view lines_of(std::string_view character) {
  char capital = character.front();
  if (capital >= 'a' && capital <= 'z') capital = static_cast<char>(capital - 'a' + 'A');
  for (const Letter& letter : kLetters) {
    const bool same = character.size() == 1
                          ? letter.character.size() == 1 && letter.character.front() == capital
                          : letter.character == character;
    if (same) return letter.lines;
  }
  return kUnknown;
}

void add_strokes(std::vector<LetterStroke>& strokes, std::string_view lines, double x) {
  for (std::size_t at = 0; at + 1 < lines.size(); at += 3) {
    const double x1 = x + (lines[at] - '0');
    const double y1 = lines[at + 1] - '0';
    const bool first = at == 0 || lines[at - 1] == '|';
    const bool only = first && (at + 2 >= lines.size() || lines[at + 2] == '|');
    if (only) strokes.push_back({x1, y1, x1, y1});
    if (first) continue;
    const double x0 = x + (lines[at - 3] - '0');
    const double y0 = lines[at - 2] - '0';
    strokes.push_back({x0, y0, x1, y1});
  }
}

}  // namespace

std::vector<LetterStroke> text_strokes(std::string_view text) {
  std::vector<LetterStroke> strokes;
  double x = 0;
  while (!text.empty()) {
    const std::size_t size = character_size(text);
    add_strokes(strokes, lines_of(text.substr(0, size)), x);
    text.remove_prefix(size);
    x += kLetterAdvance;
  }
  return strokes;
}

double text_strokes_width(std::string_view text) {
  double width = 0;
  while (!text.empty()) {
    text.remove_prefix(character_size(text));
    width += kLetterAdvance;
  }
  return width > 0 ? width - 2 : 0;
}

}  // namespace widegate
