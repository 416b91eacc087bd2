// form_of_row of form.h: the texts from which a row of the catalogue comes again.
#include <array>

#include "core/base/number_text.h"
#include "core/catalogue/catalogue_object.h"
#include "core/equipment/form_fields.h"
#include "core/field/field_json.h"

namespace widegate {
namespace {

constexpr std::int64_t kUmInMm = 1000;
constexpr int kPlaces = 9;

/// Every digit of a fraction that has at most nine decimals; otherwise "a/b".
std::string exact_decimal(Rational value) {
  std::int64_t scale = 1;
  for (int places = 0; places <= kPlaces; ++places, scale *= 10) {
    const Rational scaled = value * Rational(scale);
    if (!scaled.ok()) break;
    if (!scaled.whole()) continue;
    std::string digits = std::to_string(scaled.num());
    if (places == 0) return digits;
    const auto least = static_cast<std::size_t>(places) + 1;
    if (digits.size() < least) digits.insert(0, least - digits.size(), '0');
    return digits.insert(digits.size() - static_cast<std::size_t>(places), 1, '.');
  }
  return print_rational(value);
}

/// How many of the row's unit one of the shown unit is.
Rational shown_scale(FormReading reading) {
  switch (reading) {
    case FormReading::bytes:
      return 1'000'000'000;
    case FormReading::speed:
    case FormReading::bit_rate:
      return 1'000'000;
    case FormReading::percent:
      return Rational(1, 100);
    case FormReading::plain:
    case FormReading::time:
    case FormReading::factors:
      return 1;
  }
  return 1;
}

/// The shortest decimal that reads back as the same double.
std::string shortest_decimal(const Json& json) {
  std::string text = json.dump();
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text;
}

std::string text_of(const FormRow& row, FormPart part, const Json& json) {
  const auto spec = form_spec(part, row.key);
  Problems problems;
  if (row.reading == FormReading::factors) {
    std::string texts;
    for (const Json& one : json) {
      const auto value = value_from_json(*spec, one, JsonPath(), problems);
      if (value) texts += (texts.empty() ? "" : " ") + exact_decimal(std::get<Rational>(*value));
    }
    return texts;
  }
  const auto value = spec ? value_from_json(*spec, json, JsonPath(), problems) : std::nullopt;
  if (!value) return {};
  std::string text = value_text(*spec, *value);
  if (text == row.blank) return {};
  if (std::holds_alternative<double>(*value)) return shortest_decimal(json);
  if (row.reading == FormReading::plain) return text;
  const auto* whole = std::get_if<std::int64_t>(&*value);
  const auto* share = std::get_if<Rational>(&*value);
  if (whole == nullptr && share == nullptr) return text;
  const Rational number = whole != nullptr ? Rational(*whole) : *share;
  return exact_decimal(number / shown_scale(row.reading));
}

void clear_text(FormNode& node, FormPart part, std::string_view key) {
  node.texts[form_row_index(part, key)].clear();
}

FormNode node_of(const Json& json, FormPart part) {
  FormNode node;
  for (const FormRow& row : form_table(part)) {
    const Json::json_pointer place("/" + std::string(row.key));
    const bool there = json.contains(place);
    node.texts.push_back(there ? text_of(row, part, json.at(place)) : std::string());
  }
  if (const auto id = json.find("id"); id != json.end()) node.id = id->get<std::string>();
  if (const auto ids = form_ids(part)) {
    const auto found = json.find(std::string(ids->key));
    for (const Json& id : found == json.end() ? Json() : *found) {
      node.ids.push_back(id.get<std::string>());
    }
  }
  const auto list = form_list(part);
  if (!list) return node;
  for (const Json& item : json.at(std::string(list->key))) {
    node.parts.push_back(node_of(item, list->part));
  }
  return node;
}

/// The pitch in whole decimals that both sides come from; nothing when there is none such.
std::optional<double> plain_pitch(const Camera& camera) {
  const double pitch =
      round_12(camera.width_mm * kUmInMm / static_cast<double>(camera.width_photosites));
  const bool both = scaled_size(pitch, camera.width_photosites, kUmInMm) == camera.width_mm &&
                    scaled_size(pitch, camera.height_photosites, kUmInMm) == camera.height_mm;
  return both ? std::optional(pitch) : std::nullopt;
}

/// Sizes that follow from others are left empty, as on a sheet.
void leave_out_sizes(FormNode& root, const Camera& camera) {
  if (const auto pitch = plain_pitch(camera)) {
    root.texts[form_row_index(FormPart::camera, "pitch_um")] = shortest_decimal(Json(*pitch));
    clear_text(root, FormPart::camera, "width_mm");
    clear_text(root, FormPart::camera, "height_mm");
  }
  for (std::size_t i = 0; i < camera.modes.size(); ++i) {
    const SensorMode& mode = camera.modes[i];
    const bool width = scaled_size(camera.width_mm, mode.width_photosites,
                                   camera.width_photosites) == mode.width_mm;
    const bool height = scaled_size(camera.height_mm, mode.height_photosites,
                                    camera.height_photosites) == mode.height_mm;
    if (width) clear_text(root.parts[i], FormPart::mode, "width_mm");
    if (height) clear_text(root.parts[i], FormPart::mode, "height_mm");
  }
}

template <class Row>
void keep_one(std::vector<Row>& rows, std::string_view id) {
  std::erase_if(rows, [id](const Row& row) { return row.id != id; });
}

/// The texts of a codec's form stand beside its name in the form.
bool flatten_codec(Json& row) {
  for (const ChoiceName& way : codec_ways()) {
    const auto found = row.find(std::string(way.token));
    if (found == row.end()) continue;
    const Json form = *found;
    for (const auto& member : form.items()) row[member.key()] = member.value();
    return true;
  }
  return false;
}

std::string_view way_of(const Json& row) {
  for (const ChoiceName& way : codec_ways()) {
    if (row.contains(std::string(way.token)) && row.at(std::string(way.token)).is_object()) {
      return way.token;
    }
  }
  return codec_ways().front().token;
}

}  // namespace

std::optional<OwnForm> form_of_row(const Catalogue& rows, OwnKind kind, std::string_view id) {
  Catalogue one;
  for_each_list(one, [&](std::string_view key, auto& list) {
    for_each_list(rows, [&](std::string_view other_key, const auto& others) {
      using Rows = std::remove_cvref_t<decltype(list)>;
      using Others = std::remove_cvref_t<decltype(others)>;
      if constexpr (std::is_same_v<Rows, Others>) {
        if (key == other_key && key == own_list(kind)) list = others;
      }
    });
    keep_one(list, id);
  });
  Json document = Json::object();
  add_catalogue(document, one);
  const auto list = document.find(std::string(own_list(kind)));
  if (list == document.end() || list->empty()) return std::nullopt;
  Json row = list->front();
  const std::string way(way_of(row));
  if (kind == OwnKind::codec && !flatten_codec(row)) return std::nullopt;
  OwnForm form{kind, node_of(row, root_part(kind))};
  if (kind == OwnKind::codec) form.root.texts[form_row_index(FormPart::codec, "way")] = way;
  if (kind == OwnKind::camera) leave_out_sizes(form.root, one.cameras.front());
  return form;
}

}  // namespace widegate
