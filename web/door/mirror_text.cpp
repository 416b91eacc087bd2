#include "web/door/mirror_text.h"

#include <cmath>
#include <cstdio>

namespace widegate {
namespace {

// Builds one JSON object: each member adds its comma when it is not the first.
class ObjectWriter {
 public:
  explicit ObjectWriter(std::string& out) : out_(out) { out_ += '{'; }
  ObjectWriter(const ObjectWriter&) = delete;
  ObjectWriter& operator=(const ObjectWriter&) = delete;
  ~ObjectWriter() { out_ += '}'; }

  // The caller appends the value.
  std::string& key(std::string_view name) {
    if (!first_) out_ += ',';
    first_ = false;
    out_ += json_string(name);
    return out_ += ':';
  }
  void text(std::string_view name, std::string_view value) { key(name) += json_string(value); }
  void flag(std::string_view name, bool value) { key(name) += value ? "true" : "false"; }
  void number(std::string_view name, double value) {
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%.15g", std::isfinite(value) ? value : 0.0);
    key(name) += buffer;
  }

 private:
  std::string& out_;
  bool first_ = true;
};

template <class Item, class Write>
void write_list(std::string& out, const std::vector<Item>& items, Write write) {
  out += '[';
  for (const Item& item : items) {
    if (&item != items.data()) out += ',';
    write(out, item);
  }
  out += ']';
}

const char* kind_word(ControlKind kind) {
  switch (kind) {
    case ControlKind::slider:
      return "slider";
    case ControlKind::choice:
      return "choice";
    case ControlKind::flag:
      return "flag";
    case ControlKind::text:
      return "text";
    case ControlKind::action:
      return "action";
  }
  return "action";
}

const char* severity_word(Severity severity) {
  switch (severity) {
    case Severity::ok:
      return "ok";
    case Severity::caution:
      return "caution";
    case Severity::fail:
      return "fail";
  }
  return "ok";
}

void write_choice(std::string& out, const ChoiceItem& item) {
  ObjectWriter object(out);
  object.text("value", item.value);
  object.text("label", item.label);
  object.text("detail", item.detail);
}

void write_control(std::string& out, const Control& control) {
  ObjectWriter object(out);
  object.text("id", control.id);
  object.text("kind", kind_word(control.kind));
  object.text("section", control.section);
  object.text("label", control.label);
  object.text("help", control.help);
  object.number("min", control.min);
  object.number("max", control.max);
  object.number("step", control.step);
  object.number("value", control.value);
  object.text("value_text", control.value_text);
  object.text("edit_text", control.edit_text);
  object.text("unit", control.unit);
  object.text("problem", control.problem);
  write_list(object.key("choices"), control.choices, write_choice);
  object.flag("numeric", control.numeric);
  object.flag("signs", control.signs);
  object.flag("signs", control.signs);
  object.flag("enabled", control.enabled);
  object.flag("pressed", control.pressed);
}

void write_row(std::string& out, const ResultRow& row) {
  ObjectWriter object(out);
  object.text("section", row.section);
  object.text("key", row.key);
  object.text("label", row.label);
  object.text("value_text", row.value_text);
  object.text("unit", row.unit);
  object.text("working", row.working);
}

void write_place(std::string& out, const Place& place) {
  ObjectWriter object(out);
  object.text("id", place.id);
  object.number("x", place.rect.x);
  object.number("y", place.rect.y);
  object.number("width", place.rect.width);
  object.number("height", place.rect.height);
}

void write_text(std::string& out, const std::string& text) { out += json_string(text); }

void write_section(std::string& out, const Section& section) {
  ObjectWriter object(out);
  object.text("id", section.id);
  object.text("title", section.title);
  object.text("question", section.question);
  object.flag("has_verdict", section.has_verdict);
  object.text("severity", severity_word(section.severity));
  object.text("verdict", section.verdict);
  write_list(object.key("notes"), section.notes, write_text);
}

void write_working(std::string& out, const WorkingText& working) {
  ObjectWriter object(out);
  object.text("key", working.key);
  object.text("title", working.title);
  object.text("formula", working.formula);
  write_list(object.key("numbers"), working.numbers, write_text);
  object.text("result", working.result);
  object.text("source", working.source);
}

void write_lesson(std::string& out, const LessonText& lesson) {
  ObjectWriter object(out);
  object.text("title", lesson.title);
  object.text("step", lesson.step);
  object.text("words", lesson.words);
  write_working(object.key("working"), lesson.working);
  write_list(object.key("figures"), lesson.figures, [](std::string& each, const WatchedText& row) {
    ObjectWriter figure(each);
    figure.text("label", row.label);
    figure.text("before", row.before);
    figure.text("after", row.after);
  });
}

}  // namespace

std::string json_string(std::string_view text) {
  std::string out = "\"";
  for (const char each : text) {
    if (each == '"' || each == '\\') {
      out += '\\';
      out += each;
    } else if (static_cast<unsigned char>(each) < 0x20) {
      char buffer[8];
      std::snprintf(buffer, sizeof buffer, "\\u%04x", static_cast<unsigned>(each));
      out += buffer;
    } else {
      out += each;
    }
  }
  return out += '"';
}

std::string mirror_text(const Mirror& mirror) {
  std::string out;
  {
    ObjectWriter object(out);
    object.text("title", mirror.title);
    object.text("live", mirror.live);
    object.text("message", mirror.message);
    write_working(object.key("working"), mirror.working);
    write_lesson(object.key("lesson"), mirror.lesson);
    write_list(object.key("sections"), mirror.sections, write_section);
    write_list(object.key("controls"), mirror.controls, write_control);
    write_list(object.key("headline"), mirror.headline, write_row);
    write_list(object.key("results"), mirror.results, write_row);
    write_list(object.key("places"), mirror.places, write_place);
  }
  return out;
}

std::vector<float> rects_of(const Mirror& mirror) {
  std::vector<float> out;
  out.reserve(mirror.controls.size() * 4);
  for (const Control& control : mirror.controls) {
    const RectPx rect = control.visible ? control.rect : RectPx{};
    out.insert(out.end(), {rect.x, rect.y, rect.width, rect.height});
  }
  return out;
}

std::string entry_text(const std::optional<TextRequest>& request) {
  if (!request) return "null";
  std::string out;
  {
    ObjectWriter object(out);
    object.text("id", request->id);
    object.text("label", request->label);
    object.text("text", request->text);
    object.flag("numeric", request->numeric);
    object.flag("signs", request->signs);
    object.text("next", request->next);
    object.number("font_px", request->font_px);
    object.number("x", request->rect.x);
    object.number("y", request->rect.y);
    object.number("width", request->rect.width);
    object.number("height", request->rect.height);
  }
  return out;
}

}  // namespace widegate
