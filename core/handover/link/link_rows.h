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

/// A list of a row that came later than the row's layout: it has a number like a field and is
/// written only when it holds something.
template <class Owner>
struct LinkList {
  std::string_view pointer;
  bool (*empty)(const Owner& owner);
  void (*write)(LinkWriter& writer, const Owner& owner);
  void (*read)(LinkReader& reader, Owner& owner);
};

/// Which rows of a field table take part, and their numbers.
template <class Owner>
struct LinkTable {
  std::span<const Field<Owner>> fields;
  std::span<const std::string_view> tags;
  std::span<const LinkList<Owner>> lists = {};
};

/// The item with this pointer, or nullptr.
template <class Item>
[[nodiscard]] const Item* with_pointer(std::span<const Item> items, std::string_view pointer) {
  const auto at = std::find_if(items.begin(), items.end(),
                               [pointer](const Item& item) { return item.pointer == pointer; });
  return at == items.end() ? nullptr : &*at;
}

template <class Owner>
void write_row(LinkWriter& writer, const LinkTable<Owner>& table, const Owner& owner,
               const Owner& plain, std::size_t line = 0) {
  for (std::size_t tag = 1; tag <= table.tags.size(); ++tag) {
    const LinkList<Owner>* list = with_pointer(table.lists, table.tags[tag - 1]);
    if (list != nullptr && !list->empty(owner)) {
      writer.count(tag);
      list->write(writer, owner);
    }
    const Field<Owner>* field = with_pointer(table.fields, table.tags[tag - 1]);
    if (field == nullptr) continue;
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
    if (tag > table.tags.size()) return reader.fail();
    if (const auto* list = with_pointer(table.lists, table.tags[tag - 1])) {
      list->read(reader, owner);
      if (!reader.ok()) return;
      continue;
    }
    const Field<Owner>* field = with_pointer(table.fields, table.tags[tag - 1]);
    if (field == nullptr) return reader.fail();
    std::string storage;
    const FieldValue value = read_value(reader, *field, storage);
    if (!reader.ok()) return;
    field->write(owner, line, value);
  }
}

}  // namespace widegate
