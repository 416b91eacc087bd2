// The form in which a person describes equipment of their own from its published sheet, or a
// commission from its written requirements: text as it was typed, what is asked for, and the row of
// the catalogue that comes of it, or what is wrong. Texts and rules only; how it is shown is the
// front end's, what a row must be catalogue_check's.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan_fields.h"

namespace widegate {

/// What a form describes: one row of one list of the catalogue.
enum class OwnKind { camera, codec, card, lens_set, drive, tape, link, commission };

/// Key of the list that a kind belongs to ("cameras"), and its words in the middle of a sentence
/// ("lens set").
[[nodiscard]] std::string_view own_list(OwnKind kind);
[[nodiscard]] std::string_view own_words(OwnKind kind);

/// The texts of one row, of one of its modes, recording options or lenses.
struct FormNode {
  std::string id;                  ///< Of the row it was opened from; empty for a new one.
  std::vector<std::string> texts;  ///< One for each field of form_table(), as typed.
  std::vector<std::string> ids;    ///< Codecs of a recording option, kinds of cards of a camera.
  std::vector<FormNode> parts;     ///< Modes, recording options, lenses: at least one.
  friend bool operator==(const FormNode&, const FormNode&) = default;
};

/// A form being filled in.
struct OwnForm {
  OwnKind kind = OwnKind::camera;
  FormNode root;
  friend bool operator==(const OwnForm&, const OwnForm&) = default;
};

enum class FormInput { text, number, choice };

/// One thing of a form on the screen.
struct FormItem {
  enum class Type { heading, input, press };
  Type type = Type::input;
  /// Of an input, as in the row's JSON form: "/modes/0/max_rate"; of a press, with what it does at
  /// its end: "/modes/+" adds, "/modes/1/-" takes away.
  std::string pointer;
  std::string group;  ///< "Sensor mode 2"; empty at the top.
  std::string label;
  std::string unit;
  std::string empty;  ///< What leaving it empty means; empty when it must be filled in.
  std::string text;
  FormInput input = FormInput::text;
  std::vector<FieldOption> choices;
};

/// An empty form: one mode with one recording option, one lens.
[[nodiscard]] OwnForm blank_form(OwnKind kind);

/// A form with the texts of a row, from which the same row comes again. Nothing when there is no
/// such row, or it is a codec of a form that a person cannot type (packed, lossless, macroblock,
/// table).
[[nodiscard]] std::optional<OwnForm> form_of_row(const Catalogue& rows, OwnKind kind,
                                                 std::string_view id);

/// The form as one for a new row: no id, another name.
[[nodiscard]] OwnForm as_new_form(OwnForm form);

/// Everything to show, in order.
/// @param library  resolves and offers codecs.
[[nodiscard]] std::vector<FormItem> form_items(const OwnForm& form, const Catalogue& library);

/// Puts a text into the form. A recording option's "codecs" takes the id of one codec more, a
/// camera's "media" one kind of cards more.
/// False when the pointer names no input.
bool set_form_text(OwnForm& form, std::string_view pointer, std::string_view text);

/// Does what a press says. False when the pointer names none.
bool press_form(OwnForm& form, std::string_view pointer);

/// A catalogue of the one row that the form describes, checked.
/// @param library  everything there is already: codecs are looked up in it; a new row's id and
/// every
///                 row's name are none of its kind's. The row being edited may be in it.
/// @return the row, or problems with pointers of form_items(), "" for the form as a whole.
///         Photosites, millimetres and pitch that disagree by more than half a percent, and
///         photosites that would be more than two percent out of square, are problems that name
///         both numbers.
[[nodiscard]] Checked<Catalogue> row_from_form(const OwnForm& form, const Catalogue& library);

/// What follows from a row without being typed, for people, a line each: the third of photosites,
/// millimetres and pitch; the size of every mode; what a frame and a minute of a codec take.
[[nodiscard]] std::vector<std::string> row_findings(const Catalogue& row);

}  // namespace widegate
