#include "core/encode/markup.h"

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr int kDecimals = 6;

/// At most six decimals, without trailing zeros.
std::string short_number(double value) {
  std::string text = print_fixed(value, kDecimals);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.ends_with('.')) text.pop_back();
  return text == "-0" ? "0" : text;
}

}  // namespace

std::string escape(std::string_view text) {
  std::string escaped;
  escaped.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

Attribute::Attribute(std::string_view attribute_name, double number)
    : name(attribute_name), value(short_number(number)) {}

void Markup::start(std::string_view name, Attributes attributes) {
  out_ += '<';
  out_ += name;
  for (const Attribute& attribute : attributes) {
    out_ += ' ' + attribute.name + "=\"" + escape(attribute.value) + '"';
  }
}

void Markup::open(std::string_view name, Attributes attributes) {
  start(name, attributes);
  out_ += '>';
  names_ += name;
  names_ += ' ';
}

void Markup::close() {
  names_.pop_back();
  const std::size_t from = names_.rfind(' ') + 1;  // npos + 1 is 0: the outermost element
  out_ += "</" + names_.substr(from) + ">";
  names_.erase(from);
}

void Markup::element(std::string_view name, std::string_view text, Attributes attributes) {
  open(name, attributes);
  out_ += escape(text);
  close();
}

void Markup::empty(std::string_view name, Attributes attributes) {
  start(name, attributes);
  out_ += "/>";
}

}  // namespace widegate
