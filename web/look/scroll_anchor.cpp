#include "web/look/scroll_anchor.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <utility>

namespace widegate {
namespace {

std::uint32_t hashed(std::string_view key) { return ImHashStr(key.data(), key.size()); }

/// How far a height is from a row; 0 on it.
float distance(float y, float top, float height) {
  return std::max({0.0F, top - y, y - (top + height)});
}

bool asked_for(const ImGuiWindow& window) { return window.ScrollTarget.y < FLT_MAX; }

}  // namespace

ImGuiWindow* ScrollAnchor::window() const { return ImGui::FindWindowByID(window_); }

const ScrollAnchor::Row* ScrollAnchor::find(std::uint32_t key) const {
  for (const Row& row : rows_) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

float ScrollAnchor::scroll() const {
  const ImGuiWindow* last = window();
  if (last == nullptr) return 0;
  if (!asked_for(*last)) return last->Scroll.y;
  const float seen = last->ScrollTargetCenterRatio.y * last->SizeFull.y;
  return std::clamp(last->ScrollTarget.y - seen, 0.0F, std::max(last->ScrollMax.y, 0.0F));
}

void ScrollAnchor::begin(const RectPx& box, const ScreenShape& shape, float above) {
  moved_ = false;
  by_person_ = false;
  if (ImGuiWindow* last = window()) {
    by_person_ = asked_for(*last) && !ours_;
    if (by_person_) {
      // As the window was when it was asked: its height may be another one now.
      last->ScrollTarget.y = scroll();
      last->ScrollTargetCenterRatio.y = 0;
      last->ScrollTargetEdgeSnapDist.y = 0;
      give_back_room(*last);
    }
  }
  ours_ = false;
  const RectPx before = std::exchange(box_, box);
  const ScreenShape last = std::exchange(shape_, shape);
  const bool anew = shape.width != last.width || shape.height != last.height ||
                    shape.text_scale != last.text_scale;
  if (anew && before.height > 0) {
    for (Row& row : standing_) {
      const float share = (row.top - before.y) / before.height;
      row.top = box.y + share * box.height;
    }
  }
  const bool other_end = std::abs(shape.low - last.low) >= 1;
  if ((anew || other_end) && before.height > 0) carry_over();
  above_ = above;
  ImGui::SetNextWindowContentSize({0, above_ + head_ + content_ + tail_});
}

/// After a turn what is held is in sight as a whole.
void ScrollAnchor::carry_over() {
  for (Row& row : standing_) {
    const float low = std::max(box_.y, box_.y + box_.height - row.height);
    row.top = std::clamp(row.top, box_.y, low);
  }
}

/// Room that was made for rows to stay goes again once nobody sees it.
void ScrollAnchor::give_back_room(ImGuiWindow& window) {
  const float above = std::clamp(window.ScrollTarget.y, 0.0F, head_);
  head_ -= above;
  window.ScrollTarget.y -= above;
  const float low = window.ScrollTarget.y + box_.height - above_ - (head_ + content_);
  tail_ = std::clamp(low, 0.0F, tail_);
}

void ScrollAnchor::enter() {
  const ImGuiWindow* current = ImGui::GetCurrentWindow();
  window_ = current->ID;
  rows_.clear();
  section_ = {};
  if (above_ + head_ > 0) ImGui::Dummy({1, above_ + head_});
  start_ = ImGui::GetCursorScreenPos().y;
}

void ScrollAnchor::row(std::string_view key, float top, float height) {
  if (ImGui::GetCurrentWindow()->ID != window_) return;
  rows_.push_back({hashed(key), section_, top, height});
}

void ScrollAnchor::leave(std::string_view held) {
  content_ = ImGui::GetCursorScreenPos().y - start_;
  const ImGuiIO& io = ImGui::GetIO();
  const bool in_window = ImGui::IsWindowHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem);
  const bool pressed = ImGui::IsMouseClicked(0) && in_window;
  const bool on_the_way = asked_for(*ImGui::GetCurrentWindow());
  if (pressed) {
    stand_on(io.MouseClickedPos[0].y);
  } else if (by_person_ || on_the_way || standing_.empty()) {
    if (!stand_on(held)) stand_on_top();
  } else if (held != held_) {
    stand_on(held);
  }
  held_ = held;
  if (!on_the_way) hold();
}

void ScrollAnchor::touched(std::string_view key) { stand_on(key); }

/// Stands on the row at a height of the screen, or the nearest.
void ScrollAnchor::stand_on(float y) {
  const Row* nearest = nullptr;
  for (const Row& row : rows_) {
    const float away = distance(y, row.top, row.height);
    const bool nearer = nearest == nullptr || away < distance(y, nearest->top, nearest->height);
    // Of rows inside each other the smaller one is meant.
    const bool inner = nearest != nullptr && away == 0 && row.height < nearest->height;
    if (nearer || inner) nearest = &row;
  }
  if (nearest != nullptr) order_around(Row(*nearest));
}

/// Stands on a control in sight; false when it is not.
bool ScrollAnchor::stand_on(std::string_view key) {
  const Row* found = key.empty() ? nullptr : find(hashed(key));
  if (found == nullptr) return false;
  if (found->top + found->height <= box_.y || found->top >= box_.y + box_.height) return false;
  order_around(Row(*found));
  return true;
}

void ScrollAnchor::stand_on_top() {
  standing_.clear();
  for (const Row& row : rows_) {
    if (row.top >= box_.y && row.top < box_.y + box_.height) standing_.push_back(row);
  }
  std::stable_sort(standing_.begin(), standing_.end(),
                   [](const Row& a, const Row& b) { return a.top < b.top; });
}

void ScrollAnchor::order_around(const Row& middle) {
  standing_ = rows_;
  const float y = middle.top + middle.height / 2;
  const auto rank = [&](const Row& row) {
    const float away = distance(y, row.top, row.height);
    return row.key == middle.key ? -1 : row.section == middle.section ? away : 1e6F + away;
  };
  std::stable_sort(standing_.begin(), standing_.end(),
                   [&](const Row& a, const Row& b) { return rank(a) < rank(b); });
}

/// Brings the first row that is still there back to where it stood.
void ScrollAnchor::hold() {
  for (std::size_t i = 0; i < standing_.size(); ++i) {
    const Row* now = find(standing_[i].key);
    if (now == nullptr) continue;
    if (i > 0) {
      // Its neighbour was what was touched; this one comes into sight in its stead.
      standing_.erase(standing_.begin(), standing_.begin() + static_cast<std::ptrdiff_t>(i));
      standing_.front().height = now->height;
      const float low = std::max(box_.y, box_.y + box_.height - now->height);
      standing_.front().top = std::clamp(standing_.front().top, box_.y, low);
    }
    scroll_by(now->top - standing_.front().top);
    return;
  }
  stand_on_top();
}

void ScrollAnchor::scroll_by(float delta) {
  if (std::abs(delta) < 1) return;
  ImGuiWindow* current = ImGui::GetCurrentWindow();
  float wanted = std::round(current->Scroll.y + delta);
  const float given = std::clamp(wanted, 0.0F, head_);
  head_ -= given;
  wanted -= given;
  if (wanted < 0) {
    head_ -= wanted;
    wanted = 0;
  }
  tail_ = std::max(0.0F, wanted + box_.height - above_ - (head_ + content_));
  ImGui::SetScrollY(current, wanted);
  ours_ = true;
  moved_ = true;
}

}  // namespace widegate
