# The WASM programs: the site (and the bare window it is measured against), and programs for Node.

if(WIDEGATE_WEB_APP)
  # The compiler's own libraries are built for size, so that nothing in them is inlined: our programs instantiate
  # what they use of std::string themselves (a third off the time of an evaluation, at no size).
  target_compile_definitions(widegate_flags INTERFACE _LIBCPP_DISABLE_EXTERN_TEMPLATE)

  # At -Oz the C library copies and fills memory byte by byte; its quicker way, from the same sources, is 300 bytes.
  set(libc ${EMSCRIPTEN_ROOT_PATH}/system/lib/libc)
  add_library(quick_memory OBJECT
    ${libc}/emscripten_memcpy.c ${libc}/emscripten_memset.c ${libc}/emscripten_memmove.c)
  target_include_directories(quick_memory SYSTEM PRIVATE
    ${libc}/musl/src/include ${libc}/musl/src/internal ${libc}/musl/arch/emscripten)
  # Standalone: without the way through JavaScript for large blocks. No link-time optimisation, which would find
  # a copy in the loop of memcpy and make it call itself.
  target_compile_definitions(quick_memory PRIVATE EMSCRIPTEN_STANDALONE_WASM)
  target_compile_options(quick_memory PRIVATE -w -Os -fno-builtin -fno-lto)
endif()

# What decides the speed and size of the site's own code; the benchmarks are linked with the same.
function(widegate_as_in_the_site target)
  target_link_libraries(${target} PRIVATE $<TARGET_OBJECTS:quick_memory>)
  # The last option: what has a single caller stays out of it all the same, or the site could not be split in two.
  target_link_options(${target} PRIVATE -Wl,-mllvm,-inline-threshold=-30 -sALLOW_MEMORY_GROWTH=1 -sMALLOC=emmalloc
    -sBINARYEN_EXTRA_PASSES=--one-caller-inline-max-function-size=20)
endfunction()

# A program for the browser, as small as the tools make it.
function(widegate_browser_program target)
  widegate_as_in_the_site(${target})
  target_link_options(${target} PRIVATE
    -sENVIRONMENT=web -sUSE_WEBGL2=1 -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
    -sGL_TRACK_ERRORS=0 -sGL_SUPPORT_AUTOMATIC_ENABLE_EXTENSIONS=0 -sSUPPORT_ERRNO=0 -sSUPPORT_LONGJMP=0
    -sFILESYSTEM=0 -sTEXTDECODER=2 -sDYNAMIC_EXECUTION=0
    -sINCOMING_MODULE_JS_API=canvas,onRuntimeInitialized,onAbort,locateFile,print,printErr,instantiateWasm ${ARGN})
endfunction()

# What the table names is called across the seam between the two parts and stays in functions of its own: inlined into
# a caller it would come with that.
function(widegate_keep_out_of_line table)
  file(STRINGS ${table} rows REGEX "^[a-z]+/")
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${table})
  foreach(row ${rows})
    if(row MATCHES "/$")
      file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/${row}*.cpp)
    else()
      file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/${row})
    endif()
    set_source_files_properties(${sources} TARGET_DIRECTORY ${ARGN} PROPERTIES COMPILE_OPTIONS -finline-hint-functions)
  endforeach()
endfunction()

# Splits a program in two by a table of sources (tools/split_program): what comes `first`, and the `rest`.
# More arguments: the libraries whose objects the table speaks of.
function(widegate_split_program target table first rest)
  widegate_keep_out_of_line(${table} ${ARGN})
  target_link_options(${target} PRIVATE --profiling-funcs -Wl,--no-demangle)
  # Beside the compiler's own programs, wherever its package or SDK keeps them.
  file(GLOB llvm_folders /usr/lib/llvm-*/bin)
  find_program(WIDEGATE_LLVM_NM NAMES llvm-nm HINTS ${EMSCRIPTEN_ROOT_PATH}/../bin
               PATHS ${llvm_folders} REQUIRED NO_CMAKE_FIND_ROOT_PATH)
  find_program(WIDEGATE_WASM_SPLIT NAMES wasm-split HINTS ${EMSCRIPTEN_ROOT_PATH}/../bin REQUIRED NO_CMAKE_FIND_ROOT_PATH)
  find_program(WIDEGATE_WASM_OPT NAMES wasm-opt HINTS ${EMSCRIPTEN_ROOT_PATH}/../bin REQUIRED NO_CMAKE_FIND_ROOT_PATH)
  set(objects)
  foreach(library ${ARGN})
    list(APPEND objects $<JOIN:$<TARGET_OBJECTS:${library}>,\n>)
  endforeach()
  list(JOIN objects "\n" objects)
  file(GENERATE OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/${target}.objects CONTENT "${objects}\n")
  add_custom_command(
    OUTPUT ${first} ${rest}
    COMMAND ${CMAKE_SOURCE_DIR}/tools/split_program --table ${table}
            --program $<PATH:REPLACE_EXTENSION,$<TARGET_FILE:${target}>,wasm>
            --objects ${CMAKE_CURRENT_BINARY_DIR}/${target}.objects --nm ${WIDEGATE_LLVM_NM}
            --split ${WIDEGATE_WASM_SPLIT} --opt ${WIDEGATE_WASM_OPT}
            --first ${first} --rest ${rest} --names ${rest}.names
    DEPENDS ${target} ${table} ${CMAKE_SOURCE_DIR}/tools/split_program
    COMMENT "Splitting ${target} in two")
endfunction()

# A program run by Node, with the machine's files; prints its own exit code.
function(widegate_node_program target)
  target_link_options(${target} PRIVATE
    -sENVIRONMENT=node -sNODERAWFS=1 -sEXIT_RUNTIME=1 -sALLOW_MEMORY_GROWTH=1
    --pre-js ${CMAKE_SOURCE_DIR}/tools/lib/node_without_fetch.js)
  set_property(TARGET ${target} APPEND PROPERTY LINK_DEPENDS
               ${CMAKE_SOURCE_DIR}/tools/lib/node_without_fetch.js)
endfunction()
