# Libraries built from the sources that tools/setup staged in build/deps; their warnings are not ours.
if(NOT EXISTS "${WIDEGATE_DEPS}/imgui/imgui.h")
  message(FATAL_ERROR "No libraries in ${WIDEGATE_DEPS}: run tools/setup first")
endif()

# Dear ImGui's core, with our own configuration (web/host/imgui_config.h); natively for the UI tests, and for the web.
add_library(imgui STATIC EXCLUDE_FROM_ALL
  ${WIDEGATE_DEPS}/imgui/imgui.cpp ${WIDEGATE_DEPS}/imgui/imgui_draw.cpp
  ${CMAKE_SOURCE_DIR}/web/host/imgui_without_tables.cpp ${WIDEGATE_DEPS}/imgui/imgui_widgets.cpp)
target_include_directories(imgui SYSTEM PUBLIC ${WIDEGATE_DEPS}/imgui)
target_include_directories(imgui PRIVATE ${CMAKE_SOURCE_DIR})
target_compile_definitions(imgui PUBLIC IMGUI_USER_CONFIG="web/host/imgui_config.h")
target_compile_options(imgui PRIVATE -w -fno-exceptions -fno-rtti)

# QR codes: the C edition, because the C++ one throws.
add_library(qrcodegen STATIC EXCLUDE_FROM_ALL ${WIDEGATE_DEPS}/qrcodegen/qrcodegen.c)
target_include_directories(qrcodegen SYSTEM PUBLIC ${WIDEGATE_DEPS}/qrcodegen)
target_compile_options(qrcodegen PRIVATE -w)

if(WIDEGATE_SANITIZE)
  foreach(library imgui qrcodegen)
    # Compiled seldom, run often.
    target_compile_options(${library} PRIVATE -O2 -fsanitize=address,undefined -fno-omit-frame-pointer)
  endforeach()
endif()
