// Store: data, cards, copies, archive and money.
#include <array>

#include "web/view/sections.h"

namespace widegate {
namespace {

bool by_hours(const Plan& plan, std::size_t /*line*/) {
  return plan.shooting.by == ShootingBy::recorded_hours;
}
bool by_ratio(const Plan& plan, std::size_t /*line*/) {
  return plan.shooting.by == ShootingBy::ratio;
}

bool proxies_uploaded(const Plan& plan, std::size_t /*line*/) {
  return plan.store.upload_what == UploadWhat::proxies;
}

}  // namespace

Panel store_panel() {
  static constexpr auto kFields = std::to_array<PanelField>({
      {"/store/card"},
      {"/shooting/recorded_hours_per_day", false, by_hours},
      {"/shooting/script_minutes", false, by_ratio},
      {"/shooting/shooting_ratio", false, by_ratio},
      {"/shooting/days"},
      {"/shooting/units"},
      {"/store/drive_copies"},
      {"/store/tape_copies"},
      {"/store/copy_places"},
      {"/shooting/by", true},
      {"/shooting/cameras_per_unit", true},
      {"/shooting/day_hours", true},
      {"/store/link", true},
      {"/store/drive", true},
      {"/store/tape", true},
      {"/store/checksum", true},
      {"/store/verification", true},
      {"/store/travel_minutes", true},
      {"/store/return_minutes", true},
      {"/store/hold_hours", true},
      {"/store/spare_cards", true},
      {"/store/container", true},
      {"/store/upload_what", true},
      {"/store/proxy_megabits_per_s", true, proxies_uploaded},
      {"/store/upload_megabits_per_s", true},
      {"/store/upload_share", true},
      {"/store/wrangler_price_per_hour", true},
      {"/store/upload_price_per_terabyte", true},
      {"/film/magazine_feet", true},
      {"/film/stock_price_per_foot", true},
      {"/film/processing_price_per_foot", true},
      {"/film/scanning_price_per_foot", true},
      {"/store/currency", true},
  });
  return {.id = "store",
          .title = "Store",
          .question = "How many cards, hours and how much money?",
          .topic = Question::store,
          .fields = kFields};
}

}  // namespace widegate
