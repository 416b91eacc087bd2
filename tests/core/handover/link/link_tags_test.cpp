// Links name fields by their place in a list: every field has exactly one place, for ever.
#include "core/handover/link/link_tags.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "core/catalogue/catalogue_fields.h"
#include "core/plan/plan_fields.h"

namespace {

using namespace widegate;

template <class Row>
void check_row() {
  const auto tags = link_tags<Row>();
  const auto fields = row_fields<Row>();
  CHECK(std::set(tags.begin(), tags.end()).size() == tags.size());
  for (const auto& field : fields) {
    CAPTURE(std::string(field.pointer));
    CHECK(std::find(tags.begin(), tags.end(), field.pointer) != tags.end());
  }
}

template <class... Rows>
void check_rows() {
  (check_row<Rows>(), ...);
}

}  // namespace

TEST_CASE("every field of a plan has its number in links") {
  std::set<std::string_view> tags(std::begin(kPlanTags), std::end(kPlanTags));
  tags.insert(std::begin(kFrameLineTags), std::end(kFrameLineTags));
  CHECK(tags.size() == std::size(kPlanTags) + std::size(kFrameLineTags));
  for (const FieldInfo& field : plan_fields()) {
    CAPTURE(std::string(field.pointer));
    CHECK(tags.contains(field.pointer));
  }
}

TEST_CASE("every field of a catalogue row has its number in links") {
  check_rows<Camera, SensorMode, Recording, LensSet, Lens, Codec, PackedForm, RatioForm,
             LosslessForm, MacroblockForm, TableForm, TableForm::Row, BitRateForm, MeasuredForm,
             Card, Link, Drive, Tape, Checksum, Container>();
}

TEST_CASE("numbers in old links keep their meaning") {
  // Written down when version 1 was made; lists may grow after these, never before them.
  CHECK(std::size(kPlanTags) >= 59);
  CHECK(kPlanTags[0] == "/title");
  CHECK(kPlanTags[8] == "/lens/focal_mm");
  CHECK(kPlanTags[20] == "/run/sensor_rate");
  CHECK(kPlanTags[36] == "/store/card");
  CHECK(kPlanTags[58] == "/choose/weight_data");
  CHECK(kFrameLineTags[5] == "/deliverable/frame_lines/#/anchor/y");
}
