#include "core/handover/sheet/show_sheet.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

#include "core/base/version.h"
#include "core/encode/markup.h"
#include "core/encode/qr_svg.h"
#include "core/handover/sheet/calendar_svg.h"
#include "core/handover/sheet/sheet_style.h"
#include "core/report/notes.h"
#include "core/show/show_figures.h"
#include "core/show/show_notes.h"

namespace widegate {
namespace {

/// Columns of the table of the parts; keys of part_figures().
constexpr std::string_view kPartColumns[] = {"days",        "cameras",       "bytes_per_day",
                                             "total_bytes", "cards_to_have", "copy_hours_per_day",
                                             "drives",      "tapes"};
/// Notes that are printed; the rest is counted, so that the sheet stays one page.
constexpr std::size_t kMostNotes = 8;
constexpr std::size_t kMostLines = 18;
constexpr double kDrawingMm = 60;
constexpr std::size_t kWideLetters = 125;  ///< That one line across the page holds.

class Sheet {
 public:
  Sheet(const Show& show, const ShowReport& report) : show_(show), report_(report) {}

  void head(const std::string& date) {
    html.element("h1", show_.title.empty() ? "Show" : show_.title);
    std::string line = std::to_string(report_.parts.size()) + " parts, " +
                       std::to_string(report_.totals.shooting_days) + " shooting days";
    if (!report_.days.front().date.empty()) {
      line += ", " + day_words(*parse_day(report_.days.front().date)) + " to " +
              day_words(*parse_day(report_.days.back().date));
    }
    if (!date.empty()) line += ". Made on " + date;
    html.element("p", line + ".");
    height_mm_ += kSheetTitleMm + kSheetLineMm;
  }

  void totals() {
    heading("The show in all");
    html.open("table", {{"class", "facts"}});
    for (const ShowFigure& figure : show_figures(report_)) {
      row({std::string(figure.label), with_unit(figure)}, "th");
    }
    html.close();
  }

  void money() {
    heading("Money, as it was entered");
    html.open("table", {{"class", "facts"}});
    std::size_t lines = 0;
    std::size_t left = 0;
    for (const MoneyLine& line : report_.money.lines) {
      if (!line.price.amount || line.quantity.most == 0) continue;
      if (++lines > kMostLines) {
        ++left;
        continue;
      }
      const std::string name = line.part.empty() ? line.name : line.name + ", " + line.part;
      row({name + ", " + short_quantity(line), money_text(line.cost, line.price.currency)}, "th");
    }
    if (left > 0) row({"and " + std::to_string(left) + " lines more in the table", ""}, "th");
    for (const MoneySum& sum : report_.money.sums) {
      row({std::string("Sum") + (sum.invented ? ", with invented prices" : ""),
           money_text(sum.cost, sum.currency)},
          "th", "sum");
    }
    if (report_.money.sums.empty()) row({"No prices yet", ""}, "th");
    html.close();
    if (report_.money.missing.empty()) return;
    std::string names;
    for (const std::string& name : report_.money.missing) {
      names += (names.empty() ? "" : "; ") + name;
    }
    paragraph("In no sum, for want of a price: " + names + ".", kSheetColumnLetters);
  }

  void parts() {
    heading("The parts");
    html.open("table");
    html.open("thead");
    std::vector<std::string> titles = {"Part", "Format"};
    for (const std::string_view key : kPartColumns) {
      for (const ShowFigure& figure : part_figures(report_.parts.front())) {
        if (figure.key == key) titles.emplace_back(figure.label);
      }
    }
    row(titles, "th");
    html.close();
    for (const PartReport& part : report_.parts) {
      std::vector<std::string> cells = {part.name, part.format};
      const std::vector<ShowFigure> figures = part_figures(part);
      for (const std::string_view key : kPartColumns) {
        for (const ShowFigure& figure : figures) {
          if (figure.key == key) cells.push_back(cell(figure));
        }
      }
      row(cells, "td");
      height_mm_ += kSheetLineMm * static_cast<double>(part.format.size() / 36);
    }
    html.close();
  }

  void drawing() {
    const std::string money = report_.money.sums.size() == 1 ? money_calendar_svg(report_) : "";
    std::string title = "Footage so far, by shooting day";
    if (!money.empty()) {
      const MoneySum& sum = report_.money.sums.front();
      title += "; money so far, " + sum.currency + (sum.invented ? ", invented" : "");
    }
    heading(title);
    html.open("div", {{"class", "calendar"}});
    html.raw(storage_calendar_svg(report_));
    html.raw(money);
    html.close();
    html.raw(storage_calendar_key(report_));
    height_mm_ += kDrawingMm;
    for (const MediaSet& set : report_.media) {
      paragraph(set.name + " (" + set.parts + "): full on " + full_days_text(report_, set) + ".",
                kWideLetters);
    }
  }

  void assumptions() {
    heading("What it rests on");
    for (const Assumption& each : show_assumptions(show_, report_)) {
      if (each.label.ends_with(", format")) continue;
      paragraph(each.label + ": " + each.text, kWideLetters);
    }
  }

