#include "core/handover/sheet/calendar_svg.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/base/calendar_day.h"
#include "core/base/number_text.h"
#include "core/encode/markup.h"
#include "core/show/show_figures.h"

namespace widegate {
namespace {

// In the units of the drawings, of which 180 are as wide as a page.
constexpr double kStorageWidth = 120;
constexpr double kMoneyWidth = 60;
constexpr double kHeight = 52;
constexpr double kLeft = 17;
constexpr double kRight = 4;
constexpr double kTop = 6;
constexpr double kBottom = 11;
constexpr double kLetters = 2.3;
constexpr double kMark = 1.5;
constexpr double kTerabyte = 1e12;
constexpr double kDateRoom = 13;
constexpr int kMostTicks = 5;

/// How the area of a part is filled: a grey, and lines across it in one of two directions.
struct Fill {
  std::string_view grey;
  int hatch;  ///< 0: none, 1: rising, 2: falling.
};
constexpr auto kFills = std::to_array<Fill>({{"#c8c8c8", 0},
                                             {"#4a4a4a", 0},
                                             {"#ffffff", 1},
                                             {"#8c8c8c", 0},
                                             {"#e8e8e8", 2},
                                             {"#6e6e6e", 1}});

const Fill& fill_of(std::size_t part) { return kFills[part % kFills.size()]; }
std::string pattern_id(std::size_t part) { return "part-" + std::to_string(part % kFills.size()); }

/// 1, 2 or 5 times a power of ten, so that few steps reach the top.
double tick_step(double top) {
  if (top <= 0) return 1;
  const double rough = top / kMostTicks;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (rough <= times * power * (1 + 1e-9)) return times * power;
  }
  return 10 * power;
}

class Drawing {
 public:
  Drawing(double width, std::size_t days, double top, std::string_view title)
      : width_(width), days_(days) {
    step_ = tick_step(top);
    top_ = std::max(step_, std::ceil(top / step_ - 1e-9) * step_);
    svg_.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                      {"viewBox", "0 0 " + print_number(width_) + " " + print_number(kHeight)},
                      {"role", "img"},
                      {"font-family", "sans-serif"},
                      {"font-size", kLetters}});
    svg_.element("title", title);
  }

  /// Right edge of a day; day 0 is the left edge of the first.
  [[nodiscard]] double x(std::size_t day) const {
    return kLeft + (width_ - kLeft - kRight) * static_cast<double>(day) /
                       static_cast<double>(std::max<std::size_t>(1, days_));
  }
  [[nodiscard]] double y(double value) const {
    return kHeight - kBottom - (kHeight - kTop - kBottom) * value / top_;
  }

  void patterns(std::size_t parts) {
    svg_.open("defs");
    for (std::size_t part = 0; part < std::min(parts, kFills.size()); ++part) {
      const Fill& fill = fill_of(part);
      svg_.open("pattern", {{"id", pattern_id(part)},
                            {"width", 2},
                            {"height", 2},
                            {"patternUnits", "userSpaceOnUse"}});
      svg_.empty("rect", {{"width", 2}, {"height", 2}, {"fill", fill.grey}});
      if (fill.hatch != 0) {
        svg_.empty("path", {{"d", fill.hatch == 1 ? "M0 2L2 0" : "M0 0L2 2"},
                            {"stroke", "#000"},
                            {"stroke-width", 0.25}});
      }
      svg_.close();
    }
    svg_.close();
  }

  /// Between two edges, each a step for every day.
  void area(const std::vector<double>& lower, const std::vector<double>& upper, std::size_t part) {
    std::string path = "M";
    for (std::size_t day = 0; day < days_; ++day) {
      path += at(day, upper[day]) + "L" + at(day + 1, upper[day]) + "L";
    }
    for (std::size_t day = days_; day > 0; --day) {
      path += at(day, lower[day - 1]) + "L" + at(day - 1, lower[day - 1]) + "L";
    }
    path.back() = 'Z';
    svg_.empty("path", {{"d", path},
                        {"fill", "url(#" + pattern_id(part) + ")"},
                        {"stroke", "#000"},
                        {"stroke-width", 0.2}});
  }

  void line(const std::vector<double>& values, std::string_view dash) {
    std::string path = "M" + at(0, 0);
    for (std::size_t day = 0; day < days_; ++day) {
      path += "L" + at(day, values[day]) + "L" + at(day + 1, values[day]);
    }
    svg_.empty("path", {{"d", path},
                        {"fill", "none"},
                        {"stroke", "#000"},
                        {"stroke-width", 0.5},
                        {"stroke-dasharray", dash}});
  }

  /// Ticks and their words beside the drawing, where nothing crosses them.
  void axis(std::string_view unit) {
    for (double value = 0; value <= top_ * (1 + 1e-9); value += step_) {
      svg_.empty("path", {{"d", "M" + at(0, value) + "H" + print_fixed(x(days_), 2)},
                          {"stroke", "#999"},
                          {"stroke-width", 0.12}});
      text(kLeft - 1.5, y(value) + 0.8, number(value), "end");
    }
    text(kLeft - 1.5, kTop - 2.2, std::string(unit), "end");
  }

  void dates(const std::vector<ShowDay>& days) {
    // So few that their words keep apart.
    const auto most = static_cast<std::size_t>((width_ - kLeft - kRight) / kDateRoom);
    const std::size_t every = (days_ + most - 1) / most;
    for (std::size_t day = 0; day < days_; day += std::max<std::size_t>(1, every)) {
      const double middle = (x(day) + x(day + 1)) / 2;
      svg_.empty("path", {{"d", "M" + print_fixed(middle, 2) + " " + print_fixed(y(0), 2) + "v1"},
                          {"stroke", "#000"},
                          {"stroke-width", 0.2}});
      text(middle, y(0) + 4, words(days[day], day), "middle");
    }
  }

  /// A triangle above a day: filled for drives, open for tapes.
  void full(std::int64_t day, bool tape) {
    const double middle =
        (x(static_cast<std::size_t>(day - 1)) + x(static_cast<std::size_t>(day))) / 2;
    const double foot = kHeight - (tape ? 1.0 : 3.6);
    svg_.empty("path", {{"d", "M" + print_fixed(middle, 2) + " " + print_fixed(foot - kMark, 2) +
                                  "l" + print_number(kMark / 1.6) + " " + print_number(kMark) +
                                  "h-" + print_number(kMark / 0.8) + "z"},
                        {"fill", tape ? "#fff" : "#000"},
                        {"stroke", "#000"},
                        {"stroke-width", 0.25}});
  }

  [[nodiscard]] std::string finished() {
    svg_.close();
    return svg_.take();
  }

 private:
  [[nodiscard]] std::string at(std::size_t day, double value) const {
    return print_fixed(x(day), 2) + " " + print_fixed(y(value), 2);
  }
  static std::string number(double value) {
    return value == std::round(value) ? print_grouped(std::llround(value)) : print_number(value);
  }
  static std::string words(const ShowDay& day, std::size_t index) {
    const auto date = parse_day(day.date);
    if (!date) return "day " + std::to_string(index + 1);
    // Without weekday and year: "1 Mar".
    const std::string all = day_words(*date);
    return all.substr(4, all.size() - 9);
  }
  void text(double x, double y, const std::string& words, std::string_view anchor) {
    svg_.element("text", words, {{"x", x}, {"y", y}, {"text-anchor", anchor}});
  }

  double width_;
  std::size_t days_;
  double step_ = 1;
  double top_ = 1;
  Markup svg_;
};

