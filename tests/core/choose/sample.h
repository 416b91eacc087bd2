// Hand-made catalogues and plans for the tests of the ranking. Invented figures; what they mean is
// said where they are used.
#pragma once

#include <cstddef>
#include <random>

#include "core/catalogue/catalogue.h"
#include "core/plan/plan.h"

namespace widegate::choose_sample {

/// One camera with one sensor mode of 4000 x 3000 photosites, 24 x 18 mm, up to 60 fps, recorded as
/// it is in "raw-12" (12 bits a photosite: 18,000,000 bytes a frame); a lens set "lens" with
/// circles of 26 mm at 25 mm, 30 mm at 35 mm and 34 mm at 50 mm, and one, "wide", of 40 mm at 35
/// mm; a card "card" of 500 GB at 600 MB/s and one, "quick", of 1 TB at 1200 MB/s.
[[nodiscard]] Catalogue small_catalogue();

/// A plan for it: 2:1 frame line, no protection (4000 x 2000 photosites, 24 x 12 mm, diagonal
/// 26.83 mm), 35 mm lens, 24 fps, no sound, no mandate; cover of the frame line required. The
/// format passes.
[[nodiscard]] Plan small_plan();

/// The only format of small_catalogue().
[[nodiscard]] FormatChoice small_format();

/// The rows of small_catalogue() that are not cameras, and `formats` formats (or a few more) of
/// random sizes, rates, rasters and codecs of every form.
[[nodiscard]] Catalogue random_catalogue(std::mt19937& random, std::size_t formats);

/// A plan for any of these catalogues with random requirements, deliverable, lens and speed. Its
/// own format is one that can be evaluated.
[[nodiscard]] Plan random_plan(std::mt19937& random, const Catalogue& catalogue);

/// The same rows in another order, in every list where order has no meaning.
[[nodiscard]] Catalogue shuffled(Catalogue catalogue, std::mt19937& random);

}  // namespace widegate::choose_sample
