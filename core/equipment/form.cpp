#include "core/equipment/form.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "core/base/plain_text.h"
#include "core/equipment/form_fields.h"

namespace widegate {
namespace {

struct KindWords {
  std::string_view list;
  std::string_view words;
};
constexpr auto kKinds = std::to_array<KindWords>({
    {"cameras", "camera"},
    {"codecs", "codec"},
    {"cards", "card"},
    {"lens_sets", "lens set"},
    {"drives", "drive"},
    {"tapes", "tape"},
    {"links", "cable or network"},
    {"commissions", "commission"},
});

FormNode blank_node(FormPart part) {
  FormNode node;
  node.texts.resize(form_table(part).size());
  if (part == FormPart::codec) {
    node.texts[form_row_index(part, "way")] = codec_ways().front().token;
  }
  if (const auto list = form_list(part)) node.parts.push_back(blank_node(list->part));
  return node;
}

/// A node and what it is.
struct Place {
  FormNode* node = nullptr;
  FormPart part = FormPart::camera;
};

std::optional<std::size_t> index_of(std::string_view text, std::size_t size) {
  std::size_t index = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), index);
  const bool whole = error == std::errc() && end == text.data() + text.size();
  return whole && index < size ? std::optional(index) : std::nullopt;
}

/// The next step of a pointer, without its slash.
std::string_view take_step(std::string_view& pointer) {
  if (!pointer.starts_with('/')) return {};
  pointer.remove_prefix(1);
  const auto end = std::min(pointer.find('/'), pointer.size());
  const std::string_view step = pointer.substr(0, end);
  pointer.remove_prefix(end);
  return step;
}

/// Follows "/modes/0/recordings/1" as far as there are such items; what is left stays in `pointer`.
Place follow(OwnForm& form, std::string_view& pointer) {
  Place place{&form.root, root_part(form.kind)};
  while (true) {
    const auto list = form_list(place.part);
    std::string_view rest = pointer;
    if (!list || take_step(rest) != list->key) return place;
    const auto index = index_of(take_step(rest), place.node->parts.size());
    if (!index || rest.empty()) return place;
    if (rest == "/-") return place;
    place = {&place.node->parts[*index], list->part};
    pointer = rest;
  }
}

FormItem heading(std::string group) {
  FormItem item;
  item.type = FormItem::Type::heading;
  item.label = item.group = std::move(group);
  return item;
}

FormItem press(std::string pointer, std::string group, std::string label) {
  FormItem item;
  item.type = FormItem::Type::press;
  item.pointer = std::move(pointer);
  item.group = std::move(group);
  item.label = std::move(label);
  return item;
}

/// The words of an id among the choices, or the id itself.
std::string words_of(const std::vector<FieldOption>& choices, const std::string& id) {
  for (const FieldOption& choice : choices) {
    if (choice.value == id) return choice.label;
  }
  return id;
}

/// Makes the list of what is shown.
class ItemWriter {
 public:
  explicit ItemWriter(const Catalogue& library) : library_(library) {}

  void node(const FormNode& node, FormPart part, const std::string& path,
            const std::string& group) {
    const auto table = form_table(part);
    for (std::size_t i = 0; i < table.size() && i < node.texts.size(); ++i) {
      if (form_row_wanted(part, table[i], node)) input(table[i], part, node.texts[i], path, group);
    }
    if (const auto list = form_ids(part)) ids(node, part, *list, path, group);
    if (const auto list = form_list(part)) parts(node, *list, path, group);
  }

  [[nodiscard]] std::vector<FormItem> take() { return std::move(items_); }

 private:
  void input(const FormRow& row, FormPart part, const std::string& text, const std::string& path,
             const std::string& group) {
    FormItem item;
    item.pointer = path + "/" + std::string(row.key);
    item.group = group;
    item.label = row.label;
    item.unit = row.unit;
    item.empty = row.empty;
    item.text = text;
    const auto spec = form_spec(part, row.key);
    // Several numbers need blanks between them, which a number pad has not.
    const bool words =
        (spec && spec->kind == FieldKind::text) || row.reading == FormReading::factors;
    item.input = words ? FormInput::text : FormInput::number;
    item.choices = form_choices(part, row, library_);
    if (!item.choices.empty()) item.input = FormInput::choice;
    items_.push_back(std::move(item));
  }

