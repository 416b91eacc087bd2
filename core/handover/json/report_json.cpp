#include "core/handover/json/report_json.h"

#include <nlohmann/json.hpp>
#include <vector>

#include "core/base/number_text.h"
#include "core/report/report_fields.h"
#include "core/show/show_report_fields.h"

namespace widegate {
namespace {

/// Writes the document as it is walked. Numbers are printed here, not by the JSON library, whose
/// shortest form of a double now and then has 17 digits.
class JsonWriter final : public ReportVisitor {
 public:
  JsonWriter() { open('{', '}'); }

  void begin_object(std::string_view key) override {
    put_key(key);
    open('{', '}');
  }
  void end_object() override { close(); }
  void begin_list(std::string_view key) override {
    put_key(key);
    open('[', ']');
  }
  void end_list() override { close(); }

  void number(std::string_view key, double value) override { put(key, print_number(value)); }
  void whole(std::string_view key, std::int64_t value) override { put(key, std::to_string(value)); }
  void span(std::string_view key, Span value) override {
    put_range(key, print_number(value.least), print_number(value.most));
  }
  void counts(std::string_view key, ByteRange value) override {
    put_range(key, std::to_string(value.least), std::to_string(value.most));
  }
  void fraction(std::string_view key, Rational value) override {
    put(key, value.ok() ? quoted(print_rational(value)) : "null");
  }
  void flag(std::string_view key, bool value) override { put(key, value ? "true" : "false"); }
  void text(std::string_view key, std::string_view value) override { put(key, quoted(value)); }
  void nothing(std::string_view key) override { put(key, "null"); }

  [[nodiscard]] std::string finished() {
    close();
    return std::move(text_);
  }

 private:
  struct Level {
    char end;
    bool empty = true;
  };

  static std::string quoted(std::string_view value) {
    const nlohmann::json text = std::string(value);
    return text.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  }
  void new_line() { text_.append(1, '\n').append(2 * open_.size(), ' '); }
  void open(char begin, char end) {
    text_ += begin;
    open_.push_back({.end = end});
  }
  void close() {
    const Level level = open_.back();
    open_.pop_back();
    if (!level.empty) new_line();
    text_ += level.end;
  }
  /// What stands before a value: a comma, a line of its own, and inside an object the key, which
  /// is one of report_fields.cpp and needs no escapes.
  void put_key(std::string_view key) {
    if (!open_.back().empty) text_ += ',';
    open_.back().empty = false;
    new_line();
    if (open_.back().end == '}') text_.append(1, '"').append(key).append("\": ");
  }
  void put(std::string_view key, std::string_view value) {
    put_key(key);
    text_ += value;
  }
  void put_range(std::string_view key, std::string_view least, std::string_view most) {
    if (least == most) return put(key, least);
    begin_object(key);
    put("least", least);
    put("most", most);
    end_object();
  }

  std::string text_;
  std::vector<Level> open_;
};

}  // namespace

std::string report_to_json(const Report& report) {
  JsonWriter writer;
  visit_report(report, writer);
  return writer.finished();
}

std::string show_report_to_json(const ShowReport& report) {
  JsonWriter writer;
  visit_show(report, writer);
  return writer.finished();
}

}  // namespace widegate
