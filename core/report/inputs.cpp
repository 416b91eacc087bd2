#include "core/report/inputs.h"

#include <array>
#include <variant>

namespace widegate {
namespace {

constexpr std::string_view kChosen = "chosen in the plan";
constexpr std::string_view kLibrary = "the library: maker's published sheet or standard";

/// What is said of a figure whose row was invented: static, as reports outlive their library.
constexpr std::string_view kInvented = "invented for the demo";

std::string_view source_words(std::string_view source) {
  return is_invented(source) ? kInvented : kLibrary;
}

/// What a row reads from.
struct Source {
  const Plan& plan;
  const StoreParts& parts;
};

struct Row {
  std::string_view key;
  std::string_view label;
  std::string_view unit;
  std::string_view source;
  double (*read)(const Source&);
};

double number(std::int64_t value) { return static_cast<double>(value); }

constexpr auto kRows = std::to_array<Row>({
    {"days", "Days", "days", kChosen, [](const Source& s) { return number(s.plan.shooting.days); }},
    {"units", "Units", "units", kChosen,
     [](const Source& s) { return number(s.plan.shooting.units); }},
    {"cameras_per_unit", "Cameras of a unit", "cameras", kChosen,
     [](const Source& s) { return number(s.plan.shooting.cameras_per_unit); }},
    {"planned_hours_per_day", "Recorded hours a day", "h", kChosen,
     [](const Source& s) { return s.plan.shooting.recorded_hours_per_day; }},
    {"script_minutes", "Script length", "min", kChosen,
     [](const Source& s) { return s.plan.shooting.script_minutes; }},
    {"shooting_ratio", "Shooting ratio", "∶1", kChosen,
     [](const Source& s) { return s.plan.shooting.shooting_ratio; }},
    {"day_hours", "Shooting day", "h", kChosen,
     [](const Source& s) { return s.plan.shooting.day_hours; }},
    {"card_capacity_bytes", "Card capacity", "bytes", kLibrary,
     [](const Source& s) { return number(s.parts.card.capacity_bytes); }},
    {"card_usable_share", "Usable share of the card", "", kLibrary,
     [](const Source& s) { return s.parts.card.usable_share.to_double(); }},
    {"card_write_bytes_per_s", "Card write speed", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.card.write_bytes_per_s); }},
    {"card_read_bytes_per_s", "Card read speed", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.card.read_bytes_per_s); }},
    {"card_price", "Price of a card", "money", kLibrary,
     [](const Source& s) { return s.parts.card.price; }},
    {"link_bytes_per_s", "Payload of the link", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.link.payload_bytes_per_s); }},
    {"drive_capacity_bytes", "Drive capacity", "bytes", kLibrary,
     [](const Source& s) { return number(s.parts.drive.capacity_bytes); }},
    {"drive_write_bytes_per_s", "Drive write speed", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.drive.write_bytes_per_s); }},
    {"drive_read_bytes_per_s", "Drive read speed", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.drive.read_bytes_per_s); }},
    {"drive_price", "Price of a drive", "money", kLibrary,
     [](const Source& s) { return s.parts.drive.price; }},
    {"checksum_bytes_per_s", "Speed of the checksum", "bytes/s", kLibrary,
     [](const Source& s) { return number(s.parts.checksum.bytes_per_s); }},
    {"container_bytes_per_frame", "Container, each frame", "bytes", kLibrary,
     [](const Source& s) { return number(s.parts.container.bytes_per_frame); }},
    {"container_audio_bytes", "Container, each frame and sound channel", "bytes", kLibrary,
     [](const Source& s) { return number(s.parts.container.audio_bytes_per_frame_and_channel); }},
    {"drive_copies", "Copies on drives", "copies", kChosen,
     [](const Source& s) { return number(s.plan.store.drive_copies); }},
    {"tape_copies", "Copies on tape", "copies", kChosen,
     [](const Source&
            s) { return s.parts.tape == nullptr ? 0 : number(s.plan.store.tape_copies); }},
    {"tape_capacity_bytes", "Tape capacity", "bytes", kLibrary,
     [](const Source&
            s) { return s.parts.tape == nullptr ? 1 : number(s.parts.tape->capacity_bytes); }},
    {"tape_write_bytes_per_s", "Tape speed", "bytes/s", kLibrary,
     [](const Source&
            s) { return s.parts.tape == nullptr ? 1 : number(s.parts.tape->write_bytes_per_s); }},
    {"tape_price", "Price of a tape", "money", kLibrary,
     [](const Source& s) { return s.parts.tape == nullptr ? 0 : s.parts.tape->price; }},
    {"upload_megabits_per_s", "Upload speed", "Mbit/s", kChosen,
     [](const Source& s) { return s.plan.store.upload_megabits_per_s; }},
    {"proxy_megabits_per_s", "Data rate of the proxies", "Mbit/s", kChosen,
     [](const Source& s) { return s.plan.store.proxy_megabits_per_s; }},
    {"upload_share", "Share uploaded", "", kChosen,
     [](const Source& s) { return s.plan.store.upload_share; }},
    {"stock_price_per_foot", "Price of a foot of stock", "money/ft", kChosen,
     [](const Source& s) { return s.plan.film.stock_price_per_foot; }},
    {"processing_price_per_foot", "Price of processing a foot", "money/ft", kChosen,
     [](const Source& s) { return s.plan.film.processing_price_per_foot; }},
    {"scanning_price_per_foot", "Price of scanning a foot", "money/ft", kChosen,
     [](const Source& s) { return s.plan.film.scanning_price_per_foot; }},
    {"wrangler_price_per_hour", "Price of an hour of copying", "money/h", kChosen,
     [](const Source& s) { return s.plan.store.wrangler_price_per_hour; }},
    {"upload_price_per_terabyte", "Price of a terabyte uploaded", "money/TB", kChosen,
     [](const Source& s) { return s.plan.store.upload_price_per_terabyte; }},
});