  /// What is chosen can be taken away; everything else can be chosen.
  void ids(const FormNode& node, FormPart part, const FormIds& list, const std::string& path,
           const std::string& group) {
    const std::string base = path + "/" + std::string(list.key);
    const std::vector<FieldOption> choices = id_choices(part, library_);
    for (std::size_t i = 0; i < node.ids.size(); ++i) {
      items_.push_back(press(base + "/" + std::to_string(i) + "/-", group,
                             "Remove " + words_of(choices, node.ids[i])));
    }
    FormItem item;
    item.pointer = base;
    item.group = group;
    item.label = node.ids.empty() ? list.first : list.more;
    item.input = FormInput::choice;
    item.empty = list.empty;
    const std::string_view none = list.empty.empty() ? "Choose a codec" : list.empty;
    item.choices.push_back({"", node.ids.empty() ? std::string(none) : "None"});
    for (const FieldOption& choice : choices) {
      const bool chosen =
          std::find(node.ids.begin(), node.ids.end(), choice.value) != node.ids.end();
      if (!chosen) item.choices.push_back(choice);
    }
    items_.push_back(std::move(item));
  }

  void parts(const FormNode& parent, const FormList& list, const std::string& path,
             const std::string& group) {
    const std::string base = path + "/" + std::string(list.key);
    const std::string before = group.empty() ? std::string() : group + ", ";
    for (std::size_t i = 0; i < parent.parts.size(); ++i) {
      std::string words(list.words);
      if (!before.empty()) words.front() = static_cast<char>(words.front() - 'A' + 'a');
      const std::string name = before + words + " " + std::to_string(i + 1);
      items_.push_back(heading(name));
      node(parent.parts[i], list.part, base + "/" + std::to_string(i), name);
      if (parent.parts.size() == 1) continue;
      items_.push_back(press(base + "/" + std::to_string(i) + "/-", name, "Take " + name + " out"));
    }
    std::string more(list.words);
    more.front() = static_cast<char>(more.front() - 'A' + 'a');
    items_.push_back(press(base + "/+", group, "Add a " + more));
  }

  const Catalogue& library_;
  std::vector<FormItem> items_;
};

bool add_id(FormNode& node, std::string_view id) {
  if (id.empty()) return true;
  const bool there = std::find(node.ids.begin(), node.ids.end(), id) != node.ids.end();
  if (!is_id(id) || there) return false;
  node.ids.emplace_back(id);
  return true;
}

/// A new item of a list: most things of a sheet repeat, so it begins with the codecs of the last.
bool add_part(FormNode& node, const FormList& list) {
  if (node.parts.size() >= kMaxFormParts) return false;
  FormNode part = blank_node(list.part);
  if (list.part == FormPart::recording) part.ids = node.parts.back().ids;
  if (list.part == FormPart::mode) {
    part.parts.front().ids = node.parts.back().parts.front().ids;
  }
  node.parts.push_back(std::move(part));
  return true;
}

}  // namespace

std::string_view own_list(OwnKind kind) { return kKinds[static_cast<std::size_t>(kind)].list; }
std::string_view own_words(OwnKind kind) { return kKinds[static_cast<std::size_t>(kind)].words; }

OwnForm blank_form(OwnKind kind) { return {kind, blank_node(root_part(kind))}; }

OwnForm as_new_form(OwnForm form) {
  form.root.id.clear();
  const std::size_t name = form_row_index(root_part(form.kind), "name");
  if (name < form.root.texts.size()) form.root.texts[name] += ", own";
  return form;
}

std::vector<FormItem> form_items(const OwnForm& form, const Catalogue& library) {
  ItemWriter writer(library);
  writer.node(form.root, root_part(form.kind), "", "");
  return writer.take();
}

bool set_form_text(OwnForm& form, std::string_view pointer, std::string_view text) {
  std::string_view rest = pointer;
  const Place place = follow(form, rest);
  if (!rest.starts_with('/')) return false;
  const std::string_view key = rest.substr(1);
  const auto ids = form_ids(place.part);
  if (ids && key == ids->key) return add_id(*place.node, text);
  const std::size_t index = form_row_index(place.part, key);
  if (index >= place.node->texts.size()) return false;
  place.node->texts[index] = text;
  return true;
}

bool press_form(OwnForm& form, std::string_view pointer) {
  std::string_view rest = pointer;
  const Place place = follow(form, rest);
  const std::string_view key = take_step(rest);
  const std::string_view step = take_step(rest);
  const bool away = rest == "/-";
  FormNode& node = *place.node;
  const auto ids = form_ids(place.part);
  if (ids && key == ids->key && away) {
    const auto index = index_of(step, node.ids.size());
    if (index) node.ids.erase(node.ids.begin() + static_cast<std::ptrdiff_t>(*index));
    return index.has_value();
  }
  const auto list = form_list(place.part);
  if (!list || key != list->key) return false;
  if (step == "+" && rest.empty()) return add_part(node, *list);
  const auto index = index_of(step, node.parts.size());
  if (!index || !away || node.parts.size() == 1) return false;
  node.parts.erase(node.parts.begin() + static_cast<std::ptrdiff_t>(*index));
  return true;
}

}  // namespace widegate
