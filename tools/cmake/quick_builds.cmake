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
# once a file. With GCC alone: the WASM builds go without, and so notice a file that does not include what it uses.
function(widegate_read_headers_once target)
  if(NOT CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    return()
  endif()
  # By its preprocessed text, which ccache needs to know.
  target_compile_options(${target} PRIVATE $<$<COMPILE_LANGUAGE:CXX>:-fpch-preprocess>)
  target_precompile_headers(${target} PRIVATE
    <algorithm> <array> <cmath> <cstdint> <functional> <map> <optional> <span> <string> <string_view> <utility>
    <variant> <vector> ${ARGN})
endfunction()
