#include "web/host/scene_program.h"

#include <GLES3/gl3.h>
#include <emscripten/console.h>
#include <imgui.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "shader_sources.h"

namespace widegate {
namespace {

GLuint compiled(GLenum kind, const char* source) {
  const GLuint shader = glCreateShader(kind);
  glShaderSource(shader, 1, &source, nullptr);
  glCompileShader(shader);
  GLint done = GL_FALSE;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &done);
  if (done == GL_TRUE) return shader;
  std::array<char, 600> log{};
  glGetShaderInfoLog(shader, static_cast<GLsizei>(log.size()), nullptr, log.data());
  emscripten_console_error((std::string("scene: ") + log.data()).c_str());
  glDeleteShader(shader);
  return 0;
}

void set(GLuint program, const char* name, float a, float b, float c, float d) {
  glUniform4f(glGetUniformLocation(program, name), a, b, c, d);
}

/// Whole device pixels, y from below, as GL has it.
struct Pixels {
  GLint left, low;
  GLsizei width, height;
};

Pixels scissor(const SceneQuad& quad, const ImVec4& clip, ImVec2 scale, float height) {
  const float left = std::max(clip.x, quad.box.x) * scale.x;
  const float top = std::max(clip.y, quad.box.y) * scale.y;
  const float right = std::min(clip.z, quad.box.x + quad.box.width) * scale.x;
  const float low = std::min(clip.w, quad.box.y + quad.box.height) * scale.y;
  const auto x = static_cast<GLint>(std::lround(left));
  const auto y = static_cast<GLint>(std::lround(height - low));
  return {x, y, static_cast<GLsizei>(std::lround(right)) - x,
          static_cast<GLsizei>(std::lround(height - top)) - y};
}

}  // namespace

bool SceneProgram::make() {
  if (program_ != 0 || failed_) return program_ != 0;
  failed_ = true;
  const GLuint vertex = compiled(GL_VERTEX_SHADER, kSceneVert);
  const GLuint fragment = compiled(GL_FRAGMENT_SHADER, kSceneFrag);
  if (vertex == 0 || fragment == 0) return false;
  program_ = glCreateProgram();
  glAttachShader(program_, vertex);
  glAttachShader(program_, fragment);
  glLinkProgram(program_);
  glDeleteShader(vertex);
  glDeleteShader(fragment);
  GLint done = GL_FALSE;
  glGetProgramiv(program_, GL_LINK_STATUS, &done);
  if (done != GL_TRUE) {
    emscripten_console_error("scene: the shaders do not link");
    glDeleteProgram(program_);
    program_ = 0;
    return false;
  }
  glGenVertexArrays(1, &vertices_);
  failed_ = false;
  return true;
}

void SceneProgram::forget() {
  program_ = vertices_ = 0;
  failed_ = false;
}

void SceneProgram::draw(const SceneQuad& quad, const ImVec4& clip, const ImDrawData& frame) {
  const ImVec2 scale = frame.FramebufferScale;
  const float height = std::floor(frame.DisplaySize.y * scale.y);
  const Pixels area = scissor(quad, clip, scale, height);
  if (area.width <= 0 || area.height <= 0 || !make()) return;
  glUseProgram(program_);
  glBindVertexArray(vertices_);
  glViewport(area.left, area.low, area.width, area.height);
  glScissor(area.left, area.low, area.width, area.height);
  glEnable(GL_SCISSOR_TEST);
  glDisable(GL_BLEND);
  set(program_, "u_box", quad.box.x * scale.x, height - (quad.box.y + quad.box.height) * scale.y,
      quad.box.width * scale.x, quad.box.height * scale.y);
  set(program_, "u_window", quad.middle_x, quad.middle_y, quad.reach_x, quad.reach_y);
  set(program_, "u_extent", quad.half_width_m, quad.half_height_m, quad.half_tangent_x,
      quad.half_tangent_y);
  glUniform2f(glGetUniformLocation(program_, "u_circle"), quad.circle_x, quad.circle_y);
  set(program_, "u_grid", quad.columns, quad.rows, quad.left, quad.top);
  glUniform1i(glGetUniformLocation(program_, "u_scene"), quad.scene == SceneKind::deck ? 1 : 0);
  glDrawArrays(GL_TRIANGLES, 0, 3);
}

}  // namespace widegate
