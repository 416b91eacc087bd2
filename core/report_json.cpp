#include "core/report_json.h"

#include <cmath>
#include <nlohmann/json.hpp>
#include <vector>

#include "core/report_fields.h"
#include "core/text.h"

namespace widegate {
namespace {

using Json = nlohmann::ordered_json;

class JsonWriter final : public ReportVisitor {
 public:
  JsonWriter() { open_.push_back(&root_); }

  void begin_object(std::string_view key) override { open_.push_back(&put(key, Json::object())); }
  void end_object() override { open_.pop_back(); }
  void begin_list(std::string_view key) override { open_.push_back(&put(key, Json::array())); }
  void end_list() override { open_.pop_back(); }

  void number(std::string_view key, double value) override { put(key, shown(value)); }
  void whole(std::string_view key, std::int64_t value) override { put(key, value); }
  void span(std::string_view key, Span value) override {
    put(key, range(shown(value.least), shown(value.most)));
  }
  void counts(std::string_view key, ByteRange value) override {
    put(key, range(Json(value.least), Json(value.most)));
  }
  void fraction(std::string_view key, Rational value) override {
    put(key, value.ok() ? Json(print_rational(value)) : Json());
  }
  void flag(std::string_view key, bool value) override { put(key, value); }
  void text(std::string_view key, std::string_view value) override { put(key, std::string(value)); }
  void nothing(std::string_view key) override { put(key, nullptr); }

  [[nodiscard]] std::string dumped() const {
    return root_.dump(2, ' ', false, Json::error_handler_t::replace);
  }

 private:
  static Json shown(double value) { return std::isfinite(value) ? Json(round_12(value)) : Json(); }
  static Json range(const Json& least, const Json& most) {
    if (least == most) return least;
    return Json{{"least", least}, {"most", most}};
  }
  // Only the innermost open container grows, so pointers to the outer ones stay good.
  Json& put(std::string_view key, Json value) {
    Json& parent = *open_.back();
    if (parent.is_array()) {
      parent.push_back(std::move(value));
      return parent.back();
    }
    return parent[std::string(key)] = std::move(value);
  }

  Json root_ = Json::object();
  std::vector<Json*> open_;
};

}  // namespace

std::string report_to_json(const Report& report) {
  JsonWriter writer;
  visit_report(report, writer);
  return writer.dumped();
}

}  // namespace widegate
