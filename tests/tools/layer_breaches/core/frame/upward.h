// Not compiled: a question must not know the report that is put together from it.
#pragma once
#include "core/report/report.h"
