// What the Cover question answers, as plain data; filled by cover.h.
#pragma once

#include <optional>
#include <vector>

namespace widegate {

/// Circle against one rectangle.
struct CoverFigures {
  double left_mm = 0, top_mm = 0, right_mm = 0, bottom_mm = 0;  ///< From the optical axis.
  bool covered = false;
  double area_mm2 = 0;     ///< Of the rectangle.
  double overlap_mm2 = 0;  ///< Of the rectangle inside the circle.
  double diagonal_mm = 0;  ///< Diameter the rectangle asks for: twice its farthest corner.
  double margin_mm = 0;    ///< Circle radius less farthest corner; negative when it fails.
  double uncovered_area_percent = 0;
  double largest_covered_scale = 0;  ///< Of the same rectangle about the optical axis.
};

/// One focal length of the lens set against this mode.
struct LensCover {
  double focal_mm = 0;         ///< As marked on the lens.
  double image_circle_mm = 0;  ///< With the extender.
  bool covers_mode = false;
  bool covers_protected = false;
  bool covers_frame = false;
};

/// The lens's image circle. Nothing in it holds when `known` is false.
struct CoverReport {
  bool known = false;
  bool interpolated = false;  ///< Unlisted focal length; the smaller neighbour's circle is used.
  double image_circle_mm = 0;
  CoverFigures mode;
  CoverFigures protected_area;
  CoverFigures frame;
  double largest_frame_width_mm = 0;  ///< Largest covered frame of the wanted shape in the mode.
  double largest_frame_height_mm = 0;
  double lost_padding_percent = 0;  ///< Of the mode outside the frame line, what stays dark.
  std::vector<LensCover> lens_set;
  std::optional<double>
      longest_uncovering_focal_mm;  ///< Longest focal that fails the main frame line.
};

}  // namespace widegate
