#include "core/catalogue/catalogue_object.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_fields.h"
#include "core/catalogue/renamed_ids.h"
#include "core/field/field_json.h"

namespace widegate {
namespace {

/// Published sizes are rounded; photosites times pitch may differ from millimetres by this share.
constexpr double kSizeTolerance = 0.005;

/// Where reading is and where its problems go.
struct At {
  const JsonPath& path;
  Problems& problems;
};

/// True when the pointer leads into a part of its row: "/facts/chroma" into "/facts".
bool leads_into(std::string_view pointer, std::string_view part) {
  return pointer.size() > part.size() && pointer.starts_with(part) && pointer[part.size()] == '/';
}

/// The keys of a row ("" as its part), or of a part of it.
template <class Row>
std::string known_keys(std::string_view part, std::string_view lists) {
  std::string keys;
  std::string_view last;
  for (const Field<Row>& info : row_fields<Row>()) {
    if (!leads_into(info.pointer, part)) continue;
    std::string_view key = info.pointer.substr(part.size() + 1);
    key = key.substr(0, key.find('/'));
    if (key != last) keys += (keys.empty() ? "" : ", ") + std::string(key);
    last = key;
  }
  if (lists.empty()) return keys;
  return keys.empty() ? std::string(lists) : keys + ", " + std::string(lists);
}

/// Which scalars an object held, by their place in the table.
template <class Row>
class Seen {
 public:
  void add(std::size_t index) { bits_ |= std::uint32_t{1} << index; }
  [[nodiscard]] bool has(std::size_t index) const { return (bits_ >> index & 1U) != 0; }
  [[nodiscard]] bool has(std::string_view pointer) const {
    const auto fields = row_fields<Row>();
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (fields[i].pointer == pointer) return has(i);
    }
    return false;
  }

 private:
  std::uint32_t bits_ = 0;
};

/// For what holds scalars only: knows no other key.
struct NothingElse {
  bool operator()(std::string_view, const Json&, const JsonPath&) const { return false; }
};

/// Reads the scalars of a part of a row ("" for the row itself) and of the parts below it.
/// Everything else goes to `other(key, value, path)`, which returns false for a key it does not
/// know.
template <class Row, class Other>
void read_part(Row& row, Seen<Row>& seen, const std::string& part, const Json& json, At at,
               std::string_view lists, Other other) {
  const auto fields = row_fields<Row>();
  for (const auto& member : json.items()) {
    const JsonPath path = at.path.member(member.key());
    const std::string pointer = part + "/" + member.key();
    std::size_t index = 0;
    while (index < fields.size() && fields[index].pointer != pointer) ++index;
    if (index == fields.size()) {
      if (other(std::string_view(member.key()), member.value(), path)) continue;
      if (std::any_of(fields.begin(), fields.end(),
                      [&](const Field<Row>& info) { return leads_into(info.pointer, pointer); })) {
        if (is_object(member.value(), path, at.problems)) {
          read_part(row, seen, pointer, member.value(), At{path, at.problems}, "", NothingElse());
        }
        continue;
      }
      add_unknown_key(at.problems, path, member.value(), known_keys<Row>(part, lists));
      continue;
    }
    seen.add(index);
    const auto value = value_from_json(fields[index], member.value(), path, at.problems);
    if (value) fields[index].write(row, 0, *value);
  }
}

/// Reads the scalars of a row; every other member goes to `other`. `lists` names the keys it knows.
template <class Row, class Other>
Seen<Row> read_members(Row& row, const Json& json, At at, std::string_view lists, Other other) {
  Seen<Row> seen;
  read_part(row, seen, "", json, at, lists, other);
  return seen;
}

/// A scalar that was left out and has no default that would do.
template <class Row>
void check_missing(const Row& row, const Seen<Row>& seen, At at, std::string_view instead = {}) {
  const auto fields = row_fields<Row>();
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (seen.has(i) || value_accepted(fields[i], fields[i].read(row, 0))) continue;
    const bool replaceable = fields[i].unit == "mm" || fields[i].unit == "px";
    add_problem(at.problems, at.path.below(fields[i].pointer), "nothing",
                accepted_values(fields[i]) + std::string(replaceable ? instead : ""));
  }
}

void check_list(bool present, At at, std::string_view key) {
  if (!present) add_problem(at.problems, at.path.member(key), "nothing", "a list");
}

/// Every item of a list through read(row, json, at); an item that is no object is a problem.
template <class Row, class Read>
bool read_list(std::vector<Row>& rows, const Json& json, At at, Read read) {
  if (!is_list(json, at.path, at.problems)) return true;
  rows.reserve(json.size());
  for (std::size_t i = 0; i < json.size(); ++i) {
    const JsonPath path = at.path.item(i);
    if (!is_object(json[i], path, at.problems)) continue;
    read(rows.emplace_back(), json[i], At{path, at.problems});
  }
  return true;
}

