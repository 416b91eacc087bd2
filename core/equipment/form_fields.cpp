#include "core/equipment/form_fields.h"

#include <algorithm>
#include <array>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_fields.h"
#include "core/equipment/typed_amount.h"

namespace widegate {
namespace {

constexpr std::string_view kSourceEmpty = "its published sheet, typed in";
constexpr FormRow kName = {"name", "Name", "", ""};
constexpr FormRow kSource = {"source", "Where the figures are from", "", kSourceEmpty};
constexpr FormRow kPrice = {"price", "Price", "", "not counted", FormReading::plain, "0"};

constexpr auto kCamera = std::to_array<FormRow>({
    kName,
    {"width_photosites", "Photosites wide", "", "from mm and pitch"},
    {"height_photosites", "Photosites high", "", "from mm and pitch"},
    {"pitch_um", "Photosite pitch", "µm", "from photosites and mm"},
    {"width_mm", "Sensor width", "mm", "from photosites and pitch"},
    {"height_mm", "Sensor height", "mm", "from photosites and pitch"},
    {"max_rate", "Highest frame rate", "fps", "no limit"},
    {"read_out_ms", "Read-out of the whole sensor", "ms", "not known"},
    {"medium", "Records on", "", "Cards", FormReading::plain, "digital"},
    {"film/gauge_mm", "Film gauge", "mm", "not known", FormReading::plain, "", "film"},
    {"film/perforations_per_frame", "Perforations for a frame", "", "not known", FormReading::plain,
     "", "film"},
    {"film/frames_per_foot", "Frames in a foot", "", "not known", FormReading::plain, "", "film"},
    {"film/source", "Where the film's figures are from", "", "not said", FormReading::plain, "",
     "film"},
    kSource,
});
constexpr auto kMode = std::to_array<FormRow>({
    {"name", "Name", "", "its photosites"},
    {"width_photosites", "Photosites wide", "", "all of the sensor"},
    {"height_photosites", "Photosites high", "", "all of the sensor"},
    {"max_rate", "Highest frame rate", "fps", "as the camera"},
    {"squeeze", "Shaped for a squeeze of", "×", "any"},
    {"binned", "Photosites joined", "", "No", FormReading::plain, "false"},
    {"width_mm", "Width", "mm", "its share of the sensor"},
    {"height_mm", "Height", "mm", "its share of the sensor"},
});
constexpr auto kRecording = std::to_array<FormRow>({
    {"name", "Name", "", "its raster"},
    {"width_pixels", "Raster wide", "px", "as read", FormReading::plain, "0"},
    {"height_pixels", "Raster high", "px", "as read", FormReading::plain, "0"},
    {"max_rate", "Highest frame rate", "fps", "as the mode"},
    {"desqueeze", "De-squeezed in camera", "×", "no", FormReading::plain, "1"},
});
constexpr auto kCodec = std::to_array<FormRow>({
    kName,
    {"way", "Known by", "", "a measured file"},
    {"bytes", "Size of the file", "GB", "", FormReading::bytes, "", "measured"},
    {"seconds", "Running time", "min", "from the frames", FormReading::time, "", "measured"},
    {"rate", "Frames each second", "fps", "from the frames", FormReading::plain, "", "measured"},
    {"frames", "Frames in the file", "", "from time and rate", FormReading::plain, "", "measured"},
    {"width_pixels", "Raster wide", "px", "", FormReading::plain, "", "measured"},
    {"height_pixels", "Raster high", "px", "", FormReading::plain, "", "measured"},
    {"bits_per_s", "Bit rate", "Mb/s", "", FormReading::bit_rate, "", "bit_rate"},
    {"bits_per_pixel", "Bits before compression", "bit", "", FormReading::plain, "", "ratio"},
    {"ratio", "Compression", ": 1", "none", FormReading::plain, "1", "ratio"},
    {"facts/bit_depth", "Bit depth", "bit", "not known"},
    {"facts/chroma", "Chroma", "", "Not known"},
    {"facts/lossless", "Lossless", "", "Not known"},
    {"facts/intra", "Every frame coded by itself", "", "Not known"},
    {"facts/plays_at_once", "Plays at once in an edit suite", "", "Not known"},
    {"facts/source", "Where these facts are from", "", "not said"},
    kSource,
});
constexpr auto kCard = std::to_array<FormRow>({
    kName,
    {"kind", "Kind", "", "Not known"},
    {"capacity_bytes", "Capacity", "GB", "", FormReading::bytes},
    {"write_bytes_per_s", "Sustained write speed", "MB/s", "", FormReading::speed},
    {"guarantee", "Class or camera maker that guarantees it", "", "not guaranteed"},
    {"read_bytes_per_s", "Read speed", "MB/s", "as it writes", FormReading::speed},
    {"usable_share", "Usable share", "%", "all of it", FormReading::percent, "1"},
    kPrice,
    kSource,
});
constexpr auto kLensSet = std::to_array<FormRow>({
    kName,
    {"squeeze", "Squeeze", "×", "spherical", FormReading::plain, "1"},
    {"extenders", "Extenders and reducers", "×", "none", FormReading::factors},
    kSource,
});
constexpr auto kLens = std::to_array<FormRow>({
    {"focal_mm", "Focal length", "mm", ""},
    {"image_circle_mm", "Image circle", "mm", "as the lens before"},
    {"widest_t_stop", "Widest T-stop", "", "as the lens before"},
    {"close_focus_m", "Close focus", "m", "as the lens before"},
});
constexpr auto kDrive = std::to_array<FormRow>({
    kName,
    {"capacity_bytes", "Capacity", "GB", "", FormReading::bytes},
    {"write_bytes_per_s", "Write speed", "MB/s", "", FormReading::speed},
    {"read_bytes_per_s", "Read speed", "MB/s", "as it writes", FormReading::speed},
    kPrice,
    kSource,
});
constexpr auto kTape = std::to_array<FormRow>({
    kName,
    {"capacity_bytes", "Native capacity", "GB", "", FormReading::bytes},
    {"write_bytes_per_s", "Native write speed", "MB/s", "", FormReading::speed},
    kPrice,
    kSource,
});
constexpr auto kLink = std::to_array<FormRow>({
    kName,
    {"payload_bytes_per_s", "Payload", "MB/s", "", FormReading::speed},
    kSource,
});

constexpr std::string_view kNotAsked = "not asked for";
constexpr auto kCommission = std::to_array<FormRow>({
    kName,
    {"follows_deliverable", "Sizes left empty follow the deliverable", "", "No", FormReading::plain,
     "false"},
    {"photosites", "Photosites, at least", "", kNotAsked},
    {"counted_on", "Where they are counted", "", "Not said: on the sensor mode"},
    {"recorded_width_pixels", "Width of the file, at least", "px", kNotAsked},
    {"recorded_height_pixels", "Height of the file, at least", "px", kNotAsked},
    {"largest_upscaling", "Upscaling, at most", "×", kNotAsked},
    {"bit_depth", "Bit depth, at least", "bit", kNotAsked},
    {"chroma", "Chroma, at least", "", "Not asked for"},
    {"sensor_raw", "Raw of the sensor", "", "Not said: either"},
    {"compression", "Compression, at most", ": 1", kNotAsked},
    {"lossless", "Lossless only", "", "Not said: no"},
    {"intra", "Every frame coded by itself", "", "Not said: no"},
    {"plays_at_once", "Plays at once in an edit suite", "", "Not said: no"},
    {"in_camera_desqueeze", "De-squeezed in camera", "", "Not said: either"},
    {"protection", "Protection, at least", "%", kNotAsked, FormReading::percent},
    {"rates", "Project rates that are allowed", "fps", "any", FormReading::factors},
    {"source", "Where it is written", "", "the commissioner's written requirements"},
});

constexpr auto kWays = std::to_array<ChoiceName>({
    {"measured", "A measured file"},
    {"bit_rate", "Its bit rate"},
    {"ratio", "Bits and compression"},
});

/// Kinds of cards, each with a card that is one: those of the library, the cameras' and no others.
std::vector<FieldOption> card_kinds(const Catalogue& library) {
  std::vector<FieldOption> kinds;
  const auto add = [&kinds](const std::string& kind, const std::string& words) {
    const bool there = std::any_of(kinds.begin(), kinds.end(),
                                   [&kind](const FieldOption& each) { return each.value == kind; });
    if (!kind.empty() && !there) kinds.push_back({kind, words});
  };
  for (const Card& card : library.cards) add(card.kind, card.kind + ", as " + card.name);
  for (const Camera& camera : library.cameras) {
    for (const std::string& kind : camera.media) add(kind, kind + ", for " + camera.name);
  }
  return kinds;
}

template <class Row>
std::optional<FieldSpec> spec_in(std::string_view key) {
  for (const Field<Row>& field : row_fields<Row>()) {
    if (field.pointer.substr(1) == key) return field;
  }
  return std::nullopt;
}

std::optional<FieldSpec> codec_spec(std::string_view key) {
  if (key == "rate") return table_rate_spec();
  if (const auto spec = spec_in<Codec>(key)) return spec;
  if (const auto spec = spec_in<MeasuredForm>(key)) return spec;
  if (const auto spec = spec_in<RatioForm>(key)) return spec;
  return spec_in<BitRateForm>(key);
}

std::optional<AmountUnit> amount_unit(FormReading reading) {
  switch (reading) {
    case FormReading::bytes:
      return AmountUnit::gigabytes;
    case FormReading::speed:
      return AmountUnit::megabytes_per_s;
    case FormReading::bit_rate:
      return AmountUnit::megabits_per_s;
    case FormReading::time:
      return AmountUnit::minutes;
    case FormReading::plain:
    case FormReading::percent:
    case FormReading::factors:
      return std::nullopt;
  }
  return std::nullopt;
}

constexpr std::int64_t kBitsInByte = 8;
constexpr std::int64_t kPercent = 100;

/// What one of the shown unit is in the unit of the row.
Rational scale_of(FormReading reading) {
  if (reading == FormReading::percent) return Rational(1, kPercent);
  const auto unit = amount_unit(reading);
  if (!unit) return 1;
  const Rational bits = reading == FormReading::bit_rate ? kBitsInByte : 1;
  return amount_scale(*unit) * bits;
}

std::optional<FieldValue> amount_value(const FormRow& row, AmountUnit unit, std::string_view text) {
  const auto amount = parse_amount(text, unit);
  if (!amount) return std::nullopt;
  if (row.reading == FormReading::time) {
    return *amount > Rational(0) ? std::optional(FieldValue(*amount)) : std::nullopt;
  }
  const bool bits = row.reading == FormReading::bit_rate;
  const Rational stored = bits ? *amount * Rational(kBitsInByte) : *amount;
  // A typed size is a rounding already: "1.1 GiB" is taken to the nearest byte.
  const Rational nearest = stored + Rational(1, 2);
  return nearest.ok() ? std::optional(FieldValue(nearest.floor())) : std::nullopt;
}

std::optional<FieldValue> percent_value(const FieldSpec& spec, std::string_view text) {
  std::string_view number = without_blanks(text);
  if (number.ends_with('%')) number = without_blanks(number.substr(0, number.size() - 1));
  const auto percent = value_from_text(spec, number);
  const auto* value = percent ? std::get_if<Rational>(&*percent) : nullptr;
  if (value == nullptr) return std::nullopt;
  return FieldValue(*value / Rational(kPercent));
}

std::optional<FieldValue> plain_value(const FieldSpec& spec, std::string_view text) {
  if (spec.kind == FieldKind::whole) {
    if (const auto grouped = parse_grouped(text)) return FieldValue(*grouped);
  }
  return value_from_text(spec, text);
}

std::optional<FieldValue> read_value(const FormRow& row, const FieldSpec& spec,
                                     std::string_view text) {
  if (const auto unit = amount_unit(row.reading)) return amount_value(row, *unit, text);
  if (row.reading == FormReading::percent) return percent_value(spec, text);
  return plain_value(spec, text);
}

std::string amount_words(const FormRow& row, const FieldSpec& spec) {
  const double scale = scale_of(row.reading).to_double();
  const std::string example = row.reading == FormReading::bytes      ? "a size such as 512 GB"
                              : row.reading == FormReading::percent  ? "a share"
                              : row.reading == FormReading::bit_rate ? "a rate such as 100 Mb/s"
                                                                     : "a speed such as 1400 MB/s";
  return example + (spec.low_excluded ? ", above " : ", from ") +
         print_number(spec.low.to_double() / scale) + " to " +
         print_number(spec.high.to_double() / scale) + " " + std::string(row.unit);
}

}  // namespace

std::span<const FormRow> form_table(FormPart part) {
  switch (part) {
    case FormPart::camera:
      return kCamera;
    case FormPart::mode:
      return kMode;
    case FormPart::recording:
      return kRecording;
    case FormPart::codec:
      return kCodec;
    case FormPart::card:
      return kCard;
    case FormPart::lens_set:
      return kLensSet;
    case FormPart::lens:
      return kLens;
    case FormPart::drive:
      return kDrive;
    case FormPart::tape:
      return kTape;
    case FormPart::link:
      return kLink;
    case FormPart::commission:
      return kCommission;
  }
  return {};
}

std::size_t form_row_index(FormPart part, std::string_view key) {
  const auto table = form_table(part);
  std::size_t index = 0;
  while (index < table.size() && table[index].key != key) ++index;
  return index;
}

const std::string& form_text(const FormNode& node, FormPart part, std::string_view key) {
  static const std::string kNothing;
  const std::size_t index = form_row_index(part, key);
  return index < node.texts.size() ? node.texts[index] : kNothing;
}

std::optional<FieldSpec> form_spec(FormPart part, std::string_view key) {
  switch (part) {
    case FormPart::camera:
      if (key == "pitch_um") return pitch_spec();
      return spec_in<Camera>(key);
    case FormPart::mode:
      return spec_in<SensorMode>(key);
    case FormPart::recording:
      return spec_in<Recording>(key);
    case FormPart::codec:
      return codec_spec(key);
    case FormPart::card:
      return spec_in<Card>(key);
    case FormPart::lens_set:
      if (key == "extenders") return extender_spec();
      return spec_in<LensSet>(key);
    case FormPart::lens:
      return spec_in<Lens>(key);
    case FormPart::drive:
      return spec_in<Drive>(key);
    case FormPart::tape:
      return spec_in<Tape>(key);
    case FormPart::link:
      return spec_in<Link>(key);
    case FormPart::commission:
      if (key == "rates") return table_rate_spec();
      return spec_in<Commission>(key);
  }
  return std::nullopt;
}

std::vector<FieldOption> form_choices(FormPart part, const FormRow& row, const Catalogue& library) {
  std::vector<FieldOption> choices;
  if (row.key == "way") {
    for (const ChoiceName& way : kWays) {
      choices.push_back({std::string(way.token), std::string(way.label)});
    }
    return choices;
  }
  const auto spec = form_spec(part, row.key);
  if (!spec) return choices;
  const FieldOption empty = {"", std::string(row.empty)};
  if (row.key == "kind") {
    choices = card_kinds(library);
    choices.insert(choices.begin(), empty);
    choices.push_back({std::string(kOwnCardKind), "A kind of its own"});
  } else if (spec->kind == FieldKind::flag) {
    choices = {empty, {"true", "Yes"}};
    if (spec->optional) choices.push_back({"false", "No"});
  } else if (spec->kind == FieldKind::choice) {
    choices.push_back(empty);
    for (const ChoiceName& choice : spec->choices) {
      if (choice.token == row.blank) continue;
      choices.push_back({std::string(choice.token), std::string(choice.label)});
    }
  }
  return choices;
}

std::string form_accepted(FormPart part, const FormRow& row) {
  if (row.reading == FormReading::time) return "a running time such as 1 min, 30 s or 1:30";
  if (row.key == "way") return "one of " + std::string(kWays[0].token) + ", bit_rate, ratio";
  auto spec = form_spec(part, row.key);
  if (!spec) return {};
  if (row.reading == FormReading::factors) {
    const bool rates = row.key == "rates";
    return "numbers such as " + std::string(rates ? "24 25 23.976" : "1.4 2") + ", each from " +
           print_rational(spec->low) + " to " + print_rational(spec->high) +
           (rates ? "" : " and not 1");
  }
  if (row.reading != FormReading::plain) return amount_words(row, *spec);
  if (spec->kind == FieldKind::choice || spec->kind == FieldKind::flag ||
      spec->kind == FieldKind::id) {
    return accepted_values(*spec);
  }
  if (spec->unit == "um") spec->unit = "µm";
  spec->optional = false;
  if (spec->kind == FieldKind::text) {
    return "a text of " + print_rational(spec->low) + " to " + print_rational(spec->high) +
           " letters";
  }
  const std::string unit = spec->unit.empty() ? "" : " " + std::string(spec->unit);
  const std::string what = spec->kind == FieldKind::whole ? "a whole number" : "a number";
  return what + (spec->low_excluded ? " above " : " from ") + print_number(spec->low.to_double()) +
         " to " + print_number(spec->high.to_double()) + unit;
}

std::optional<FieldValue> form_value(FormPart part, const FormRow& row, std::string_view text) {
  if (row.reading == FormReading::time) return amount_value(row, AmountUnit::minutes, text);
  const auto spec = form_spec(part, row.key);
  if (!spec) return std::nullopt;
  auto value = read_value(row, *spec, text);
  if (!value || !value_accepted(*spec, *value)) return std::nullopt;
  return value;
}

std::optional<std::vector<Rational>> form_factors(const FieldSpec& spec, std::string_view text) {
  std::vector<Rational> factors;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" ;"), text.size());
    std::string_view one = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (one.ends_with(',')) one.remove_suffix(1);
    if (one.empty()) continue;
    const auto value = value_from_text(spec, one);
    if (!value || !value_accepted(spec, *value)) return std::nullopt;
    factors.push_back(std::get<Rational>(*value));
  }
  return factors;
}

