// Dear ImGui's OpenGL backend, compiled here as it is.
#pragma clang diagnostic ignored "-Weverything"
#define IMGUI_IMPL_OPENGL_ES3
#include <backends/imgui_impl_opengl3.cpp>
