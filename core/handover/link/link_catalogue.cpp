#include "core/handover/link/link_catalogue.h"

#include "core/catalogue/catalogue_fields.h"
#include "core/catalogue/each_list.h"
#include "core/handover/link/link_rows.h"
#include "core/handover/link/link_tags.h"

namespace widegate {
namespace {

constexpr LinkList<Camera> kCameraLists[] = {
    {.pointer = "/media",
     .empty = [](const Camera& camera) { return camera.media.empty(); },
     .write =
         [](LinkWriter& writer, const Camera& camera) {
           writer.count(camera.media.size());
           for (const std::string& kind : camera.media) writer.text(kind);
         },
     .read =
         [](LinkReader& reader, Camera& camera) {
           camera.media.clear();
           for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
             camera.media.push_back(reader.text());
           }
         }}};
constexpr LinkList<LensSet> kLensSetLists[] = {
    {.pointer = "/extenders",
     .empty = [](const LensSet& set) { return set.extenders.empty(); },
     .write =
         [](LinkWriter& writer, const LensSet& set) {
           writer.count(set.extenders.size());
           for (const Rational factor : set.extenders) writer.fraction(factor);
         },
     .read =
         [](LinkReader& reader, LensSet& set) {
           set.extenders.clear();
           for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
             set.extenders.push_back(reader.fraction());
           }
         }}};

/// The lists of a row that are numbered like fields.
template <class Row>
constexpr std::span<const LinkList<Row>> lists_of() {
  if constexpr (std::is_same_v<Row, Camera>) return kCameraLists;
  if constexpr (std::is_same_v<Row, LensSet>) return kLensSetLists;
  return {};
}

template <class Row>
LinkTable<Row> table_of() {
  return {.fields = row_fields<Row>(), .tags = link_tags<Row>(), .lists = lists_of<Row>()};
}

/// The scalar fields of a row.
template <class Row>
void write_fields(LinkWriter& writer, const Row& row) {
  write_row(writer, table_of<Row>(), row, Row{});
}

template <class Row>
void read_fields(LinkReader& reader, Row& row) {
  read_row(reader, table_of<Row>(), row);
}

// What a row holds beside its scalar fields; most rows hold nothing more.
template <class Row>
void write_lists(LinkWriter&, const Row&) {}
template <class Row>
void read_lists(LinkReader&, Row&) {}

template <class Row>
void write_list(LinkWriter& writer, const std::vector<Row>& rows);
template <class Row>
void read_list(LinkReader& reader, std::vector<Row>& rows);

template <>
void write_lists(LinkWriter& writer, const Recording& recording) {
  writer.count(recording.codecs.size());
  for (const std::string& codec : recording.codecs) writer.text(codec);
}
template <>
void read_lists(LinkReader& reader, Recording& recording) {
  for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
    recording.codecs.push_back(reader.text());
  }
}

template <>
void write_lists(LinkWriter& writer, const SensorMode& mode) {
  write_list(writer, mode.recordings);
}
template <>
void read_lists(LinkReader& reader, SensorMode& mode) {
  read_list(reader, mode.recordings);
}

template <>
void write_lists(LinkWriter& writer, const Camera& camera) {
  write_list(writer, camera.modes);
}
template <>
void read_lists(LinkReader& reader, Camera& camera) {
  read_list(reader, camera.modes);
}

template <>
void write_lists(LinkWriter& writer, const LensSet& set) {
  write_list(writer, set.lenses);
}
template <>
void read_lists(LinkReader& reader, LensSet& set) {
  read_list(reader, set.lenses);
}

template <>
void write_lists(LinkWriter& writer, const TableForm::Row& row) {
  writer.count(row.rates.size());
  for (const Rational rate : row.rates) writer.fraction(rate);
}
template <>
void read_lists(LinkReader& reader, TableForm::Row& row) {
  for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
    row.rates.push_back(reader.fraction());
  }
}

template <>
void write_lists(LinkWriter& writer, const TableForm& form) {
  write_list(writer, form.rows);
}
template <>
void read_lists(LinkReader& reader, TableForm& form) {
  read_list(reader, form.rows);
}

template <class Form>
CodecForm read_form(LinkReader& reader) {
  Form form;
  read_fields(reader, form);
  read_lists(reader, form);
  return form;
}

/// Readers in the order of CodecForm's alternatives.
template <class... Forms>
CodecForm read_numbered_form(LinkReader& reader, std::size_t number,
                             const std::variant<Forms...>* /*which forms there are*/) {
  using Read = CodecForm (*)(LinkReader&);
  constexpr Read kReaders[] = {read_form<Forms>...};
  if (number < std::size(kReaders)) return kReaders[number](reader);
  reader.fail();
  return {};
}

template <>
void write_lists(LinkWriter& writer, const Codec& codec) {
  writer.count(codec.form.index());
  std::visit(
      [&writer](const auto& form) {
        write_fields(writer, form);
        write_lists(writer, form);
      },
      codec.form);
}
template <>
void read_lists(LinkReader& reader, Codec& codec) {
  const std::size_t number = reader.count();
  codec.form = read_numbered_form(reader, number, static_cast<CodecForm*>(nullptr));
}

template <class Row>
void write_list(LinkWriter& writer, const std::vector<Row>& rows) {
  writer.count(rows.size());
  for (const Row& row : rows) {
    write_fields(writer, row);
    write_lists(writer, row);
  }
}

template <class Row>
void read_list(LinkReader& reader, std::vector<Row>& rows) {
  for (std::size_t left = reader.count(); left > 0 && reader.ok(); --left) {
    Row& row = rows.emplace_back();
    read_fields(reader, row);
    read_lists(reader, row);
  }
}

}  // namespace

void write_catalogue(LinkWriter& writer, const Catalogue& catalogue) {
  const bool empty = catalogue == Catalogue{};
  writer.count(empty ? 0 : 1);
  if (empty) return;
  for_each_list(catalogue,
                [&writer](std::string_view, const auto& rows) { write_list(writer, rows); });
}

Catalogue read_catalogue(LinkReader& reader) {
  Catalogue catalogue;
  if (reader.count() == 0) return catalogue;
  for_each_list(catalogue, [&reader](std::string_view, auto& rows) { read_list(reader, rows); });
  return catalogue;
}

}  // namespace widegate