/// Rows and forms that hold scalars only.
template <class Row>
void read_row(Row& row, const Json& json, At at) {
  check_missing(row, read_members(row, json, at, "", NothingElse()), at);
}

void read_ids(std::vector<std::string>& ids, const Json& json, At at) {
  if (!is_list(json, at.path, at.problems)) return;
  for (std::size_t i = 0; i < json.size(); ++i) {
    if (json[i].is_string() && is_id(json[i].get_ref<const std::string&>())) {
      ids.push_back(json[i].get<std::string>());
    } else {
      add_problem(at.problems, at.path.item(i), shown_json(json[i]), "an id");
    }
  }
}

void read_row(Recording& recording, const Json& json, At at) {
  bool codecs = false;
  const auto list = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key != "codecs") return false;
    read_ids(recording.codecs, value, {path, at.problems});
    return codecs = true;
  };
  check_missing(recording, read_members(recording, json, at, "codecs", list), at);
  check_list(codecs, at, "codecs");
}

/// One side of a sensor or mode: photosites, millimetres and pitch, of which two give the third.
struct Side {
  std::int64_t& photosites;
  double& mm;
  bool has_photosites;
  bool has_mm;
  std::string_view mm_key;
};

void complete_side(Side side, double pitch_um, At at) {
  constexpr std::int64_t kUmInMm = 1000;
  const double from_pitch = scaled_size(pitch_um, side.photosites, kUmInMm);
  if (side.has_photosites && side.has_mm) {
    if (std::abs(from_pitch - side.mm) <= kSizeTolerance * side.mm) return;
    add_problem(at.problems, at.path.member(side.mm_key), print_number(side.mm),
                "about " + print_number(from_pitch) + " mm, photosites times pitch");
  } else if (side.has_photosites) {
    side.mm = from_pitch;
  } else if (side.has_mm) {
    side.photosites = std::llround(side.mm * kUmInMm / pitch_um);
  }
}

template <class Area>
std::pair<Side, Side> sides(Area& area, const Seen<Area>& seen) {
  return {Side{area.width_photosites, area.width_mm, seen.has("/width_photosites"),
               seen.has("/width_mm"), "width_mm"},
          Side{area.height_photosites, area.height_mm, seen.has("/height_photosites"),
               seen.has("/height_mm"), "height_mm"}};
}

template <class Area>
void complete_size(Area& area, const Seen<Area>& seen, std::optional<double> pitch_um, At at) {
  if (!pitch_um) return;
  const auto [width, height] = sides(area, seen);
  complete_side(width, *pitch_um, at);
  complete_side(height, *pitch_um, at);
}

/// The pitch of a row; nothing when there is none or it is a problem.
std::optional<double> read_pitch(const Json& json, const JsonPath& path, Problems& problems) {
  const auto value = value_from_json(pitch_spec(), json, path, problems);
  return value ? std::optional(std::get<double>(*value)) : std::nullopt;
}

/// A mode without millimetres has its sensor's photosites.
void inherit_size(SensorMode& mode, const Seen<SensorMode>& seen, const Camera& camera) {
  const auto [width, height] = sides(mode, seen);
  if (!width.has_mm && mode.width_mm == 0) {
    mode.width_mm = scaled_size(camera.width_mm, mode.width_photosites, camera.width_photosites);
  }
  if (!height.has_mm && mode.height_mm == 0) {
    mode.height_mm =
        scaled_size(camera.height_mm, mode.height_photosites, camera.height_photosites);
  }
}

void read_row(SensorMode& mode, const Json& json, const Camera& camera, At at) {
  std::optional<double> pitch_um;
  bool recordings = false;
  const auto other = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key == "pitch_um") {
      pitch_um = read_pitch(value, path, at.problems);
      return true;
    }
    if (key != "recordings") return false;
    return recordings = read_list(
               mode.recordings, value, At{path, at.problems},
               [](Recording& row, const Json& item, At below) { read_row(row, item, below); });
  };
  const auto seen = read_members(mode, json, at, "pitch_um, recordings", other);
  complete_size(mode, seen, pitch_um, at);
  inherit_size(mode, seen, camera);
  check_missing(mode, seen, at);
  check_list(recordings, at, "recordings");
}

