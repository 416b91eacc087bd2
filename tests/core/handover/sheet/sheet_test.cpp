// The printed sheet as a document: what is in it, that nothing a person typed can break out of it,
// and that its letters shrink when there is more to say. How it prints is
// tests/browser/sheet.test.mjs.
#include "core/handover/sheet/sheet.h"

#include <doctest/doctest.h>

#include <string>

#include "core/catalogue/catalogue_json.h"
#include "core/encode/qr_svg.h"
#include "core/handover/sheet/sheet_style.h"
#include "core/report/evaluate.h"

namespace widegate {
namespace {

std::string sheet_of(const Plan& plan, const SheetOptions& options) {
  const auto library = built_in_catalogue();
  REQUIRE(library);
  const Report report = evaluate(plan, *library);
  REQUIRE(report.problems.empty());
  return sheet_html(plan, report, *library, options);
}

TEST_CASE("a sheet is one document without outside parts, and the same each time") {
  const SheetOptions options{.link = "https://plans.example/#1.abc", .with_working = false};
  const std::string html = sheet_of(Plan{}, options);
  CHECK(html.starts_with("<!DOCTYPE html>"));
  CHECK(html.find("<link") == std::string::npos);
  CHECK(html.find("<script") == std::string::npos);
  CHECK(html.find(" style=") == std::string::npos);
  CHECK(html.find("QR code of the link") != std::string::npos);
  CHECK(html == sheet_of(Plan{}, options));
}

TEST_CASE("a title is text on the sheet, never markup") {
  Plan plan;
  plan.title = "</style><script>alert(1)</script>";
  const std::string html = sheet_of(plan, {});
  CHECK(html.find("<script") == std::string::npos);
  CHECK(html.find("&lt;script&gt;") != std::string::npos);
}

TEST_CASE("workings only on request; no QR code without a link") {
  CHECK(sheet_of(Plan{}, {}).find("With the numbers") == std::string::npos);
  CHECK(sheet_of(Plan{}, {}).find("QR code") == std::string::npos);
  CHECK(sheet_of(Plan{}, {.link = "", .with_working = true}).find("With the numbers") !=
        std::string::npos);
}

TEST_CASE("letters are 8 pt at most, smaller for longer sheets, never under 5 pt") {
  const auto letters = [](double height_mm) {
    const std::string style = sheet_style({.letters_mm = height_mm, .fixed_mm = 40}, 30);
    const std::size_t at = style.find("body{font:");
    REQUIRE(at != std::string::npos);
    return std::stod(style.substr(at + 10));
  };
  CHECK(letters(100) == doctest::Approx(8));
  CHECK(letters(300) < letters(250));
  CHECK(letters(300) > 5);
  CHECK(letters(10000) == doctest::Approx(5));
}

TEST_CASE("a QR code's drawing has its quiet zone and every dark module") {
  const auto qr = make_qr("https://plans.example/");
  REQUIRE(qr);
  const std::string svg = qr_svg(*qr);
  const std::string side = std::to_string(qr->size + 2 * kQrQuietModules);
  CHECK(svg.find("viewBox=\"0 0 " + side + " " + side + "\"") != std::string::npos);
  // The finder pattern in the upper left corner begins with seven dark modules (ISO/IEC 18004).
  CHECK(svg.find("M4 4h7v1h-7z") != std::string::npos);
}

}  // namespace
}  // namespace widegate
