// row_findings of form.h: what follows from a row, in words.
#include "core/base/number_text.h"
#include "core/catalogue/codec.h"
#include "core/equipment/form.h"
#include "core/equipment/measured_codec.h"
#include "core/optics/mode_geometry.h"

namespace widegate {
namespace {

constexpr double kUmInMm = 1000;
constexpr double kMillion = 1e6;
constexpr std::int64_t kSeconds = 60;

std::string size_in_mm(double width, double height) {
  return print_fixed(width, 2) + " × " + print_fixed(height, 2) + " mm";
}

void add_camera(std::vector<std::string>& lines, const Camera& camera) {
  const double pitch = camera.width_mm * kUmInMm / static_cast<double>(camera.width_photosites);
  lines.push_back("Sensor: " + std::to_string(camera.width_photosites) + " × " +
                  std::to_string(camera.height_photosites) + " photosites " +
                  print_fixed(pitch, 2) + " µm apart, " +
                  size_in_mm(camera.width_mm, camera.height_mm) + ", diagonal " +
                  print_fixed(diagonal_of(camera.width_mm, camera.height_mm), 2) + " mm");
  for (const SensorMode& mode : camera.modes) {
    std::string line = mode.name + ": " + std::to_string(mode.width_photosites) + " × " +
                       std::to_string(mode.height_photosites) + ", " +
                       size_in_mm(mode.width_mm, mode.height_mm);
    if (mode.max_rate) line += ", up to " + print_rational(*mode.max_rate) + " fps";
    lines.push_back(std::move(line));
  }
}

void add_measured(std::vector<std::string>& lines, const MeasuredForm& form) {
  const auto frame = bytes_per_frame(form, form.width_pixels, form.height_pixels, 24);
  if (!frame) return;
  const double bits = bits_per_second(frame->most, 24).to_double();
  lines.push_back("One frame of " + std::to_string(form.width_pixels) + " × " +
                  std::to_string(form.height_pixels) + ": " +
                  print_fixed(static_cast<double>(frame->most) / kMillion, 3) + " MB");
  const double minute = static_cast<double>(frame->most) * 24 * kSeconds / (kMillion * kUmInMm);
  lines.push_back("At 24 fps: " + print_fixed(bits / kMillion, 1) + " Mb/s, " +
                  print_fixed(minute, 2) + " GB a minute");
  lines.push_back("Other rasters are taken in proportion to their pixels.");
}

void add_codec(std::vector<std::string>& lines, const Codec& codec) {
  if (const auto* measured = std::get_if<MeasuredForm>(&codec.form)) {
    add_measured(lines, *measured);
  } else if (const auto* rate = std::get_if<BitRateForm>(&codec.form)) {
    const double minute = static_cast<double>(rate->bits_per_s) / 8 * kSeconds;
    lines.push_back("One minute: " + print_fixed(minute / (kMillion * kUmInMm), 2) +
                    " GB, whatever the raster");
  } else if (const auto* ratio = std::get_if<RatioForm>(&codec.form)) {
    lines.push_back("Bits for each pixel in the file: " +
                    print_fixed((ratio->bits_per_pixel / ratio->ratio).to_double(), 2));
  }
}

}  // namespace

std::vector<std::string> row_findings(const Catalogue& row) {
  std::vector<std::string> lines;
  for (const Camera& camera : row.cameras) add_camera(lines, camera);
  for (const Codec& codec : row.codecs) add_codec(lines, codec);
  return lines;
}

}  // namespace widegate
