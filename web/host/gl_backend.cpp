// Dear ImGui's OpenGL backend, compiled so that it never asks WebGL for its state: in a browser
// each such question waits for the graphics process and costs more than the whole frame. The host
// owns all GL state and sets what it needs itself, so what the backend "restores" may be constants.
#include <GLES3/gl3.h>

#include "imgui.h"

namespace {

// Questions asked once, at start, reach the context; those of every frame get WebGL's defaults.
void answer_integer(GLenum name, GLint* out) {
  switch (name) {
    case GL_MAJOR_VERSION:
    case GL_MINOR_VERSION:
    case GL_MAX_TEXTURE_SIZE:
    case GL_NUM_EXTENSIONS:
      glGetIntegerv(name, out);
      break;
    case GL_ACTIVE_TEXTURE:
      *out = GL_TEXTURE0;
      break;
    case GL_BLEND_EQUATION_RGB:
    case GL_BLEND_EQUATION_ALPHA:
      *out = GL_FUNC_ADD;
      break;
    case GL_VIEWPORT:
    case GL_SCISSOR_BOX:
      out[0] = out[1] = out[2] = out[3] = 0;
      break;
    default:
      *out = 0;
      break;
  }
}

GLboolean answer_flag(GLenum) { return GL_FALSE; }

}  // namespace

#pragma clang diagnostic ignored "-Weverything"
#define IMGUI_IMPL_OPENGL_ES3
#define glGetIntegerv answer_integer
#define glIsEnabled answer_flag
// The backend reads the version of the shading language from its first line, which is the same here
// always (imgui_config.h says why there is no sscanf).
#undef sscanf
#define sscanf(text, format, number, ...) (*(number) = 300)
#include <backends/imgui_impl_opengl3.cpp>
