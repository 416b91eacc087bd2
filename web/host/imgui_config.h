// Dear ImGui's compile-time configuration: only what this front end uses, so that the download
// stays small. Included by Dear ImGui itself (IMGUI_USER_CONFIG); nothing else belongs here.
#pragma once

#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_DEFAULT_FONT    // our own subset is built in (tools/make_font)
#define IMGUI_DISABLE_FILE_FUNCTIONS  // no file system in the browser
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_SHELL_FUNCTIONS

// A long ranking has more than 65,536 corners.
#define ImDrawIdx unsigned int

// Dear ImGui reads with sscanf only settings from files and numbers typed into its own fields;
// there are neither here, and the library function is large.
#include <cstdio>
#define sscanf(...) 0
