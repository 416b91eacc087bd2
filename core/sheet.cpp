#include "core/sheet.h"

#include "core/markup.h"
#include "core/notes.h"
#include "core/qr.h"
#include "core/sensor_svg.h"
#include "core/sheet_text.h"
#include "core/text.h"
#include "core/working.h"

namespace widegate {
namespace {

constexpr std::string_view kStyle = R"(@page{size:auto;margin:11mm}
*{box-sizing:border-box}
body{font:9pt/1.3 system-ui,sans-serif;color:#000;background:#fff;margin:0}
h1{font-size:15pt;margin:0 0 1mm}h2{font-size:10pt;margin:2.5mm 0 1mm;border-bottom:.3mm solid #000}
main{display:grid;grid-template-columns:1fr 1fr;column-gap:6mm}
.wide{grid-column:1/-1}p{margin:0 0 1mm}
svg.picture,.picture svg{width:100%;max-height:62mm;display:block}
table{border-collapse:collapse;width:100%}th,td{text-align:left;padding:.4mm 1mm .4mm 0;vertical-align:top}
th{font-weight:600}td.n,th.n{text-align:right;font-variant-numeric:tabular-nums}
tr+tr>*{border-top:.1mm solid #999}
ul{margin:0;padding-left:4mm}li.fail{font-weight:700}
.link{overflow-wrap:anywhere;font-size:6.5pt}.qr svg{width:32mm;height:32mm;display:block}
.foot{display:flex;gap:5mm;align-items:flex-start}
.working{break-before:page}.working td{font-size:7pt;overflow-wrap:anywhere}
@media screen{body{max-width:190mm;margin:6mm auto;padding:0 4mm}})";

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

class Sheet {
 public:
  explicit Sheet(const Source& source) : source_(source) {}

  void choice();
  void picture();
  void extraction();
  void cover();
  void view();
  void storage();
  void cautions();
  void link(const std::string& address);
  void working();

  Markup html;

 private:
  void heading(std::string_view text) { html.element("h2", text); }
  void fact(std::string_view name, std::string_view value) {
    html.open("tr");
    html.element("th", name);
    html.element("td", value, {{"class", "n"}});
    html.close();
  }
  void cells(std::string_view element, std::initializer_list<std::string> texts) {
    html.open("tr");
    bool first = true;
    for (const std::string& text : texts) {
      html.element(element, text, {{"class", first ? "" : "n"}});
      first = false;
    }
    html.close();
  }

  const Source& source_;
};

std::string raster_text(std::int64_t width, std::int64_t height) {
  return std::to_string(width) + " x " + std::to_string(height);
}

void Sheet::choice() {
  const auto& [plan, report, catalogue, camera] = source_;
  const SensorMode* mode = find_row(camera.modes, plan.format.mode);
  const Recording* recording = find_row(mode->recordings, plan.format.recording);
  heading("The choice");
  html.open("table");
  fact("Camera", camera.name);
  fact("Sensor mode", mode->name);
  fact("Area read", raster_text(report.mode.width_photosites, report.mode.height_photosites) +
                        " photosites, " + print_fixed(report.mode.width_mm, 2) + " x " +
                        print_fixed(report.mode.height_mm, 2) + " mm");
  fact("Recording", recording->name);
  fact("Recorded raster",
       raster_text(report.resolve.recorded_width_pixels, report.resolve.recorded_height_pixels));
  fact("Codec", name_of(plan.own.codecs, catalogue.codecs, plan.format.codec));
  const std::string lens = plan.lens.set.empty()
                               ? "own lens"
                               : name_of(plan.own.lens_sets, catalogue.lens_sets, plan.lens.set);
  fact("Lens", lens + ", " + print_number(plan.lens.focal_mm) + " mm, squeeze " +
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
  html.close();
}

void Sheet::extraction() {
  heading("Extraction, in recorded pixels");
  html.open("table");
  cells("th", {"Frame line", "Aspect", "x", "y", "Width", "Height", "Exact size"});
  const auto row = [this](const std::string& name, double aspect, const PixelRect& rect) {
    cells("td",
          {name, aspect_text(aspect), std::to_string(rect.even_left), std::to_string(rect.even_top),
           std::to_string(rect.even_width), std::to_string(rect.even_height),
           print_fixed(rect.width, 3) + " x " + print_fixed(rect.height, 3)});
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
  }
}

std::string covers_text(bool covers) { return covers ? "covers" : "too small"; }

void Sheet::cover() {
  const CoverReport& cover = source_.report.cover;
  heading("Lens cover");
  if (cover.lens_set.empty()) {
    html.element("p", cover.known ? "Image circle " + print_fixed(cover.image_circle_mm, 1) +
                                        " mm, as entered."
                                  : "The image circle is not known.");
    return;
  }
  html.open("table");
  cells("th", {"Focal length", "Circle", "Frame line", "Protected", "Mode"});
  for (const LensCover& lens : cover.lens_set) {
    cells("td", {print_number(lens.focal_mm) + " mm", print_fixed(lens.image_circle_mm, 1) + " mm",
                 covers_text(lens.covers_frame), covers_text(lens.covers_protected),
                 covers_text(lens.covers_mode)});
  }
  cells("td", {"needed", "", print_fixed(cover.frame.diagonal_mm, 1) + " mm",
               print_fixed(cover.protected_area.diagonal_mm, 1) + " mm",
               print_fixed(cover.mode.diagonal_mm, 1) + " mm"});
  html.close();
}

void Sheet::view() {
  const Report& report = source_.report;
  heading("View and pixels");
  html.open("table");
  fact("Field of view of the mode", with_unit(report.see.horizontal_fov_deg, 1, "°") + " x " +
                                        with_unit(report.see.vertical_fov_deg, 1, "°"));
  fact("In the frame line at " + print_number(report.see.focus_m) + " m",
       with_unit(report.see.width_at_focus_m, 2, "m") + " x " +
           with_unit(report.see.height_at_focus_m, 2, "m"));
  const std::string far = report.see.depth.far_m ? print_fixed(*report.see.depth.far_m, 2) + " m"
                                                 : std::string("infinity");
  fact("Sharp from, to", with_unit(report.see.depth.near_m, 2, "m") + ", " + far);
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
  html.open("table");
  fact("Data rate", with_unit(report.headline.data_rate_megabits_per_s, 0, "Mbit/s"));
  fact("Card", name_of(plan.own.cards, catalogue.cards, plan.store.card));
  fact("Minutes per card", with_unit(store.minutes_per_card, 1, "min"));
  fact("Card speed over data rate", with_unit(store.write_headroom, 2, "×"));
  fact("Cards a day, each camera", count_text(store.cards_per_day));
  fact("Cards in rotation, each camera",
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

void Sheet::cautions() {
  heading("Cautions");
  html.open("ul");
  for (const Severity wanted : {Severity::fail, Severity::caution}) {
    for (const Note& note : source_.report.notes) {
      if (note.severity != wanted) continue;
      const std::string mark = wanted == Severity::fail ? "Fails: " : "";
      html.element("li", mark + note_text(note), {{"class", severity_key(note.severity)}});
    }
  }
  html.close();
  html.element("p",
               "Calculated figures. A camera test, the makers' published figures and the "
               "commissioner's written requirements decide.");
}

std::string qr_svg(const QrCode& qr) {
  const double side = qr.size + 2 * kQrQuietModules;
  std::string path;
  for (int y = 0; y < qr.size; ++y) {
    for (int x = 0; x < qr.size; ++x) {
      if (!qr.at(x, y)) continue;
      int end = x;
      while (end < qr.size && qr.at(end, y)) ++end;
      path += "M" + std::to_string(x + kQrQuietModules) + " " +
              std::to_string(y + kQrQuietModules) + "h" + std::to_string(end - x) + "v1h-" +
              std::to_string(end - x) + "z";
      x = end;
    }
  }
  Markup svg;
  svg.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                   {"viewBox", "0 0 " + print_number(side) + " " + print_number(side)},
                   {"role", "img"},
                   {"aria-label", "QR code of the link"},
                   {"shape-rendering", "crispEdges"}});
  svg.empty("rect", {{"width", side}, {"height", side}, {"fill", "#fff"}});
  svg.empty("path", {{"d", path}, {"fill", "#000"}});
  svg.close();
  return svg.take();
}

void Sheet::link(const std::string& address) {
  if (address.empty()) return;
  html.open("div", {{"class", "foot wide"}});
  if (const auto qr = make_qr(address)) {
    html.open("div", {{"class", "qr"}});
    html.raw(qr_svg(*qr));
    html.close();
  }
  html.open("div");
  html.element("p", "Open this plan:");
  html.element("p", address, {{"class", "link"}});
  html.close();
  html.close();
}

void Sheet::working() {
  html.open("section", {{"class", "working"}});
  heading("Working");
  html.open("table");
  cells("th", {"Figure", "Formula", "With the numbers", "Result"});
  for (const Working& row : all_workings(source_.report)) {
    if (row.formula.empty() || row.key.starts_with("frame_lines.0.")) continue;
    for (std::size_t i = 0; i < row.results.size(); ++i) {
      html.open("tr");
      html.element("td", row.title);
      html.element("td", row.formula);
      html.element("td", row.substituted[i]);
      html.element("td", row.results[i] + " " + row.unit, {{"class", "n"}});
      html.close();
    }
  }
  html.close();
  html.close();
}

void head(Markup& html, const Plan& plan, const SheetOptions& options) {
  html.open("head");
  html.empty("meta", {{"charset", "utf-8"}});
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
  html.element("title", plan.title);
  if (options.style_href.empty()) {
    html.open("style");
    html.raw(kStyle);
    html.close();
  } else {
    html.empty("link", {{"rel", "stylesheet"}, {"href", options.style_href}});
  }
  html.close();
}

}  // namespace

std::string sheet_style() { return std::string(kStyle); }

std::string sheet_html(const Plan& plan, const Report& report, const Catalogue& catalogue,
                       const SheetOptions& options) {
  const Camera& camera = *find_row(plan.own.cameras, catalogue.cameras, plan.format.camera);
  const Source source{.plan = plan, .report = report, .catalogue = catalogue, .camera = camera};
  Sheet sheet(source);
  Markup& html = sheet.html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html", {{"lang", "en"}});
  head(html, plan, options);
  html.open("body");
  html.element("h1", plan.title);
  html.open("main");
  html.open("section");
  sheet.choice();
  sheet.view();
  html.close();
  html.open("section");
  sheet.picture();
  sheet.storage();
  html.close();
  html.open("section", {{"class", "wide"}});
  sheet.extraction();
  html.close();
  html.open("section");
  sheet.cover();
  html.close();
  html.open("section");
  sheet.cautions();
  html.close();
  sheet.link(options.link);
  html.close();
  if (options.with_working) sheet.working();
  html.close();
  html.close();
  return html.take();
}

}  // namespace widegate
