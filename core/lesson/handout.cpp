#include "core/lesson/handout.h"

#include <algorithm>
#include <optional>

#include "core/base/version.h"
#include "core/encode/markup.h"
#include "core/encode/qr_svg.h"
#include "core/handover/sheet/sensor_svg.h"
#include "core/handover/sheet/sheet_style.h"
#include "core/report/light_drawing.h"
#include "core/report/working.h"

namespace widegate {
namespace {

constexpr std::string_view kRules = R"(
body{font:9.5pt/1.3 system-ui,sans-serif}h2{font-size:1.2em;margin:1.1em 0 .3em}
.step{break-inside:avoid;display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);column-gap:6mm}
.step h2,.step .worked{grid-column:1/-1}.picture svg{height:auto;max-height:58mm}
.worked{border-left:.6mm solid #000;padding-left:3mm;margin:.5em 0}.worked p{margin:.1em 0}
.ask{font-weight:600;margin-top:.4em}.room{height:11mm;border-bottom:.1mm solid #777}
.answers{break-before:page}.answers dt{font-weight:600;margin-top:.6em}.answers dd{margin:.1em 0 0 1em})";

/// Pulses of the lights as a curve, and under it when each frame is exposed.
std::string light_svg(const RunReport& run) {
  constexpr double kWidth = 200;
  constexpr double kCurve = 40;
  constexpr double kBar = 7;
  const LightDrawing drawing = light_drawing(run);
  Markup svg;
  svg.open("svg", {{"viewBox", "0 0 200 60"}, {"role", "img"}});
  std::string points;
  for (std::size_t i = 0; i < drawing.light.size(); ++i) {
    const double x = kWidth * static_cast<double>(i) /
                     static_cast<double>(std::max<std::size_t>(1, drawing.light.size() - 1));
    const double y = kCurve * (1.0 - static_cast<double>(drawing.light[i]));
    points += Attribute("x", x).value + "," + Attribute("y", y).value + " ";
  }
  svg.empty("polyline", {{"points", points}, {"fill", "none"}, {"stroke", "#000"}});
  for (const LightDrawing::Exposure& frame : drawing.frames) {
    svg.empty("rect", {{"x", kWidth * static_cast<double>(frame.from)},
                       {"y", kCurve + 6},
                       {"width", kWidth * static_cast<double>(frame.to - frame.from)},
                       {"height", kBar},
                       {"fill", "#777"}});
  }
  svg.close();
  return svg.take();
}

class Handout {
 public:
  Handout(const Lesson& lesson, const LessonRun& run, const Catalogue& catalogue)
      : lesson_(lesson), run_(run), catalogue_(catalogue) {}

  std::string body(const HandoutOptions& options) {
    html_.element("h1", lesson_.title);
    if (!lesson_.aim.empty()) html_.element("p", lesson_.aim);
    for (std::size_t i = 0; i < run_.steps.size(); ++i) step(i);
    foot(options);
    answers();
    return html_.take();
  }

 private:
  void step(std::size_t at) {
    const StepRun& told = run_.steps[at];
    html_.open("section", {{"class", "step"}});
    html_.element("h2", std::to_string(at + 1) + ". " + told.title);
    html_.open("div");
    html_.element("p", told.words);
    html_.element("p", "Move: " + told.control_label + ", here " + told.control_value + ".");
    figures(told);
    html_.close();
    html_.open("div", {{"class", "picture"}});
    picture(at);
    html_.close();
    working(told);
    html_.close();
    if (told.question.empty()) return;
    html_.element("p", "Question: " + told.question, {{"class", "ask"}});
    html_.element("div", "", {{"class", "room"}});
  }

  void figures(const StepRun& told) {
    const bool first =
        std::all_of(told.figures.begin(), told.figures.end(),
                    [](const WatchedFigure& figure) { return figure.before.empty(); });
    html_.open("table");
    html_.open("tr");
    html_.element("th", "");
    if (!first) html_.element("th", "before", {{"class", "n"}});
    html_.element("th", first ? "" : "now", {{"class", "n"}});
    html_.close();
    for (const WatchedFigure& figure : told.figures) {
      html_.open("tr");
      html_.element("td", figure.label);
      if (!first) html_.element("td", figure.before, {{"class", "n"}});
      html_.element("td", figure.changed || first ? figure.after : "the same", {{"class", "n"}});
      html_.close();
    }
    html_.close();
  }

  /// What the class looks at: for lights their pulses, else the sensor to scale.
  void picture(std::size_t at) {
    const Report& report = run_.steps[at].report;
    const Plan& plan = lesson_.steps[at].plan;
    if (lesson_.steps[at].figures.front().key.starts_with("run.flicker.")) {
      html_.raw(light_svg(report.run));
      html_.element("p", "Above the light of the lamps, below when each frame is exposed.");
      return;
    }
    const Camera* camera = find_row(plan.own.cameras, catalogue_.cameras, plan.format.camera);
    if (camera == nullptr) return;
    html_.raw(sensor_svg(report, *camera));
    html_.raw(sensor_svg_key(report));
  }

  void working(const StepRun& told) {
    const auto working = working_of(told.report, told.figures.front().key);
    if (!working || working->formula.empty()) return;
    html_.open("div", {{"class", "worked"}});
    html_.element("p", working->title + " = " + working->formula);
    if (!working->symbols.empty()) html_.element("p", "= " + working->symbols);
    for (std::size_t i = 0; i < working->substituted.size(); ++i) {
      // One value reads as in the table above; a range has its ends.
      const bool one = working->substituted.size() == 1;
      html_.element("p", "= " + working->substituted[i] + " = " +
                             (one ? told.figures.front().after : working->told[i]));
    }
    for (const std::string& step : working->because) html_.element("p", "because " + step);
    html_.element("p", "Source: " + working->source + ".");
    html_.close();
  }

  void foot(const HandoutOptions& options) {
    html_.open("div", {{"class", "foot"}});
    const auto qr = options.link.empty() ? std::nullopt : make_qr(options.link);
    if (qr) {
      html_.open("div", {{"class", "qr"}});
      html_.raw(qr_svg(*qr));
      html_.close();
    }
    html_.open("div");
    std::string made = "The lesson \"" + lesson_.title + "\", by Widegate " +
                       std::string(kProgramVersion) +
                       (options.date.empty() ? "" : ", made on " + options.date);
    html_.element("p", made +
                           ". Cameras, lenses and prices of the demo are invented. A camera "
                           "test, the makers' published figures and the commissioner's written "
                           "requirements decide.");
    if (!options.link.empty()) html_.element("p", options.link, {{"class", "link"}});
    html_.close();
    html_.close();
  }

  void answers() {
    const bool any = std::any_of(run_.steps.begin(), run_.steps.end(),
                                 [](const StepRun& step) { return !step.answer.empty(); });
    if (!any) return;
    html_.open("section", {{"class", "answers"}});
    html_.element("h2", "Answers");
    html_.open("dl");
    for (std::size_t i = 0; i < run_.steps.size(); ++i) {
      if (run_.steps[i].answer.empty()) continue;
      html_.element("dt", std::to_string(i + 1) + ". " + run_.steps[i].question);
      html_.element("dd", run_.steps[i].answer);
    }
    html_.close();
    html_.close();
  }

  const Lesson& lesson_;
  const LessonRun& run_;
  const Catalogue& catalogue_;
  Markup html_;
};

}  // namespace

std::string handout_html(const Lesson& lesson, const LessonRun& run, const Catalogue& catalogue,
                         const HandoutOptions& options) {
  constexpr double kQrMm = 38;
  Markup html;
  html.raw("<!DOCTYPE html>\n");
  html.open("html", {{"lang", "en"}});
  html.open("head");
  html.empty("meta", {{"charset", "utf-8"}});
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
  html.element("title", lesson.title);
  html.open("style");
  html.raw(sheet_style({}, kQrMm));
  html.raw(kRules);
  html.close();
  html.close();
  html.open("body");
  html.raw(Handout(lesson, run, catalogue).body(options));
  html.close();
  html.close();
  return html.take();
}

}  // namespace widegate
