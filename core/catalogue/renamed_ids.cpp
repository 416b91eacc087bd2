#include "core/catalogue/renamed_ids.h"

#include <algorithm>

namespace widegate {
namespace {

struct Renamed {
  std::string_view once;
  std::string_view today;
};

/// The rows of VC-3 are called by the compression ID of the standard (SMPTE ST 2019-1).
constexpr Renamed kCodecs[] = {
    {"vc-3-444-12", "vc-3-1270"}, {"vc-3-hqx", "vc-3-1271"}, {"vc-3-hq", "vc-3-1272"},
    {"vc-3-sq", "vc-3-1273"},     {"vc-3-lb", "vc-3-1274"},
};

void use_current_ids(std::vector<std::string>& codecs) {
  std::vector<std::string> current;
  current.reserve(codecs.size());
  for (const std::string& id : codecs) {
    const std::string_view today = current_codec_id(id);
    // Only a renamed id may go: the same id written twice is for the check to find.
    const bool repeated =
        today != id && std::find(codecs.begin(), codecs.end(), today) != codecs.end();
    if (!repeated) current.emplace_back(today);
  }
  codecs = std::move(current);
}

}  // namespace

std::string_view current_codec_id(std::string_view id) {
  const auto* const row = std::find_if(std::begin(kCodecs), std::end(kCodecs),
                                       [id](const Renamed& each) { return each.once == id; });
  return row == std::end(kCodecs) ? id : row->today;
}

void use_current_ids(Catalogue& rows) {
  for (Codec& codec : rows.codecs) codec.id = std::string(current_codec_id(codec.id));
  for (Camera& camera : rows.cameras) {
    for (SensorMode& mode : camera.modes) {
      for (Recording& recording : mode.recordings) use_current_ids(recording.codecs);
    }
  }
}

}  // namespace widegate
