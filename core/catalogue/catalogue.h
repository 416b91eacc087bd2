// Everything that can be chosen: cameras with their modes and recording options, codecs, cards,
// lens sets, and what the data passes through afterwards. Row types and look-up only; reading from
// JSON is in catalogue_json.h, the built-in rows are catalogue/*.json.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/rational.h"
#include "core/catalogue/codec.h"
#include "core/catalogue/commission.h"

namespace widegate {

/// What is written for a sensor mode: the raster of the file, and which codecs may write it.
struct Recording {
  std::string id;
  std::string name;
  /// Raster of the file in pixels; 0 x 0 keeps the raster of the mode, photosite for pixel.
  std::int64_t width_pixels = 0;
  std::int64_t height_pixels = 0;
  /// The squeeze this option removes in camera (2 for a 2x lens); 1 leaves the picture as it is.
  Rational desqueeze = 1;
  /// Highest frame rate of this option; nothing when only the mode limits it. May exceed the mode's
  /// figure, never its effect: the lower of the two holds.
  std::optional<Rational> max_rate;
  std::vector<std::string> codecs;  ///< Ids, at least one.
  friend bool operator==(const Recording&, const Recording&) = default;
};

/// The area of the sensor that is read.
struct SensorMode {
  std::string id;
  std::string name;
  std::int64_t width_photosites = 0;
  std::int64_t height_photosites = 0;
  double width_mm = 0;  ///< From the pitch, or from the standard for a film aperture.
  double height_mm = 0;
  std::optional<Rational> max_rate;   ///< Frames per second; nothing when unlimited (film scans).
  std::optional<Rational> squeeze;    ///< Of the lens that the mode is shaped for; nothing: any.
  bool binned = false;                ///< Photosites are joined before they are read.
  std::vector<Recording> recordings;  ///< At least one.
  friend bool operator==(const SensorMode&, const SensorMode&) = default;
};

/// What a camera records on.
enum class Medium { digital, film };

/// How film runs through a camera; nothing of it for a digital one, or where it is not known.
struct FilmGauge {
  std::optional<double> gauge_mm;                      ///< Width of the film: 35; Super 8 is 8.
  std::optional<std::int64_t> perforations_per_frame;  ///< Pulled down for each frame.
  std::optional<Rational> frames_per_foot;
  std::string source;
  friend bool operator==(const FilmGauge&, const FilmGauge&) = default;
};

/// A camera, or a film aperture by its standard.
struct Camera {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t width_photosites = 0;  ///< Whole sensor.
  std::int64_t height_photosites = 0;
  double width_mm = 0;
  double height_mm = 0;
  Medium medium = Medium::digital;
  FilmGauge film = {};
  std::optional<Rational> max_rate;   ///< The camera's own ceiling, below which its modes' stand.
  std::optional<double> read_out_ms;  ///< From the first row of the whole sensor to the last.
  std::vector<std::string> media;     ///< Kinds of cards it takes (Card::kind); empty: not known.
  std::vector<SensorMode> modes;      ///< At least one, none larger than the sensor.
  friend bool operator==(const Camera&, const Camera&) = default;
};

/// One focal length of a lens set.
struct Lens {
  double focal_mm = 0;         ///< Marked focal length (the vertical one of an anamorphic lens).
  double image_circle_mm = 0;  ///< Diameter at the sensor.
  double widest_t_stop = 0;
  double close_focus_m = 0;
  friend bool operator==(const Lens&, const Lens&) = default;
};

/// Lenses that belong together: one squeeze, a list of focal lengths in rising order.
struct LensSet {
  std::string id;
  std::string name;
  std::string source;
  Rational squeeze = 1;
  /// Factors of the extenders (above 1) and reducers (below) that go with the set: focal length,
  /// image circle and stop are all multiplied by it.
  std::vector<Rational> extenders;
  std::vector<Lens> lenses;  ///< At least one.
  friend bool operator==(const LensSet&, const LensSet&) = default;
};

/// A memory card.
struct Card {
  std::string id;
  std::string name;
  std::string source;
  /// What fits where (an id: "sd"), matched with Camera::media; may be empty.
  std::string kind = {};
  std::int64_t capacity_bytes = 0;
  Rational usable_share = 1;  ///< Share of the capacity that takes footage, above 0 to 1.
  /// Speed that holds until the card is full. With a standard's class this is the guaranteed
  /// figure, not the number on the box.
  std::int64_t write_bytes_per_s = 0;
  std::int64_t read_bytes_per_s = 0;
  /// Who vouches for it: a standard's class ("VPG400") or the camera's maker, whose own or approved
  /// magazine it is; empty: the card's maker says so.
  std::string guarantee;
  double price = 0;
  friend bool operator==(const Card&, const Card&) = default;
};

/// A cable or network: what is left of the line rate for data.
struct Link {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t payload_bytes_per_s = 0;
  friend bool operator==(const Link&, const Link&) = default;
};

/// A drive or array that copies are written to.
struct Drive {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t capacity_bytes = 0;
  std::int64_t write_bytes_per_s = 0;
  std::int64_t read_bytes_per_s = 0;
  double price = 0;
  friend bool operator==(const Drive&, const Drive&) = default;
};

/// A generation of archive tape, native (uncompressed) figures.
struct Tape {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t capacity_bytes = 0;
  std::int64_t write_bytes_per_s = 0;
  double price = 0;
  friend bool operator==(const Tape&, const Tape&) = default;
};

/// A checksum and how fast one stream of it runs.
struct Checksum {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t bytes_per_s = 0;
  friend bool operator==(const Checksum&, const Checksum&) = default;
};

/// What a container adds to the coded frames.
struct Container {
  std::string id;
  std::string name;
  std::string source;
  std::int64_t bytes_per_frame = 0;
  std::int64_t audio_bytes_per_frame_and_channel = 0;
  friend bool operator==(const Container&, const Container&) = default;
};

/// The whole library. Ids are unique within each list.
struct Catalogue {
  std::vector<Camera> cameras;
  std::vector<LensSet> lens_sets;
  std::vector<Codec> codecs;
  std::vector<Card> cards;
  std::vector<Link> links;
  std::vector<Drive> drives;
  std::vector<Tape> tapes;
  std::vector<Checksum> checksums;
  std::vector<Container> containers;
  std::vector<Commission> commissions;
  friend bool operator==(const Catalogue&, const Catalogue&) = default;
};

/// The row with this id, or nullptr.
template <class Row>
[[nodiscard]] const Row* find_row(const std::vector<Row>& rows, std::string_view id) {
  for (const Row& row : rows) {
    if (row.id == id) return &row;
  }
  return nullptr;
}

/// One's own rows first, then the library's: a plan carries its own camera wherever it goes.
template <class Row>
[[nodiscard]] const Row* find_row(const std::vector<Row>& own, const std::vector<Row>& library,
                                  std::string_view id) {
  const Row* row = find_row(own, id);
  return row != nullptr ? row : find_row(library, id);
}

/// Both libraries as one: the added rows first, then the base's; an added row replaces its
/// namesake.
[[nodiscard]] Catalogue merged_catalogue(Catalogue base, Catalogue added);

}  // namespace widegate
