#include "core/encode/json_text.h"

#include <algorithm>
#include <iterator>
#include <vector>

#include "core/base/plain_text.h"
#include "core/encode/json_path.h"

namespace widegate {
namespace {

/// Builds the value event by event; stops at the first thing it refuses.
class Builder {
 public:
  using number_integer_t = Json::number_integer_t;
  using number_unsigned_t = Json::number_unsigned_t;
  using number_float_t = Json::number_float_t;
  using string_t = Json::string_t;
  using binary_t = Json::binary_t;

  explicit Builder(JsonLimits limits) : limits_(limits) {}

  bool null() { return add(nullptr); }
  bool boolean(bool value) { return add(value); }
  bool number_integer(number_integer_t value) { return add(value); }
  bool number_unsigned(number_unsigned_t value) { return add(value); }
  bool number_float(number_float_t value, const string_t&) { return add(value); }
  bool string(string_t& value) { return add(std::move(value)); }
  bool binary(binary_t&) { return false; }
  bool start_object(std::size_t) { return open(Json::object()); }
  bool start_array(std::size_t) { return open(Json::array()); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(string_t& name) {
    const Json& object = *open_.back();
    if (object.size() >= limits_.members) {
      return refuse({}, "an object with more than " + std::to_string(limits_.members) + " keys",
                    "at most " + std::to_string(limits_.members) + " keys in an object");
    }
    if (object.contains(name)) return refuse(name, in_quotes(name), "each key once in an object");
    key_ = std::move(name);
    return true;
  }

  bool parse_error(std::size_t position, const std::string& token, const Json::exception& error) {
    error_position_ = position;
    if (error.id == kNumberOutOfRange)
      return refuse_next(in_quotes(token), "a number below 1.8e308");
    return false;
  }

  [[nodiscard]] const Problems& problems() const { return problems_; }
  [[nodiscard]] std::size_t error_position() const { return error_position_; }
  [[nodiscard]] Json take() { return std::move(root_); }

 private:
  /// What the JSON library calls a number that no double holds.
  static constexpr int kNumberOutOfRange = 406;

  bool add(Json value) {
    if (!one_more()) return false;
    put(std::move(value));
    return true;
  }

  bool one_more() {
    if (++values_ <= limits_.values) return true;
    return refuse_next("one value more than " + std::to_string(limits_.values),
                       "at most " + std::to_string(limits_.values) + " values in a document");
  }

  Json* put(Json value) {
    if (open_.empty()) {
      root_ = std::move(value);
      return &root_;
    }
    Json& parent = *open_.back();
    if (parent.is_array()) {
      parent.push_back(std::move(value));
      return &parent.back();
    }
    Json& slot = parent[key_];
    slot = std::move(value);
    return &slot;
  }

  bool open(Json container) {
    if (open_.size() >= limits_.depth) {
      return refuse({}, "a value nested deeper than " + std::to_string(limits_.depth) + " levels",
                    "at most " + std::to_string(limits_.depth) + " levels");
    }
    if (!one_more()) return false;
    open_.push_back(put(std::move(container)));
    return true;
  }

  /// refuse() at the value that comes next.
  bool refuse_next(std::string value, std::string accepted) {
    const bool member = !open_.empty() && open_.back()->is_object();
    const std::string item =
        open_.empty() || member ? std::string() : std::to_string(open_.back()->size());
    return refuse(member ? std::string_view(key_) : std::string_view(item), std::move(value),
                  std::move(accepted));
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  /// One problem at the innermost open value (or its member `name`); ends the parsing.
  bool refuse(std::string_view name, std::string value, std::string accepted) {
    std::string pointer;
    for (std::size_t i = 1; i < open_.size(); ++i) {
      const Json& parent = *open_[i - 1];
      const JsonPath step;
      pointer += parent.is_array() ? step.item(parent.size() - 1).text()
                                   : step.member(std::prev(parent.end()).key()).text();
    }
    const JsonPath at(pointer);
    add_problem(problems_, name.empty() ? at : at.member(name), std::move(value),
                std::move(accepted));
    return false;
  }

  JsonLimits limits_;
  Json root_;
  std::vector<Json*> open_;
  std::string key_;
  std::size_t values_ = 0;
  std::size_t error_position_ = 0;
  Problems problems_;
};

Problem not_json(std::string_view text, std::size_t position) {
  const std::size_t offset = std::min(position == 0 ? 0 : position - 1, text.size());
  const std::string_view before = text.substr(0, offset);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::string found =
      offset == text.size() ? "the end of the text" : in_quotes(text.substr(offset, 16));
  return {.pointer = {},
          .value =
              found + " at byte " + std::to_string(offset) + " (line " + std::to_string(line) + ")",
          .accepted = "a JSON document"};
}

}  // namespace

Checked<Json> parse_json(std::string_view text, JsonLimits limits) {
  if (text.size() > limits.bytes) {
    return tl::make_unexpected(
        Problems{{.pointer = {},
                  .value = "a text of " + std::to_string(text.size()) + " bytes",
                  .accepted = "a document of at most " + std::to_string(limits.bytes) + " bytes"}});
  }
  Builder builder(limits);
  if (Json::sax_parse(text.begin(), text.end(), &builder)) return builder.take();
  if (!builder.problems().empty()) return tl::make_unexpected(builder.problems());
  return tl::make_unexpected(Problems{not_json(text, builder.error_position())});
}

std::string print_json(const Json& document) {
  return document.dump(2, ' ', false, Json::error_handler_t::replace);
}

std::string shown_json(const Json& value) {
  if (value.is_string()) return in_quotes(value.get_ref<const std::string&>());
  if (value.is_array()) return "a list";
  if (value.is_object()) return "an object";
  return value.dump();
}

}  // namespace widegate
