#include "core/choose/caution.h"

#include <iterator>

namespace widegate {
namespace {

constexpr CautionInfo kCautions[] = {
    {"other_squeeze", "mode shaped for another squeeze"},
    {"outside_circle", "mode larger than the image circle"},
    {"tight_circle", "image circle hardly larger than needed"},
    {"upscaled", "upscaled in post"},
    {"slow_card", "card hardly fast enough"},
    {"few_bits", "under 10 bits"},
    {"much_compressed", "compressed more than 11:1"},
    {"binned", "photosites joined"},
    {"other_view", "view not reached with this lens set"},
    {"not_known", "something asked for is not known"},
    {"claimed_card", "card speed claimed, not guaranteed"},
    {"other_shape", "file of another shape than the mode"},
};
static_assert(std::size(kCautions) == kCautionCount);

}  // namespace

const CautionInfo& caution_info(Caution caution) {
  return kCautions[static_cast<std::size_t>(caution)];
}

std::string caution_words(Cautions cautions) {
  std::string text;
  for_each_caution(cautions, [&text](Caution caution) {
    if (!text.empty()) text += ", ";
    text += caution_info(caution).words;
  });
  return text;
}

}  // namespace widegate
