// The report's schema is collected, not written: the reports of plans that between them have every
// kind of figure are walked, and what was met at each key is put together.
#include "core/catalogue/catalogue_json.h"
#include "core/plan/plan_fields.h"
#include "core/report/evaluate.h"
#include "core/report/report_fields.h"
#include "tools/schema/schema.h"

namespace widegate::schema {
namespace {

/// What has been met at one place.
struct Met {
  bool number = false, whole = false, range = false, flag = false, text = false, nothing = false;
  bool list = false;
  int times = 0;
  std::vector<Met> members;  ///< Of an object; one member without a name for a list.
  std::string name;

  Met& member(std::string_view key) {
    for (Met& met : members) {
      if (met.name == key) return met;
    }
    members.emplace_back().name = key;
    return members.back();
  }
};

class Collector final : public ReportVisitor {
 public:
  explicit Collector(Met& root) { open_.push_back(&root); }

  void begin_object(std::string_view key) override { open_.push_back(&meet(key)); }
  void end_object() override { open_.pop_back(); }
  void begin_list(std::string_view key) override {
    open_.push_back(&meet(key));
    open_.back()->list = true;
  }
  void end_list() override { open_.pop_back(); }
  void number(std::string_view key, double) override { meet(key).number = true; }
  void whole(std::string_view key, std::int64_t) override { meet(key).whole = true; }
  void span(std::string_view key, Span) override {
    Met& met = meet(key);
    met.number = met.range = true;
  }
  void counts(std::string_view key, ByteRange) override {
    Met& met = meet(key);
    met.whole = met.range = true;
  }
  void fraction(std::string_view key, Rational) override { meet(key).text = true; }
  void flag(std::string_view key, bool) override { meet(key).flag = true; }
  void text(std::string_view key, std::string_view) override { meet(key).text = true; }
  void nothing(std::string_view key) override { meet(key).nothing = true; }

 private:
  Met& meet(std::string_view key) {
    Met& met = open_.back()->member(key);
    ++met.times;
    return met;
  }
  std::vector<Met*> open_;
};

Json schema_of(const Met& met);

Json object_schema(const Met& met) {
  Json schema = closed_object();
  Json required = Json::array();
  for (const Met& member : met.members) {
    schema["properties"][member.name] = schema_of(member);
    if (member.times >= met.times) required.push_back(member.name);
  }
  if (!required.empty()) schema["required"] = std::move(required);
  return schema;
}

Json schema_of(const Met& met) {
  if (met.list) {
    Json list = {{"type", "array"}};
    if (!met.members.empty()) list["items"] = schema_of(met.members.front());
    return list;
  }
  if (!met.members.empty()) {
    const Json object = object_schema(met);
    return met.nothing ? Json{{"anyOf", {object, {{"type", "null"}}}}} : object;
  }
  Json types = Json::array();
  if (met.number) types.push_back("number");
  if (met.whole && !met.number) types.push_back("integer");
  if (met.flag) types.push_back("boolean");
  if (met.text) types.push_back("string");
  if (met.nothing) types.push_back("null");
  if (!met.range) return {{"type", types.size() == 1 ? types[0] : types}};
  const Json range = {{"$ref", met.number ? "#/$defs/number_or_range" : "#/$defs/count_or_range"}};
  return met.nothing ? Json{{"anyOf", {range, {{"type", "null"}}}}} : range;
}

/// A figure that is a range when the codec is one.
Json or_range(const char* type) {
  const Json end = {{"type", type}};
  Json range = closed_object();
  range["properties"] = {{"least", end}, {"most", end}};
  range["required"] = {"least", "most"};
  return {{"anyOf", {end, range}}};
}

/// A plan whose camera writes a codec of this form.
Plan plan_with_own(const CodecForm& form, const Catalogue& library) {
  Plan plan;
  plan.own.codecs = {{"own", "Own", "invented for the schema", form}};
  plan.own.cameras = {*find_row(library.cameras, plan.format.camera)};
  for (SensorMode& mode : plan.own.cameras.front().modes) {
    for (Recording& recording : mode.recordings) recording.codecs = {"own"};
  }
  plan.format.codec = "own";
  return plan;
}

/// Plans that between them have every figure: given, missing, exact, a range.
std::vector<Plan> telling_plans(const Catalogue& library) {
  const std::vector<std::vector<TypedField>> changes = {
      {},
      {{"/lens/wanted_width_m", "2"},
       {"/lens/wanted_height_m", "2"},
       {"/lens/focus_m", "1000"},
       {"/commission/id", "tide"},
       {"/choose/min_push_in_percent", "2"},
       {"/choose/min_room_percent", "2"},
       {"/format/codec", "bayer-12-lossless"}},
      {{"/format/camera", "film-35-4-perf"}, {"/lens/set", ""}, {"/store/tape", ""}},
      {{"/lens/set", "wye"}, {"/format/mode", "squeeze-2-239"}, {"/lens/focal_mm", "50"}},
      {{"/run/sensor_rate", "29.97"}, {"/run/project_rate", "29.97"}},
      {{"/run/lights", "steady"}, {"/lens/extender", "1.4"}, {"/store/upload_what", "originals"}},
      {{"/run/sensor_rate", "47"}, {"/run/mains_hz", "60"}},
      {{"/store/card", "sd-v60-256"}, {"/store/travel_minutes", "1000"}},
      {{"/format/codec", "bayer-12-3-1"}, {"/shooting/by", "ratio"}},
      {{"/format/recording", "resample-4096"}, {"/run/shutter_kind", "time"}},
      {{"/run/sensor_rate", "25"},
       {"/format/mode", "wide-16x9"},
       {"/format/recording", "resample-1920"},
       {"/format/codec", "avc-intra-100"}},
  };
  std::vector<Plan> plans;
  for (const auto& fields : changes) plans.push_back(with_fields(Plan{}, fields, library).value());
  for (const CodecForm& form : {CodecForm(BitRateForm{100'000'000}),
                                CodecForm(MeasuredForm{8'000'000'000, 1000, 4992, 3744})}) {
    plans.push_back(plan_with_own(form, library));
  }
  Plan refused;
  refused.lens.focal_mm = 0;
  plans.push_back(refused);
  return plans;
}

}  // namespace

Json report_schema() {
  const Catalogue library = built_in_catalogue().value();
  Met root;
  for (const Plan& plan : telling_plans(library)) {
    Collector collector(root);
    visit_report(evaluate(plan, library), collector);
    ++root.times;
  }
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                 {"$id", "report.schema.json"},
                 {"title", "Widegate report"},
                 {"description",
                  "Everything that follows from a plan, the unit in every key. A plan that is not "
                  "accepted has a report with nothing but its problems."}};
  schema.update(object_schema(root));
  schema["$defs"] = {{"number_or_range", or_range("number")},
                     {"count_or_range", or_range("integer")}};
  return schema;
}

}  // namespace widegate::schema
