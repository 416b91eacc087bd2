#include "web/ui/ui.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/handover/link/link.h"
#include "core/handover/link/link_kind.h"
#include "core/plan/plan_json.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "web/act/answer_actions.h"
#include "web/act/delivery_actions.h"
#include "web/act/device_memory.h"
#include "web/act/handover_actions.h"
#include "web/act/kept_plan_actions.h"
#include "web/act/lesson_actions.h"
#include "web/act/library_actions.h"
#include "web/act/ranking_actions.h"
#include "web/act/show_actions.h"
#include "web/app/app.h"
#include "web/draw/picture/picture.h"
#include "web/draw/picture/scale.h"
#include "web/draw/screen.h"
#include "web/draw/sections/draw_section.h"
#include "web/draw/widgets/control_row.h"
#include "web/draw/widgets/draw_context.h"
#include "web/look/fonts.h"
#include "web/look/layout.h"
#include "web/look/theme.h"
#include "web/state/screen_state.h"
#include "web/view/answer_controls.h"
#include "web/view/choice_search.h"
#include "web/view/comparison.h"
#include "web/view/library_controls.h"
#include "web/view/picture_controls.h"
#include "web/view/plan_controls.h"
#include "web/view/screen_controls.h"
#include "web/view/sections.h"
#include "web/view/view.h"

namespace widegate {
namespace {

/// Dear ImGui needs this many frames until layout and hover have settled after any change.
constexpr int kSettleFrames = 3;
/// Most layouts in one frame: as it was, as it is now, and that at its place on the screen.
constexpr int kLayoutsInFrame = 3;
/// Large type, for a wall, over the usual text size.
constexpr float kWallScale = 1.5F;
constexpr std::string_view kPlanKey = "plan";
constexpr std::string_view kThemeKey = "theme";
constexpr std::string_view kPictureKey = "picture";

/// What the view depends on, to know when it is stale.
struct ViewInputs {
  std::uint64_t revision = 0;
  std::uint64_t delivery = 0, comparison = 0, show = 0;
  bool dragging = false;  ///< What rests during a drag is made afterwards.
  ThemeChoice theme = ThemeChoice::system;
  bool desqueezed = false;
  bool magnified = false;
  PictureKind shows = PictureKind::sensor;
  SceneKind scene = SceneKind::chart;
  bool large_type = false;
  float spot_x = 0, spot_y = 0;
  std::size_t lesson_step = 0;
  RankingPart ranking_part = RankingPart::passing;
  RankingKind ranking_kind = RankingKind::all;
  RankingListing ranking_listing = RankingListing::best_of_mode;
  std::size_t formats_shown = 0;
  std::size_t frame_line = 0;
  RestOfProgram rest = RestOfProgram::here;
  std::uint64_t library = 0, shelf = 0;
  MemoryState memory;
  std::string lesson, working, message, outline, same_view, list, search;
  friend bool operator==(const ViewInputs&, const ViewInputs&) = default;
};

/// The field below this one in the form of one's own equipment.
std::string next_in_form(const Mirror& mirror, const Control& control) {
  if (!control.id.starts_with(kLibraryPrefix)) return {};
  bool passed = false;
  for (const Control& each : mirror.controls) {
    const bool field = each.id.starts_with(kLibraryPrefix) && each.kind == ControlKind::text;
    if (passed && field && each.enabled) return each.id;
    passed = passed || each.id == control.id;
  }
  return {};
}

}  // namespace

struct Ui::Parts {
  Platform& platform;
  App app;
  View view;
  PanelState state;
  Fonts fonts;
  Theme theme;
  Layout layout;
  Commands commands;
  ImGuiContext* context = nullptr;
  ViewInputs seen;
  std::uint64_t frames = 0;
  std::uint64_t saved_revision = 0;
  std::uint64_t saved_delivery = 0;
  std::uint64_t saved_comparison = 0;
  std::uint64_t saved_show = 0;
  std::uint64_t saved_lately = 0;
  std::string saved_picture;
  std::string fragment;  ///< The plan's own link, as last written to the address.
  ThemeChoice saved_theme = ThemeChoice::system;
  std::optional<Typing> typing_before;  ///< When the frame began.
  float last_width = 0, last_height = 0;
  int settle = kSettleFrames;
  int jump_frames = 0;  ///< On the way to a section.
  bool animating = false;
  SceneDrawer draw_scene = nullptr;

