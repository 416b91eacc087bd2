// What form.h asks for, as data: the fields of every part of a form, how each is typed and what
// it means when it is left empty. For the sources of own_form only.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/equipment/form.h"
#include "core/field/field.h"

namespace widegate {

/// A part of a form: the row itself, or what it has several of.
enum class FormPart {
  camera,
  mode,
  recording,
  codec,
  card,
  lens_set,
  lens,
  drive,
  tape,
  link,
  commission
};

/// How a text becomes a value.
enum class FormReading {
  plain,     ///< As the field of the row has it.
  bytes,     ///< "512 GB"
  speed,     ///< "1400 MB/s"
  bit_rate,  ///< "100 Mb/s"
  time,      ///< "1 min"
  percent,   ///< "95"
  factors,   ///< "1.4 2": several numbers, blanks between them.
};

/// One field of a part.
struct FormRow {
  std::string_view key;  ///< As in the row's JSON form, or one of its own that the form resolves.
  std::string_view label;
  std::string_view unit;   ///< As it is shown.
  std::string_view empty;  ///< What an empty text means; empty when the field must be filled in.
  FormReading reading = FormReading::plain;
  std::string_view blank = {};  ///< The value that is shown as an empty text.
  std::string_view only = {};   ///< What form_switch() must say for this field to be asked for.
};

[[nodiscard]] std::span<const FormRow> form_table(FormPart part);

/// Place of a key in a part's table; the table's size when it has none such.
[[nodiscard]] std::size_t form_row_index(FormPart part, std::string_view key);

/// Text of a key in a node.
[[nodiscard]] const std::string& form_text(const FormNode& node, FormPart part,
                                           std::string_view key);

/// Limits of a field; nothing for a running time or a choice, which no row holds.
[[nodiscard]] std::optional<FieldSpec> form_spec(FormPart part, std::string_view key);

/// What can be chosen for a field, by value; nothing for one that is typed. What is left empty
/// comes first.
/// @param library  names the kinds of cards.
[[nodiscard]] std::vector<FieldOption> form_choices(FormPart part, const FormRow& row,
                                                    const Catalogue& library);

/// What a field accepts, in the words and the unit it is typed in.
[[nodiscard]] std::string form_accepted(FormPart part, const FormRow& row);

/// The value of a text that is not empty, within its limits; nothing otherwise. A running time is
/// a fraction in seconds. Text values are views into `text`. Factors are form_factors()'s.
[[nodiscard]] std::optional<FieldValue> form_value(FormPart part, const FormRow& row,
                                                   std::string_view text);

/// The numbers of a text of factors; nothing when one of them is not understood.
[[nodiscard]] std::optional<std::vector<Rational>> form_factors(const FieldSpec& spec,
                                                                std::string_view text);

/// The part of the row itself, and the list that a part has in it (nothing, or its JSON key).
[[nodiscard]] FormPart root_part(OwnKind kind);
struct FormList {
  std::string_view key;    ///< "modes"
  FormPart part;           ///< Of its items.
  std::string_view words;  ///< "Sensor mode"
};
[[nodiscard]] std::optional<FormList> form_list(FormPart part);

/// Ways of stating a codec: token and words; the first is meant when nothing was chosen.
[[nodiscard]] std::span<const ChoiceName> codec_ways();

/// The list of ids that a part has beside its fields (nothing, or its JSON key): what is chosen
/// from, one at a time.
struct FormIds {
  std::string_view key;    ///< "codecs"
  std::string_view first;  ///< Label while there is none, "Codec",
  std::string_view more;   ///< and afterwards: "One codec more".
  std::string_view empty;  ///< What none means; empty when there must be one.
};
[[nodiscard]] std::optional<FormIds> form_ids(FormPart part);

/// What may be in such a list: ids and words.
[[nodiscard]] std::vector<FieldOption> id_choices(FormPart part, const Catalogue& library);

/// What decides which fields of a node are asked for: a codec's way, what a camera records on.
[[nodiscard]] std::string_view form_switch(FormPart part, const FormNode& node);

/// Whether a field is asked for in this node.
[[nodiscard]] bool form_row_wanted(FormPart part, const FormRow& row, const FormNode& node);

/// Stands for a kind of cards that is called after the card itself. No id: those have no '+'.
inline constexpr std::string_view kOwnCardKind = "+";

/// Items that a list of a form may have.
inline constexpr std::size_t kMaxFormParts = 60;

/// Without blanks at its ends.
[[nodiscard]] std::string_view without_blanks(std::string_view text);

}  // namespace widegate
