// row_from_form of form.h: from typed texts to a row of the catalogue. The row goes through its
// JSON form, so that sizes are completed and checked by the very rules that documents have.
#include <algorithm>
#include <cmath>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_check.h"
#include "core/catalogue/catalogue_object.h"
#include "core/catalogue/each_list.h"
#include "core/equipment/form_fields.h"
#include "core/equipment/measured_codec.h"
#include "core/field/field_json.h"

namespace widegate {
namespace {

/// Photosites across and down may differ by this share, which is what rounded millimetres of a
/// small sensor come to.
constexpr double kSquareTolerance = 0.02;
constexpr std::int64_t kUmInMm = 1000;
constexpr std::size_t kMaxSlug = 40;

std::string nothing() { return "nothing"; }

/// Letters and digits of a name, words joined by '-'.
std::string slug(std::string_view name, std::string_view otherwise) {
  std::string id;
  for (const char c : name) {
    const bool capital = c >= 'A' && c <= 'Z';
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (id.size() == kMaxSlug) break;
    if (capital || plain) {
      id += capital ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!id.empty() && id.back() != '-') {
      id += '-';
    }
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return id.empty() ? std::string(otherwise) : id;
}

template <class Taken>
std::string free_id(const std::string& wanted, Taken taken) {
  std::string id = wanted;
  for (int n = 2; taken(id); ++n) id = wanted + "-" + std::to_string(n);
  return id;
}

std::string size_words(std::int64_t width, std::int64_t height) {
  return std::to_string(width) + " × " + std::to_string(height);
}

/// The scalars of one node as an object; what is not understood becomes a problem.
class NodeReader {
 public:
  NodeReader(const FormNode& node, FormPart part, JsonPath path, Problems& problems)
      : node_(node), part_(part), path_(path), problems_(problems) {}

  /// Every field the node asks for that is not empty, under its own key.
  [[nodiscard]] Json scalars() const {
    Json object = Json::object();
    const auto table = form_table(part_);
    for (std::size_t i = 0; i < table.size(); ++i) {
      if (!form_row_wanted(part_, table[i], node_) || table[i].key == "way") continue;
      const std::string_view text = without_blanks(node_.texts[i]);
      if (!text.empty()) {
        put(object, table[i], text);
      } else if (table[i].empty.empty()) {
        missing(table[i].key);
      }
    }
    return object;
  }

  void missing(std::string_view key) const {
    const FormRow& row = form_table(part_)[form_row_index(part_, key)];
    add_problem(problems_, path_.below("/" + std::string(key)), nothing(),
                form_accepted(part_, row));
  }

 private:
  void put(Json& object, const FormRow& row, std::string_view text) const {
    if (row.reading == FormReading::factors) return put_factors(object, row, text);
    if (row.key == "kind" && text == kOwnCardKind) return;
    const auto value = form_value(part_, row, text);
    if (!value) {
      add_problem(problems_, path_.below("/" + std::string(row.key)), in_quotes(text),
                  form_accepted(part_, row));
    } else if (const auto spec = form_spec(part_, row.key)) {
      object[Json::json_pointer("/" + std::string(row.key))] = value_to_json(*spec, *value);
    } else {
      object[std::string(row.key)] = print_rational(std::get<Rational>(*value));
    }
  }

  void put_factors(Json& object, const FormRow& row, std::string_view text) const {
    const FieldSpec spec = form_spec(part_, row.key).value_or(FieldSpec());
    const auto factors = form_factors(spec, text);
    if (!factors) {
      add_problem(problems_, path_.below("/" + std::string(row.key)), in_quotes(text),
                  form_accepted(part_, row));
      return;
    }
    Json& list = object[std::string(row.key)] = Json::array();
    for (const Rational factor : *factors) list.push_back(value_to_json(spec, factor));
  }

  const FormNode& node_;
  FormPart part_;
  JsonPath path_;
  Problems& problems_;
};

std::optional<double> number_in(const Json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end() || !found->is_number()) return std::nullopt;
  return found->get<double>();
}

/// A value moved from one key to nowhere; null when it is not there.
Json taken_out(Json& object, const char* key) {
  const auto found = object.find(key);
  if (found == object.end()) return {};
  Json value = *found;
  object.erase(found);
  return value;
}

/// Photosites of one side of the sensor, typed or from millimetres and pitch.
std::optional<std::int64_t> photosites_of(const Json& camera, const char* photosites,
                                          const char* mm) {
  if (const auto typed = number_in(camera, photosites)) return std::llround(*typed);
  const auto width = number_in(camera, mm);
  const auto pitch = number_in(camera, "pitch_um");
  if (!width || !pitch) return std::nullopt;
  return std::llround(*width * kUmInMm / *pitch);
}

/// Makes one camera; the parts of the form are its modes and their recording options.
class CameraMaker {
 public:
  CameraMaker(const FormNode& root, Problems& problems) : root_(root), problems_(problems) {}