  Parts(Platform& host, Catalogue library) : platform(host), app(std::move(library)) {}

  [[nodiscard]] ViewInputs inputs() const {
    const PictureState& picture = state.picture;
    return {app.revision(),
            state.delivery.version,
            state.comparison.version,
            state.show.version,
            state.drag.has_value(),
            state.theme,
            picture.desqueezed,
            picture.magnified,
            picture.shows,
            picture.scene,
            state.large_type,
            picture.spot_x,
            picture.spot_y,
            state.lesson_step,
            state.ranking_part,
            state.ranking_kind,
            state.ranking_listing,
            state.formats_shown,
            state.frame_line,
            state.rest,
            state.library.revision,
            state.shelf.revision,
            state.memory,
            state.lesson,
            state.open_working,
            state.message,
            picture.selected,
            state.same_view_camera,
            state.open_choice,
            state.search};
  }

  /// Makes the strings anew when something they show has changed. True when it had.
  bool refresh() {
    if (inputs() == seen && view.version > 0) return false;
    seen = inputs();
    rebuild(view, app, state);
    return true;
  }

  void touch() {
    settle = kSettleFrames;
    platform.wake();
  }

  [[nodiscard]] DrawContext draw_context() {
    DrawContext made{app, view, layout, theme, fonts, state, commands};
    made.touched = ImGui::GetIO().MouseSource == ImGuiMouseSource_TouchScreen;
    made.draw_scene = draw_scene;
    return made;
  }

  void build() {
    ImGui::NewFrame();
    DrawContext made = draw_context();
    draw_screen(made);
    ImGui::EndFrame();
  }

  [[nodiscard]] Theme look(const FrameInput& input) const {
    Theme look = make_theme(state.theme, input);
    look.wall = state.large_type;
    return look;
  }

  /// Whether something that was asked for waits for the rest of the program. It is done when that
  /// comes; until then what is missing is told.
  bool waits_for_rest() {
    if (state.rest == RestOfProgram::here) return false;
    const bool waits = !state.open_working.empty() ||
                       (!state.asked_action.empty() && !works_at_first(state.asked_action));
    // Once for each time it is asked for: the page tries again by itself.
    if (waits && state.message != rest_words(state.rest)) {
      state.message = rest_words(state.rest);
      platform.want_rest();
    }
    return waits;
  }

  /// Ends the typing into a control. What was not accepted is not kept: the value from before
  /// already stands in the plan (Ui::set), and the control says what would have been.
  void end_typing(const Typing& typing, bool keep) {
    const Control* control = view.find(typing.id);
    if (!keep && control != nullptr) {
      DrawContext made = draw_context();
      set_control(made, *control, typing.before, true);
    }
    commands.emplace_back(EndGesture{});
  }

  /// A press on anything but the field ends the typing, and does what it is a press on.
  void end_typing_elsewhere() {
    const bool pressed = typing_before && ImGui::IsMouseReleased(0);
    if (!pressed) return;
    const bool same = state.typing && state.typing->id == typing_before->id;
    if (same) state.typing.reset();
    end_typing(*std::exchange(typing_before, std::nullopt), true);
  }

  /// Acts on everything asked for while drawing. True when something changed.
  bool act() {
    const bool waits = waits_for_rest();
    const std::string told = state.message;
    end_typing_elsewhere();
    if (!state.asked_action.empty() && !waits) {
      const std::string id = std::exchange(state.asked_action, {});
      run_action(id, app, state, platform, commands);
      run_library_action(id, app, state, platform, commands);
      run_shelf_action(id, app, state, platform);
      run_ranking_action(id, app, view.ranking, state, commands);
      if (id.starts_with(kAnswerPrefix)) {
        run_answer_action(id, app, view.answers, state, commands);
      }
      if (id.starts_with(kShowCommand)) run_show_action(id, app, state, platform, commands);
    }
    if (!state.show.asked_link.empty() && state.rest == RestOfProgram::here) {
      open_asked_show(app, state);
    }
    if (!state.asked_plan.empty()) {
      open_kept_plan(std::exchange(state.asked_plan, {}), app, state, platform, commands);
    }
    Commands asked = std::exchange(commands, {});
    bool changed = false;
    for (const Command& command : asked) {
      changed = take_delivery_command(command, state.delivery) || app.apply(command) || changed;
    }
    const bool stays = std::exchange(state.message_stays, false);
    if (changed && state.message == told && !stays) state.message.clear();
    return refresh();
  }

