// A front end without a screen: a platform that only remembers, a null renderer, scripted pointers.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "web/ui/ui.h"

namespace widegate::test {

/// Keeps everything in memory and notes what was asked of it.
class FakePlatform : public Platform {
 public:
  void wake() override { ++wakes; }
  RestOfProgram rest() const override { return rest_of_program; }
  void want_rest() override { ++wanted_rest; }
  bool copy_text(std::string_view text) override {
    copied = text;
    return true;
  }
  std::string page_address() const override { return "https://example.org/widegate/"; }
  std::string fragment() const override { return own_address ? std::string() : fragment_text; }
  std::string own_fragment() const override { return fragment_text; }
  void replace_fragment(std::string_view fragment) override { fragment_text = fragment; }
  std::optional<std::string> stored(std::string_view key) const override {
    const auto found = kept.find(std::string(key));
    return found == kept.end() ? std::nullopt : std::optional(found->second);
  }
  bool store(std::string_view key, std::string_view text) override {
    if (refuses) return false;
    if (text.empty()) {
      kept.erase(std::string(key));
    } else {
      kept[std::string(key)] = text;
    }
    return true;
  }
  bool can_share() const override { return false; }
  void share(std::string_view, std::string_view) override {}
  void save_file(std::string_view name, std::string_view, std::string_view bytes) override {
    saved[std::string(name)] = bytes;
  }
  void open_file(std::string_view purpose, std::string_view) override { asked_for = purpose; }
  void print_document(std::string_view html) override { printed = html; }
  void show_picture(std::string_view svg, std::string_view words) override {
    shown = svg;
    shown_words = words;
  }

  RestOfProgram rest_of_program = RestOfProgram::here;
  bool refuses = false;      ///< The device keeps nothing.
  bool own_address = false;  ///< The address is one that the tab gave itself.
  int wakes = 0, wanted_rest = 0;
  std::string copied, fragment_text, asked_for, printed, shown, shown_words;
  std::map<std::string, std::string> kept, saved;
};

/// One screen of a device.
struct Device {
  const char* name = "";
  float width = 390;
  float height = 844;
  float pixel_ratio = 3;
  bool touch = true;
  Insets safe_area = {};
};

/// Sizes that every check walks through, from nothing to 4K.
[[nodiscard]] const std::vector<Device>& devices();

/// An RGB picture, 3 bytes a pixel.
struct Image {
  int width = 0;
  int height = 0;
  std::vector<std::uint8_t> pixels;
};

/// A Ui with a null renderer.
class Screen {
 public:
  explicit Screen(const Device& device, std::map<std::string, std::string> kept = {},
                  std::string_view fragment = {}, RestOfProgram rest = RestOfProgram::here,
                  bool own_address = false);

  /// Draws frames until nothing asks for another; at most `most`. Returns how many were drawn.
  int settle(int most = 40);
  /// Draws one frame.
  void frame();
  /// A tap or click.
  void tap(float x, float y);
  /// Presses, moves in steps, lifts. With `look`, called after each step.
  void drag(float x, float y, float to_x, float to_y, int steps = 8);
  void move_to(float x, float y);
  void press();
  void lift();
  /// Turns the wheel over the questions.
  void wheel(float notches);

  /// The control with this id; fails the test when there is none.
  [[nodiscard]] const Control& control(std::string_view id) const;
  [[nodiscard]] std::string value(std::string_view id) const { return control(id).value_text; }
  /// Text of a headline number by its place, 0 to 2.
  [[nodiscard]] std::string headline(std::size_t place) const;
  /// Scrolls the control into sight.
  void reveal(std::string_view id);
  /// What the last frame looks like, drawn in software at a pixel ratio.
  [[nodiscard]] Image picture() const;

  FakePlatform platform;
  FrameInput input;
  Ui ui;

 private:
  void answer_textures();
};

}  // namespace widegate::test
