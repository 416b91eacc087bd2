// What reading and checking a framing decision list turns up.
#pragma once

#include "core/base/problem.h"

namespace widegate::fdl {

/// Problems keep the document from being used; warnings do not.
struct Findings {
  Problems problems;
  Problems warnings;
};

}  // namespace widegate::fdl