  void notes() {
    heading("Cautions");
    std::size_t shown = 0;
    for (const ShowNote& note : report_.notes) {
      if (shown++ == kMostNotes) break;
      const bool fails = note.severity == Severity::fail;
      paragraph((fails ? "✕ Fails: " : "△ ") + note.text, kWideLetters,
                severity_key(note.severity));
    }
    if (report_.notes.size() > kMostNotes) {
      paragraph("and " + std::to_string(report_.notes.size() - kMostNotes) + " more in the table",
                kWideLetters);
    }
    paragraph(std::string(show_standing_text()), kWideLetters);
  }

  void foot(const std::string& address, const std::optional<QrCode>& qr) {
    html.open("div", {{"class", "foot"}});
    if (qr) {
      html.open("div", {{"class", "qr"}});
      html.raw(qr_svg(*qr));
      html.close();
    }
    html.open("div");
    html.element("p", "Calculated by Widegate " + std::string(kProgramVersion) +
                          ". A camera test, the makers' published figures and the commissioner's "
                          "written requirements decide.");
    html.element("p", "Signed: ______________________________   Date: ____________");
    if (!address.empty()) {
      html.element("p", "Open this show, with all its plans, figures and workings:");
      html.element("p", address, {{"class", "link"}});
    }
    html.close();
    html.close();
  }

  /// Height of what was written since the last call, in mm at the largest letters.
  [[nodiscard]] double take_height() { return std::exchange(height_mm_, 0); }

  Markup html;

 private:
  void heading(std::string_view text) {
    html.element("h2", text);
    height_mm_ += kSheetHeadingMm;
  }
  void paragraph(const std::string& text, std::size_t line_letters, std::string_view kind = "") {
    html.element("p", text, {{"class", kind}});
    height_mm_ += kSheetLineMm * (1 + static_cast<double>(text.size() / line_letters));
  }
  void row(const std::vector<std::string>& cells, std::string_view first,
           std::string_view kind = "") {
    html.open("tr", {{"class", kind}});
    for (std::size_t i = 0; i < cells.size(); ++i) {
      html.element(i == 0                              ? first
                   : first == "th" && cells.size() > 2 ? "th"
                                                       : "td",
                   cells[i], {{"class", i == 0 || (i == 1 && cells.size() > 2) ? "" : "n"}});
    }
    html.close();
    height_mm_ += kSheetRowMm;
    const std::size_t letters = cells.size() == 2 ? cells[0].size() + cells[1].size() : 0;
    if (letters > kSheetColumnLetters) height_mm_ += kSheetLineMm;
  }
  static std::string cell(const ShowFigure& figure) {
    if (figure.value.most == 0) return "–";
    return figure.value_unit.empty() ? figure.text : with_unit(figure);
  }

  const Show& show_;
  const ShowReport& report_;
  double height_mm_ = 0;
};

double qr_side_mm(const std::optional<QrCode>& qr) {
  constexpr double kModuleMm = 0.36;
  constexpr double kLeastMm = 30;
  if (!qr) return 0;
  return std::max(kLeastMm, kModuleMm * (qr->size + 2 * kQrQuietModules));
}

std::string body_of(Sheet& sheet, const ShowSheetOptions& options, const std::optional<QrCode>& qr,
                    SheetRoom& room) {
  Markup& html = sheet.html;
  sheet.head(options.date);
  const double head = sheet.take_height();
  html.open("main");
  html.open("section");
  sheet.totals();
  html.close();
  const double left = sheet.take_height();
  html.open("section");
  sheet.money();
  html.close();
  room.letters_mm = head + std::max(left, sheet.take_height());
  html.open("section", {{"class", "wide"}});
  sheet.parts();
  sheet.drawing();
  sheet.assumptions();
  sheet.notes();
  html.close();
  html.close();
  room.letters_mm += sheet.take_height();
  room.fixed_mm = qr_side_mm(qr) + kSheetFootSpaceMm;
  sheet.foot(options.link, qr);
  return html.take();
}

constexpr std::string_view kRules = R"(
.calendar{display:grid;grid-template-columns:2fr 1fr}.calendar svg{width:100%;display:block}
.key svg{width:2.4em;height:.8em}.wide td.n{white-space:nowrap}
.sum>*{border-top:.25mm solid #000!important;font-weight:700}p{margin:0 0 .1em}p.fail{font-weight:700})";

}  // namespace

std::string show_sheet_html(const Show& show, const ShowReport& report,
                            const ShowSheetOptions& options) {
  const auto qr = options.link.empty() ? std::nullopt : make_qr(options.link);
  Sheet sheet(show, report);
  SheetRoom room;
  const std::string body = body_of(sheet, options, qr, room);
  Markup html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html", {{"lang", "en"}});
  html.open("head");
  html.empty("meta", {{"charset", "utf-8"}});
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
  html.element("title", show.title);
  html.open("style");
  html.raw(sheet_style(room, qr_side_mm(qr)));
  html.raw(kRules);
  html.close();
  html.close();
  html.open("body");
  html.raw(body);
  html.close();
  html.close();
  return html.take();
}

}  // namespace widegate
