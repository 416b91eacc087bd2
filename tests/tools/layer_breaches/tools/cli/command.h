// Not compiled: what tools/check_layers.py must refuse in tools/.
#pragma once
#include <string>

#include "web/ui/ui.h"
