// Writing HTML and SVG: elements that close themselves and text that cannot break out. Everything a
// person typed passes through escape().
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace widegate {

/// Text with & < > " ' as character references, fit for content and quoted attributes.
[[nodiscard]] std::string escape(std::string_view text);

/// One attribute. Numbers are printed with at most six decimals.
struct Attribute {
  std::string name;
  std::string value;
  Attribute(std::string_view attribute_name, std::string_view text)
      : name(attribute_name), value(text) {}
  Attribute(std::string_view attribute_name, const char* text)
      : name(attribute_name), value(text) {}
  Attribute(std::string_view attribute_name, double number);
};
using Attributes = std::initializer_list<Attribute>;

/// Builds a document from the outside in.
class Markup {
 public:
  /// <name attributes>; close() ends the innermost open element.
  void open(std::string_view name, Attributes attributes = {});
  void close();
  /// <name attributes></name> with escaped text between.
  void element(std::string_view name, std::string_view text, Attributes attributes = {});
  /// <name attributes/>
  void empty(std::string_view name, Attributes attributes = {});
  void text(std::string_view text) { out_ += escape(text); }
  /// Markup made by another Markup, or constant.
  void raw(std::string_view markup) { out_ += markup; }
  /// The document; every open element must be closed.
  [[nodiscard]] std::string take() { return std::move(out_); }

 private:
  void start(std::string_view name, Attributes attributes);
  std::string out_;
  std::string names_;  ///< Open elements, each followed by a space.
};

}  // namespace widegate
