#include "core/handover/sheet/sheet.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/base/number_text.h"
#include "core/base/version.h"
#include "core/encode/markup.h"
#include "core/encode/qr_svg.h"
#include "core/handover/sheet/sensor_svg.h"
#include "core/handover/sheet/sheet_style.h"
#include "core/handover/sheet/sheet_text.h"
#include "core/report/notes.h"
#include "core/report/requirement_lines.h"
#include "core/report/working.h"

namespace widegate {
namespace {

template <class Row>
std::string name_of(const std::vector<Row>& own, const std::vector<Row>& library,
                    const std::string& id) {
  const Row* row = find_row(own, library, id);
  return row == nullptr ? id : row->name;
}

/// What every part of the sheet reads from.
struct Source {
  const Plan& plan;
  const Report& report;
  const Catalogue& catalogue;
  const Camera& camera;
};

/// Writes the parts one after another and keeps count of the height they take.
class Sheet {
 public:
  explicit Sheet(const Source& source) : source_(source) {}

  void choice();
  void picture();
  void extraction();
  void cover();
  void view();
  void storage();
  void requirements();
  void cautions();
  void foot(const std::string& address, const std::optional<QrCode>& qr);
  void working();

  /// Height of what was written since the last call, in mm at the largest letters.
  [[nodiscard]] double take_height() { return std::exchange(height_mm_, 0); }

  Markup html;

 private:
  void heading(std::string_view text) {
    html.element("h2", text);
    height_mm_ += kSheetHeadingMm;
  }
  void begin_facts() { html.open("table", {{"class", "facts"}}); }
  void fact(std::string_view name, std::string_view value) {
    html.open("tr");
    html.element("th", name, {{"scope", "row"}});
    html.element("td", value, {{"class", "n"}});
    html.close();
    count_lines(name.size() + value.size() + 3, kSheetRowMm);
  }
  void cells(std::string_view element, std::initializer_list<std::string> texts,
             std::string_view row_class = "") {
    html.open("tr", {{"class", row_class}});
    bool first = true;
    for (const std::string& text : texts) {
      html.element(element, text, {{"class", first ? "" : "n"}});
      first = false;
    }
    html.close();
    height_mm_ += kSheetRowMm;
  }
  void header(std::initializer_list<std::string> texts) {
    html.open("thead");
    cells("th", texts);
    html.close();
  }
  void count_lines(std::size_t letters, double first_mm) {
    const std::size_t further_lines = letters / kSheetColumnLetters;
    height_mm_ += first_mm + static_cast<double>(further_lines) * kSheetLineMm;
  }
  void lens_table(const CoverReport& cover);
  void lens_summary(const CoverReport& cover);
  void note(const Note& note);
  void requirement(const RequirementLine& line);

