// Not compiled: what tools/check_layers.py must refuse in core/.
#pragma once
#include <imgui.h>
#include <chrono>

#include "web/ui/ui.h"
