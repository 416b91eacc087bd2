#include "core/report/notes.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.h"

namespace widegate {
namespace {

constexpr double kHeadroomNeeded = 1;
constexpr double kHeadroomCaution = 1.2;
/// Nearer than about 21 focal lengths breathing shows on most lenses. common practice, no source
constexpr double kCloseMagnification = 0.05;
constexpr double kScaleRounding = 1e-9;  // of what comes from fractions
/// Up to here an enlargement is the rounding of rasters. common practice, no source
constexpr double kUpscaled = 1.005;
/// A circle no wider than this beyond the need is a promise to be tested. common practice, no
/// source
constexpr double kCircleMarginMm = 0.3;
constexpr double kCopiesNeeded = 2;
constexpr double kFewestBits = 10;
constexpr double kMostCompression = 11;
constexpr double kTrustedClaim = 3;
constexpr int kMostDecimals = 9;
constexpr double kHoursPerDay = 24;

/// The words of one topic. {have}, {need} and {gap} (need less have, without its sign) are
/// replaced.
struct TopicRow {
  Topic topic;
  Question question;
  std::string_view key;
  std::string_view unit;
  int decimals;
  std::string_view ok;
  std::string_view caution;
  std::string_view fail;
  bool standing = false;
};

constexpr auto kTopics = std::to_array<TopicRow>({
    {Topic::anchor_limited, Question::frame, "frame.anchor", "", 0, "",
     "A frame line cannot be level with the main one without leaving the mode; it sits at the "
     "edge.",
     ""},
    {Topic::common_top, Question::frame, "frame.common_top", "", 0,
     "Common top leaves the optical axis off the middle of the frame; tell everyone who aligns "
     "lenses and effects plates.",
     "", ""},
    {Topic::frame_push_in, Question::frame, "frame.push_in", "percent", 1,
     "Post can push in by {have} % without upscaling; {need} % is wanted.", "",
     "Post can push in by {have} % without upscaling; {need} % is wanted."},
    {Topic::frame_room, Question::frame, "frame.room", "percent", 1,
     "There is {have} % of room around the frame line; {need} % is wanted.", "",
     "There is {have} % of room around the frame line; {need} % is wanted."},
    {Topic::cover_unknown, Question::cover, "cover.unknown", "", 0, "",
     "No image circle is known for this lens. Ask the maker or test it on the camera.", ""},
    {Topic::cover_neighbour_circle, Question::cover, "cover.neighbour", "mm", 1, "",
     "This focal length is not in the set; the smaller neighbouring circle of {have} mm is "
     "assumed.",
     ""},
    {Topic::cover_marginal, Question::cover, "cover.marginal", "mm", 2, "",
     "The {have} mm circle is only {gap} mm wider than the {need} mm it has to cover. A published "
     "circle is a promise, not a measurement: test this lens on this format.",
     ""},
    {Topic::cover_frame, Question::cover, "cover.frame", "mm", 1,
     "The {have} mm circle covers the frame line, which needs {need} mm.",
     "The {have} mm circle does not cover the frame line, which needs {need} mm: {gap} mm short.",
     "The {have} mm circle does not cover the frame line, which needs {need} mm: {gap} mm short."},
    {Topic::cover_protected, Question::cover, "cover.protected", "mm", 1,
     "The circle covers the protected area, which needs {need} mm.",
     "The protected area needs {need} mm and has {have} mm: its corners go dark, {gap} mm short.",
     "The protected area needs {need} mm and has {have} mm: its corners go dark, {gap} mm short."},
    {Topic::cover_mode, Question::cover, "cover.mode", "mm", 1,
     "The circle covers the whole sensor mode, which needs {need} mm.",
     "The sensor mode needs {need} mm and has {have} mm: padding at its corners is lost.",
     "The sensor mode needs {need} mm and has {have} mm: its corners go dark, {gap} mm short."},
    {Topic::see_close_range, Question::see, "see.close_range", "m", 2,
     "At {have} m this lens is close to its subject; its breathing is not part of these figures.",
     "", ""},
    {Topic::see_widest_stop, Question::see, "see.widest_stop", "", 1, "", "",
     "The lens opens to {need}; {have} is set."},
    {Topic::see_close_focus, Question::see, "see.close_focus", "m", 2, "", "",
     "The lens focuses down to {need} m; {have} m is set."},
    {Topic::see_anamorphic_depth, Question::see, "see.anamorphic_depth", "times", 2,
     "A front anamorphic lens of {have} times has two depths of field; the one down the height is "
     "used here, the one across stands beside it. A rear anamorphic has only the first.",
     "", ""},
    {Topic::see_t_stop, Question::see, "see.t_stop", "", 1,
     "Depth of field uses the f-number {have}; a T-stop marking is darker than its f-number.", "",
     "", true},
    {Topic::resolve_mandate, Question::resolve, "resolve.mandate", "photosites", 0,
     "{have} photosites are counted; {need} are required.", "",
     "{have} photosites are counted; {need} are required: {gap} too few."},
    {Topic::resolve_raster, Question::resolve, "resolve.raster", "pixels", 0, "", "",
     "The file is too small, however many photosites are behind it: {have} pixels where {need} are "
     "required, {gap} too few."},
    {Topic::resolve_upscaled, Question::resolve, "resolve.upscaled", "times", 3,
     "Nothing is upscaled: the deliverable takes {have} of what is recorded inside the frame line.",
     "The picture is enlarged {have} times for the deliverable: it is upscaled.", ""},
    {Topic::resolve_squeeze_left, Question::resolve, "resolve.squeeze_left", "times", 2,
     "The file is still squeezed {have} times; tell editorial and post.", "", ""},
    {Topic::resolve_scan, Question::resolve, "resolve.scan", "pixels", 0,
     "Of the {need} scanned pixels inside the frame line {have} are counted as picture: film holds "
     "about 165 a millimetre.",
     "", ""},
    {Topic::resolve_squeeze_mismatch, Question::resolve, "resolve.squeeze_mismatch", "times", 2, "",
     "",
     "This recording option de-squeezes {need} times but the lens squeezes {have} times: the "
     "picture comes out distorted."},
    {Topic::resolve_raster_shape, Question::resolve, "resolve.raster_shape", "times", 3, "",
     "The recorded raster has not the shape of the mode: it stretches the picture {have} times "
     "across. If this option crops, enter the cropped area as a mode of its own.",
     ""},
    {Topic::resolve_other_squeeze, Question::resolve, "resolve.other_squeeze", "times", 2, "",
     "This mode is shaped for a lens that squeezes {need} times; this one squeezes {have} times, "
     "so "
     "much of what is read lies outside the frame line.",
     ""},
    {Topic::resolve_binned, Question::resolve, "resolve.binned", "", 0, "",
     "This mode joins photosites before they are read: less detail, and false patterns on fine "
     "cloth and roofs. Test it on such a subject.",
     ""},
    {Topic::resolve_few_bits, Question::resolve, "resolve.few_bits", "bit", 0, "",
     "The codec keeps {have} bits; with fewer than {need} a sky shows steps once it is graded.",
     ""},
    {Topic::resolve_much_compressed, Question::resolve, "resolve.much_compressed", "times", 1, "",
     "The codec compresses {have}∶1; beyond {need}∶1 grain and fine detail suffer.", ""},
    {Topic::resolve_recording, Question::resolve, "resolve.recording", "requirements", 0, "", "",
     "Of what the commission asks of the recording it misses: {have}. The list says which."},
    {Topic::resolve_written_requirements, Question::resolve, "resolve.written_requirements", "", 0,
     "Pixel counts are common practice; the commissioner's written requirements decide.", "", "",
     true},
    {Topic::run_rate_ceiling, Question::run, "run.rate_ceiling", "frames/s", 3,
     "The format runs to {need} frames/s; {have} is set.", "",
     "The format runs to {need} frames/s at most; {have} is set."},
    {Topic::run_flicker, Question::run, "run.flicker", "degrees", 2,
     "At {have} degrees these lights do not pulse in the picture.",
     "At {have} degrees these lights pulse a little in the picture; {need} degrees is safe.",
     "At {have} degrees these lights pulse in the picture for all to see; {need} degrees is safe."},
    {Topic::run_bands, Question::run, "run.bands", "degrees", 2, "",
     "At {have} degrees these lights stand as bands across the picture of a rolling shutter; "
     "{need} degrees is safe.",
     ""},
    {Topic::run_no_safe_angle, Question::run, "run.no_safe_angle", "degrees", 2, "",
     "At {have} degrees these lights may pulse, and no angle is safe at this rate: use daylight, "
     "or lights made for high speed, or another rate.",
     "At {have} degrees these lights pulse in the picture for all to see, and no angle is safe at "
     "this rate: use daylight, or lights made for high speed, or another rate."},
    {Topic::run_test_lights, Question::run, "run.test_lights", "", 0,
     "Shoot a test under the lights that will be used; not every lamp follows the mains.", "", "",
     true},
    {Topic::run_audio_dropped, Question::run, "run.audio", "times", 3,
     "At {have} times speed no sound is recorded with the picture.", "", ""},
    {Topic::store_write_headroom, Question::store, "store.write_headroom", "times", 2,
     "The card writes {have} times the data rate.",
     "The card writes only {have} times the data rate; below {need} there is little to spare.",
     "The card writes {have} times the data rate: it cannot keep up."},
    {Topic::store_minutes, Question::store, "store.minutes", "min", 1,
     "A card lasts {have} minutes; {need} are wanted.", "",
     "A card lasts {have} minutes; {need} are wanted."},
    {Topic::store_media, Question::store, "store.media", "", 0, "", "",
     "This camera does not take this kind of card."},
    {Topic::store_card_claim, Question::store, "store.card_claim", "times", 2, "",
     "The card is said to write {have} times the data rate, but neither a standard's class nor the "
     "camera's maker vouches for it; full and warm a card may hold a third. Test it, or have "
     "{need} "
     "times.",
     ""},
    {Topic::store_codec_range, Question::store, "store.codec_range", "", 0,
     "This codec's size follows the picture; plan with the larger figures.", "", ""},
    {Topic::store_day_too_short, Question::store, "store.day_too_short", "h", 1, "",
     "Each camera would run for {have} h on a shooting day of {need} h.",
     "Each camera would have to run for {have} h a day; a day has {need} h."},
    {Topic::store_rotation, Question::store, "store.rotation", "cards", 0,
     "{need} cards for each camera always leave one ready.", "",
     "Copying is slower than shooting: no number of cards is enough."},
    {Topic::store_verification, Question::store, "store.verification", "", 0, "",
     "Copies are not verified; a copy that was not read back is not known to be good.", ""},
    {Topic::store_copies, Question::store, "store.copies", "copies", 0,
     "There are {have} copies beside the cards.", "",
     "{have} of the {need} copies that footage needs: if it is lost, so is the shoot."},
    {Topic::store_one_place, Question::store, "store.one_place", "places", 0, "",
     "All copies are kept in one place; a fire or a theft takes them all.", ""},
    {Topic::store_upload, Question::store, "store.upload", "days", 0, "",
     "The upload takes {have} days, the shoot {need}. A faster line or a smaller share is needed, "
     "or "
     "drives that travel.",
     ""},
    {Topic::commission_missed, Question::choose, "choose.commission", "requirements", 0,
     "Everything that is asked for is met.", "",
     "Requirements missed: {have}. The list says which and by how much."},
    {Topic::commission_unknown, Question::choose, "choose.not_known", "requirements", 0, "",
     "Requirements of which the library does not say whether they are met: {have}. Ask the maker.",
     ""},
    {Topic::store_two_copies, Question::store, "store.two_copies", "", 0,
     "Never wipe a card before two verified copies exist in two places.", "", "", true},
});

const TopicRow& row_of(Topic topic) {
  return *std::find_if(kTopics.begin(), kTopics.end(),
                       [topic](const TopicRow& row) { return row.topic == topic; });
}

std::string_view words(const TopicRow& row, Severity severity) {
  switch (severity) {
    case Severity::ok:
      return row.ok;
    case Severity::caution:
      return row.caution;
    case Severity::fail:
      return row.fail;
  }
  return row.ok;
}

/// At least the row's decimals, and as many as tell what there is from what is needed. Counts
/// (no decimals) are told apart by cutting what there is down and the gap up.
int telling_decimals(const Note& note, int decimals) {
  if (decimals == 0) return 0;
  for (int telling = decimals; telling <= kMostDecimals; ++telling) {
    if (print_fixed(note.have, telling) != print_fixed(note.need, telling)) return telling;
  }
  return decimals;
}

std::string number_text(const Note& note, std::string_view name, int decimals) {
  const double gap = std::abs(note.need - note.have);
  const double value = name == "have" ? note.have : name == "need" ? note.need : gap;
  if (decimals > 0) return print_fixed(value, decimals);
  return print_grouped(static_cast<std::int64_t>(name == "gap" ? std::ceil(gap) : value));
}

/// Collects notes with less to write at each.
class Notes {
 public:
  void add(Topic topic, Severity severity, double have = 0, double need = 0) {
    notes_.push_back({.severity = severity, .topic = topic, .have = have, .need = need});
  }
  void caution_if(bool holds, Topic topic, double have = 0, double need = 0) {
    if (holds) add(topic, Severity::caution, have, need);
  }
  /// Worth knowing, and nothing wrong.
  void remark_if(bool holds, Topic topic, double have = 0, double need = 0) {
    if (holds) add(topic, Severity::ok, have, need);
  }
  [[nodiscard]] std::vector<Note> take() { return std::move(notes_); }
  void reserve() { notes_.reserve(kTopics.size()); }

