#include "core/handover/fdl/template_library.h"

#include "core/handover/fdl/apply_document.h"
#include "core/handover/fdl/identity.h"
#include "core/handover/fdl/write.h"

namespace widegate::fdl {
namespace {

/// A delivery whose raster is fixed.
struct Container {
  const char* id;
  const char* label;
  WholeSize size;
  Layer fit_source;
};

constexpr Container kContainers[] = {
    {"UHD", "UHD 16:9, 3840 x 2160", {3840, 2160}, Layer::framing},
    {"SCOPE_4K", "4K scope container, 4096 x 1716", {4096, 1716}, Layer::framing},
    {"FLAT_4K", "4K flat container, 3996 x 2160", {3996, 2160}, Layer::framing},
    {"HD_PROXY", "HD proxy of the whole canvas, 1920 x 1080", {1920, 1080}, Layer::canvas},
};

CanvasTemplate container_template(const Container& container) {
  CanvasTemplate entry;
  entry.label = std::string(container.label);
  entry.id = container.id;
  entry.target_dimensions = {container.size, {}};
  entry.target_anamorphic_squeeze = 1;
  entry.fit_source = container.fit_source;
  entry.fit_method = FitMethod::fit_all;
  entry.alignment_method_vertical = Alignment::center;
  entry.alignment_method_horizontal = Alignment::center;
  entry.maximum_dimensions = WholeSizeField{container.size, {}};
  entry.pad_to_maximum = true;
  entry.round = RoundField{};
  return entry;
}

CanvasTemplate full_width_pull(const Canvas& source) {
  CanvasTemplate entry;
  entry.label = std::string("VFX pull at full width");
  entry.id = std::string("VFX_PULL");
  entry.target_dimensions = {source.dimensions, {}};
  entry.target_anamorphic_squeeze = squeeze_of(source);
  entry.fit_source = Layer::canvas;
  entry.fit_method = FitMethod::width;
  // Even pixels would add an empty column to an odd canvas.
  entry.round = RoundField{{Parity::whole, RoundMode::round}, {}};
  return entry;
}

}  // namespace

std::vector<CanvasTemplate> delivery_templates(const Canvas& source) {
  std::vector<CanvasTemplate> templates;
  for (const Container& container : kContainers) {
    templates.push_back(container_template(container));
  }
  templates.push_back(full_width_pull(source));
  return templates;
}

Document template_document(std::vector<CanvasTemplate> templates) {
  Document document;
  document.fdl_creator = std::string(kCreator);
  document.canvas_templates = std::move(templates);
  document.uuid = uuid_from(write_document(document));
  return document;
}

}  // namespace widegate::fdl
