#include "core/handover/sheet/sheet_style.h"

#include <algorithm>
#include <string_view>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr double kPageMm = 255;       ///< Height inside the margins of Letter, the shorter page.
constexpr double kLargestPoints = 8;  ///< Letters of a sheet with room to spare.
constexpr double kSmallestPoints = 5;

// Lengths in em follow the letters. Marks differ by shape and words, so that nothing is lost in
// black and white.
constexpr std::string_view kRules = R"(@page{size:auto;margin:11mm}
*{box-sizing:border-box}
body{color:#000;background:#fff;margin:0;print-color-adjust:exact;-webkit-print-color-adjust:exact}
h1{font-size:1.75em;line-height:1.2;margin:0;padding-bottom:.25em;border-bottom:.4mm solid #000}
h2{font-size:1.1em;line-height:1.2;margin:1em 0 .15em;break-after:avoid}
main{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);column-gap:6mm}
.wide{grid-column:1/-1}p{margin:0 0 .3em}
.picture svg{width:100%;height:19em;display:block;margin-top:.8em}
.key{display:flex;flex-wrap:wrap;gap:.2em 1.1em;justify-content:center;font-size:.8em;margin:.5em 0 0}
.key span{display:inline-flex;align-items:center;gap:.5em}.key svg{width:2.4em;height:.7em}
table{border-collapse:collapse;width:100%;border-top:.25mm solid #000}
th,td{text-align:left;padding:.14em 0 .14em 1em;vertical-align:baseline;font-weight:400}
th:first-child,td:first-child{padding-left:0}
thead th{color:#333;font-size:.9em}
.n{text-align:right;font-variant-numeric:tabular-nums}
.facts th{color:#333;white-space:nowrap}.facts td{font-weight:600}
tr+tr>*,tbody tr:first-child>*{border-top:.1mm solid #aaa}
.facts tbody tr:first-child>*{border-top:0}
.needed td{border-top:.25mm solid #000}
ul{margin:.2em 0;padding:.3em 0 0;list-style:none;border-top:.25mm solid #000}
li{display:grid;grid-template-columns:1.7em 1fr;margin-bottom:.25em}
li svg{width:1.15em;height:1.15em;margin-top:.1em}li.fail{font-weight:700}
.foot{display:flex;gap:5mm;align-items:flex-start;margin-top:1em;padding-top:.8em;border-top:.4mm solid #000;break-inside:avoid}
.link{overflow-wrap:anywhere;font-size:.75em;line-height:1.2}.qr svg{display:block}
.working{break-before:page}.working h2{margin-top:0}.working table{font-size:6.5pt;table-layout:fixed}
.working th:first-child{width:22%}.working th:last-child{width:17%;text-align:right}
.working td{overflow-wrap:anywhere}.working tr{break-inside:avoid}
@media screen{body{max-width:190mm;margin:6mm auto;padding:0 4mm}})";

std::string points(double size) { return print_fixed(size, 2) + "pt"; }

}  // namespace

std::string sheet_style(const SheetRoom& room, double qr_mm) {
  const double share = (kPageMm - room.fixed_mm) / std::max(1.0, room.letters_mm);
  const double size = kLargestPoints * std::clamp(share, kSmallestPoints / kLargestPoints, 1.0);
  const std::string side = print_fixed(qr_mm, 1) + "mm";
  return std::string(kRules) + "\nbody{font:" + points(size) + "/1.25 system-ui,sans-serif}" +
         ".qr svg{width:" + side + ";height:" + side + "}";
}

}  // namespace widegate
