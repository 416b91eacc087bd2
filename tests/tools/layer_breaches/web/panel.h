// Not compiled: what tools/check_layers.py must refuse in web/.
#pragma once
#include <emscripten/html5.h>

#include "tools/command.h"