  [[nodiscard]] Json camera() {
    Json camera = NodeReader(root_, FormPart::camera, JsonPath(), problems_).scalars();
    if (!root_.ids.empty()) camera["media"] = root_.ids;
    const bool film = form_switch(FormPart::camera, root_) == "film";
    if (!film) rate_ = taken_out(camera, "max_rate");
    check_sizes(camera);
    width_ = photosites_of(camera, "width_photosites", "width_mm").value_or(0);
    height_ = photosites_of(camera, "height_photosites", "height_mm").value_or(0);
    Json& modes = camera["modes"] = Json::array();
    for (std::size_t i = 0; i < root_.parts.size(); ++i) modes.push_back(mode(i, modes));
    return camera;
  }

 private:
  static bool id_taken(const Json& rows, const std::string& id) {
    return std::any_of(rows.begin(), rows.end(), [&id](const Json& row) {
      return row.at("id").get_ref<const std::string&>() == id;
    });
  }

  /// The node's own id, or one from its name that no node of the list has.
  static std::string part_id(const std::vector<FormNode>& parts, std::size_t index,
                             const std::string& name, const Json& before) {
    if (!parts[index].id.empty()) return parts[index].id;
    return free_id(slug(name, "part"), [&](const std::string& id) {
      return id_taken(before, id) ||
             std::any_of(parts.begin(), parts.end(), [&id](const auto& p) { return p.id == id; });
    });
  }

  void check_sizes(const Json& camera) {
    const bool pitch = camera.contains("pitch_um");
    const auto check_side = [&](const char* photosites, const char* mm) {
      const int known =
          (pitch ? 1 : 0) + (camera.contains(photosites) ? 1 : 0) + (camera.contains(mm) ? 1 : 0);
      if (known >= 2 || !root_typed_well(photosites, mm)) return;
      add_problem(problems_, JsonPath().member(camera.contains(photosites) ? mm : photosites),
                  nothing(), "two of photosites, millimetres and pitch; the third follows");
    };
    check_side("width_photosites", "width_mm");
    check_side("height_photosites", "height_mm");
    if (!pitch) check_square(camera);
  }

  /// False when one of the side's texts, or the pitch, is a problem already.
  [[nodiscard]] bool root_typed_well(const char* photosites, const char* mm) const {
    return std::none_of(problems_.begin(), problems_.end(), [&](const Problem& problem) {
      const std::string_view key = std::string_view(problem.pointer).substr(1);
      return key == photosites || key == mm || key == "pitch_um";
    });
  }

  void check_square(const Json& camera) {
    const auto columns = number_in(camera, "width_photosites");
    const auto rows = number_in(camera, "height_photosites");
    const auto width = number_in(camera, "width_mm");
    const auto height = number_in(camera, "height_mm");
    if (!columns || !rows || !width || !height) return;
    const double across = *width * kUmInMm / *columns;
    const double down = *height * kUmInMm / *rows;
    if (std::abs(across - down) <= kSquareTolerance * across) return;
    add_problem(problems_, JsonPath("/height_mm"), print_number(*height),
                "about " + print_fixed(across * *rows / kUmInMm, 2) + " mm: photosites would be " +
                    print_fixed(across, 2) + " µm apart across and " + print_fixed(down, 2) +
                    " µm down");
  }

  Json mode(std::size_t index, const Json& before) {
    const FormNode& node = root_.parts[index];
    const std::string path = "/modes/" + std::to_string(index);
    Json mode = NodeReader(node, FormPart::mode, JsonPath(path), problems_).scalars();
    if (!mode.contains("width_photosites")) mode["width_photosites"] = width_;
    if (!mode.contains("height_photosites")) mode["height_photosites"] = height_;
    if (!mode.contains("max_rate") && !rate_.is_null()) mode["max_rate"] = rate_;
    const auto width = mode["width_photosites"].get<std::int64_t>();
    const auto height = mode["height_photosites"].get<std::int64_t>();
    const bool whole = width == width_ && height == height_;
    if (!mode.contains("name")) mode["name"] = whole ? "Whole sensor" : size_words(width, height);
    mode["id"] = part_id(root_.parts, index, mode["name"].get<std::string>(), before);
    Json& recordings = mode["recordings"] = Json::array();
    for (std::size_t i = 0; i < node.parts.size(); ++i) {
      recordings.push_back(recording(node, i, path, recordings));
    }
    return mode;
  }

