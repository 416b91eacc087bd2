#include "core/report/flat_figures.h"

#include <algorithm>

#include "core/base/number_text.h"
#include "core/report/report_fields.h"

namespace widegate {
namespace {

class Flattener final : public ReportVisitor {
 public:
  void begin_object(std::string_view key) override { open(key, false); }
  void end_object() override { open_.pop_back(); }
  void begin_list(std::string_view key) override { open(key, true); }
  void end_list() override { open_.pop_back(); }
  void number(std::string_view key, double value) override { span(key, {value, value}); }
  void whole(std::string_view key, std::int64_t value) override {
    number(key, static_cast<double>(value));
  }
  void span(std::string_view key, Span value) override { add(key, value); }
  void counts(std::string_view key, ByteRange value) override {
    span(key, {static_cast<double>(value.least), static_cast<double>(value.most)});
  }
  void fraction(std::string_view key, Rational value) override { text(key, print_rational(value)); }
  void flag(std::string_view key, bool value) override { text(key, value ? "true" : "false"); }
  void text(std::string_view key, std::string_view value) override { add(key, std::string(value)); }
  void nothing(std::string_view key) override { text(key, "null"); }

  [[nodiscard]] std::vector<Figure> take() { return std::move(figures_); }

 private:
  struct Level {
    std::string prefix;
    bool list;
    std::size_t count;
  };
  std::string key_of(std::string_view key) {
    if (open_.empty()) return std::string(key);
    Level& level = open_.back();
    const std::string last = level.list ? std::to_string(level.count++) : std::string(key);
    return level.prefix + last;
  }
  void open(std::string_view key, bool list) { open_.push_back({key_of(key) + ".", list, 0}); }
  void add(std::string_view key, std::variant<Span, std::string> value) {
    figures_.push_back({key_of(key), std::move(value)});
  }

  std::vector<Level> open_;
  std::vector<Figure> figures_;
};

}  // namespace

std::vector<Figure> figures_of(const Report& report) {
  Flattener flattener;
  visit_report(report, flattener);
  return flattener.take();
}

const Figure* find_figure(const std::vector<Figure>& figures, std::string_view key) {
  const auto at = std::find_if(figures.begin(), figures.end(),
                               [key](const Figure& figure) { return figure.key == key; });
  return at == figures.end() ? nullptr : &*at;
}

}  // namespace widegate