  const Source& source_;
  double height_mm_ = 0;
};

std::string raster_text(std::int64_t width, std::int64_t height) {
  return std::to_string(width) + " × " + std::to_string(height);
}

void Sheet::choice() {
  const auto& [plan, report, catalogue, camera] = source_;
  const SensorMode* mode = find_row(camera.modes, plan.format.mode);
  const Recording* recording = find_row(mode->recordings, plan.format.recording);
  heading("The choice");
  begin_facts();
  fact("Camera", camera.name);
  fact("Sensor mode", mode->name);
  fact("Photosites read", raster_text(report.mode.width_photosites, report.mode.height_photosites));
  fact("Area read", print_fixed(report.mode.width_mm, 2) + " × " +
                        print_fixed(report.mode.height_mm, 2) + " mm");
  fact("Recording", recording->name);
  fact("Recorded raster",
       raster_text(report.resolve.recorded_width_pixels, report.resolve.recorded_height_pixels));
  fact("Codec", name_of(plan.own.codecs, catalogue.codecs, plan.format.codec));
  fact("Lens set", plan.lens.set.empty()
                       ? "own lens"
                       : name_of(plan.own.lens_sets, catalogue.lens_sets, plan.lens.set));
  fact("Focal length", print_number(plan.lens.focal_mm) + " mm, squeeze " +
                           print_number(report.mode.squeeze) + "×");
  fact("Sensor rate", rate_text(plan.run.sensor_rate));
  fact("Project rate", rate_text(plan.run.project_rate));
  fact("Shutter", print_fixed(report.run.shutter_deg, 1) + "°");
  fact("Deliverable", raster_text(plan.deliverable.width_pixels, plan.deliverable.height_pixels));
  html.close();
}

void Sheet::picture() {
  html.open("div", {{"class", "picture"}});
  html.raw(sensor_svg(source_.report, source_.camera));
  html.raw(sensor_svg_key(source_.report));
  html.close();
  height_mm_ += kSheetPictureMm;
}

void Sheet::extraction() {
  heading("Extraction, in recorded pixels");
  html.open("table");
  header({"Frame line", "Aspect", "Left", "Top", "Width", "Height", "Exact size"});
  const auto row = [this](const std::string& name, double aspect, const PixelRect& rect) {
    cells("td",
          {name, aspect_text(aspect), std::to_string(rect.even_left), std::to_string(rect.even_top),
           std::to_string(rect.even_width), std::to_string(rect.even_height),
           print_fixed(rect.width, 3) + " × " + print_fixed(rect.height, 3)});
  };
  for (const FrameReport& frame : source_.report.frames) {
    row(frame.name, frame.aspect, frame.pixels);
    if (frame.protection == 0) continue;
    row(frame.name + ", protected " + print_number(100 * frame.protection) + " %", frame.aspect,
        frame.protected_pixels);
  }
  html.close();
  if (source_.report.resolve.recorded_squeeze != 1) {
    html.element("p", "The file is squeezed " +
                          print_number(source_.report.resolve.recorded_squeeze) +
                          "×; these are pixels of the squeezed file.");
    height_mm_ += kSheetLineMm;
  }
}

std::string covers_text(bool covers) { return covers ? "covers" : "too small"; }

/// Up to so many focal lengths have a row each; longer sets are told in three lines.
constexpr std::size_t kMostLensRows = 16;

void Sheet::lens_table(const CoverReport& cover) {
  html.open("table");
  header({"Focal length", "Circle", "Frame line", "Protected", "Mode"});
  for (const LensCover& lens : cover.lens_set) {
    cells("td", {print_number(lens.focal_mm) + " mm", print_fixed(lens.image_circle_mm, 1) + " mm",
                 covers_text(lens.covers_frame), covers_text(lens.covers_protected),
                 covers_text(lens.covers_mode)});
  }
  cells("td",
        {"Circle needed", "", print_fixed(cover.frame.diagonal_mm, 1) + " mm",
         print_fixed(cover.protected_area.diagonal_mm, 1) + " mm",
         print_fixed(cover.mode.diagonal_mm, 1) + " mm"},
        "needed");
  html.close();
}

void Sheet::lens_summary(const CoverReport& cover) {
  struct Row {
    std::string_view name;
    const CoverFigures& figures;
    bool LensCover::*covers;
  };
  for (const Row& row : {Row{"Frame line", cover.frame, &LensCover::covers_frame},
                         Row{"Protected", cover.protected_area, &LensCover::covers_protected},
                         Row{"Mode", cover.mode, &LensCover::covers_mode}}) {
    std::string covering, others;
    for (const LensCover& lens : cover.lens_set) {
      std::string& list = lens.*row.covers ? covering : others;
      list += (list.empty() ? "" : ", ") + print_number(lens.focal_mm);
    }
    const std::string text = std::string(row.name) + ", needs " +
                             print_fixed(row.figures.diagonal_mm, 1) + " mm. Covered by " +
                             (covering.empty() ? "none" : covering + " mm") +
                             (others.empty() ? "." : "; too small: " + others + " mm.");
    html.element("p", text);
    count_lines(text.size(), kSheetLineMm);
  }
}

void Sheet::cover() {
  const CoverReport& cover = source_.report.cover;
  heading("Lens cover");
  if (cover.lens_set.empty()) {
    html.element("p", cover.known ? "Image circle " + print_fixed(cover.image_circle_mm, 1) +
                                        " mm, as entered."
                                  : "The image circle is not known.");
    height_mm_ += kSheetLineMm;
  } else if (cover.lens_set.size() > kMostLensRows) {
    lens_summary(cover);
  } else {
    lens_table(cover);
  }
}

void Sheet::view() {
  const Report& report = source_.report;
  heading("View and pixels");
  begin_facts();
  fact("Field of view of the frame line",
       print_fixed(report.headline.horizontal_fov_deg, 1) + "° × " +
           print_fixed(report.headline.vertical_fov_deg, 1) + "°");
  fact("In the frame line at " + print_number(report.see.focus_m) + " m",
       print_fixed(report.see.width_at_focus_m, 2) + " × " +
           with_unit(report.see.height_at_focus_m, 2, "m"));
  const std::string far = report.see.depth.far_m ? print_fixed(*report.see.depth.far_m, 2) + " m"
                                                 : std::string("infinity");
  fact("Sharp", "from " + with_unit(report.see.depth.near_m, 2, "m") + " to " + far);
  fact("Photosites in the frame line", with_unit(report.headline.frame_megapixels, 2, "million"));
  fact("Photosites of the mode", with_unit(report.headline.mode_megapixels, 2, "million"));
  fact("Sampled to deliverable",
       print_fixed(report.resolve.horizontal_sampled_scale, 3) + "× across, " +
           print_fixed(report.resolve.vertical_sampled_scale, 3) + "× down");
  html.close();
}

void Sheet::storage() {
  const auto& [plan, report, catalogue, camera] = source_;
  const StoreReport& store = report.store;
  heading("Data and media");
  begin_facts();
  fact("Data rate", with_unit(report.headline.data_rate_megabits_per_s, 0, "Mbit/s"));
  fact("Card", name_of(plan.own.cards, catalogue.cards, plan.store.card));
  fact("Minutes per card", with_unit(store.minutes_per_card, 1, "min"));
  fact("Card speed / data rate", with_unit(store.write_headroom, 2, "×"));
  fact("Cards a day, each camera", count_text(store.cards_per_day));
  fact("Cards in rotation, each",
       store.rotation_sustainable ? count_text(store.cards_in_rotation) : "never enough");
  fact("Copying a full card", with_unit(store.offload_minutes_per_card, 1, "min") + ", by the " +
                                  store.offload_limited_by);
  fact("Copying a day, each unit", with_unit(store.offload_hours_per_day, 1, "h"));
  fact("Whole shoot", bytes_text(store.shoot_total_bytes));
  fact("All copies", bytes_text(store.copies_total_bytes));
  fact("Drives", count_text(store.drives));
  fact("Tapes", count_text(store.tapes));
  fact("Upload", with_unit(store.upload_hours, 0, "h"));
  fact("Cost", with_unit(store.cost, 0, plan.store.currency));
  html.close();
}

/// Shapes that differ without colour: a filled disc with a cross, an open triangle.
constexpr std::string_view kFailMark =
    R"(<svg viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="9.5"/><path d="M6 6l8 8M14 6l-8 8" stroke="#fff" stroke-width="2.6"/></svg>)";
constexpr std::string_view kCautionMark =
    R"(<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M10 2L19 18H1z" fill="none" stroke="#000" stroke-width="1.6"/><path d="M10 7v6M10 14.5v2" stroke="#000" stroke-width="1.8"/></svg>)";

void Sheet::note(const Note& note) {
  const bool fails = note.severity == Severity::fail;
  const std::string text = (fails ? "Fails: " : "") + note_text(note);
  html.open("li", {{"class", severity_key(note.severity)}});
  html.raw(fails ? kFailMark : kCautionMark);
  html.element("span", text);
  html.close();
  count_lines(text.size() + 2, kSheetRowMm - 0.4);
}

/// What is missed or not known comes with its figures, what is met by name: the page is one.
void Sheet::requirements() {
  heading("Asked for: " + source_.report.commission.name);
  std::string met;
  for (const RequirementLine& line : requirement_lines(source_.report)) {
    if (line.severity != Severity::ok) {
      requirement(line);
    } else {
      met += (met.empty() ? "Met: " : ", ") + line.label;
    }
  }
  if (met.empty()) return;
  html.element("p", met + ".");
  count_lines(met.size(), kSheetRowMm - 0.4);
}

void Sheet::requirement(const RequirementLine& line) {
  const std::string text = line.label + " " + line.text;
  html.open("ul");
  html.open("li", {{"class", severity_key(line.severity)}});
  html.raw(line.severity == Severity::fail ? kFailMark : kCautionMark);
  html.element("span", text);
  html.close();
  html.close();
  count_lines(text.size() + 2, kSheetRowMm - 0.4);
}

void Sheet::cautions() {
  heading("Cautions");
  html.open("ul");
  for (const Severity wanted : {Severity::fail, Severity::caution}) {
    for (const Note& each : source_.report.notes) {
      if (each.severity == wanted) note(each);
    }
  }
  html.close();
  const std::string standing = standing_text(source_.report.notes);
  html.element("p", "Always: " + standing);
  count_lines(standing.size(), kSheetRowMm - 0.4);
}

void Sheet::foot(const std::string& address, const std::optional<QrCode>& qr) {
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
  if (!address.empty()) {
    html.element("p", "Open this plan, with all its figures and workings:");
    html.element("p", address, {{"class", "link"}});
  }
  html.close();
  html.close();
}

void Sheet::working() {
  html.open("section", {{"class", "working"}});
  heading("Working");
  html.open("table");
  html.open("thead");
  html.open("tr");
  for (const std::string_view title : {"Figure", "Formula", "With the numbers", "Result"}) {
    html.element("th", title);
  }
  html.close();
  html.close();
  for (const Working& row : all_workings(source_.report)) {
    if (row.formula.empty() || row.key.starts_with("frame_lines.0.")) continue;
    for (std::size_t i = 0; i < row.results.size(); ++i) {
      html.open("tr");
      html.element("td", row.title);
      html.element("td", row.formula);
      html.element("td", row.substituted[i]);
      html.element("td", row.told[i], {{"class", "n"}});
      html.close();
    }
  }
  html.close();
  html.close();
}

/// Side of the code on paper in mm: modules of at least 0.36 mm, and never a small one.
double qr_side_mm(const std::optional<QrCode>& qr) {
  constexpr double kModuleMm = 0.36;
  constexpr double kLeastMm = 30;
  if (!qr) return 0;
  return std::max(kLeastMm, kModuleMm * (qr->size + 2 * kQrQuietModules));
}

std::string body_of(Sheet& sheet, const Source& source, const SheetOptions& options,
                    const std::optional<QrCode>& qr, SheetRoom& room) {
  Markup& html = sheet.html;
  html.element("h1", source.plan.title);
  html.open("main");
  html.open("section");
  sheet.choice();
  sheet.view();
  sheet.cover();
  html.close();
  const double left = sheet.take_height();
  html.open("section");
  sheet.picture();
  sheet.storage();
  sheet.requirements();
  sheet.cautions();
  html.close();
  room.letters_mm = kSheetTitleMm + std::max(left, sheet.take_height());
  html.open("section", {{"class", "wide"}});
  sheet.extraction();
  html.close();
  html.close();
  room.letters_mm += sheet.take_height();
  room.fixed_mm = qr_side_mm(qr) + kSheetFootSpaceMm;
  sheet.foot(options.link, qr);
  if (options.with_working) sheet.working();
  return html.take();
}

}  // namespace

std::string sheet_html(const Plan& plan, const Report& report, const Catalogue& catalogue,
                       const SheetOptions& options) {
  const Camera& camera = *find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  const Source source{.plan = plan, .report = report, .catalogue = catalogue, .camera = camera};
  const auto qr = options.link.empty() ? std::nullopt : make_qr(options.link);
  Sheet sheet(source);
  SheetRoom room;
  const std::string body = body_of(sheet, source, options, qr, room);
  Markup html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html", {{"lang", "en"}});
  html.open("head");
  html.empty("meta", {{"charset", "utf-8"}});
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
  html.element("title", plan.title);
  html.open("style");
  html.raw(sheet_style(room, qr_side_mm(qr)));
  html.close();
  html.close();
  html.open("body");
  html.raw(body);
  html.close();
  html.close();
  return html.take();
}

}  // namespace widegate
