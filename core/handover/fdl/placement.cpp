#include "core/handover/fdl/placement.h"

#include <algorithm>

namespace widegate::fdl {
namespace {

double alignment_share(Alignment alignment) {
  switch (alignment) {
    case Alignment::start:
      return 0;
    case Alignment::center:
      return 0.5;
    case Alignment::end:
      break;
  }
  return 1;
}

}  // namespace

AxisPlacement place_axis(const AxisRequest& request) {
  const bool crop = !request.pad && request.maximum > 0 && request.box > request.maximum;
  if (!request.pad && !crop) return {request.box, 0, false};
  const double output = request.maximum;
  const double target = request.pad && request.target == 0 ? request.fit_size : request.target;
  const bool centre_target = request.pad || request.alignment == Alignment::center;
  const double offset = centre_target ? (output - target) / 2 : 0;
  const double gap = (target - request.fit_size) * alignment_share(request.alignment);
  double shift = offset + gap - request.fit_anchor;
  if (crop) shift = std::clamp(shift, output - request.box, 0.0);
  return {output, shift, true};
}

}  // namespace widegate::fdl
