// How the printed sheet looks: its style sheet, and the letter size at which a sheet of a given
// length fits one page of A4 and of Letter.
#pragma once

#include <cstddef>
#include <string>

namespace widegate {

/// What a sheet needs of a page's height, in mm at the largest letters.
struct SheetRoom {
  double letters_mm = 0;  ///< Everything that grows and shrinks with the letters.
  double fixed_mm = 0;    ///< The QR code, whose modules keep their size.
};

inline constexpr double kSheetRowMm = 4.6;       ///< One row of a table.
inline constexpr double kSheetLineMm = 3.75;     ///< One line of running text.
inline constexpr double kSheetHeadingMm = 8.8;   ///< A heading with the space around it.
inline constexpr double kSheetTitleMm = 9.0;     ///< The plan's title.
inline constexpr double kSheetPictureMm = 66.0;  ///< The drawing and the words under it.
inline constexpr double kSheetFootSpaceMm = 9;   ///< Around the QR code.
inline constexpr std::size_t kSheetColumnLetters =
    54;  ///< Letters that one line of a column holds.

/// @param room   as estimated.
/// @param qr_mm  side of the QR code; 0 for none.
/// @return the style sheet, ready for a <style> element.
[[nodiscard]] std::string sheet_style(const SheetRoom& room, double qr_mm);

}  // namespace widegate
