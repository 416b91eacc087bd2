#include "core/store/archive.h"

#include <algorithm>

namespace widegate {
namespace {

constexpr double kSecondsPerHour = 3600;
constexpr double kBitsPerByte = 8;
constexpr double kMegabit = 1e6;
constexpr double kTerabyte = 1e12;

/// Media of all copies, by a way of counting those of one.
template <class Count>
std::optional<std::int64_t> media(std::int64_t copies, const MediaLoad& load,
                                  std::int64_t capacity_bytes, Count count) {
  if (copies == 0) return 0;
  const auto one = count(load, capacity_bytes);
  return one ? (Wide(*one) * copies).count() : one;
}

double tape_bytes_per_s(const Storing& storing, const StoreParts& parts) {
  const std::int64_t tape = parts.tape->write_bytes_per_s;
  return static_cast<double>(storing.drive_copies > 0 ? std::min(tape, parts.drive.read_bytes_per_s)
                                                      : tape);
}

/// A tape that is verified is read through once more.
double tape_passes(Verification verification) { return verification == Verification::none ? 1 : 2; }

double uploaded_bytes(const Storing& storing, double originals_bytes, double playing_seconds) {
  const double proxies = playing_seconds * storing.proxy_megabits_per_s * kMegabit / kBitsPerByte;
  const bool whole = storing.upload_what == UploadWhat::originals;
  return (whole ? originals_bytes : proxies) * storing.upload_share;
}

}  // namespace

std::optional<ArchiveFigures> archive_figures(const Storing& storing, const StoreParts& parts,
                                              const Quotient& total_bytes, const MediaLoad& load,
                                              double playing_seconds) {
  const std::int64_t tape_copies = parts.tape == nullptr ? 0 : storing.tape_copies;
  const std::int64_t drive_bytes = parts.drive.capacity_bytes;
  const std::int64_t tape_bytes = parts.tape == nullptr ? 1 : parts.tape->capacity_bytes;
  const auto drives = media(storing.drive_copies, load, drive_bytes, media_filled);
  const auto tapes = media(tape_copies, load, tape_bytes, media_filled);
  const auto fewest_drives = media(storing.drive_copies, load, drive_bytes, fewest_media);
  const auto fewest_tapes = media(tape_copies, load, tape_bytes, fewest_media);
  if (!total_bytes.ok() || !drives || !tapes || !fewest_drives || !fewest_tapes) {
    return std::nullopt;
  }

  const double total = total_bytes.to_double();
  const double uploaded = uploaded_bytes(storing, total, playing_seconds);
  ArchiveFigures figures{
      .shoot_total_bytes = total,
      .copies_total_bytes = total * static_cast<double>(storing.drive_copies + tape_copies),
      .drives = *drives,
      .tapes = *tapes,
      .fewest_drives = *fewest_drives,
      .fewest_tapes = *fewest_tapes};
  if (tape_copies > 0) {
    figures.tape_hours = total * static_cast<double>(tape_copies) /
                         tape_bytes_per_s(storing, parts) / kSecondsPerHour *
                         tape_passes(storing.verification);
    figures.tape_cost = static_cast<double>(*tapes) * parts.tape->price;
  }
  figures.upload_total_bytes = uploaded;
  figures.upload_hours =
      uploaded * kBitsPerByte / (storing.upload_megabits_per_s * kMegabit) / kSecondsPerHour;
  figures.drive_cost = static_cast<double>(*drives) * parts.drive.price;
  figures.upload_cost = uploaded / kTerabyte * storing.upload_price_per_terabyte;
  return figures;
}

}  // namespace widegate
