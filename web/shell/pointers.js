// Pointer and wheel events of the canvas, handed on as they are; what they mean is decided in web/ui/touch.cpp.

const KINDS = { mouse: 0, touch: 1, pen: 2 };
const DOWN = 0;
const MOVE = 1;
const UP = 2;
const CANCEL = 3;

const LINE_PX = 16;

/** DOM button numbers (0 left, 1 middle, 2 right) as ImGui's (0 left, 1 right, 2 middle). */
const BUTTONS = [0, 2, 1];

/** @param pressed  called before a press reaches the program: an open text field ends */
export function watch_pointers(canvas, program, frames, pressed) {
  const origin = () => canvas.getBoundingClientRect();

  const send = (event, phase, box) => program.pointer({
    kind: KINDS[event.pointerType] ?? 0,
    phase,
    id: event.pointerId,
    button: BUTTONS[Math.max(event.button, 0)] ?? 0,
    x: event.clientX - box.left,
    y: event.clientY - box.top,
    time_s: event.timeStamp / 1000,
  });

  canvas.addEventListener('pointerdown', (event) => {
    if (event.button > 2) return;
    pressed();
    canvas.setPointerCapture(event.pointerId);
    send(event, DOWN, origin());
    frames.wake();
  });
  canvas.addEventListener('pointermove', (event) => {
    const box = origin();
    // Every step counts for the speed of a fling.
    const steps = event.pointerType === 'touch' ? event.getCoalescedEvents?.() : null;
    for (const step of steps?.length ? steps : [event]) send(step, MOVE, box);
    frames.wake();
  });
  canvas.addEventListener('pointerup', (event) => {
    send(event, UP, origin());
    // A tap may open a text field, and phones show their keyboard only from inside the event.
    frames.settle();
  });
  canvas.addEventListener('pointercancel', (event) => {
    send(event, CANCEL, origin());
    frames.wake();
  });
  canvas.addEventListener('pointerleave', (event) => {
    if (event.pointerType !== 'mouse' || event.buttons) return;
    send(event, CANCEL, origin());
    frames.wake();
  });
  // No made-up mouse events after a touch, no text selection, no focus taken from a text field.
  for (const type of ['touchend', 'mousedown']) {
    canvas.addEventListener(type, (event) => {
      if (event.cancelable) event.preventDefault();
    }, { passive: false });
  }
  canvas.addEventListener('contextmenu', (event) => event.preventDefault());
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    const box = origin();
    const unit = [1, LINE_PX, box.height][event.deltaMode];
    program.wheel({
      x: event.clientX - box.left, y: event.clientY - box.top,
      dx: event.deltaX * unit, dy: event.deltaY * unit, zoom: event.ctrlKey,
    });
    frames.wake();
  }, { passive: false });
}
