#include "core/choose/ranking_words.h"

#include <algorithm>
#include <string_view>

#include "core/base/number_text.h"

namespace widegate {
namespace {

std::string counted(std::size_t count) { return print_grouped(static_cast<std::int64_t>(count)); }

std::string passing_words(const Ranking& ranking) {
  const std::string all = counted(ranking.formats.size());
  if (ranking.accepted == 0) return "None of " + all + " formats passes.";
  const std::string_view verb = ranking.accepted == 1 ? " format passes." : " formats pass.";
  return counted(ranking.accepted) + " of " + all + std::string(verb);
}

std::string caution_line(const Ranking& ranking) {
  if (ranking.accepted == 0 || ranking.without_caution > 0) return {};
  return "Every one of them carries a caution; the first: " +
         caution_words(ranking.formats.front().figures.cautions) + ".";
}

/// Formats that the kind of card alone keeps out, and the cameras of those that may have it.
struct CardCount {
  std::size_t kept_out = 0;
  std::vector<std::string_view> cameras;  ///< That take the card, by id.
};

CardCount count_by_card(const Ranking& ranking) {
  CardCount count;
  for (const RankedFormat& format : ranking.formats) {
    const Findings& findings = format.figures.findings;
    const bool missed = findings.missed(Requirement::media);
    count.kept_out += missed && findings.count(Met::missed) == 1 ? 1 : 0;
    const std::string_view camera = format.format.camera;
    const bool listed =
        std::find(count.cameras.begin(), count.cameras.end(), camera) != count.cameras.end();
    if (!missed && !listed) count.cameras.push_back(camera);
  }
  std::sort(count.cameras.begin(), count.cameras.end());
  return count;
}

std::string camera_name(const Plan& plan, const Catalogue& catalogue, std::string_view id) {
  const Camera* camera = find_row(plan.own.cameras, catalogue.cameras, id);
  return camera == nullptr ? std::string(id) : camera->name;
}

/// A card that hardly any camera takes, where it keeps out more than passes.
std::string card_line(const Plan& plan, const Catalogue& catalogue, const Ranking& ranking) {
  const CardCount count = count_by_card(ranking);
  if (count.kept_out == 0 || count.kept_out <= ranking.accepted) return {};
  const Card* card = find_row(plan.own.cards, catalogue.cards, plan.store.card);
  const std::string name = card == nullptr ? plan.store.card : card->name;
  const std::string rest = counted(count.kept_out) + " more would pass with a card that fits.";
  if (count.cameras.empty()) return "No camera here takes the card, " + name + ": " + rest;
  std::string takers;
  for (const std::string_view id : count.cameras) {
    takers += (takers.empty() ? "" : "; ") + camera_name(plan, catalogue, id);
  }
  return "The card, " + name + ", fits only: " + takers + ". " + rest;
}

std::string as_good_line(const Ranking& ranking) {
  const auto count = std::count_if(ranking.formats.begin(), ranking.formats.end(),
                                   [](const RankedFormat& format) { return format.as_good; });
  if (count < 2) return {};
  return "The first " + counted(static_cast<std::size_t>(count)) +
         " are equally good (scores within 0.01): take what you can get.";
}

bool plays_at_once(const Plan& plan, const Catalogue& catalogue, const RankedFormat& format) {
  const Codec* codec = find_row(plan.own.codecs, catalogue.codecs, format.format.codec);
  return codec == nullptr || codec->facts.plays_at_once.value_or(true);
}

/// Where the first has to be converted for the edit: which one would not.
std::string edit_line(const Plan& plan, const Catalogue& catalogue, const Ranking& ranking) {
  const auto& formats = ranking.formats;
  if (ranking.without_caution == 0 || plays_at_once(plan, catalogue, formats.front())) return {};
  for (std::size_t i = 1; i < ranking.without_caution; ++i) {
    if (!plays_at_once(plan, catalogue, formats[i])) continue;
    const FormatChoice& format = formats[i].format;
    const Codec* codec = find_row(plan.own.codecs, catalogue.codecs, format.codec);
    return "The first has to be converted before it is cut; the best that plays at once is "
           "number " +
           counted(i + 1) + ": " + camera_name(plan, catalogue, format.camera) + ", " +
           codec->name + ".";
  }
  return {};
}

std::string_view lens_line(LensGiven given) {
  constexpr std::string_view kLines[] = {
      "Each has the focal length of the set that comes nearest to the plan's view.",
      "Each has the plan's lens.",
      "Each has the plan's lens: only one camera is considered.",
      "Each has the plan's lens: it is not of a set, or its circle is your own.",
      "Each has the plan's lens: the plan's camera is not considered, so there is no view to "
      "match.",
      "Each has the plan's lens: it does not cover the plan's own format, so there is no view to "
      "match."};
  return kLines[static_cast<std::size_t>(given)];
}

}  // namespace

std::vector<std::string> words_above_ranking(const Plan& plan, const Catalogue& catalogue,
                                             const Ranking& ranking) {
  if (!ranking.problems.empty() || ranking.formats.empty()) return {};
  std::vector<std::string> lines = {
      passing_words(ranking),
      caution_line(ranking),
      card_line(plan, catalogue, ranking),
      as_good_line(ranking),
      edit_line(plan, catalogue, ranking),
      ranking.accepted > 0 ? std::string(lens_line(ranking.lens_given)) : std::string()};
  if (!ranking.cover_known) {
    lines.emplace_back(
        "The image circle is not known, so cover rejects nothing: ask the maker or "
        "test the lens.");
  }
  std::erase_if(lines, [](const std::string& line) { return line.empty(); });
  return lines;
}

}  // namespace widegate