/// The source of the row that a figure was read from, by the beginning of its key.
std::string_view row_source(std::string_view key, const StoreParts& parts) {
  const std::string* source = key.starts_with("card_")        ? &parts.card.source
                              : key.starts_with("link_")      ? &parts.link.source
                              : key.starts_with("drive_")     ? &parts.drive.source
                              : key.starts_with("checksum_")  ? &parts.checksum.source
                              : key.starts_with("container_") ? &parts.container.source
                                                              : nullptr;
  if (key.starts_with("tape_") && parts.tape != nullptr) source = &parts.tape->source;
  return source != nullptr ? source_words(*source) : kLibrary;
}

/// The figures of one codec form, under keys that begin with "codec_".
class CodecFigures {
 public:
  CodecFigures(std::vector<GivenNumber>& given, std::string_view source)
      : given_(given), source_(source) {}

  std::string_view operator()(const PackedForm& form) {
    add("codec_block_pixels", "Pixels in a block", "px", number(form.block_pixels));
    add("codec_block_bytes", "Bytes of a block", "bytes", number(form.block_bytes));
    add("codec_row_multiple", "Rows filled to a multiple of", "bytes",
        number(form.row_multiple_bytes));
    add("codec_row_extra", "Added to each row", "bytes", number(form.row_extra_bytes));
    add("codec_frame_extra", "Added to each frame", "bytes", number(form.frame_extra_bytes));
    return "packed";
  }
  std::string_view operator()(const RatioForm& form) {
    add("codec_bits", "Bits of a pixel", "bits/px", form.bits_per_pixel.to_double());
    add("codec_ratio", "Compression ratio", "∶1", form.ratio.to_double());
    return "ratio";
  }
  std::string_view operator()(const LosslessForm& form) {
    add("codec_bits", "Bits of a pixel", "bits/px", form.bits_per_pixel.to_double());
    add("codec_lossless_ratio", "Ratio the picture allows", "∶1",
        Span{form.worst_ratio.to_double(), form.best_ratio.to_double()});
    return "lossless";
  }
  std::string_view operator()(const MacroblockForm& form) {
    add("codec_numerator", "Multiplier", "bytes", number(form.numerator));
    add("codec_denominator", "Divisor", "", number(form.denominator));
    add("codec_step", "Step", "bytes", number(form.step_bytes));
    add("codec_minimum", "Smallest frame", "bytes", number(form.minimum_bytes));
    return "macroblock";
  }
  std::string_view operator()(const TableForm&) { return "table"; }
  std::string_view operator()(const BitRateForm& form) {
    add("codec_bits_per_s", "Bit rate", "bits/s", number(form.bits_per_s));
    return "bit_rate";
  }
  std::string_view operator()(const MeasuredForm& form) {
    add("codec_measured_bytes", "Bytes measured", "bytes", number(form.bytes));
    add("codec_measured_frames", "Frames measured", "frames", number(form.frames));
    add("codec_measured_width", "Width measured", "px", number(form.width_pixels));
    add("codec_measured_height", "Height measured", "px", number(form.height_pixels));
    return "measured";
  }

