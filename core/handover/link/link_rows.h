// Rows of a plan or catalogue as bytes of a link, through their field tables: only what differs
// from a new row is written, each value after the number of its field, and a zero ends the row.
#pragma once

#include <algorithm>
#include <span>
#include <string_view>
#include <variant>

#include "core/field/field.h"
#include "core/handover/link/link_bytes.h"

namespace widegate {

/// Writes one value in the form of its field's kind.
void write_value(LinkWriter& writer, const FieldSpec& spec, const FieldValue& value);

/// Reads one; text is kept in `storage`, to which the value refers. A value outside the field's
/// limits fails the reader.
[[nodiscard]] FieldValue read_value(LinkReader& reader, const FieldSpec& spec,
                                    std::string& storage);

/// Number of a pointer in a list of tags, counted from 1; 0 when it is not there.
[[nodiscard]] std::size_t tag_of(std::span<const std::string_view> tags, std::string_view pointer);

/// Which rows of a field table take part, and their numbers.
template <class Owner>
struct LinkTable {
  std::span<const Field<Owner>> fields;
  std::span<const std::string_view> tags;
};

template <class Owner>
void write_row(LinkWriter& writer, const LinkTable<Owner>& table, const Owner& owner,
               const Owner& plain, std::size_t line = 0) {
  for (std::size_t tag = 1; tag <= table.tags.size(); ++tag) {
    const auto field =
        std::find_if(table.fields.begin(), table.fields.end(),
                     [&](const Field<Owner>& f) { return f.pointer == table.tags[tag - 1]; });
    if (field == table.fields.end()) continue;
    const FieldValue value = field->read(owner, line);
    if (value == field->read(plain, 0)) continue;
    writer.count(tag);
    write_value(writer, *field, value);
  }
  writer.count(0);
}

/// Fails the reader on a number that is not in the table: the link is damaged, or newer.
template <class Owner>
void read_row(LinkReader& reader, const LinkTable<Owner>& table, Owner& owner,
              std::size_t line = 0) {
  while (const std::size_t tag = reader.count()) {
    const auto field =
        std::find_if(table.fields.begin(), table.fields.end(), [&](const Field<Owner>& f) {
          return tag <= table.tags.size() && f.pointer == table.tags[tag - 1];
        });
    if (field == table.fields.end()) return reader.fail();
    std::string storage;
    const FieldValue value = read_value(reader, *field, storage);
    if (!reader.ok()) return;
    field->write(owner, line, value);
  }
}

}  // namespace widegate