void read_row(Camera& camera, const Json& json, At at) {
  std::optional<double> pitch_um;
  const Json* modes = nullptr;
  const auto other = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key == "pitch_um") pitch_um = read_pitch(value, path, at.problems);
    if (key == "media") read_ids(camera.media, value, {path, at.problems});
    if (key == "modes") modes = &value;
    return key == "pitch_um" || key == "media" || key == "modes";
  };
  const auto seen = read_members(camera, json, at, "pitch_um, media, modes", other);
  complete_size(camera, seen, pitch_um, at);
  check_missing(camera, seen, at, ", or pitch_um in its place");
  check_list(modes != nullptr, at, "modes");
  if (modes == nullptr) return;
  const JsonPath path = at.path.member("modes");
  read_list(
      camera.modes, *modes, {path, at.problems},
      [&](SensorMode& mode, const Json& item, At below) { read_row(mode, item, camera, below); });
}

/// Numbers of one kind; what is none of them is a problem.
void read_numbers(std::vector<Rational>& numbers, const FieldSpec& spec, const Json& json, At at) {
  if (!is_list(json, at.path, at.problems)) return;
  for (std::size_t i = 0; i < json.size(); ++i) {
    const auto value = value_from_json(spec, json[i], at.path.item(i), at.problems);
    if (value) numbers.push_back(std::get<Rational>(*value));
  }
}

void read_row(LensSet& set, const Json& json, At at) {
  bool lenses = false;
  const auto list = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key == "extenders") {
      read_numbers(set.extenders, extender_spec(), value, {path, at.problems});
      return true;
    }
    if (key != "lenses") return false;
    return lenses = read_list(
               set.lenses, value, At{path, at.problems},
               [](Lens& lens, const Json& item, At below) { read_row(lens, item, below); });
  };
  check_missing(set, read_members(set, json, at, "extenders, lenses", list), at);
  check_list(lenses, at, "lenses");
}

void read_row(TableForm::Row& row, const Json& json, At at) {
  const auto list = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key == "rates") {
      read_numbers(row.rates, table_rate_spec(), value, {path, at.problems});
    }
    return key == "rates";
  };
  check_missing(row, read_members(row, json, at, "rates", list), at);
}

void read_row(TableForm& form, const Json& json, At at) {
  bool rows = false;
  const auto list = [&](std::string_view key, const Json& value, const JsonPath& path) {
    if (key != "rows") return false;
    return rows = read_list(
               form.rows, value, At{path, at.problems},
               [](TableForm::Row& row, const Json& item, At below) { read_row(row, item, below); });
  };
  (void)read_members(form, json, at, "rows", list);
  check_list(rows, at, "rows");
}

/// Reads the form whose key this is; false when the key is of no form.
template <std::size_t... I>
bool read_form(CodecForm& form, std::string_view key, const Json& json, At at,
               std::index_sequence<I...>) {
  const auto read = [&](auto& alternative) {
    if (is_object(json, at.path, at.problems)) read_row(alternative, json, at);
    return true;
  };
  return ((key == kFormKeys[I] && read(form.emplace<I>())) || ...);
}

std::string form_keys() {
  std::string keys;
  for (const std::string_view key : kFormKeys) {
    keys += (keys.empty() ? "" : ", ") + std::string(key);
  }
  return keys;
}

void read_row(Codec& codec, const Json& json, At at) {
  int forms = 0;
  const auto form = [&](std::string_view key, const Json& value, const JsonPath& path) {
    const bool known = read_form(codec.form, key, value, {path, at.problems},
                                 std::make_index_sequence<std::size(kFormKeys)>());
    forms += known ? 1 : 0;
    return known;
  };
  check_missing(codec, read_members(codec, json, at, form_keys(), form), at);
  if (forms == 1) return;
  add_problem(at.problems, at.path, forms == 0 ? "a codec without a form" : "a codec of two forms",
              "exactly one of the keys " + form_keys());
}

constexpr std::string_view kListKeys =
    "cameras, lens_sets, codecs, cards, links, drives, tapes, checksums, containers";

}  // namespace

double scaled_size(double size, std::int64_t count, std::int64_t divisor) {
  if (divisor == 0) return 0;
  if (const auto exact = rational_from_decimal(size)) {
    const Rational result = *exact * Rational(count, divisor);
    if (result.ok()) return result.to_double();
  }
  return size * static_cast<double>(count) / static_cast<double>(divisor);
}

Catalogue catalogue_from_object(const Json& object, std::string_view version_key,
                                const JsonPath& path, Problems& problems) {
  Catalogue catalogue;
  if (!is_object(object, path, problems)) return catalogue;
  for (const auto& member : object.items()) {
    const JsonPath at = path.member(member.key());
    bool known = member.key() == version_key;
    for_each_list(catalogue, [&](std::string_view key, auto& rows) {
      if (member.key() != key) return;
      known = read_list(rows, member.value(), At{at, problems},
                        [](auto& row, const Json& item, At below) { read_row(row, item, below); });
    });
    if (!known) add_unknown_key(problems, at, member.value(), kListKeys);
  }
  use_current_ids(catalogue);
  return catalogue;
}

}  // namespace widegate
