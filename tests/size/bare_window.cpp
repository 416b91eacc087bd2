// The size floor: the smallest usual Dear ImGui page (GLFW port, stock backends, built-in font),
// compiled with the site's own flags. tools/size_report sets the site against it. Nothing of ours
// belongs in here.
#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <emscripten.h>
#include <imgui.h>

namespace {

GLFWwindow* window = nullptr;

void draw_frame() {
  glfwPollEvents();
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  ImGui::NewFrame();
  ImGui::Begin("Bare");
  ImGui::TextUnformatted("A bare window");
  ImGui::End();
  ImGui::Render();
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

}  // namespace

int main() {
  glfwInit();
  window = glfwCreateWindow(800, 600, "Bare", nullptr, nullptr);
  glfwMakeContextCurrent(window);
  ImGui::CreateContext();
  ImGui_ImplGlfw_InitForOpenGL(window, true);
  ImGui_ImplOpenGL3_Init("#version 300 es");
  emscripten_set_main_loop(draw_frame, 0, true);
  return 0;
}
