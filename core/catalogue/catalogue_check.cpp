// check_catalogue: limits of every row (the tables of catalogue_fields.h), and what rows must be to
// one another: unique ids, modes inside their sensor, codecs that exist.
#include <algorithm>
#include <utility>
#include <vector>

#include "core/base/number_text.h"
#include "core/base/plain_text.h"
#include "core/catalogue/catalogue_check.h"
#include "core/catalogue/catalogue_fields.h"
#include "core/encode/json_path.h"

namespace widegate {
namespace {

/// Published millimetres are rounded: a mode may be this much wider than its sensor.
constexpr double kSizeTolerance = 1.005;

template <class Row>
void check_scalars(const Row& row, const JsonPath& path, Problems& problems) {
  for (const Field<Row>& info : row_fields<Row>()) {
    const FieldValue value = info.read(row, 0);
    if (value_accepted(info, value)) continue;
    add_problem(problems, path.below(info.pointer), shown_value(info, value),
                accepted_values(info));
  }
}

/// Calls complain(index) for every text that an earlier one in the list equals.
template <class Complain>
void for_each_repeated(const std::vector<std::string_view>& names, Complain complain) {
  if (names.size() < 2) return;
  std::vector<std::pair<std::string_view, std::size_t>> sorted;
  sorted.reserve(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) sorted.emplace_back(names[i], i);
  std::sort(sorted.begin(), sorted.end());
  for (std::size_t i = 1; i < sorted.size(); ++i) {
    if (sorted[i].first == sorted[i - 1].first) complain(sorted[i].second);
  }
}

template <class Row>
void check_unique_ids(const std::vector<Row>& rows, const JsonPath& path, Problems& problems) {
  std::vector<std::string_view> ids;
  ids.reserve(rows.size());
  for (const Row& row : rows) ids.push_back(row.id);
  for_each_repeated(ids, [&](std::size_t index) {
    const JsonPath item = path.item(index);
    add_problem(problems, item.member("id"), in_quotes(ids[index]),
                "an id that no earlier row of this list has");
  });
}

/// Ids in the list and scalars of every row, then whatever else `check_row(row, path)` looks at.
template <class Row, class CheckRow>
void check_rows(const std::vector<Row>& rows, const JsonPath& path, Problems& problems,
                CheckRow check_row) {
  check_unique_ids(rows, path, problems);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const JsonPath item = path.item(i);
    check_scalars(rows[i], item, problems);
    check_row(rows[i], item);
  }
}

template <class Row>
void check_rows(const std::vector<Row>& rows, const JsonPath& path, Problems& problems) {
  check_rows(rows, path, problems, [](const Row&, const JsonPath&) {});
}

void check_not_empty(bool empty, const JsonPath& path, const char* accepted, Problems& problems) {
  if (empty) add_problem(problems, path, "an empty list", accepted);
}

/// The codecs that may be named: sorted once, looked up for every recording option.
class CodecIds {
 public:
  CodecIds(const Catalogue& rows, const Catalogue& library) {
    for (const Catalogue* part : {&rows, &library}) {
      for (const Codec& codec : part->codecs) ids_.push_back(codec.id);
    }
    std::sort(ids_.begin(), ids_.end());
  }
  [[nodiscard]] bool has(std::string_view id) const {
    return std::binary_search(ids_.begin(), ids_.end(), id);
  }

