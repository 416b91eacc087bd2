// Lists over the screen: pulled down they go, their title stays, long ones are searched and begin
// with what was used lately.
#include <doctest/doctest.h>

#include <string>
#include <string_view>

#include "imgui.h"
#include "tests/web/support/harness.h"
#include "web/ui/touch.h"
#include "web/view/choice_search.h"

using namespace widegate;
using namespace widegate::test;

namespace {

const Device& phone() { return devices()[3]; }

/// A finger on the whole front end.
class Finger {
 public:
  explicit Finger(Screen& screen) : screen_(screen) {}

  void swipe(float x, float from, float to) {
    send(PointerPhase::down, x, from);
    for (int step = 1; step <= 10; ++step) {
      send(PointerPhase::move, x, from + (to - from) * 0.1F * static_cast<float>(step));
    }
    send(PointerPhase::up, x, to);
    screen_.settle();
  }

 private:
  void send(PointerPhase phase, float x, float y) {
    now_ += 0.016;
    touch_.pointer({PointerKind::touch, phase, 1, 0, {x, y}, now_});
    touch_.update(now_);
    screen_.ui.touch();
    screen_.frame();
    screen_.frame();
  }

  Screen& screen_;
  TouchLayer touch_;
  double now_ = 10;
};

void open(Screen& screen, std::string_view id) {
  screen.reveal(id);
  const RectPx row = screen.control(id).rect;
  screen.tap(row.x + 40, row.y + row.height / 2);
  REQUIRE(screen.ui.covered());
}

/// A list with many entries: of the codecs, the camera that has most.
std::string long_list(Screen& screen) {
  for (const Control& control : screen.ui.mirror().controls) {
    if (control.kind == ControlKind::choice && is_long(control) && control.id.starts_with("/")) {
      return control.id;
    }
  }
  return {};
}

}  // namespace

TEST_CASE("a list pulled down from its title goes away, and nothing is chosen") {
  Screen screen(phone());
  screen.settle();
  const std::string before = screen.value("/format/camera");
  open(screen, "/format/camera");
  Finger(screen).swipe(195, 560, 800);
  CHECK_FALSE(screen.ui.covered());
  CHECK(screen.value("/format/camera") == before);
}

TEST_CASE("a short pull lets the list spring back without choosing") {
  Screen screen(phone());
  screen.settle();
  const std::string before = screen.value("/format/camera");
  open(screen, "/format/camera");
  Finger(screen).swipe(195, 700, 722);
  CHECK(screen.ui.covered());
  CHECK(screen.value("/format/camera") == before);
}

TEST_CASE("searching leaves what has all the words, in any order and case") {
  Control list;
  list.id = "/format/codec";
  for (const char* name : {"Bayer raw 12-bit packed", "Bayer raw 12-bit, 3:1", "Grey", "Intra 100",
                           "Intra 50", "F", "G", "H", "I", "J", "K"}) {
    list.choices.push_back({name, name, "for cards"});
  }
  PanelState state;
  CHECK(choice_list(list, state).rest.size() == list.choices.size());
  state.search = "3:1 BAYER";
  REQUIRE(choice_list(list, state).rest.size() == 1);
  CHECK(choice_list(list, state).rest.front()->label == "Bayer raw 12-bit, 3:1");
  state.search = "cards  intra";
  CHECK(choice_list(list, state).rest.size() == 2);
  state.search = "nothing like it";
  CHECK(choice_list(list, state).rest.empty());
}

TEST_CASE("what was used lately comes first, newest first, and survives a reload") {
  Control list;
  list.id = "/format/codec";
  for (char name = 'a'; name < 'n'; ++name) {
    list.choices.push_back({std::string(1, name), std::string(1, name), {}});
  }
  PanelState state;
  for (const char* value : {"c", "d", "c", "e", "f"}) note_lately(state, list.id, value);
  note_lately(state, "/store/card", "b");
  note_lately(state, "view:theme", "a");
  const auto values = [&list](const PanelState& from) {
    std::string text;
    for (const ChoiceItem* item : choice_list(list, from).lately) text += item->value;
    return text;
  };
  CHECK(values(state) == "fec");
  PanelState again;
  read_lately(again, lately_text(state));
  CHECK(values(again) == "fec");
  read_lately(again, "no list at all");
  CHECK(values(again).empty());
}

TEST_CASE("a long list on the screen can be searched by typing, and forgets it when it closes") {
  Screen screen(phone());
  screen.settle();
  const std::string id = long_list(screen);
  REQUIRE_FALSE(id.empty());
  CHECK(screen.ui.mirror().find(kSearch) == nullptr);
  open(screen, id);
  REQUIRE(screen.ui.mirror().find(kSearch) != nullptr);
  const RectPx field = screen.control(kSearch).rect;
  screen.tap(field.x + 40, field.y + field.height / 2);
  REQUIRE(screen.ui.text_request().has_value());
  CHECK(screen.ui.text_request()->id == kSearch);
  CHECK(screen.ui.set(kSearch, "zzz"));
  screen.settle();
  CHECK(screen.control(kSearch).edit_text == "zzz");
  screen.ui.dismiss();
  screen.settle();
  screen.ui.dismiss();
  screen.settle();
  CHECK_FALSE(screen.ui.covered());
  CHECK(screen.ui.mirror().find(kSearch) == nullptr);
}

TEST_CASE("the plan's name leads to the plans") {
  Screen screen(phone());
  screen.settle();
  screen.tap(60, 47 + 20);
  CHECK(screen.ui.covered());
  CHECK(screen.ui.layers() == 1);
}
