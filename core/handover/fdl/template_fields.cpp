#include "core/handover/fdl/template_fields.h"

#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/handover/fdl/vocabulary.h"

namespace widegate::fdl {
namespace {

constexpr double kMostPixels = 32768;

constexpr auto kLayers = std::to_array<TemplateOption>({
    {"canvas.dimensions", "Canvas"},
    {"canvas.effective_dimensions", "Effective area"},
    {"framing_decision.protection_dimensions", "Protection"},
    {"framing_decision.dimensions", "Framing"},
});
constexpr auto kPreserved = std::to_array<TemplateOption>({
    {"", "Nothing outside the fit source"},
    {"canvas.dimensions", "Canvas"},
    {"canvas.effective_dimensions", "Effective area"},
    {"framing_decision.protection_dimensions", "Protection"},
    {"framing_decision.dimensions", "Framing"},
});
constexpr auto kMethods = std::to_array<TemplateOption>({
    {"width", "Width"},
    {"height", "Height"},
    {"fit_all", "Fit all"},
    {"fill", "Fill"},
});
constexpr auto kAcross = std::to_array<TemplateOption>({
    {"left", "Left"},
    {"center", "Centre"},
    {"right", "Right"},
});
constexpr auto kDown = std::to_array<TemplateOption>({
    {"top", "Top"},
    {"center", "Centre"},
    {"bottom", "Bottom"},
});
constexpr auto kParities = std::to_array<TemplateOption>({
    {"whole", "Whole pixels"},
    {"even", "Even pixels"},
});
constexpr auto kModes = std::to_array<TemplateOption>({
    {"up", "Up"},
    {"down", "Down"},
    {"round", "Nearest"},
});
constexpr auto kWidths = std::to_array<TemplateOption>({
    {"1920", "1920"},
    {"2048", "2048"},
    {"3840", "3840"},
    {"4096", "4096"},
});
constexpr auto kHeights = std::to_array<TemplateOption>({
    {"1080", "1080"},
    {"1716", "1716"},
    {"2160", "2160"},
});
constexpr auto kSqueezes = std::to_array<TemplateOption>({
    {"1", "1"},
    {"4/3", "1.33"},
    {"1.5", "1.5"},
    {"1.8", "1.8"},
    {"2", "2"},
});

std::string word(std::string_view text) { return std::string(text); }
std::string truth(bool on) { return on ? "true" : "false"; }
std::int64_t pixels(double number) { return static_cast<std::int64_t>(number); }
bool has_maximum(const CanvasTemplate& entry) { return entry.maximum_dimensions.has_value(); }
RoundRule rounding(const CanvasTemplate& entry) {
  return entry.round ? RoundRule(*entry.round) : RoundRule{};
}

void write_target_width(CanvasTemplate& entry, std::string_view, double number) {
  entry.target_dimensions.width = pixels(number);
}
void write_target_height(CanvasTemplate& entry, std::string_view, double number) {
  entry.target_dimensions.height = pixels(number);
}
void write_squeeze(CanvasTemplate& entry, std::string_view, double number) {
  entry.target_anamorphic_squeeze = number;
}
void write_fit_source(CanvasTemplate& entry, std::string_view text, double) {
  static_cast<void>(read_word(kLayerWords, text, entry.fit_source));
}
void write_fit_method(CanvasTemplate& entry, std::string_view text, double) {
  static_cast<void>(read_word(kFitMethodWords, text, entry.fit_method));
}
void write_across(CanvasTemplate& entry, std::string_view text, double) {
  static_cast<void>(read_word(kHorizontalWords, text, entry.alignment_method_horizontal.emplace()));
}
void write_down(CanvasTemplate& entry, std::string_view text, double) {
  static_cast<void>(read_word(kVerticalWords, text, entry.alignment_method_vertical.emplace()));
}
void write_preserve(CanvasTemplate& entry, std::string_view text, double) {
  entry.preserve_from_source_canvas.reset();
  Layer layer = Layer::canvas;
  if (read_word(kLayerWords, text, layer)) entry.preserve_from_source_canvas = layer;
}
void write_maximum(CanvasTemplate& entry, std::string_view, double number) {
  if (number == 0) {
    entry.maximum_dimensions.reset();
    entry.pad_to_maximum.reset();
  } else if (!entry.maximum_dimensions) {
    entry.maximum_dimensions = WholeSizeField{WholeSize(entry.target_dimensions), {}};
  }
}
void write_maximum_width(CanvasTemplate& entry, std::string_view, double number) {
  if (entry.maximum_dimensions) entry.maximum_dimensions->width = pixels(number);
}
void write_maximum_height(CanvasTemplate& entry, std::string_view, double number) {
  if (entry.maximum_dimensions) entry.maximum_dimensions->height = pixels(number);
}
void write_pad(CanvasTemplate& entry, std::string_view, double number) {
  entry.pad_to_maximum = number != 0;
}
void write_parity(CanvasTemplate& entry, std::string_view text, double) {
  RoundRule rule = rounding(entry);
  static_cast<void>(read_word(kParityWords, text, rule.parity));
  entry.round = RoundField{rule, {}};
}
void write_mode(CanvasTemplate& entry, std::string_view text, double) {
  RoundRule rule = rounding(entry);
  static_cast<void>(read_word(kRoundModeWords, text, rule.mode));
  entry.round = RoundField{rule, {}};
}

std::string read_target_width(const CanvasTemplate& entry) {
  return std::to_string(entry.target_dimensions.width);
}
std::string read_target_height(const CanvasTemplate& entry) {
  return std::to_string(entry.target_dimensions.height);
}
std::string read_squeeze(const CanvasTemplate& entry) {
  return print_number(entry.target_anamorphic_squeeze);
}
std::string read_fit_source(const CanvasTemplate& entry) {
  return word(word_of(kLayerWords, entry.fit_source));
}
std::string read_fit_method(const CanvasTemplate& entry) {
  return word(word_of(kFitMethodWords, entry.fit_method));
}
std::string read_across(const CanvasTemplate& entry) {
  const auto chosen = entry.alignment_method_horizontal.value_or(Alignment::center);
  return word(word_of(kHorizontalWords, chosen));
}
std::string read_down(const CanvasTemplate& entry) {
  return word(word_of(kVerticalWords, entry.alignment_method_vertical.value_or(Alignment::center)));
}
std::string read_preserve(const CanvasTemplate& entry) {
  const auto& layer = entry.preserve_from_source_canvas;
  return layer ? word(word_of(kLayerWords, *layer)) : std::string();
}
std::string read_maximum(const CanvasTemplate& entry) { return truth(has_maximum(entry)); }
std::string read_maximum_width(const CanvasTemplate& entry) {
  return has_maximum(entry) ? std::to_string(entry.maximum_dimensions->width) : std::string();
}
std::string read_maximum_height(const CanvasTemplate& entry) {
  return has_maximum(entry) ? std::to_string(entry.maximum_dimensions->height) : std::string();
}
std::string read_pad(const CanvasTemplate& entry) {
  return truth(entry.pad_to_maximum.value_or(false));
}
std::string read_parity(const CanvasTemplate& entry) {
  return word(word_of(kParityWords, rounding(entry).parity));
}
std::string read_mode(const CanvasTemplate& entry) {
  return word(word_of(kRoundModeWords, rounding(entry).mode));
}

using Kind = TemplateFieldKind;

TemplateField pixel_count(std::string_view key, std::string_view label,
                          std::span<const TemplateOption> usual) {
  return {.key = key,
          .label = label,
          .kind = Kind::count,
          .low = 1,
          .high = kMostPixels,
          .usual_low = 480,
          .usual_high = 8192,
          .step = 2,
          .unit = "px",
          .options = usual};
}
TemplateField choice(std::string_view key, std::string_view label,
                     std::span<const TemplateOption> options) {
  return {.key = key, .label = label, .kind = Kind::choice, .options = options};
}
TemplateField flag(std::string_view key, std::string_view label) {
  return {.key = key, .label = label, .kind = Kind::flag};
}
TemplateField ratio(std::string_view key, std::string_view label) {
  return {.key = key,
          .label = label,
          .kind = Kind::ratio,
          .low = 0.25,
          .high = 4,
          .usual_low = 1,
          .usual_high = 2,
          .step = 0.05,
          .unit = "×",
          .options = kSqueezes};
}
TemplateField with(TemplateField field, decltype(TemplateField::read) read,
                   decltype(TemplateField::write) write,
                   decltype(TemplateField::wanted) wanted = nullptr) {
  field.read = read;
  field.write = write;
  field.wanted = wanted;
  return field;
}

/// The number a text stands for in this field, or nothing.
std::optional<double> number_in(const TemplateField& field, std::string_view text) {
  const auto fraction = parse_rational(text);
  if (!fraction) return std::nullopt;
  const double number = fraction->to_double();
  const bool whole = field.kind != Kind::count || number == std::floor(number);
  const bool inside = number >= field.low && number <= field.high;
  return whole && inside ? std::optional(number) : std::nullopt;
}

std::string accepted_by(const TemplateField& field) {
  switch (field.kind) {
    case Kind::count:
      return "whole pixels from 1 to " + print_number(field.high);
    case Kind::ratio:
      return "a number from " + print_number(field.low) + " to " + print_number(field.high);
    case Kind::choice:
      break;
    case Kind::flag:
      return "true or false";
  }
  std::string text;
  for (const TemplateOption& option : field.options) {
    text += (text.empty() ? "one of " : ", ") + std::string(option.label);
  }
  return text;
}

/// The accepted number, 0 for an accepted choice; nothing for any other text.
std::optional<double> taken(const TemplateField& field, std::string_view text) {
  switch (field.kind) {
    case Kind::count:
    case Kind::ratio:
      return number_in(field, text);
    case Kind::choice:
      for (const TemplateOption& option : field.options) {
        if (option.value == text) return 0;
      }
      return std::nullopt;
    case Kind::flag:
      if (text != "true" && text != "false") return std::nullopt;
      return text == "true" ? 1 : 0;
  }
  return std::nullopt;
}

}  // namespace

std::span<const TemplateField> template_fields() {
  static const std::array kFields = {
      with(pixel_count("target_dimensions/width", "Target width", kWidths), read_target_width,
           write_target_width),
      with(pixel_count("target_dimensions/height", "Target height", kHeights), read_target_height,
           write_target_height),
      with(ratio("target_anamorphic_squeeze", "Squeeze of the result"), read_squeeze,
           write_squeeze),
      with(choice("fit_source", "Fit source", kLayers), read_fit_source, write_fit_source),
      with(choice("fit_method", "Fit method", kMethods), read_fit_method, write_fit_method),
      with(choice("preserve_from_source_canvas", "Preserve", kPreserved), read_preserve,
           write_preserve),
      with(choice("alignment_method_horizontal", "Alignment across", kAcross), read_across,
           write_across),
      with(choice("alignment_method_vertical", "Alignment down", kDown), read_down, write_down),
      with(flag("maximum_dimensions", "Maximum size"), read_maximum, write_maximum),
      with(pixel_count("maximum_dimensions/width", "Maximum width", kWidths), read_maximum_width,
           write_maximum_width, has_maximum),
      with(pixel_count("maximum_dimensions/height", "Maximum height", kHeights),
           read_maximum_height, write_maximum_height, has_maximum),
      with(flag("pad_to_maximum", "Pad to the maximum"), read_pad, write_pad, has_maximum),
      with(choice("round/even", "Rounding to", kParities), read_parity, write_parity),
      with(choice("round/mode", "Rounding", kModes), read_mode, write_mode),
  };
  return kFields;
}

const TemplateField* find_template_field(std::string_view key) {
  for (const TemplateField& field : template_fields()) {
    if (field.key == key) return &field;
  }
  return nullptr;
}

Checked<CanvasTemplate> with_template_field(const CanvasTemplate& entry, std::string_view key,
                                            std::string_view text) {
  const TemplateField* field = find_template_field(key);
  if (field == nullptr) {
    return tl::make_unexpected(
        Problems{{std::string(key), std::string(text.substr(0, 80)), "a field of a template"}});
  }
  const auto number = taken(*field, text);
  if (!number) {
    return tl::make_unexpected(
        Problems{{std::string(key), std::string(text.substr(0, 80)), accepted_by(*field)}});
  }
  CanvasTemplate changed = entry;
  field->write(changed, text, *number);
  return changed;
}

}  // namespace widegate::fdl
