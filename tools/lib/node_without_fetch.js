// Emscripten 3.1.6 takes any fetch for a browser's and hands it a file path; Node 18 and later have one.
globalThis.fetch = undefined;
