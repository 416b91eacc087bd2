#include "tests/web/support/raster.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>

namespace widegate::test {
namespace {

struct Clip {
  int left = 0, top = 0, right = 0, bottom = 0;
};

/// One texel as red, green, blue, alpha from 0 to 1.
using Texel = std::array<float, 4>;

Texel fetch(const ImTextureData& texture, int x, int y) {
  x = std::clamp(x, 0, texture.Width - 1);
  y = std::clamp(y, 0, texture.Height - 1);
  const unsigned char* at = texture.Pixels + (y * texture.Width + x) * texture.BytesPerPixel;
  if (texture.BytesPerPixel == 1) return {1, 1, 1, static_cast<float>(*at) / 255};
  return {static_cast<float>(at[0]) / 255, static_cast<float>(at[1]) / 255,
          static_cast<float>(at[2]) / 255, static_cast<float>(at[3]) / 255};
}

Texel sample(const ImTextureData& texture, float u, float v) {
  const float x = u * static_cast<float>(texture.Width) - 0.5F;
  const float y = v * static_cast<float>(texture.Height) - 0.5F;
  const int left = static_cast<int>(std::floor(x));
  const int top = static_cast<int>(std::floor(y));
  const float fx = x - static_cast<float>(left);
  const float fy = y - static_cast<float>(top);
  const Texel a = fetch(texture, left, top);
  const Texel b = fetch(texture, left + 1, top);
  const Texel c = fetch(texture, left, top + 1);
  const Texel d = fetch(texture, left + 1, top + 1);
  Texel out{};
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = (a[i] * (1 - fx) + b[i] * fx) * (1 - fy) + (c[i] * (1 - fx) + d[i] * fx) * fy;
  }
  return out;
}

Texel colour_of(ImU32 packed) {
  const ImVec4 c = ImGui::ColorConvertU32ToFloat4(packed);
  return {c.x, c.y, c.z, c.w};
}

void blend(Image& image, int x, int y, const Texel& colour) {
  std::uint8_t* at = image.pixels.data() + (y * image.width + x) * 3;
  for (std::size_t i = 0; i < 3; ++i) {
    const float under = static_cast<float>(at[i]) / 255;
    const float mixed = under + (colour[i] - under) * colour[3];
    at[i] = static_cast<std::uint8_t>(std::clamp(mixed, 0.0F, 1.0F) * 255 + 0.5F);
  }
}

float edge(ImVec2 a, ImVec2 b, float x, float y) {
  return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
}

/// Pixels on a shared edge belong to one triangle only (top left rule).
bool covers(float weight, ImVec2 a, ImVec2 b) {
  if (weight != 0) return weight > 0;
  return (a.y == b.y && b.x > a.x) || b.y < a.y;
}

void triangle(Image& image, const Clip& clip, const ImTextureData& texture,
              std::array<ImDrawVert, 3> v, float ratio) {
  for (ImDrawVert& each : v) each.pos = {each.pos.x * ratio, each.pos.y * ratio};
  float area = edge(v[0].pos, v[1].pos, v[2].pos.x, v[2].pos.y);
  if (area == 0 || !std::isfinite(area)) return;
  if (area < 0) {
    std::swap(v[1], v[2]);
    area = -area;
  }
  const auto [min_x, max_x] = std::minmax({v[0].pos.x, v[1].pos.x, v[2].pos.x});
  const auto [min_y, max_y] = std::minmax({v[0].pos.y, v[1].pos.y, v[2].pos.y});
  const int left = std::max(clip.left, static_cast<int>(std::floor(min_x)));
  const int right = std::min(clip.right, static_cast<int>(std::ceil(max_x)));
  const int top = std::max(clip.top, static_cast<int>(std::floor(min_y)));
  const int bottom = std::min(clip.bottom, static_cast<int>(std::ceil(max_y)));
  const std::array<Texel, 3> colours = {colour_of(v[0].col), colour_of(v[1].col),
                                        colour_of(v[2].col)};
  for (int y = top; y < bottom; ++y) {
    for (int x = left; x < right; ++x) {
      const float px = static_cast<float>(x) + 0.5F;
      const float py = static_cast<float>(y) + 0.5F;
      const float a = edge(v[1].pos, v[2].pos, px, py);
      const float b = edge(v[2].pos, v[0].pos, px, py);
      const float c = edge(v[0].pos, v[1].pos, px, py);
      if (!covers(a, v[1].pos, v[2].pos) || !covers(b, v[2].pos, v[0].pos) ||
          !covers(c, v[0].pos, v[1].pos)) {
        continue;
      }
      const std::array<float, 3> w = {a / area, b / area, c / area};
      const Texel texel = sample(texture, v[0].uv.x * w[0] + v[1].uv.x * w[1] + v[2].uv.x * w[2],
                                 v[0].uv.y * w[0] + v[1].uv.y * w[1] + v[2].uv.y * w[2]);
      Texel colour{};
      for (std::size_t i = 0; i < colour.size(); ++i) {
        colour[i] = texel[i] * (colours[0][i] * w[0] + colours[1][i] * w[1] + colours[2][i] * w[2]);
      }
      blend(image, x, y, colour);
    }
  }
}

}  // namespace

Image rasterise(const ImDrawData& data, float ratio) {
  Image image;
  image.width = static_cast<int>(data.DisplaySize.x * ratio);
  image.height = static_cast<int>(data.DisplaySize.y * ratio);
  image.pixels.assign(static_cast<std::size_t>(image.width * image.height * 3), 0);
  for (const ImDrawList* list : data.CmdLists) {
    for (const ImDrawCmd& command : list->CmdBuffer) {
      if (command.UserCallback != nullptr) continue;
      const auto* texture = reinterpret_cast<const ImTextureData*>(command.GetTexID());
      if (texture == nullptr || texture->Pixels == nullptr) continue;
      const Clip clip = {
          std::max(0, static_cast<int>(std::lround(command.ClipRect.x * ratio))),
          std::max(0, static_cast<int>(std::lround(command.ClipRect.y * ratio))),
          std::min(image.width, static_cast<int>(std::lround(command.ClipRect.z * ratio))),
          std::min(image.height, static_cast<int>(std::lround(command.ClipRect.w * ratio)))};
      for (unsigned i = 0; i + 2 < command.ElemCount; i += 3) {
        const ImDrawIdx* index = list->IdxBuffer.Data + command.IdxOffset + i;
        const ImDrawVert* vertices = list->VtxBuffer.Data + command.VtxOffset;
        triangle(image, clip, *texture,
                 {vertices[index[0]], vertices[index[1]], vertices[index[2]]}, ratio);
      }
    }
  }
  return image;
}

void write_ppm(const Image& image, const std::string& path) {
  std::ofstream file(path, std::ios::binary);
  file << "P6\n" << image.width << ' ' << image.height << "\n255\n";
  file.write(reinterpret_cast<const char*>(image.pixels.data()),
             static_cast<std::streamsize>(image.pixels.size()));
}

}  // namespace widegate::test
