#include "core/report/verdict.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/base/number_text.h"
#include "core/report/figure_text.h"

namespace widegate {
namespace {

/// The worst note of a question that is about this plan; nullptr when all of them are ok.
const Note* worst_note(const Report& report, Question question) {
  const Note* worst = nullptr;
  for (const Note& note : report.notes) {
    if (topic_question(note.topic) != question) continue;
    if (note.severity == Severity::ok) continue;
    if (worst == nullptr || note.severity > worst->severity) worst = &note;
  }
  return worst;
}

std::string span_text(Span span, int decimals) {
  const std::string least = short_number(span.least, decimals);
  const std::string most = short_number(span.most, decimals);
  return least == most ? least : least + "–" + most;
}

std::string frame_words(const Report& report) {
  const FrameReport& frame = report.frames.front();
  std::string text = short_number(frame.photosites.width.to_double(), 0) + " × " +
                     short_number(frame.photosites.height.to_double(), 0) + " photosites";
  const double room = std::max(frame.shift_horizontal_percent, frame.shift_vertical_percent);
  if (std::lround(room) < 1) return text + ", no room around it";
  const bool upright = frame.shift_vertical_percent >= frame.shift_horizontal_percent;
  return text + ", can move " + short_number(room, 0) +
         (upright ? " % of its height up or down" : " % of its width to either side");
}

std::string cover_words(const CoverReport& cover) {
  const auto spare = [](const CoverFigures& figures) {
    return " with " + print_fixed(std::max(0.0, figures.margin_mm), 1) + " mm to spare";
  };
  if (cover.mode.covered) return "Covers the whole mode" + spare(cover.mode);
  if (cover.protected_area.covered) {
    return "Covers the protected area" + spare(cover.protected_area) + ", not the whole mode";
  }
  return "Covers the frame line" + spare(cover.frame) + ", not what is around it";
}

std::string cover_fault(const Report& report, const Note& note) {
  const auto short_of = [](const CoverFigures& figures) {
    return " by " + print_fixed(-figures.margin_mm, 1) + " mm at the corner";
  };
  const CoverReport& cover = report.cover;
  if (!cover.known) return "No image circle is known for this lens";
  if (!cover.frame.covered) return "Misses the frame line" + short_of(cover.frame);
  if (note.severity == Severity::fail && !cover.protected_area.covered) {
    return "Misses the protected area" + short_of(cover.protected_area);
  }
  if (note.severity == Severity::fail) return "Misses the mode" + short_of(cover.mode);
  if (note.topic == Topic::cover_marginal) return cover_words(cover) + ": test it";
  if (note.topic == Topic::cover_neighbour_circle) {
    return cover_words(cover) + ", going by the neighbouring lens";
  }
  return cover_words(cover);
}

std::string see_words(const SeeReport& see) {
  const std::string far = see.depth.far_m ? short_number(*see.depth.far_m, 1) + " m" : "infinity";
  return "The frame line sees " + short_number(see.frame_horizontal_fov_deg, 1) + "° across, " +
         short_number(see.width_at_focus_m, 2) + " m wide at " + short_number(see.focus_m, 2) +
         " m, sharp from " + short_number(see.depth.near_m, 1) + " m to " + far;
}

std::string megapixels(double photosites) { return short_number(photosites / 1e6, 2); }

std::string resolve_words(const ResolveReport& resolve) {
  std::string text = megapixels(resolve.frame_photosites) + " megapixels in the frame line";
  if (resolve.mandate.required > 0) {
    text += ", " + megapixels(resolve.mandate.have) +
            (resolve.mandate.counted_on_frame ? " counted there" : " in the mode");
    text += resolve.mandate.met ? ", enough for the " : ", short of the ";
    text += megapixels(static_cast<double>(resolve.mandate.required)) + " required";
  }
  return text;
}

/// The first requirement that is missed, of those of the recording or of all; empty for none.
std::string first_missed(const CommissionReport& commission, bool of_recording) {
  std::string text;
  for_each_asked(commission.findings, [&](Requirement requirement, const Finding& finding) {
    if (!finding.missed() || !text.empty()) return;
    if (of_recording && !is_of_recording(requirement)) return;
    text = reason_text(requirement, finding);
  });
  return text;
}

std::string resolve_fault(const Report& report, const Note& note) {
  const ResolveReport& resolve = report.resolve;
  if (note.topic == Topic::resolve_upscaled) {
    return "Upscaled " + short_number(resolve.nominal_scale, 2) + " times to the deliverable";
  }
  if (note.topic == Topic::resolve_squeeze_mismatch) {
    return "The camera's de-squeeze does not fit the lens";
  }
  if (note.topic == Topic::resolve_other_squeeze) {
    return "The mode is shaped for a lens of another squeeze";
  }
  if (note.topic == Topic::resolve_binned) return resolve_words(resolve) + ", photosites joined";
  if (note.topic == Topic::resolve_few_bits) {
    return "Only " + short_number(note.have, 0) + " bits are kept";
  }
  if (note.topic == Topic::resolve_much_compressed) {
    return "Compressed " + short_number(note.have, 1) + "∶1";
  }
  if (note.topic == Topic::resolve_recording) return first_missed(report.commission, true);
  if (note.topic == Topic::resolve_raster_shape) return "The file has not the shape of the mode";
  if (note.topic == Topic::resolve_raster) {
    return print_grouped(resolve.recorded_width_pixels) + " × " +
           print_grouped(resolve.recorded_height_pixels) + " recorded, less than is required";
  }
  return resolve_words(resolve);
}

std::string rate_words(const RunReport& run) {
  return short_number(run.sensor_rate.to_double(), 3) + " frames/s at " +
         print_rational(run.exposure_s) + " s";
}

std::string lights_words(const Flicker& flicker) {
  if (!flicker.pulses_hz) return "lights that do not pulse";
  if (flicker.lights == Lights::frequency) {
    return "lights that pulse at " + short_number(flicker.pulses_hz->to_double(), 2) + " Hz";
  }
  return short_number(flicker.mains_hz, 2) + " Hz lights";
}

std::string flicker_fault(const Flicker& flicker, const Note& note) {
  std::string text = flicker.grade == Severity::fail ? "Flickers" : "May flicker";
  if (flicker.bands) text = flicker.grade == Severity::fail ? "Bands" : "May show bands";
  text += " under " + lights_words(flicker) + ", a ripple of " +
          short_number(flicker.depth_percent, 1) + " %; ";
  if (note.topic == Topic::run_no_safe_angle) return text + "no angle is safe at this rate";
  return text + short_number(note.need, 2) + "° is safe";
}

std::string run_fault(const RunReport& run, const Note& note) {
  if (note.topic == Topic::run_rate_ceiling) {
    return "The format stops at " + short_number(run.rate_ceiling->to_double(), 3) + " frames/s";
  }
  return flicker_fault(run.flicker, note);
}

std::string see_fault(const SeeReport& see, const Note& note) {
  if (note.topic == Topic::see_widest_stop) {
    return "The lens opens to " + short_number(note.need, 2) + "; " + short_number(note.have, 2) +
           " is set";
  }
  return "The lens focuses down to " + short_number(note.need, 2) + " m; " +
         short_number(see.focus_m, 2) + " m is set";
}

/// On film magazines are loaded; the scan is what is stored.
std::string film_words(const FilmReport& film, const ScaledBytes& total) {
  if (!film.frames_per_foot) return total.text + " " + std::string(total.unit) + " of scans in all";
  return short_number(film.magazine_minutes, 1) + " min on a magazine, " +
         std::to_string(film.magazines_per_day) + " a day for each camera, " + total.text + " " +
         std::string(total.unit) + " of scans in all";
}

std::string store_words(const Report& report) {
  const StoreReport& store = report.store;
  const ScaledBytes total = scaled_bytes(store.shoot_total_bytes);
  if (report.film) return film_words(*report.film, total);
  const ScaledTime card = scaled_minutes(store.minutes_per_card, 0);
  return card.text + " " + std::string(card.unit) + " on a card, " +
         span_text({static_cast<double>(store.cards_in_rotation.least),
                    static_cast<double>(store.cards_in_rotation.most)},
                   0) +
         " cards in rotation, " + total.text + " " + std::string(total.unit) + " in all";
}

std::string store_fault(const Report& report, const Note& note) {
  if (note.topic == Topic::store_write_headroom) {
    return note.severity == Severity::fail
               ? "The card cannot keep up: " + short_number(note.have, 2) + " times the data rate"
               : "The card barely keeps up: " + short_number(note.have, 2) + " times the data rate";
  }
  if (note.topic == Topic::store_minutes) {
    return short_number(note.have, 0) + " min on a card; " + short_number(note.need, 0) +
           " are wanted";
  }
  if (note.topic == Topic::store_upload) {
    return store_words(report) + "; the upload outlasts the shoot";
  }
  if (note.topic == Topic::store_copies) {
    return note.have < 1 ? "Nothing is copied" : "There is only one copy";
  }
  if (note.topic == Topic::store_one_place) return "All copies are kept in one place";
  if (note.topic == Topic::store_rotation) return "Copying cannot keep up with shooting";
  if (note.topic == Topic::store_verification) return "Copies are not verified";
  if (note.topic == Topic::store_card_claim) {
    return store_words(report) + "; the card's speed is only claimed";
  }
  if (note.topic == Topic::store_media) return "The camera does not take this kind of card";
  return store_words(report) + "; sizes follow the picture";
}

std::string fault(const Report& report, Question question, const Note& note) {
  switch (question) {
    case Question::frame:
      if (note.topic == Topic::frame_push_in) {
        return "Push-in of " + short_number(note.have, 1) + " % without upscaling; " +
               short_number(note.need, 1) + " % is wanted";
      }
      if (note.topic == Topic::frame_room) {
        return short_number(note.have, 1) + " % of room around the frame line; " +
               short_number(note.need, 1) + " % is wanted";
      }
      return "A frame line is held back by the mode's edge";
    case Question::cover:
      return cover_fault(report, note);
    case Question::see:
      return see_fault(report.see, note);
    case Question::resolve:
      return resolve_fault(report, note);
    case Question::run:
      return run_fault(report.run, note);
    case Question::store:
      return store_fault(report, note);
    case Question::choose:
      break;
  }
  return {};
}

std::string praise(const Report& report, Question question) {
  switch (question) {
    case Question::frame:
      return frame_words(report);
    case Question::cover:
      return cover_words(report.cover);
    case Question::see:
      return see_words(report.see);
    case Question::resolve:
      return resolve_words(report.resolve);
    case Question::run:
      return rate_words(report.run) + ", no flicker under " + lights_words(report.run.flicker);
    case Question::store:
      return store_words(report);
    case Question::choose:
      break;
  }
  return {};
}

/// What a person should still know of a format that misses nothing.
Verdict passing_verdict(const Report& report) {
  const Cautions& cautions = report.commission.cautions;
  if (!cautions.none()) {
    return {Severity::caution,
            "Meets every requirement, with a caution: " + caution_words(cautions)};
  }
  if (!report.cover.known) {
    return {Severity::ok,
            "Meets every requirement that can be checked; the image circle is not known"};
  }
  return {Severity::ok, "Meets every requirement"};
}

/// Something of the plan that fails and is no requirement of a format: lights, copying.
const Note* other_failure(const Report& report) {
  for (const Note& note : report.notes) {
    if (note.severity == Severity::fail && note.topic != Topic::commission_missed) return &note;
  }
  return nullptr;
}

/// The format against all that is asked for, then what else of the plan fails.
Verdict choose_verdict(const Report& report) {
  const std::size_t missed = report.commission.findings.count(Met::missed);
  const std::string first = first_missed(report.commission, false);
  if (missed == 1) return {Severity::fail, "Misses one requirement. " + first};
  if (missed > 1) {
    return {Severity::fail, "Misses " + std::to_string(missed) + " requirements. First, " + first};
  }
  const Note* other = other_failure(report);
  if (other == nullptr) return passing_verdict(report);
  return {Severity::fail, "The format meets every requirement, the plan fails: " +
                              fault(report, topic_question(other->topic), *other)};
}

}  // namespace

Verdict verdict(const Plan& /*plan*/, const Report& report, Question question) {
  if (!report.problems.empty()) return {Severity::fail, "This plan cannot be worked out"};
  if (question == Question::choose) return choose_verdict(report);
  const Note* worst = worst_note(report, question);
  if (worst == nullptr) return {Severity::ok, praise(report, question)};
  return {worst->severity, fault(report, question, *worst)};
}

}  // namespace widegate
