#include "core/handover/fdl/check.h"

#include <set>

#include "core/base/number_text.h"
#include "core/encode/json_path.h"
#include "core/handover/fdl/rounding.h"

namespace widegate::fdl {
namespace {

using Ids = std::set<std::string, std::less<>>;

std::string at(const std::string& pointer, std::string_view key, std::size_t index) {
  std::string result = pointer;
  result.append("/").append(key).append("/").append(std::to_string(index));
  return result;
}

void add(Problems& list, Problem problem) {
  if (list.size() < kMaxProblems) list.push_back(std::move(problem));
}

std::string quoted(const std::string& text) { return '"' + text + '"'; }

std::string shown(Size size) {
  return print_number(size.width) + " x " + print_number(size.height);
}

std::string shown(Point point) { return print_number(point.x) + ", " + print_number(point.y); }

/// Adds the id, or reports that it was there already.
void claim(Ids& ids, const std::string& id, const std::string& pointer, Findings& findings) {
  if (ids.insert(id).second) return;
  add(findings.problems, {pointer + "/id", quoted(id), "an id that nothing else here has"});
}

/// One named layer of a decision on its canvas.
struct Level {
  const char* name;
  Size size;
  std::string pointer;
};

/// Each level must fit in the next one out; missing levels are skipped.
void check_sizes(const std::vector<Level>& levels, Findings& findings) {
  const Level* outer = nullptr;
  for (const Level& level : levels) {
    if (absent(level.size)) continue;
    if (outer != nullptr &&
        (level.size.width > outer->size.width || level.size.height > outer->size.height)) {
      add(findings.problems,
          {level.pointer, shown(level.size),
           "a size within the " + std::string(outer->name) + ", " + shown(outer->size)});
    }
    outer = &level;
  }
}

/// The anchor must lie on the canvas; the far edge should.
void check_place(const Box& box, Size canvas, const std::string& pointer, Findings& findings) {
  if (box.anchor.x > canvas.width || box.anchor.y > canvas.height) {
    add(findings.problems,
        {pointer, shown(box.anchor), "a position on the canvas, " + shown(canvas)});
    return;
  }
  const double right = box.anchor.x + box.size.width;
  const double bottom = box.anchor.y + box.size.height;
  if (right > canvas.width + kSnapPixels || bottom > canvas.height + kSnapPixels) {
    add(findings.warnings, {pointer, "a box that ends at " + shown(Point{right, bottom}),
                            "a box that ends on the canvas, " + shown(canvas)});
  }
}

class Checker {
 public:
  Checker(const Document& document, Findings& findings)
      : document_(document), findings_(findings) {}

  void run() {
    check_intents();
    collect_canvases();
    check_contexts();
    check_templates();
  }

 private:
  void check_intents() {
    std::size_t index = 0;
    for (const FramingIntent& intent : rows(document_.framing_intents)) {
      claim(intents_, intent.id, at("", "framing_intents", index++), findings_);
    }
    const auto& wanted = document_.default_framing_intent;
    if (wanted && !intents_.contains(*wanted)) {
      add(findings_.problems,
          {"/default_framing_intent", quoted(*wanted), "the id of one of the framing intents"});
    }
  }

  /// Sources may stand after the canvases made from them, so all ids come first.
  void collect_canvases() {
    std::size_t context_index = 0;
    for (const Context& context : rows(document_.contexts)) {
      const std::string pointer = at("", "contexts", context_index++);
      std::size_t index = 0;
      for (const Canvas& canvas : rows(context.canvases)) {
        claim(canvases_, canvas.id, at(pointer, "canvases", index++), findings_);
      }
    }
  }

  void check_contexts() {
    std::size_t context_index = 0;
    for (const Context& context : rows(document_.contexts)) {
      const std::string pointer = at("", "contexts", context_index++);
      std::size_t index = 0;
      for (const Canvas& canvas : rows(context.canvases)) {
        check_canvas(canvas, at(pointer, "canvases", index++));
      }
    }
  }

  void check_canvas(const Canvas& canvas, const std::string& pointer) {
    if (!canvases_.contains(canvas.source_canvas_id)) {
      add(findings_.problems, {pointer + "/source_canvas_id", quoted(canvas.source_canvas_id),
                               "the id of a canvas in this document"});
    }
    const Layers layers = layers_of(canvas, {});
    check_sizes({{"canvas", layers.canvas, pointer + "/dimensions"},
                 {"effective area", layers.effective.size, pointer + "/effective_dimensions"}},
                findings_);
    if (canvas.effective_anchor_point) {
      check_place({*canvas.effective_anchor_point, layers.effective.size}, layers.canvas,
                  pointer + "/effective_anchor_point", findings_);
    }
    Ids decisions;
    std::size_t index = 0;
    for (const FramingDecision& decision : rows(canvas.framing_decisions)) {
      const std::string place = at(pointer, "framing_decisions", index++);
      claim(decisions, decision.id, place, findings_);
      check_decision_id(canvas, decision, place);
      check_decision(canvas, decision, place);
    }
  }

  void check_decision_id(const Canvas& canvas, const FramingDecision& decision,
                         const std::string& pointer) {
    if (!intents_.contains(decision.framing_intent_id)) {
      add(findings_.problems, {pointer + "/framing_intent_id", quoted(decision.framing_intent_id),
                               "the id of one of the framing intents"});
      return;
    }
    const std::string expected = decision_id(canvas.id, decision.framing_intent_id);
    if (decision.id != expected) {
      add(findings_.problems, {pointer + "/id", quoted(decision.id), quoted(expected)});
    }
  }

  void check_decision(const Canvas& canvas, const FramingDecision& decision,
                      const std::string& pointer) {
    const Layers layers = layers_of(canvas, decision);
    const bool effective = !absent(layers.effective.size);
    check_sizes({{effective ? "effective area" : "canvas",
                  effective ? layers.effective.size : layers.canvas, pointer},
                 {"protection", layers.protection.size, pointer + "/protection_dimensions"},
                 {"framing", layers.framing.size, pointer + "/dimensions"}},
                findings_);
    check_place(layers.framing, layers.canvas, pointer + "/anchor_point", findings_);
    if (decision.protection_anchor_point) {
      check_place({*decision.protection_anchor_point, layers.protection.size}, layers.canvas,
                  pointer + "/protection_anchor_point", findings_);
    }
  }

  void check_templates() {
    Ids templates;
    std::size_t index = 0;
    for (const CanvasTemplate& entry : rows(document_.canvas_templates)) {
      const std::string pointer = at("", "canvas_templates", index++);
      claim(templates, entry.id, pointer, findings_);
      const auto& maximum = entry.maximum_dimensions;
      if (maximum && (maximum->width < entry.target_dimensions.width ||
                      maximum->height < entry.target_dimensions.height)) {
        add(findings_.warnings,
            {pointer + "/maximum_dimensions", shown(to_size(*maximum)),
             "a size not below the target, " + shown(to_size(entry.target_dimensions))});
      }
    }
  }

  const Document& document_;
  Findings& findings_;
  Ids intents_;
  Ids canvases_;
};

}  // namespace

void check_document(const Document& document, Findings& findings) {
  Checker(document, findings).run();
}

}  // namespace widegate::fdl
