#include "tests/core/show/random_shows.h"

#include "core/plan/plan_check.h"
#include "core/show/show_check.h"

namespace widegate::testing {
namespace {

Price random_price(Dice& dice) {
  if (dice.one_in(4)) return {};
  return {.amount = static_cast<double>(dice.whole(0, 100'000)) / 100,
          .currency = dice.one_in(3) ? "GBP" : "EUR",
          .date = dice.one_in(2) ? "2026-11-02" : "",
          .source = dice.one_in(2) ? "somebody" : "",
          .invented = dice.one_in(2)};
}

/// A plan whose shoot is a few days of a few cameras.
Plan small_plan(Dice& dice, const Catalogue& catalogue) {
  Plan plan = random_plan(dice, catalogue);
  plan.shooting.days = dice.whole(1, 12);
  plan.shooting.units = dice.whole(1, 2);
  plan.shooting.cameras_per_unit = dice.whole(1, 3);
  plan.shooting.script_minutes = static_cast<double>(dice.whole(0, 40));
  plan.shooting.shooting_ratio = static_cast<double>(dice.whole(1, 20));
  plan.store.drive_copies = dice.whole(0, 3);
  plan.store.tape_copies = dice.whole(0, 2);
  if (dice.one_in(3)) plan.format.codec = "bayer-12-lossless";
  return check_plan(plan, catalogue).empty() ? plan : Plan{};
}

template <class Id>
void add_price(Dice& dice, Show& show, Priced what, const Id& id) {
  for (const PriceRow& row : show.prices) {
    if (row.what == what && row.id == id) return;
  }
  if (dice.one_in(5)) return;
  show.prices.push_back({.what = what, .id = id, .price = random_price(dice)});
}

void add_money(Dice& dice, Show& show) {
  for (const ShowPart& part : show.parts) {
    const Storing& store = part.plan.store;
    add_price(dice, show, Priced::card, store.card);
    add_price(dice, show, Priced::drive, store.drive);
    if (!store.tape.empty()) add_price(dice, show, Priced::tape, store.tape);
  }
  for (const Priced what : {Priced::stock_foot, Priced::processing_foot, Priced::scanning_foot,
                            Priced::copying_hour, Priced::upload_terabyte}) {
    if (dice.one_in(2)) add_price(dice, show, what, std::string());
  }
  const auto of_part = [&] { return dice.one_in(2) ? show.parts.front().name : std::string(); };
  for (std::int64_t left = dice.whole(0, 3); left > 0; --left) {
    Person person{.name = "Person", .part = of_part(), .count = dice.whole(0, 3), .price = {}};
    if (dice.one_in(3)) person.days = dice.whole(0, 20);
    if (dice.one_in(3)) person.hours_per_day = static_cast<double>(dice.whole(1, 12));
    person.price = random_price(dice);
    show.people.push_back(std::move(person));
    Rental rental{.name = "Thing", .part = of_part(), .count = dice.whole(0, 3), .price = {}};
    rental.bought = dice.one_in(3);
    if (dice.one_in(3)) rental.weeks = dice.whole(0, 9);
    rental.price = random_price(dice);
    show.rent.push_back(std::move(rental));
  }
}

void add_calendar(Dice& dice, Show& show) {
  if (dice.one_in(3)) return;
  show.calendar.start = "2027-03-01";
  for (int day = 0; day < 7; ++day) {
    if (dice.one_in(4) && show.calendar.weekdays_off.size() < 6) {
      show.calendar.weekdays_off.push_back(static_cast<Weekday>(day));
    }
  }
  if (dice.one_in(2)) show.calendar.days_off = {"2027-03-04", "2027-03-26"};
  if (dice.one_in(4)) show.calendar.shooting_days = 40;
}

}  // namespace

Show random_show(Dice& dice, const Catalogue& catalogue) {
  Show show;
  show.title = dice.one_in(2) ? "The Salt Ferry" : "";
  const std::int64_t parts = dice.whole(1, 5);
  for (std::int64_t i = 0; i < parts; ++i) {
    const bool twin = i > 0 && dice.one_in(4);
    ShowPart part{.name = "Unit " + std::to_string(i + 1), .first_day = dice.whole(1, 20)};
    part.plan = twin ? show.parts.front().plan : small_plan(dice, catalogue);
    show.parts.push_back(std::move(part));
  }
  show.archive.drives = dice.one_in(2) ? Keeping::shared : Keeping::separate;
  show.archive.tapes = dice.one_in(2) ? Keeping::shared : Keeping::separate;
  show.archive.station_hours_per_day = static_cast<double>(dice.whole(1, 24));
  if (dice.one_in(2)) show.archive.upload_megabits_per_s = static_cast<double>(dice.whole(1, 900));
  if (dice.one_in(2)) {
    show.cards.push_back({.card = show.parts.front().plan.store.card, .count = dice.whole(0, 9)});
  }
  add_calendar(dice, show);
  add_money(dice, show);
  return show;
}

}  // namespace widegate::testing
