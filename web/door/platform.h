// What the front end needs from the page or the machine it runs in. The browser host implements it;
// tests use a fake. Nothing else in web/ outside platform/ may reach for the outside.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace widegate {

/// The part of the program that no first picture needs; it comes after that picture.
enum class RestOfProgram : std::uint8_t {
  coming,   ///< On its way.
  missing,  ///< The line is down, or the server has it no more. It is tried again now and then.
  here,
};

/// Every call returns at once. Answers that come later reach the program through Ui (file_opened,
/// fragment_changed).
class Platform {
 public:
  Platform() = default;
  Platform(const Platform&) = delete;
  Platform& operator=(const Platform&) = delete;
  virtual ~Platform() = default;

  /// Asks for one more frame soon; callable at any time, also from outside a frame.
  virtual void wake() = 0;

  /// Where the rest of the program is; Ui::rest_changed() tells of a change.
  [[nodiscard]] virtual RestOfProgram rest() const = 0;
  /// Asks for it at once instead of when its turn comes: somebody waits for it.
  virtual void want_rest() = 0;

  /// Puts text on the clipboard. False when the platform refuses.
  virtual bool copy_text(std::string_view text) = 0;

  /// The address of the page without its fragment ("https://host/path/"), for making links.
  [[nodiscard]] virtual std::string page_address() const = 0;
  /// The fragment of the address, without '#'; nothing when this tab gave the address itself, and
  /// keeps what it stands for.
  [[nodiscard]] virtual std::string fragment() const = 0;
  /// The fragment also then: for when what is kept cannot be read.
  [[nodiscard]] virtual std::string own_fragment() const = 0;
  /// Replaces the fragment without a history entry; the host may delay it and keep the last.
  virtual void replace_fragment(std::string_view fragment) = 0;

  /// Text kept on this device under a key, or nothing. Keys are short ASCII words.
  [[nodiscard]] virtual std::optional<std::string> stored(std::string_view key) const = 0;
  /// Keeps text; empty text removes it. False when the device refuses (full, private mode).
  virtual bool store(std::string_view key, std::string_view text) = 0;

  /// Whether share() leads to the system's share sheet.
  [[nodiscard]] virtual bool can_share() const = 0;
  virtual void share(std::string_view title, std::string_view address) = 0;

  /// Offers bytes as a file to keep. `mime` such as "application/json".
  virtual void save_file(std::string_view name, std::string_view mime, std::string_view bytes) = 0;
  /// Lets a person choose a file; the text arrives by Ui::file_opened(purpose, name, text).
  /// `accept` is a list such as ".json,application/json".
  virtual void open_file(std::string_view purpose, std::string_view accept) = 0;
  /// Prints a complete HTML document, apart from the app's own page.
  virtual void print_document(std::string_view html) = 0;
  /// Shows an SVG picture over everything, with words below it, until it is closed.
  virtual void show_picture(std::string_view svg, std::string_view words) = 0;
};

}  // namespace widegate