 private:
  std::vector<Note> notes_;
};

/// What is asked for, met or not.
void note_finding(Notes& notes, Topic topic, const Report& report, Requirement requirement) {
  const Finding finding = report.commission.findings[requirement];
  if (!finding.asked()) return;
  notes.add(topic, finding.missed() ? Severity::fail : Severity::ok, finding.have, finding.need);
}

void note_frame(Notes& notes, const Plan& plan, const Report& report) {
  const auto& lines = plan.deliverable.frame_lines;
  const bool limited = std::any_of(report.frames.begin(), report.frames.end(),
                                   [](const FrameReport& f) { return f.anchor_limited; });
  const bool common = std::any_of(lines.begin(), lines.end(), [](const FrameLine& line) {
    return line.anchor.kind == AnchorKind::common_top;
  });
  notes.caution_if(limited, Topic::anchor_limited);
  notes.remark_if(common, Topic::common_top);
  note_finding(notes, Topic::frame_push_in, report, Requirement::push_in);
  note_finding(notes, Topic::frame_room, report, Requirement::room);
}

const CoverFigures& area_to_cover(const CoverReport& cover, CoverArea wanted) {
  switch (wanted) {
    case CoverArea::none:
    case CoverArea::frame:
      return cover.frame;
    case CoverArea::protected_area:
      return cover.protected_area;
    case CoverArea::mode:
      return cover.mode;
  }
  return cover.frame;
}

void note_cover(Notes& notes, const Plan& plan, const Report& report) {
  const CoverReport& cover = report.cover;
  if (!cover.known) return notes.add(Topic::cover_unknown, Severity::caution);
  const double circle = cover.image_circle_mm;
  const auto area = [&](Topic topic, const CoverFigures& figures, CoverArea wanted) {
    const bool required = plan.choose.must_cover >= wanted;
    const Severity missed = required ? Severity::fail : Severity::caution;
    notes.add(topic, figures.covered ? Severity::ok : missed, circle, figures.diagonal_mm);
  };
  notes.caution_if(cover.interpolated, Topic::cover_neighbour_circle, circle);
  area(Topic::cover_frame, cover.frame, CoverArea::frame);
  area(Topic::cover_protected, cover.protected_area, CoverArea::protected_area);
  area(Topic::cover_mode, cover.mode, CoverArea::mode);
  const CoverFigures& needed = area_to_cover(cover, plan.choose.must_cover);
  const bool hardly = needed.covered && circle - needed.diagonal_mm < kCircleMarginMm;
  const CoverFigures& tight = hardly ? needed : cover.mode;
  notes.caution_if(hardly || report.commission.cautions.has(Caution::tight_circle),
                   Topic::cover_marginal, circle, tight.diagonal_mm);
}

/// Stops are compared as they are marked on the lens.
void note_see(Notes& notes, const Report& report) {
  const SeeReport& see = report.see;
  notes.remark_if(see.magnification > kCloseMagnification, Topic::see_close_range, see.focus_m);
  if (see.widest_stop && see.marked_f_number < *see.widest_stop - kScaleRounding) {
    notes.add(Topic::see_widest_stop, Severity::fail, see.marked_f_number, *see.widest_stop);
  }
  if (see.close_focus_m && see.focus_m < *see.close_focus_m - kScaleRounding) {
    notes.add(Topic::see_close_focus, Severity::fail, see.focus_m, *see.close_focus_m);
  }
  notes.remark_if(report.mode.squeeze > 1, Topic::see_anamorphic_depth, report.mode.squeeze);
  notes.add(Topic::see_t_stop, Severity::ok, report.see.f_number);
}

/// The first side of the raster, or its count, that is too small.
void note_raster(Notes& notes, const Report& report) {
  for (const Requirement requirement :
       {Requirement::raster_width, Requirement::raster_height, Requirement::raster_count}) {
    if (!report.commission.findings.missed(requirement)) continue;
    return note_finding(notes, Topic::resolve_raster, report, requirement);
  }
}

void note_recording(Notes& notes, const CommissionReport& commission) {
  std::size_t missed = 0;
  for_each_asked(commission.findings, [&](Requirement requirement, const Finding& finding) {
    missed += finding.missed() && is_of_recording(requirement) ? 1 : 0;
  });
  if (missed > 0) {
    notes.add(Topic::resolve_recording, Severity::fail, static_cast<double>(missed));
  }
  const Cautions& cautions = commission.cautions;
  notes.caution_if(cautions.has(Caution::binned), Topic::resolve_binned);
  notes.caution_if(cautions.has(Caution::few_bits), Topic::resolve_few_bits,
                   static_cast<double>(commission.bit_depth.value_or(0)), kFewestBits);
  notes.caution_if(cautions.has(Caution::much_compressed), Topic::resolve_much_compressed,
                   commission.compression.value_or(0), kMostCompression);
}

void note_resolve(Notes& notes, const Report& report) {
  const ResolveReport& resolve = report.resolve;
  note_finding(notes, Topic::resolve_mandate, report, Requirement::photosites);
  note_raster(notes, report);
  const double scale = resolve.nominal_scale;
  const bool upscaled = scale > kUpscaled + kScaleRounding;
  notes.add(Topic::resolve_upscaled, upscaled ? Severity::caution : Severity::ok, scale, 1);
  if (resolve.recorded_squeeze < 1) {
    notes.add(Topic::resolve_squeeze_mismatch, Severity::fail, report.mode.squeeze,
              report.mode.squeeze / resolve.recorded_squeeze);
  } else {
    notes.remark_if(resolve.recorded_squeeze > 1, Topic::resolve_squeeze_left,
                    resolve.recorded_squeeze);
  }
  if (report.film) {
    notes.remark_if(report.film->frame_picture_pixels < resolve.frame_photosites,
                    Topic::resolve_scan, report.film->frame_picture_pixels,
                    resolve.frame_photosites);
  }
  const CommissionReport& commission = report.commission;
  notes.caution_if(commission.cautions.has(Caution::other_squeeze), Topic::resolve_other_squeeze,
                   report.mode.squeeze, commission.made_for_squeeze);
  notes.caution_if(commission.cautions.has(Caution::other_shape), Topic::resolve_raster_shape,
                   commission.raster_stretch, 1);
  note_recording(notes, commission);
  notes.remark_if(resolve.mandate.required > 0, Topic::resolve_written_requirements);
}

void note_lights(Notes& notes, const RunReport& run) {
  const Flicker& flicker = run.flicker;
  const auto& safe = flicker.nearest_safe_shutters;
  const double now = run.shutter_deg;
  const double better = safe.empty() ? now : safe.front().angle_deg.to_double();
  if (flicker.grade == Severity::ok) return notes.add(Topic::run_flicker, Severity::ok, now, now);
  const Topic topic = safe.empty()    ? Topic::run_no_safe_angle
                      : flicker.bands ? Topic::run_bands
                                      : Topic::run_flicker;
  notes.add(topic, flicker.grade, now, better);
}

void note_run(Notes& notes, const Plan& plan, const Report& report) {
  const RunReport& run = report.run;
  if (run.rate_ceiling) {
    notes.add(Topic::run_rate_ceiling, run.rate_allowed ? Severity::ok : Severity::fail,
              run.sensor_rate.to_double(), run.rate_ceiling->to_double());
  }
  note_lights(notes, run);
  notes.add(Topic::run_test_lights, Severity::ok);
  notes.remark_if(run.sensor_rate != run.project_rate && plan.run.audio_channels > 0,
                  Topic::run_audio_dropped, run.speed_factor);
}

void note_day(Notes& notes, const Plan& plan, const StoreReport& store) {
  const double recorded_h = store.recorded_hours_per_day;
  if (recorded_h > kHoursPerDay) {
    notes.add(Topic::store_day_too_short, Severity::fail, recorded_h, kHoursPerDay);
  } else {
    notes.caution_if(recorded_h > plan.shooting.day_hours, Topic::store_day_too_short, recorded_h,
                     plan.shooting.day_hours);
  }
}

/// Only where something is uploaded, and around the clock it would not end with the shoot.
void note_upload(Notes& notes, const Plan& plan, const StoreReport& store) {
  const double days = store.upload_hours.most / kHoursPerDay;
  const auto shoot = static_cast<double>(plan.shooting.days);
  if (days > shoot) notes.add(Topic::store_upload, Severity::caution, days, shoot);
}

/// Cards are wiped; only what is kept counts.
void note_copies(Notes& notes, const Plan& plan, const StoreReport& store) {
  const auto copies = static_cast<double>(store.copies);
  const bool enough = copies >= kCopiesNeeded;
  notes.add(Topic::store_copies, enough ? Severity::ok : Severity::fail, copies, kCopiesNeeded);
  notes.caution_if(enough && plan.store.copy_places < 2, Topic::store_one_place, 1, 2);
}

/// What a card must do for this format; film meets none.
void note_card(Notes& notes, const Plan& plan, const Report& report) {
  const StoreReport& store = report.store;
  const CommissionReport& commission = report.commission;
  if (commission.findings.missed(Requirement::media)) {
    notes.add(Topic::store_media, Severity::fail);
  }
  const double headroom = store.write_headroom.least;
  const auto cards = static_cast<double>(store.cards_in_rotation.most);
  const Severity severity = headroom < kHeadroomNeeded    ? Severity::fail
                            : headroom < kHeadroomCaution ? Severity::caution
                                                          : Severity::ok;
  notes.add(Topic::store_write_headroom, severity, headroom,
            severity == Severity::fail ? kHeadroomNeeded : kHeadroomCaution);
  const double wanted = plan.choose.min_minutes_per_card;
  if (wanted > 0) {
    const double have = store.minutes_per_card.least;
    notes.add(Topic::store_minutes, have < wanted ? Severity::fail : Severity::ok, have, wanted);
  }
  notes.caution_if(commission.cautions.has(Caution::claimed_card), Topic::store_card_claim,
                   headroom, kTrustedClaim);
  notes.add(Topic::store_rotation, store.rotation_sustainable ? Severity::ok : Severity::fail,
            cards, cards);
}

void note_store(Notes& notes, const Plan& plan, const Report& report) {
  const StoreReport& store = report.store;
  if (!store.no_cards) note_card(notes, plan, report);
  notes.remark_if(!store.bytes_per_frame.exact(), Topic::store_codec_range);
  note_day(notes, plan, store);
  notes.caution_if(plan.store.verification == Verification::none, Topic::store_verification);
  note_copies(notes, plan, store);
  note_upload(notes, plan, store);
  notes.add(Topic::store_two_copies, Severity::ok);
}

/// One note for all: the list of requirements says the rest.
void note_commission(Notes& notes, const Findings& findings) {
  const auto missed = static_cast<double>(findings.count(Met::missed));
  const auto unknown = static_cast<double>(findings.count(Met::not_known));
  notes.add(Topic::commission_missed, missed > 0 ? Severity::fail : Severity::ok, missed);
  notes.caution_if(unknown > 0, Topic::commission_unknown, unknown);
}

}  // namespace

std::vector<Note> make_notes(const Plan& plan, const Report& report) {
  Notes notes;
  notes.reserve();
  note_frame(notes, plan, report);
  note_cover(notes, plan, report);
  note_see(notes, report);
  note_resolve(notes, report);
  note_run(notes, plan, report);
  note_store(notes, plan, report);
  note_commission(notes, report.commission.findings);
  return notes.take();
}

std::string note_text(const Note& note) {
  const TopicRow& row = row_of(note.topic);
  const int decimals = telling_decimals(note, row.decimals);
  std::string text;
  std::string_view rest = words(row, note.severity);
  while (!rest.empty()) {
    const std::size_t open = rest.find('{');
    text += rest.substr(0, open);
    if (open == std::string_view::npos) break;
    const std::size_t close = rest.find('}', open);
    text += number_text(note, rest.substr(open + 1, close - open - 1), decimals);
    rest.remove_prefix(close + 1);
  }
  return text;
}

std::string_view topic_key(Topic topic) { return row_of(topic).key; }
std::string_view topic_unit(Topic topic) { return row_of(topic).unit; }
Question topic_question(Topic topic) { return row_of(topic).question; }
bool topic_standing(Topic topic) { return row_of(topic).standing; }

std::string_view severity_key(Severity severity) {
  constexpr auto kKeys = std::to_array<std::string_view>({"ok", "caution", "fail"});
  return kKeys[static_cast<std::size_t>(severity)];
}

std::string standing_text(const std::vector<Note>& notes) {
  std::string text;
  for (const Note& note : notes) {
    if (!topic_standing(note.topic)) continue;
    text += text.empty() ? "" : " ";
    text += note_text(note);
  }
  return text;
}

Severity worst_severity(const std::vector<Note>& notes, Question question) {
  Severity worst = Severity::ok;
  for (const Note& note : notes) {
    const TopicRow& row = row_of(note.topic);
    if (row.question == question) worst = std::max(worst, note.severity);
  }
  return worst;
}

}  // namespace widegate