 private:
  std::vector<std::string_view> ids_;
};

void check_raster(const Recording& recording, const JsonPath& path, Problems& problems) {
  const bool keeps_mode = recording.width_pixels == 0 && recording.height_pixels == 0;
  const bool raster = recording.width_pixels >= 16 && recording.height_pixels >= 16;
  const std::string shown =
      std::to_string(recording.width_pixels) + " x " + std::to_string(recording.height_pixels);
  if (!keeps_mode && !raster) {
    add_problem(problems, path.member("width_pixels"), shown,
                "a raster of at least 16 x 16, or 0 x 0 to keep the mode's");
  }
  if (keeps_mode && recording.desqueeze != Rational(1)) {
    add_problem(problems, path.member("desqueeze"), print_rational(recording.desqueeze),
                "1, or a raster of its own in width_pixels and height_pixels");
  }
}

void check_recording(const Recording& recording, const CodecIds& codecs, const JsonPath& path,
                     Problems& problems) {
  check_raster(recording, path, problems);
  const JsonPath list = path.member("codecs");
  check_not_empty(recording.codecs.empty(), list, "at least one codec id", problems);
  const std::vector<std::string_view> names(recording.codecs.begin(), recording.codecs.end());
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (codecs.has(names[i])) continue;
    add_problem(problems, list.item(i), in_quotes(names[i]),
                "the id of a codec in this document or in the library");
  }
  for_each_repeated(names, [&](std::size_t index) {
    add_problem(problems, list.item(index), in_quotes(names[index]), "each codec once");
  });
}

void check_mode_fits(const SensorMode& mode, const Camera& camera, const JsonPath& path,
                     Problems& problems) {
  const auto check = [&](const char* key, double size, double sensor, double tolerance) {
    if (!(size > sensor * tolerance)) return;
    add_problem(problems, path.member(key), print_number(size),
                "at most the sensor's " + print_number(sensor));
  };
  check("width_photosites", static_cast<double>(mode.width_photosites),
        static_cast<double>(camera.width_photosites), 1);
  check("height_photosites", static_cast<double>(mode.height_photosites),
        static_cast<double>(camera.height_photosites), 1);
  check("width_mm", mode.width_mm, camera.width_mm, kSizeTolerance);
  check("height_mm", mode.height_mm, camera.height_mm, kSizeTolerance);
}

/// Kinds of cards: ids, each once.
void check_media(const Camera& camera, const JsonPath& path, Problems& problems) {
  const std::vector<std::string_view> kinds(camera.media.begin(), camera.media.end());
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (is_id(kinds[i])) continue;
    add_problem(problems, path.item(i), in_quotes(kinds[i]), "an id");
  }
  for_each_repeated(kinds, [&](std::size_t index) {
    add_problem(problems, path.item(index), in_quotes(kinds[index]), "each kind of card once");
  });
}

void check_camera(const Camera& camera, const CodecIds& codecs, const JsonPath& path,
                  Problems& problems) {
  check_media(camera, path.member("media"), problems);
  const JsonPath modes = path.member("modes");
  check_not_empty(camera.modes.empty(), modes, "at least one sensor mode", problems);
  check_rows(camera.modes, modes, problems, [&](const SensorMode& mode, const JsonPath& at) {
    check_mode_fits(mode, camera, at, problems);
    const JsonPath recordings = at.member("recordings");
    check_not_empty(mode.recordings.empty(), recordings, "at least one recording option", problems);
    check_rows(mode.recordings, recordings, problems,
               [&](const Recording& recording, const JsonPath& below) {
                 check_recording(recording, codecs, below, problems);
               });
  });
}

/// Factors that change something, each once.
void check_extenders(const LensSet& set, const JsonPath& path, Problems& problems) {
  for (std::size_t i = 0; i < set.extenders.size(); ++i) {
    const FieldValue factor = set.extenders[i];
    const auto begin = set.extenders.begin();
    const auto here = begin + static_cast<std::ptrdiff_t>(i);
    const bool repeated = std::find(begin, here, *here) != here;
    if (!value_accepted(extender_spec(), factor)) {
      add_problem(problems, path.item(i), shown_value(extender_spec(), factor),
                  accepted_values(extender_spec()));
    } else if (*here == Rational(1) || repeated) {
      add_problem(problems, path.item(i), shown_value(extender_spec(), factor),
                  "a factor that is not 1, each once");
    }
  }
}

