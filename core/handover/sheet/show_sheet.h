// The printed sheet of a show: what the production office signs. One page of HTML, A4 and Letter,
// black and white safe; every sum on it is found again in show_to_csv().
#pragma once

#include <string>

#include "core/show/report.h"
#include "core/show/show.h"

namespace widegate {

struct ShowSheetOptions {
  std::string link;  ///< Whole address that opens the show; printed and as a QR code. May be empty.
  std::string date;  ///< Day it is made, as it should be printed; the core has no clock.
};

/// A complete HTML document that needs no other file.
/// @param report  a valid report of `show`.
[[nodiscard]] std::string show_sheet_html(const Show& show, const ShowReport& report,
                                          const ShowSheetOptions& options);

}  // namespace widegate