  Json recording(const FormNode& mode, std::size_t index, const std::string& mode_path,
                 const Json& before) {
    const FormNode& node = mode.parts[index];
    const std::string path = mode_path + "/recordings/" + std::to_string(index);
    const JsonPath at(path);
    Json recording = NodeReader(node, FormPart::recording, at, problems_).scalars();
    const auto width = number_in(recording, "width_pixels");
    const auto height = number_in(recording, "height_pixels");
    if (width.has_value() != height.has_value()) {
      add_problem(problems_, at.member(width ? "height_pixels" : "width_pixels"), nothing(),
                  "both sides of the raster, or neither to keep the mode's");
    }
    if (!recording.contains("name")) {
      const bool raster = width && height;
      recording["name"] =
          raster ? size_words(std::llround(*width), std::llround(*height)) : "As read";
    }
    if (node.ids.empty()) add_problem(problems_, at.member("codecs"), nothing(), "a codec");
    recording["id"] = part_id(mode.parts, index, recording["name"].get<std::string>(), before);
    recording["codecs"] = node.ids;
    return recording;
  }

  const FormNode& root_;
  Problems& problems_;
  Json rate_;  ///< Of every mode without one; a film camera's is its own.
  std::int64_t width_ = 0;
  std::int64_t height_ = 0;
};

Json lens_set_object(const FormNode& root, Problems& problems) {
  Json set = NodeReader(root, FormPart::lens_set, JsonPath(), problems).scalars();
  Json& lenses = set["lenses"] = Json::array();
  for (std::size_t i = 0; i < root.parts.size(); ++i) {
    const std::string path = "/lenses/" + std::to_string(i);
    const NodeReader reader(root.parts[i], FormPart::lens, JsonPath(path), problems);
    Json lens = reader.scalars();
    for (const char* key : {"image_circle_mm", "widest_t_stop", "close_focus_m"}) {
      const bool typed = !without_blanks(form_text(root.parts[i], FormPart::lens, key)).empty();
      if (typed) continue;
      if (i == 0) {
        reader.missing(key);
      } else if (lenses.back().contains(key)) {
        lens[key] = lenses.back()[key];
      }
    }
    lenses.push_back(std::move(lens));
  }
  return set;
}

/// Frames of a measured file: as counted, or from running time and rate.
void complete_measured(Json& codec, const FormNode& root, Problems& problems) {
  const Json seconds = taken_out(codec, "seconds");
  const Json rate = taken_out(codec, "rate");
  const NodeReader reader(root, FormPart::codec, JsonPath(), problems);
  const auto typed = [&root](const char* key) {
    return !without_blanks(form_text(root, FormPart::codec, key)).empty();
  };
  if (!typed("frames") && !typed("seconds")) return reader.missing("seconds");
  if (!typed("frames") && !typed("rate")) return reader.missing("rate");
  if (!problems.empty() || seconds.is_null() || rate.is_null()) return;
  MeasuredClip clip;
  clip.bytes = codec["bytes"].get<std::int64_t>();
  clip.seconds = *parse_rational(seconds.get<std::string>());
  clip.rate = rate.is_string() ? *parse_rational(rate.get<std::string>())
                               : Rational(rate.get<std::int64_t>());
  clip.width_pixels = codec["width_pixels"].get<std::int64_t>();
  clip.height_pixels = codec["height_pixels"].get<std::int64_t>();
  const auto form = measured_form(clip);
  if (!form) {
    for (const Problem& problem : form.error()) problems.push_back(problem);
    return;
  }
  if (!codec.contains("frames")) {
    codec["frames"] = form->frames;
  } else if (std::abs(codec["frames"].get<std::int64_t>() - form->frames) > 1) {
    add_problem(problems, JsonPath("/frames"), codec["frames"].dump(),
                "about " + std::to_string(form->frames) + ", running time times rate");
  }
}

Json codec_object(const FormNode& root, Problems& problems) {
  Json codec = NodeReader(root, FormPart::codec, JsonPath(), problems).scalars();
  const std::string& typed = form_text(root, FormPart::codec, "way");
  const std::string way(typed.empty() ? codec_ways().front().token : std::string_view(typed));
  const auto ways = codec_ways();
  const bool known = std::any_of(ways.begin(), ways.end(),
                                 [&way](const ChoiceName& each) { return each.token == way; });
  if (!known) {
    add_problem(problems, JsonPath("/way"), in_quotes(way), "measured, bit_rate or ratio");
    return codec;
  }
  if (way == "measured") complete_measured(codec, root, problems);
  Json form = Json::object();
  for (const FormRow& row : form_table(FormPart::codec)) {
    if (row.only != way) continue;
    if (Json value = taken_out(codec, std::string(row.key).c_str()); !value.is_null()) {
      form[std::string(row.key)] = std::move(value);
    }
  }
  codec[way] = std::move(form);
  return codec;
}

Json plain_object(const OwnForm& form, Problems& problems) {
  Json row = NodeReader(form.root, root_part(form.kind), JsonPath(), problems).scalars();
  const bool reads = form.kind == OwnKind::card || form.kind == OwnKind::drive;
  const bool typed =
      !without_blanks(form_text(form.root, root_part(form.kind), "read_bytes_per_s")).empty();
  if (reads && !typed && row.contains("write_bytes_per_s")) {
    row["read_bytes_per_s"] = row["write_bytes_per_s"];
  }
  return row;
}

Json row_object(const OwnForm& form, Problems& problems) {
  if (form.kind == OwnKind::camera) return CameraMaker(form.root, problems).camera();
  if (form.kind == OwnKind::lens_set) return lens_set_object(form.root, problems);
  if (form.kind == OwnKind::codec) return codec_object(form.root, problems);
  return plain_object(form, problems);
}

/// Id and name of every row of the kind's list.
template <class Visit>
void for_each_namesake(const Catalogue& library, OwnKind kind, Visit visit) {
  for_each_list(library, [&](std::string_view key, const auto& rows) {
    if (key != own_list(kind)) return;
    for (const auto& row : rows) visit(row.id, row.name);
  });
}

void put_identity(Json& row, const OwnForm& form, const Catalogue& library, Problems& problems) {
  const std::string name = row.contains("name") ? row["name"].get<std::string>() : std::string();
  bool repeated = false;
  for_each_namesake(library, form.kind, [&](const std::string& id, const std::string& other) {
    repeated = repeated || (other == name && id != form.root.id);
  });
  if (repeated && !name.empty()) {
    add_problem(problems, JsonPath("/name"), in_quotes(name),
                "a name that no other " + std::string(own_words(form.kind)) + " has");
  }
  const auto taken = [&](const std::string& wanted) {
    bool found = false;
    for_each_namesake(library, form.kind, [&](const std::string& id, const std::string&) {
      found = found || id == wanted;
    });
    return found;
  };
  const bool own_kind =
      form.kind == OwnKind::card && form_text(form.root, FormPart::card, "kind") == kOwnCardKind;
  if (own_kind) row["kind"] = slug(name, "own");
  row["id"] = form.root.id.empty() ? free_id(slug(name, "own"), taken) : form.root.id;
  if (!row.contains("source")) {
    const auto part = root_part(form.kind);
    row["source"] = std::string(form_table(part)[form_row_index(part, "source")].empty);
  }
}

/// "/cameras/0/modes/1/name" as the form has it: "/modes/1/name". A codec's form is flat in it.
void point_into_form(Problems& problems, OwnKind kind) {
  const std::string list = "/" + std::string(own_list(kind)) + "/0";
  for (Problem& problem : problems) {
    if (problem.pointer.starts_with(list)) problem.pointer.erase(0, list.size());
    for (const ChoiceName& way : codec_ways()) {
      const std::string form = "/" + std::string(way.token) + "/";
      if (kind == OwnKind::codec && problem.pointer.starts_with(form)) {
        problem.pointer.erase(0, form.size() - 1);
      }
    }
    for (const std::string_view list_of_ids : {"/codecs", "/media", "/extenders", "/rates"}) {
      const auto at = problem.pointer.find(std::string(list_of_ids) + "/");
      if (at != std::string::npos) problem.pointer.resize(at + list_of_ids.size());
    }
  }
}

/// False for texts that are not as many as the form's table: a form from outside.
bool well_shaped(const FormNode& node, FormPart part) {
  if (node.texts.size() != form_table(part).size()) return false;
  const auto list = form_list(part);
  if (!list) return node.parts.empty();
  return !node.parts.empty() &&
         std::all_of(node.parts.begin(), node.parts.end(),
                     [&list](const FormNode& each) { return well_shaped(each, list->part); });
}

}  // namespace

Checked<Catalogue> row_from_form(const OwnForm& form, const Catalogue& library) {
  Problems problems;
  if (!well_shaped(form.root, root_part(form.kind))) {
    add_problem(problems, JsonPath(), "a form of another shape", "a form made by blank_form()");
    return tl::make_unexpected(std::move(problems));
  }
  Json row = row_object(form, problems);
  put_identity(row, form, library, problems);
  if (!problems.empty()) return tl::make_unexpected(std::move(problems));
  Json document = Json::object();
  document[std::string(own_list(form.kind))] = Json::array({std::move(row)});
  Catalogue made = catalogue_from_object(document, "", JsonPath(), problems);
  if (problems.empty()) problems = check_catalogue(made, library, "");
  if (problems.empty()) return made;
  point_into_form(problems, form.kind);
  return tl::make_unexpected(std::move(problems));
}

}  // namespace widegate
