#include "core/handover/fdl/delivery_words.h"

#include <algorithm>

#include "core/report/figure_text.h"

namespace widegate::fdl {
namespace {

constexpr int kDecimals = 4;
/// Less than this is noise of the arithmetic, pixels.
constexpr double kNothing = 1e-6;

std::string number(double value) { return short_number(value, kDecimals); }
std::string size_words(Size size) { return number(size.width) + " × " + number(size.height); }
std::string place_words(Point at) { return number(at.x) + ", " + number(at.y); }

/// How many new pixels one source pixel becomes.
struct Enlargement {
  double across = 1;
  double down = 1;
};
Enlargement enlargement(const AppliedTemplate& applied) {
  const double scale = applied.scale.value();
  return {scale * applied.source_squeeze / applied.squeeze, scale};
}

void add_box(std::vector<DeliveryFigure>& figures, const Box& box, DeliveryFigure size,
             DeliveryFigure place) {
  if (absent(box.size)) return;
  size.text = size_words(box.size);
  place.text = place_words(box.anchor);
  figures.push_back(std::move(size));
  figures.push_back(std::move(place));
}

std::string padding_words(const Box& picture, Size canvas) {
  const double right = canvas.width - picture.anchor.x - picture.size.width;
  const double low = canvas.height - picture.anchor.y - picture.size.height;
  return number(picture.anchor.x) + " left, " + number(std::max(0.0, right)) + " right, " +
         number(picture.anchor.y) + " top, " + number(std::max(0.0, low)) + " bottom";
}

void note(Delivery& delivery, std::string text) {
  delivery.notes.push_back({Severity::caution, std::move(text)});
}

void note_enlarged(Delivery& delivery) {
  const Enlargement factor = enlargement(delivery.applied);
  const double most = std::max(factor.across, factor.down);
  if (most <= 1 + kNothing) return;
  note(delivery, "The picture is enlarged: " + short_number(factor.across * 100, 1) +
                     " % across, " + short_number(factor.down * 100, 1) +
                     " % down. The canvas shows more pixels than were recorded.");
}

void note_cut(Delivery& delivery) {
  const Size box = delivery.applied.bounding_box;
  const Size canvas = delivery.applied.layers.canvas;
  const double across = box.width - canvas.width;
  const double down = box.height - canvas.height;
  // Rounding the canvas down takes less than two pixels; that is no crop.
  if (across < 2 && down < 2) return;
  note(delivery, "The canvas is smaller than the scaled picture: " + number(std::max(0.0, across)) +
                     " px across and " + number(std::max(0.0, down)) + " px down are cut off.");
}

void note_framing(Delivery& delivery, Size source) {
  const Enlargement factor = enlargement(delivery.applied);
  const Size have = delivery.applied.layers.framing.size;
  const double across = source.width * factor.across - have.width;
  const double down = source.height * factor.down - have.height;
  if (across <= kNothing && down <= kNothing) return;
  note(delivery, "The canvas takes " + number(std::max(0.0, across)) +
                     " px of the framing's width and " + number(std::max(0.0, down)) +
                     " px of its height.");
}

}  // namespace

Box picture_on_canvas(const AppliedTemplate& applied) {
  const Size canvas = applied.layers.canvas;
  const Point from = applied.translation;
  const Point start{std::clamp(from.x, 0.0, canvas.width), std::clamp(from.y, 0.0, canvas.height)};
  const Point end{std::clamp(from.x + applied.bounding_box.width, 0.0, canvas.width),
                  std::clamp(from.y + applied.bounding_box.height, 0.0, canvas.height)};
  return {start, {end.x - start.x, end.y - start.y}};
}

std::vector<DeliveryFigure> delivery_figures(const Delivery& delivery) {
  const AppliedTemplate& applied = delivery.applied;
  const Layers& layers = applied.layers;
  std::vector<DeliveryFigure> figures;
  figures.push_back({"delivery.canvas", "Canvas", size_words(layers.canvas), "px"});
  add_box(figures, layers.effective, {"delivery.effective", "Effective area", {}, "px"},
          {"delivery.effective.at", "Effective area from left, top", {}, "px"});
  add_box(figures, layers.protection, {"delivery.protection", "Protection", {}, "px"},
          {"delivery.protection.at", "Protection from left, top", {}, "px"});
  add_box(figures, layers.framing, {"delivery.framing", "Framing", {}, "px"},
          {"delivery.framing.at", "Framing from left, top", {}, "px"});
  figures.push_back(
      {"delivery.padding", "Padding", padding_words(delivery.picture, layers.canvas), "px"});
  figures.push_back(
      {"delivery.scale", "Scale after de-squeeze", short_number(applied.scale.value(), 6), "×"});
  figures.push_back(
      {"delivery.squeeze", "Squeeze of the canvas", short_number(applied.squeeze, kDecimals), "×"});
  figures.push_back({"delivery.translation", "Picture moved right, down",
                     place_words(applied.translation), "px"});
  figures.push_back({"delivery.source", "From", delivery.canvas_name, ""});
  return figures;
}

void add_delivery_notes(Delivery& delivery, const Layers& source) {
  note_enlarged(delivery);
  note_cut(delivery);
  note_framing(delivery, source.framing.size);
  const bool had = !absent(source.protection.size);
  if (had && absent(delivery.applied.layers.protection.size)) {
    note(delivery,
         "The protection is not in the result. Preserve the protection, or a layer outside it, to "
         "keep "
         "it.");
  }
}

}  // namespace widegate::fdl
