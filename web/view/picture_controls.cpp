#include "web/view/picture_controls.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

/// One picture: its value, its words.
struct KindRow {
  PictureKind kind;
  std::string_view value, label;
};
constexpr std::array kKinds = {
    KindRow{PictureKind::sensor, "sensor", "Sensor"},
    KindRow{PictureKind::scene, "scene", "Scene"},
    KindRow{PictureKind::comparison, "compare", "Compare"},
};

Control make(std::string_view id, ControlKind kind, std::string_view label) {
  Control control;
  control.id = id;
  control.kind = kind;
  control.section = "picture";
  control.label = label;
  return control;
}

void put_flag(Control& control, bool on) {
  control.value = on ? 1 : 0;
  control.edit_text = on ? "true" : "false";
  control.value_text = on ? "yes" : "no";
}

void put_item(Control& control, std::string_view value, std::string_view label, bool chosen) {
  control.choices.push_back({std::string(value), std::string(label), {}});
  if (!chosen) return;
  control.edit_text = value;
  control.value_text = label;
}

Control kind_control(const PanelState& state) {
  Control control = make(kPicture, ControlKind::choice, "Picture");
  control.help = "Drawn above: the sensor to scale, the scene through the lens, or two formats.";
  for (const KindRow& row : kKinds) {
    put_item(control, row.value, row.label, row.kind == state.picture.shows);
  }
  return control;
}

Control scene_control(const PanelState& state) {
  const bool deck = state.picture.scene == SceneKind::deck;
  Control control = make(kScene, ControlKind::choice, "In front of the lens");
  put_item(control, kChart, "Test chart", !deck);
  put_item(control, kDeck, "Deck at dusk", deck);
  return control;
}

Control desqueeze_control(const App& app, const PanelState& state) {
  Control control = make(kDesqueeze, ControlKind::flag, "De-squeezed");
  put_flag(control, state.picture.desqueezed);
  const Report& report = app.report();
  control.enabled = report.problems.empty() && report.mode.squeeze > 1;
  return control;
}

Control magnifier_control(const PanelState& state) {
  Control control = make(kMagnifier, ControlKind::flag, "Magnifier, down to single pixels");
  put_flag(control, state.picture.magnified);
  return control;
}

/// Where the magnifier looks, in percent of the way from the middle of the mode to its edge.
Control spot_control(std::string_view id, std::string_view label, float at) {
  Control control = make(id, ControlKind::slider, label);
  control.min = -100;
  control.max = 100;
  control.step = 0.1;
  control.unit = "%";
  control.value = std::round(static_cast<double>(at) * 1e5) / 1e3;
  control.value_text = short_number(control.value, 1);
  control.edit_text = print_number(control.value);
  control.help = "From the middle of the sensor mode to its edge.";
  return control;
}

void set_spot(float& spot, std::string_view text) {
  if (const auto value = parse_decimal(text)) {
    spot = static_cast<float>(std::clamp(*value / 100, -1.0, 1.0));
  }
}

}  // namespace

std::optional<Control> picture_control(std::string_view id, const App& app,
                                       const PanelState& state) {
  if (id == kPicture) return kind_control(state);
  if (id == kScene) return scene_control(state);
  if (id == kDesqueeze) return desqueeze_control(app, state);
  if (id == kMagnifier) return magnifier_control(state);
  if (id == kSpotAcross) return spot_control(id, "Magnifier, across", state.picture.spot_x);
  if (id == kSpotDown) return spot_control(id, "Magnifier, down", state.picture.spot_y);
  return std::nullopt;
}

bool set_picture_control(std::string_view id, std::string_view text, PanelState& state) {
  PictureState& picture = state.picture;
  if (id == kPicture) {
    for (const KindRow& row : kKinds) {
      if (row.value == text) picture.shows = row.kind;
    }
  } else if (id == kScene) {
    picture.scene = text == kDeck ? SceneKind::deck : SceneKind::chart;
    picture.shows = PictureKind::scene;
  } else if (id == kDesqueeze) {
    picture.desqueezed = text == "true";
  } else if (id == kMagnifier) {
    picture.magnified = text == "true";
    if (picture.magnified) picture.shows = PictureKind::scene;
  } else if (id == kSpotAcross) {
    set_spot(picture.spot_x, text);
  } else if (id == kSpotDown) {
    set_spot(picture.spot_y, text);
  } else {
    return false;
  }
  return true;
}

}  // namespace widegate