FormPart root_part(OwnKind kind) {
  switch (kind) {
    case OwnKind::camera:
      return FormPart::camera;
    case OwnKind::codec:
      return FormPart::codec;
    case OwnKind::card:
      return FormPart::card;
    case OwnKind::lens_set:
      return FormPart::lens_set;
    case OwnKind::drive:
      return FormPart::drive;
    case OwnKind::tape:
      return FormPart::tape;
    case OwnKind::link:
      return FormPart::link;
    case OwnKind::commission:
      return FormPart::commission;
  }
  return FormPart::camera;
}

std::optional<FormList> form_list(FormPart part) {
  if (part == FormPart::camera) return FormList{"modes", FormPart::mode, "Sensor mode"};
  if (part == FormPart::mode) {
    return FormList{"recordings", FormPart::recording, "Recording option"};
  }
  if (part == FormPart::lens_set) return FormList{"lenses", FormPart::lens, "Lens"};
  return std::nullopt;
}

std::span<const ChoiceName> codec_ways() { return kWays; }

std::optional<FormIds> form_ids(FormPart part) {
  if (part == FormPart::recording) return FormIds{"codecs", "Codec", "One codec more", ""};
  if (part == FormPart::camera) {
    return FormIds{"media", "Cards it takes", "One kind of cards more", "Not known"};
  }
  return std::nullopt;
}

std::vector<FieldOption> id_choices(FormPart part, const Catalogue& library) {
  if (part == FormPart::camera) return card_kinds(library);
  std::vector<FieldOption> choices;
  for (const Codec& codec : library.codecs) choices.push_back({codec.id, codec.name});
  return choices;
}

std::string_view form_switch(FormPart part, const FormNode& node) {
  const std::string_view key = part == FormPart::codec ? "way" : "medium";
  const std::string& said = form_text(node, part, key);
  return said.empty() && part == FormPart::codec ? kWays.front().token : std::string_view(said);
}

bool form_row_wanted(FormPart part, const FormRow& row, const FormNode& node) {
  return row.only.empty() || row.only == form_switch(part, node);
}

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

}  // namespace widegate