  /// Keeps the plan and the colours on the device once nothing moves: a page may be closed under a
  /// finger that rests on a slider.
  void save() {
    const bool resting = !state.drag || settle <= 1;
    if (resting && app.revision() != saved_revision) {
      // What is on the screen in a lesson is the lesson's: one's own plan stays kept.
      if (state.lesson.empty()) save_to_shelf(app, state, platform, commands);
      for (const Command& command : std::exchange(commands, {})) app.apply(command);
      saved_revision = app.revision();
      if (state.lesson.empty()) store_plan();
    }
    if (!state.drag && state.delivery.version != saved_delivery) {
      saved_delivery = state.delivery.version;
      keep_delivery(state.delivery, platform);
    }
    // What a lesson compares is the lesson's; one's own is kept again when it is left.
    if (state.lesson.empty() && state.comparison.version != saved_comparison) {
      saved_comparison = state.comparison.version;
      keep_comparison(state.comparison, platform);
    }
    if (state.show.version != saved_show) {
      saved_show = state.show.version;
      keep_show(state, platform);
    }
    save_picture();
    if (state.lately_version != saved_lately) {
      saved_lately = state.lately_version;
      keep_on_device(state, platform, kLatelyKey, lately_text(state));
    }
    if (state.theme != saved_theme) {
      saved_theme = state.theme;
      keep_on_device(state, platform, kThemeKey, theme_key(state.theme));
    }
    if (inputs() != seen) touch();
  }

  /// How the picture was left: on the next visit it is the same one.
  void save_picture() {
    const std::string shown = picture_text(state.picture);
    if (shown == saved_picture || state.drag || !state.lesson.empty()) return;
    saved_picture = shown;
    keep_on_device(state, platform, kPictureKey, shown);
  }

  /// Puts the plan on the screen into the device's memory and into the address. A plan that is too
  /// long for a link stands in the memory alone, and its link is not offered as one.
  void store_plan() {
    const Plan whole = app.whole_plan();
    keep_on_device(state, platform, kPlanKey, plan_to_json(whole));
    fragment = plan_to_opening_link(whole).value_or("");
    platform.replace_fragment(fragment);
  }

  /// The plan that this tab left here. One that cannot be read is set aside, and what the address
  /// holds is opened instead, though the tab gave it that address itself.
  bool open_kept(std::string& address) {
    const auto kept = platform.stored(kPlanKey);
    if (!kept) return false;
    if (auto plan = plan_from_json(*kept, app.library())) {
      app.apply(OpenPlan{std::move(*plan)});
      return true;
    }
    set_aside(state, platform, *kept);
    state.message =
        "The plan on this device could not be read and was set aside, to be saved under Plan.";
    address = platform.own_fragment();
    return false;
  }

  /// Begins the lesson of an address, now or when the rest of the program is here.
  void open_lesson(std::string link) {
    if (state.rest != RestOfProgram::here) {
      state.asked_lesson = std::move(link);
      state.message = rest_words(state.rest);
      platform.want_rest();
    } else if (open_lesson_link(link, app, state, platform, commands)) {
      fragment = std::move(link);
    }
  }

  /// Takes a plan out of the address. A text that is none leaves the plan as it is, and says so.
  bool open_link(std::string_view text) {
    if (text.empty() || text == fragment) return false;
    if (is_lesson_link(text)) {
      open_lesson(std::string(text));
      return false;
    }
    if (is_show_link(text)) {
      state.show.asked_link = text;
      return false;
    }
    auto plan = plan_from_link(text, app.library());
    if (!plan) {
      state.message = "This link does not hold a plan that can be read: expected " +
                      plan.error().front().accepted + ". The plan on the screen is unchanged.";
      return false;
    }
    fragment = text;
    commands.emplace_back(ReplacePlan{std::move(*plan)});
    return true;
  }

