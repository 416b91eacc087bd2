# What makes building quicker and changes nothing that is built.

# Compiled before: taken from ccache where the machine has it (and the builder has not said what else to use).
find_program(WIDEGATE_CCACHE ccache)
if(WIDEGATE_CCACHE)
  foreach(language C CXX)
    if(NOT DEFINED CMAKE_${language}_COMPILER_LAUNCHER AND NOT DEFINED ENV{CMAKE_${language}_COMPILER_LAUNCHER})
      # Precompiled headers are checked by what they were made of, and checkouts differ only in where they lie.
      set(CMAKE_${language}_COMPILER_LAUNCHER
          ${CMAKE_COMMAND} -E env CCACHE_BASEDIR=${CMAKE_SOURCE_DIR}
          CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime ${WIDEGATE_CCACHE})
    endif()
  endforeach()
endif()

# For test programs: the standard library's headers and those of other projects that are named are read once instead of
# once a file, but for the file that has doctest's own code. The WASM build goes without, and so notices a test that does
# not include what it uses. What is compiled at -O3 goes without, because GCC 12 then warns of its own library's code.
function(widegate_read_headers_once target main)
  if(EMSCRIPTEN)
    return()
  endif()
  # By its preprocessed text, which ccache needs to know; clang's own way is to leave the time out.
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    target_compile_options(${target} PRIVATE $<$<COMPILE_LANGUAGE:CXX>:-fpch-preprocess>)
  else()
    target_compile_options(${target} PRIVATE "$<$<COMPILE_LANGUAGE:CXX>:SHELL:-Xclang -fno-pch-timestamp>")
  endif()
  target_precompile_headers(${target} PRIVATE
    <algorithm> <array> <cmath> <cstdint> <functional> <map> <optional> <span> <string> <string_view> <utility>
    <variant> <vector> ${ARGN})
  set_source_files_properties(${main} PROPERTIES SKIP_PRECOMPILE_HEADERS ON)
endfunction()
