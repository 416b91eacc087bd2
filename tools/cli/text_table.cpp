#include "tools/cli/text_table.h"

#include <algorithm>
#include <vector>

namespace widegate::cli {
namespace {

constexpr std::size_t kColumns = 80;
constexpr std::size_t kIndent = 2;
constexpr std::size_t kLabelWidth = 31;
constexpr std::size_t kMarkWidth = 9;

/// Characters, not bytes, of UTF-8 text.
std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

/// The first `width` characters.
std::string_view front(std::string_view text, std::size_t width) {
  std::size_t end = 0;
  while (end < text.size() && width_of(text.substr(0, end + 1)) <= width) ++end;
  return text.substr(0, end);
}

std::vector<std::string> words_of(std::string_view text, std::size_t width) {
  std::vector<std::string> words;
  while (!text.empty()) {
    std::string_view word = text.substr(0, text.find(' '));
    if (width_of(word) > width) word = front(word, width);
    words.emplace_back(word);
    text.remove_prefix(word.size());
    if (text.starts_with(' ')) text.remove_prefix(1);
  }
  return words;
}

/// Lines of at most `width` characters, broken between words where that is possible.
std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::vector<std::string> lines(1);
  for (const std::string& word : words_of(text, width)) {
    std::string& line = lines.back();
    if (line.empty()) {
      line = word;
    } else if (width_of(line) + 1 + width_of(word) <= width) {
      line += " " + word;
    } else {
      lines.push_back(word);
    }
  }
  return lines;
}

std::string padded(const std::string& text, std::size_t width) {
  return text + std::string(width - std::min(width, width_of(text)), ' ');
}

}  // namespace

void TextTable::paragraph(std::string_view text) {
  for (const std::string& line : wrapped(text, kColumns)) text_ += line + "\n";
}

void TextTable::line(std::string_view text) { (text_ += text) += '\n'; }

void TextTable::section(std::string_view title) { text_ += "\n" + std::string(title) + "\n"; }

void TextTable::row(std::string_view label, std::string_view value) {
  columns(label, value, kLabelWidth);
}

void TextTable::marked(std::string_view mark, std::string_view text) {
  columns(mark, text, kMarkWidth);
}

void TextTable::columns(std::string_view left, std::string_view right, std::size_t left_width) {
  const std::size_t inset = std::min(left.find_first_not_of(' '), left.size());
  const auto labels = wrapped(left.substr(inset), left_width - inset - 1);
  const auto values = wrapped(right, kColumns - kIndent - left_width);
  for (std::size_t i = 0; i < std::max(labels.size(), values.size()); ++i) {
    const std::string label = i < labels.size() ? labels[i] : "";
    const std::string value = i < values.size() ? values[i] : "";
    std::string line =
        std::string(kIndent + inset, ' ') + padded(label, left_width - inset) + value;
    line.erase(line.find_last_not_of(' ') + 1);
    text_ += line + "\n";
  }
}

}  // namespace widegate::cli
