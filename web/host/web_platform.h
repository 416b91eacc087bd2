// The page behind the Platform seam: every call goes to an object of the page's script
// (Module.host in web/shell). Strings travel as UTF-8; nothing here keeps state.
#pragma once

#include "web/door/platform.h"

namespace widegate {

class WebPlatform final : public Platform {
 public:
  void wake() override;
  [[nodiscard]] RestOfProgram rest() const override;
  void want_rest() override;
  bool copy_text(std::string_view text) override;
  [[nodiscard]] std::string page_address() const override;
  [[nodiscard]] std::string fragment() const override;
  [[nodiscard]] std::string own_fragment() const override;
  void replace_fragment(std::string_view fragment) override;
  [[nodiscard]] std::optional<std::string> stored(std::string_view key) const override;
  bool store(std::string_view key, std::string_view text) override;
  [[nodiscard]] bool can_share() const override;
  void share(std::string_view title, std::string_view address) override;
  void save_file(std::string_view name, std::string_view mime, std::string_view bytes) override;
  void open_file(std::string_view purpose, std::string_view accept) override;
  void print_document(std::string_view html) override;
  void show_picture(std::string_view svg, std::string_view words) override;
};

}  // namespace widegate
