#include "web/door/mirror.h"

namespace widegate {

const Control* Mirror::find(std::string_view id) const {
  for (const Control& control : controls) {
    if (control.id == id) return &control;
  }
  return nullptr;
}

}  // namespace widegate
