// The plain shapes of a framing decision list: sizes, points, boxes and the four nested layers of a
// canvas, with the pure steps that move them. No document, no JSON.
//
// Coordinates are pixels of the canvas: origin at its top left corner, x right, y down; an anchor
// is the position of a box's left and top edge (ASC FDL 2.0.1, 7.3.4.10.5).
#pragma once

#include <cstdint>

namespace widegate::fdl {

/// Width and height in pixels; both zero means "there is no such layer".
struct Size {
  double width = 0;
  double height = 0;
  friend bool operator==(const Size&, const Size&) = default;
};

/// Width and height as counts (pixels, photosites or the terms of an aspect ratio).
struct WholeSize {
  std::int64_t width = 0;
  std::int64_t height = 0;
  friend bool operator==(const WholeSize&, const WholeSize&) = default;
};

/// A position in pixels from the canvas's top left corner.
struct Point {
  double x = 0;
  double y = 0;
  friend bool operator==(const Point&, const Point&) = default;
};

struct Box {
  Point anchor;
  Size size;
  friend bool operator==(const Box&, const Box&) = default;
};

/// The layers a canvas template can name, from the outermost inwards.
enum class Layer { canvas, effective, protection, framing };

/// The nested areas of one canvas; the canvas itself is anchored at (0, 0).
struct Layers {
  Size canvas;
  Box effective;
  Box protection;
  Box framing;
  friend bool operator==(const Layers&, const Layers&) = default;
};

/// A scale kept as a fraction, so that a size is multiplied first and divided last: 6560 times the
/// quotient 3840/6560 is not 3840 in binary, 6560 * 3840 / 6560 is.
struct Ratio {
  double numerator = 1;
  double denominator = 1;
  [[nodiscard]] double value() const { return numerator / denominator; }
};

/// Layers after a shift: the stored anchors never go below zero, the exact ones are kept beside.
struct ShiftedLayers {
  Layers layers;
  Point effective;   ///< Exact anchor, may be negative.
  Point protection;  ///< Exact anchor, may be negative.
  Point framing;     ///< Exact anchor, may be negative.
};

[[nodiscard]] WholeSize to_whole(Size size);
[[nodiscard]] Size to_size(WholeSize size);

/// True when the layer is missing (both sides zero).
[[nodiscard]] bool absent(Size size);

/// The named layer's box; the canvas's box is anchored at (0, 0).
[[nodiscard]] Box layer_box(const Layers& layers, Layer layer);

/// Gives a missing canvas or effective area the box of the outermost layer present (a missing
/// protection stays missing), then measures every anchor from `origin`, never below zero.
[[nodiscard]] Layers fill_gaps(Layers layers, Point origin);

/// De-squeezes, scales and squeezes again: x * source_squeeze * scale / target_squeeze, y * scale.
/// Squeezes are above zero.
[[nodiscard]] Layers scaled(const Layers& layers, double source_squeeze, Ratio scale,
                            double target_squeeze);

/// Moves effective area, protection and framing; the canvas stays.
[[nodiscard]] ShiftedLayers shifted(Layers layers, Point offset);

/// Cuts every layer to the canvas and to its parent. What a negative exact anchor puts outside is
/// cut from the size as well.
[[nodiscard]] Layers cropped(const ShiftedLayers& moved);

}  // namespace widegate::fdl