void check_lens_set(const LensSet& set, const JsonPath& path, Problems& problems) {
  check_extenders(set, path.member("extenders"), problems);
  const JsonPath list = path.member("lenses");
  check_not_empty(set.lenses.empty(), list, "at least one lens", problems);
  for (std::size_t i = 0; i < set.lenses.size(); ++i) {
    const JsonPath item = list.item(i);
    check_scalars(set.lenses[i], item, problems);
    if (i == 0 || set.lenses[i].focal_mm > set.lenses[i - 1].focal_mm) continue;
    add_problem(problems, item.member("focal_mm"), print_number(set.lenses[i].focal_mm),
                "more than the " + print_number(set.lenses[i - 1].focal_mm) + " before it");
  }
}

void check_form_further(const LosslessForm& form, const JsonPath& path, Problems& problems) {
  if (form.best_ratio >= form.worst_ratio) return;
  add_problem(problems, path.member("best_ratio"), print_rational(form.best_ratio),
              "at least the worst ratio, " + print_rational(form.worst_ratio));
}

/// One text for each raster and rate of a table, so that equal ones can be found.
std::vector<std::string> table_keys(const TableForm::Row& row) {
  const std::string raster =
      std::to_string(row.width_pixels) + " x " + std::to_string(row.height_pixels);
  if (row.rates.empty()) return {raster};
  std::vector<std::string> keys;
  for (const Rational rate : row.rates) keys.push_back(raster + " at " + print_rational(rate));
  return keys;
}

void check_form_further(const TableForm& form, const JsonPath& path, Problems& problems) {
  const JsonPath list = path.member("rows");
  check_not_empty(form.rows.empty(), list, "at least one row", problems);
  std::vector<std::string> keys;
  std::vector<std::size_t> row_of_key;
  for (std::size_t i = 0; i < form.rows.size(); ++i) {
    const JsonPath item = list.item(i);
    const JsonPath rates = item.member("rates");
    check_scalars(form.rows[i], item, problems);
    for (std::size_t r = 0; r < form.rows[i].rates.size(); ++r) {
      const FieldValue rate = form.rows[i].rates[r];
      if (value_accepted(table_rate_spec(), rate)) continue;
      add_problem(problems, rates.item(r), shown_value(table_rate_spec(), rate),
                  accepted_values(table_rate_spec()));
    }
    for (std::string& key : table_keys(form.rows[i])) {
      keys.push_back(std::move(key));
      row_of_key.push_back(i);
    }
  }
  for_each_repeated({keys.begin(), keys.end()}, [&](std::size_t index) {
    add_problem(problems, list.item(row_of_key[index]), keys[index],
                "each raster and rate in one row only");
  });
}

template <class Form>
void check_form_further(const Form&, const JsonPath&, Problems&) {}

void check_form(const Codec& codec, const JsonPath& path, Problems& problems) {
  const JsonPath at = path.member(kFormKeys[codec.form.index()]);
  std::visit(
      [&](const auto& form) {
        check_scalars(form, at, problems);
        check_form_further(form, at, problems);
      },
      codec.form);
}

}  // namespace

Problems check_catalogue(const Catalogue& rows, const Catalogue& library, const std::string& base) {
  Problems problems;
  if (rows == Catalogue{}) return problems;
  const auto& [cameras, lens_sets, codecs, cards, links, drives, tapes, checksums, containers] =
      rows;
  const JsonPath root(base);
  if (!cameras.empty()) {
    const CodecIds codec_ids(rows, library);
    check_rows(cameras, root.member("cameras"), problems,
               [&](const Camera& camera, const JsonPath& path) {
                 check_camera(camera, codec_ids, path, problems);
               });
  }
  check_rows(
      lens_sets, root.member("lens_sets"), problems,
      [&](const LensSet& set, const JsonPath& path) { check_lens_set(set, path, problems); });
  check_rows(codecs, root.member("codecs"), problems,
             [&](const Codec& codec, const JsonPath& path) { check_form(codec, path, problems); });
  check_rows(cards, root.member("cards"), problems);
  check_rows(links, root.member("links"), problems);
  check_rows(drives, root.member("drives"), problems);
  check_rows(tapes, root.member("tapes"), problems);
  check_rows(checksums, root.member("checksums"), problems);
  check_rows(containers, root.member("containers"), problems);
  return problems;
}

}  // namespace widegate
