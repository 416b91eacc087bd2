// Starts the program and draws a frame whenever the window changes size.
const canvas = document.getElementById('canvas');

function draw() {
  const ratio = window.devicePixelRatio;
  canvas.width = Math.round(canvas.clientWidth * ratio);
  canvas.height = Math.round(canvas.clientHeight * ratio);
  window.Module._widegate_frame(canvas.clientWidth, canvas.clientHeight, ratio);
}

window.Module = {
  canvas,
  onRuntimeInitialized() {
    requestAnimationFrame(draw);
    window.addEventListener('resize', () => requestAnimationFrame(draw));
  },
};
