#version 300 es
// One triangle over the whole viewport, without any buffer.
void main() {
  vec2 corner = vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1));
  gl_Position = vec4(corner * 4.0 - 1.0, 0.0, 1.0);
}
