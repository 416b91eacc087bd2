// Not compiled: what tools/check_layers.py must refuse in web/.
#pragma once
#include <emscripten/html5.h>
#include <imgui.h>

#include "tools/cli/command.h"
#include "web/draw/screen.h"
