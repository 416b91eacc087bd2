# Toolchain of the web presets: finds emscripten (Debian's package, or an SDK named by EMSDK) and its own CMake module.
find_program(WIDEGATE_EMCC NAMES emcc HINTS "$ENV{EMSDK}/upstream/emscripten" REQUIRED)
get_filename_component(emcc_folder "${WIDEGATE_EMCC}" DIRECTORY)
find_file(WIDEGATE_EMSCRIPTEN_MODULE NAMES Emscripten.cmake REQUIRED NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH
          PATHS "${emcc_folder}/cmake/Modules/Platform" /usr/share/emscripten/cmake/Modules/Platform)
include("${WIDEGATE_EMSCRIPTEN_MODULE}")

# Debian's emscripten finds its JavaScript optimiser in Debian's module folder only when Node is told of it.
if(EXISTS /usr/share/nodejs)
  set(CMAKE_C_LINKER_LAUNCHER ${CMAKE_COMMAND} -E env NODE_PATH=/usr/share/nodejs)
  set(CMAKE_CXX_LINKER_LAUNCHER ${CMAKE_C_LINKER_LAUNCHER})
endif()