void add_full_days(Drawing& drawing, const ShowReport& report) {
  for (const MediaSet& set : report.media) {
    for (const std::int64_t day : set.full_days) drawing.full(day, set.tape);
  }
}

}  // namespace

std::string storage_calendar_svg(const ShowReport& report) {
  const std::size_t days = report.days.size();
  Drawing drawing(kStorageWidth, days, report.totals.total_bytes.most / kTerabyte,
                  "Footage so far, by shooting day");
  drawing.patterns(report.parts.size());
  drawing.axis("TB");
  std::vector<double> lower(days, 0);
  for (std::size_t part = 0; part < report.parts.size(); ++part) {
    std::vector<double> upper = lower;
    double so_far = 0;
    for (std::size_t day = 0; day < days; ++day) {
      so_far += report.days[day].part_bytes[part].most / kTerabyte;
      upper[day] += so_far;
    }
    drawing.area(lower, upper, part);
    lower = std::move(upper);
  }
  drawing.dates(report.days);
  add_full_days(drawing, report);
  return drawing.finished();
}

std::string money_calendar_svg(const ShowReport& report) {
  std::string all;
  for (std::size_t i = 0; i < report.money.sums.size(); ++i) {
    const MoneySum& sum = report.money.sums[i];
    const std::string title = "Money so far, " + sum.currency + (sum.invented ? ", invented" : "");
    Drawing drawing(kMoneyWidth, report.days.size(), sum.cost.most, title);
    drawing.axis(sum.currency);
    std::vector<double> values;
    values.reserve(report.days.size());
    for (const ShowDay& day : report.days) values.push_back(day.money_so_far[i].most);
    drawing.line(values, "none");
    drawing.dates(report.days);
    all += drawing.finished();
  }
  return all;
}

std::string storage_calendar_key(const ShowReport& report) {
  Markup html;
  html.open("p", {{"class", "key"}});
  for (std::size_t part = 0; part < report.parts.size(); ++part) {
    html.open("span");
    html.open("svg", {{"viewBox", "0 0 24 8"}, {"aria-hidden", "true"}});
    html.empty("rect", {{"width", 24},
                        {"height", 8},
                        {"fill", "url(#" + pattern_id(part) + ")"},
                        {"stroke", "#000"}});
    html.close();
    html.text(report.parts[part].name);
    html.close();
  }
  html.element("span", "▲ drives full  △ tapes full");
  html.close();
  return html.take();
}

}  // namespace widegate