  /// Everything kept on the device: what plans are made of first.
  void load() {
    try_device(state, platform);
    load_library(app, state, platform, commands);
    for (const Command& command : std::exchange(commands, {})) app.apply(command);
    load_shelf(state, platform);
    if (const auto kept = platform.stored(kThemeKey)) state.theme = theme_from_key(*kept);
    saved_theme = state.theme;
    state.rest = platform.rest();
    if (state.rest == RestOfProgram::here) load_rest();
    read_lately(state, platform.stored(kLatelyKey).value_or(""));
    if (const auto kept = platform.stored(kPictureKey)) read_picture(state.picture, *kept);
    saved_picture = picture_text(state.picture);
    std::string address = platform.fragment();
    bool found = open_kept(address);
    if (open_link(address)) {
      found = true;
      const Plan before = app.plan();
      app.apply(OpenPlan{std::get<ReplacePlan>(commands.back()).plan});
      commands.clear();
      if (app.plan() != before) leave_shelf(state);
      tell_brought_rows(app, state);
    }
    saved_revision = app.revision();
    // A first visit keeps its plain address.
    state.first_visit = !found;
    if (found) store_plan();
  }

  /// What is kept on the device for the rest of the program.
  void load_rest() {
    load_lessons(app, state, platform);
    if (!state.asked_lesson.empty()) open_lesson(std::exchange(state.asked_lesson, {}));
    load_delivery(state.delivery, platform);
    load_comparison(state.comparison, platform, app.library());
    load_show(app, state, platform);
    saved_show = state.show.version;
    open_asked_show(app, state);
    saved_delivery = state.delivery.version;
    saved_comparison = state.comparison.version;
  }

  /// On a screen of another shape the finger is somewhere else on the slider: what it was dragged
  /// to so far is kept, and the rest of the way means nothing.
  void end_drag_on_turn(const FrameInput& input) {
    const bool turned = input.width != last_width || input.height != last_height;
    last_width = input.width;
    last_height = input.height;
    if (!turned || !state.drag) return;
    ImGui::ClearActiveID();
    state.drag.reset();
    commands.emplace_back(EndGesture{});
  }

  /// On the way to a section what stands above gives way, and there is a little more to go: frames
  /// go on until it is there. A section that is not there is not waited for.
  void follow_jump() {
    constexpr int kMostFrames = 12;
    jump_frames = state.jump.empty() ? 0 : jump_frames + 1;
    if (jump_frames > kMostFrames) state.jump.clear();
    if (!state.jump.empty()) settle = std::max(settle, 2);
  }

