# Link options of the WASM programs: the site (and the bare window it is measured against), and programs for Node.

# A program for the browser, as small as the tools make it.
function(widegate_browser_program target)
  target_link_options(${target} PRIVATE
    -sENVIRONMENT=web -sUSE_WEBGL2=1 -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
    -Wl,-mllvm,-inline-threshold=-30
    -sGL_TRACK_ERRORS=0 -sGL_SUPPORT_AUTOMATIC_ENABLE_EXTENSIONS=0 -sSUPPORT_ERRNO=0 -sSUPPORT_LONGJMP=0
    -sALLOW_MEMORY_GROWTH=1 -sMALLOC=emmalloc -sFILESYSTEM=0 -sTEXTDECODER=2 -sDYNAMIC_EXECUTION=0
    -sINCOMING_MODULE_JS_API=canvas,onRuntimeInitialized,onAbort,locateFile,print,printErr ${ARGN})
endfunction()

# A program run by Node, with the machine's files; prints its own exit code.
function(widegate_node_program target)
  target_link_options(${target} PRIVATE
    -sENVIRONMENT=node -sNODERAWFS=1 -sEXIT_RUNTIME=1 -sALLOW_MEMORY_GROWTH=1
    --pre-js ${CMAKE_SOURCE_DIR}/tools/lib/node_without_fetch.js)
  set_property(TARGET ${target} APPEND PROPERTY LINK_DEPENDS
               ${CMAKE_SOURCE_DIR}/tools/lib/node_without_fetch.js)
endfunction()