 private:
  void add(std::string_view key, std::string_view label, std::string_view unit, double value) {
    add(key, label, unit, Span{value, value});
  }
  void add(std::string_view key, std::string_view label, std::string_view unit, Span value) {
    given_.push_back({key, label, unit, source_, value});
  }
  std::vector<GivenNumber>& given_;
  std::string_view source_;
};

/// What the commission's photosites are counted on.
std::string_view what_is_counted(const Report& report) {
  const bool frame = report.resolve.mandate.required > 0 && report.resolve.mandate.counted_on_frame;
  if (report.film) return frame ? "scanned_frame" : "scan";
  return frame ? "frame" : "mode";
}

/// Which parts of the copying station can limit it.
std::string_view copying_parts(const Storing& storing) {
  const bool verified = storing.verification != Verification::none;
  if (storing.drive_copies > 0) return verified ? "drives, verified" : "drives";
  return verified ? "no drives, verified" : "no drives";
}

}  // namespace

bool is_invented(std::string_view source) {
  return source.find("nvented") != std::string_view::npos;
}

void add_given(Report& report, const Plan& plan, const StoreParts& parts) {
  report.currency = plan.store.currency;
  const Source source{.plan = plan, .parts = parts};
  report.given.reserve(kRows.size() + 8);
  for (const Row& row : kRows) {
    const double value = row.read(source);
    const std::string_view words = row.source == kLibrary ? row_source(row.key, parts) : row.source;
    report.given.push_back({row.key, row.label, row.unit, words, {value, value}});
  }
  const bool sound = report.store.audio_bytes_per_s > 0;
  const double channels = sound ? number(plan.run.audio_channels) : 0;
  report.given.push_back({"channels_recorded",
                          "Sound channels recorded",
                          "channels",
                          "chosen in the plan; none off speed",
                          {channels, channels}});
  report.given_words.reserve(6);
  report.given_words.push_back(
      {"codec_form",
       std::visit(CodecFigures(report.given, source_words(parts.codec.source)), parts.codec.form)});
  report.given_words.push_back({"copying", copying_parts(plan.store)});
  const bool verified = plan.store.verification != Verification::none;
  report.given_words.push_back({"counted", what_is_counted(report)});
  report.given_words.push_back({"verification", verified ? "read back" : "none"});
  const bool originals = plan.store.upload_what == UploadWhat::originals;
  report.given_words.push_back({"upload_what", originals ? "originals" : "proxies"});
  const bool hours = plan.shooting.by == ShootingBy::recorded_hours;
  report.given_words.push_back({"shooting_by", hours ? "recorded_hours" : "ratio"});
}

}  // namespace widegate