  void set_io(const FrameInput& input) {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = {std::max(0.0F, input.width), std::max(0.0F, input.height)};
    const float ratio = input.pixel_ratio > 0 ? input.pixel_ratio : 1;
    io.DisplayFramebufferScale = {ratio, ratio};
    io.DeltaTime = std::clamp(input.delta_s, 1e-4F, 1.0F);
  }
};

Ui::Ui(Platform& platform, Catalogue library)
    : parts_(std::make_unique<Parts>(platform, std::move(library))) {
  IMGUI_CHECKVERSION();
  parts_->context = ImGui::CreateContext();
}

Ui::~Ui() { ImGui::DestroyContext(parts_->context); }

void Ui::init() {
  ImGui::SetCurrentContext(parts_->context);
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigInputTextCursorBlink = false;
  parts_->fonts = load_fonts();
  parts_->load();
  parts_->refresh();
}

void Ui::draw_scenes_with(SceneDrawer drawer) { parts_->draw_scene = drawer; }

void Ui::frame(const FrameInput& host_input) {
  Parts& p = *parts_;
  FrameInput input = host_input;
  if (p.state.large_type) input.root_font_px *= kWallScale;
  ImGui::SetCurrentContext(p.context);
  p.set_io(input);
  p.end_drag_on_turn(input);
  p.theme = p.look(input);
  p.typing_before = p.state.typing;
  apply_style(p.theme);
  p.animating = animate_picture(p.state.picture, input.delta_s, p.theme.reduced_motion);
  // What was changed is shown in this very frame, and where it belongs.
  for (int layout = 1; layout <= kLayoutsInFrame; ++layout) {
    p.layout = make_layout(input, p.theme,
                           {p.state.typing.has_value(), p.state.anchor.scroll(),
                            has_second_part(p.state, p.view.comparison)});
    p.build();
    const bool changed = p.act();
    if (!changed && !p.state.anchor.moved()) break;
    p.settle = std::max(p.settle, layout < kLayoutsInFrame ? 2 : kSettleFrames);
    p.theme = p.look(input);
  }
  p.follow_jump();
  ImGui::Render();
  p.save();
  ++p.frames;
  if (p.settle > 0) --p.settle;
}

double Ui::seconds_to_next_frame() const {
  const Parts& p = *parts_;
  if (p.settle > 0 || p.animating) return 0;
  const ImGuiContext& g = *p.context;
  if (g.InputEventsQueue.Size > 0) return 0;
  const bool hint_due = g.HoverItemDelayId != 0 && g.HoverItemDelayTimer < 0.6F;
  return hint_due ? 0.1 : -1;
}

void Ui::touch() { parts_->settle = kSettleFrames; }

std::uint64_t Ui::frame_count() const { return parts_->frames; }
std::uint64_t Ui::state_version() const { return parts_->view.version; }
std::uint64_t Ui::rect_version() const { return parts_->view.rect_version; }
const Mirror& Ui::mirror() const { return parts_->view.mirror; }

bool Ui::set(std::string_view id, std::string_view text) {
  Parts& p = *parts_;
  const Control* control = p.view.find(id);
  if (control == nullptr || !control->enabled) return false;
  p.state.anchor.touched(id);
  if (p.state.typing && p.state.typing->id == id) p.state.typing->draft = text;
  const std::string pointer = control->id;
  const bool number = control->kind == ControlKind::slider || control->kind == ControlKind::text;
  DrawContext context = p.draw_context();
  set_control(context, *control, text, number);
  p.act();
  if (p.state.typing && p.state.typing->id == pointer && p.app.rejection().pointer == pointer) {
    // Of "4000" the plan shall not keep the "400" that was there on the way.
    const Rejection refused = p.app.rejection();
    p.commands.push_back(SetField{pointer, field_input(pointer, p.state.typing->before), true});
    p.commands.push_back(SetField{pointer, refused.text, true});
    p.act();
  }
  p.touch();
  const Control* now = p.view.find(pointer);
  const bool marked = now != nullptr && !now->problem.empty();
  return p.app.rejection().pointer != pointer && p.state.delivery.rejected != pointer && !marked;
}

void Ui::activate(std::string_view id) {
  Parts& p = *parts_;
  const Control* control = p.view.find(id);
  if (control == nullptr || !control->enabled) return;
  if (control->kind == ControlKind::flag) {
    set(id, control->value != 0 ? "false" : "true");
    return;
  }
  p.state.anchor.touched(id);
  p.state.asked_action = id;
  p.act();
  p.touch();
}

void Ui::step(std::string_view id, int steps) {
  Parts& p = *parts_;
  const Control* control = p.view.find(id);
  if (control == nullptr || control->kind != ControlKind::slider || steps == 0) return;
  set(id, stepped_text(*control, steps));
}

void Ui::reset(std::string_view id) {
  Parts& p = *parts_;
  const Control* control = p.view.find(id);
  if (control == nullptr) return;
  p.commands.emplace_back(ResetField{control->id});
  p.act();
  p.touch();
}

void Ui::show_working(std::string_view key) {
  Parts& p = *parts_;
  p.state.open_working = key;
  p.act();
  p.touch();
}

bool Ui::covered() const {
  const PanelState& state = parts_->state;
  return !state.open_choice.empty() || !state.open_working.empty();
}

int Ui::layers() const {
  const PanelState& state = parts_->state;
  const bool lesson = !state.lesson.empty();
  return (state.typing ? 1 : 0) + (covered() ? 1 : 0) + (lesson ? 1 : 0);
}

void Ui::dismiss() {
  PanelState& state = parts_->state;
  if (state.typing) return end_text(true);
  state.asked_action.clear();
  if (covered()) {
    state.open_choice.clear();
    state.open_working.clear();
    state.search.clear();
  } else if (!state.message.empty()) {
    state.message.clear();
  } else {
    end_lesson(state, parts_->commands);
  }
  parts_->act();
  parts_->touch();
}

void Ui::focus(std::string_view id) {
  Parts& p = *parts_;
  p.state.focus = id;
  p.state.reveal_focus = !id.empty();
  if (const Control* control = p.view.find(id)) open_for(p.state, *control);
  p.touch();
}

std::optional<TextRequest> Ui::text_request() const {
  const Parts& p = *parts_;
  if (!p.state.typing) return std::nullopt;
  const Control* control = p.view.mirror.find(p.state.typing->id);
  if (control == nullptr) return std::nullopt;
  TextRequest request;
  request.id = control->id;
  request.label = control->label;
  request.text = p.state.typing->before;
  request.numeric = control->kind == ControlKind::slider || control->numeric;
  request.signs = control->signs;
  request.next = next_in_form(p.view.mirror, *control);
  request.font_px = std::max(16.0F, p.theme.type(TextStyle::strong).px);
  request.rect = p.state.typing->rect;
  return request;
}

void Ui::begin_text(std::string_view id) {
  Parts& p = *parts_;
  const Control* control = p.view.find(id);
  if (control == nullptr || !control->enabled) return;
  p.state.anchor.touched(id);
  p.state.typing = Typing{control->id, control->edit_text, control->edit_text, {}};
  p.touch();
}

void Ui::end_text(bool keep) {
  Parts& p = *parts_;
  if (!p.state.typing) return;
  p.typing_before.reset();
  p.end_typing(*std::exchange(p.state.typing, std::nullopt), keep);
  p.act();
  p.touch();
}

void Ui::zoom_at(float x, float y, float factor) {
  Parts& p = *parts_;
  if (p.view.mirror.surfaces.empty()) return;
  zoom_picture(p.state.picture, p.view.mirror.surfaces.front(), x, y, factor);
  p.touch();
}

void Ui::fragment_changed(std::string_view fragment) {
  Parts& p = *parts_;
  p.state.message.clear();
  const bool opened = p.open_link(fragment);
  p.act();
  if (opened) {
    leave_lesson(p.state);
    leave_shelf(p.state);
    tell_brought_rows(p.app, p.state);
    p.act();
  } else if (p.state.lesson.empty()) {
    p.store_plan();
  }
  p.touch();
}

void Ui::file_opened(std::string_view purpose, std::string_view name, std::string_view text) {
  Parts& p = *parts_;
  if (purpose == kFramingFile) {
    open_framing(name, text, p.app, p.state, p.commands);
    const std::string told = p.state.message;
    p.act();
    p.state.message = told;
    p.touch();
  }
  if (purpose == kLibraryFile) {
    library_file_opened(name, text, p.app, p.state);
    p.act();
    p.touch();
  }
  if (purpose == kShowFile) {
    show_file_opened(name, text, p.app, p.state);
    p.act();
    p.touch();
  }
  if (purpose != kPlanFile) return;
  if (looks_like_lesson(text) && p.state.rest == RestOfProgram::here) {
    open_lesson_file(name, text, p.app, p.state, p.platform, p.commands);
    p.act();
    p.touch();
    return;
  }
  auto plan = plan_from_json(text, p.app.library());
  if (plan) {
    leave_lesson(p.state);
    p.commands.emplace_back(ReplacePlan{std::move(*plan)});
  }
  p.act();
  if (plan) leave_shelf(p.state);
  p.state.message = plan ? "Opened " + std::string(name) + "."
                         : std::string(name) + " is not a plan: " + to_line(plan.error().front());
  p.act();
  p.touch();
}

void Ui::file_refused(std::string_view name, std::string_view why) {
  parts_->state.message = std::string(name).append(" was not opened: ").append(why).append(".");
  parts_->touch();
}

void Ui::stored_changed(std::string_view key) {
  Parts& p = *parts_;
  if (key == kLibraryKey) load_library(p.app, p.state, p.platform, p.commands);
  if (key == kShelfKey) reload_shelf(p.state, p.platform);
  p.act();
  p.touch();
}

void Ui::rest_changed() {
  Parts& p = *parts_;
  const bool told = p.state.message == rest_words(p.state.rest);
  p.state.rest = p.platform.rest();
  if (told) p.state.message = rest_words(p.state.rest);
  if (p.state.rest == RestOfProgram::here) p.load_rest();
  p.act();
  p.touch();
}

std::uint32_t Ui::background() const {
  const Colour c = parts_->theme.colour.page;
  return static_cast<std::uint32_t>(c.red) << 16 | static_cast<std::uint32_t>(c.green) << 8 |
         c.blue;
}

bool Ui::dark() const { return parts_->theme.dark; }

}  // namespace widegate
