#include "core/show/show_notes.h"

#include <algorithm>

#include "core/report/figure_text.h"
#include "core/report/notes.h"

namespace widegate {
namespace {

constexpr double kHoursOfDay = 24;

class Notes {
 public:
  explicit Notes(const ShowReport& report) : report_(report) {}

  void add(Severity severity, std::string text) { notes_.push_back({severity, std::move(text)}); }

  /// A shooting day by its date, where there is a calendar.
  [[nodiscard]] std::string day(std::int64_t number) const {
    const ShowDay& day = report_.days[static_cast<std::size_t>(number - 1)];
    const auto date = parse_day(day.date);
    return "shooting day " + std::to_string(number) + (date ? ", " + day_words(*date) : "");
  }

  void parts(const std::vector<EvaluatedPart>& parts) {
    for (const EvaluatedPart& part : parts) {
      for (const Note& note : part.report.notes) {
        const bool standing = topic_standing(note.topic);
        if (standing || note.severity == Severity::ok) continue;
        add(note.severity, part.part->name + ": " + note_text(note));
      }
    }
  }

  void copying() {
    const ShowTotals& totals = report_.totals;
    if (totals.copy_hours_per_day.most > totals.station_hours_per_day) {
      add(Severity::caution, "The day with most takes " +
                                 short_number(totals.copy_hours_per_day.most, 1) +
                                 " h of copying: " + std::to_string(totals.stations.most) +
                                 " stations of " + short_number(totals.station_hours_per_day, 1) +
                                 " h, and one for each unit that is elsewhere.");
    }
    if (totals.upload_hours_per_day.most > kHoursOfDay) {
      add(Severity::fail, "The line is not done in a day: a day's upload takes " +
                              short_number(totals.upload_hours_per_day.most, 1) + " h.");
    }
  }

  void cards() {
    for (const CardKind& kind : report_.cards) {
      if (!kind.short_day) continue;
      add(Severity::fail, kind.name + ": " + std::to_string(*kind.at_hand) +
                              " at hand run short on " + day(*kind.short_day) + "; " +
                              std::to_string(kind.at_once.most) + " are out at once.");
    }
  }

  void money() {
    const MoneyReport& money = report_.money;
    const bool invented = std::any_of(money.sums.begin(), money.sums.end(),
                                      [](const MoneySum& sum) { return sum.invented; });
    if (invented) add(Severity::caution, "Sums of money hold invented prices.");
    if (money.sums.size() > 1) {
      add(Severity::caution,
          "Prices are in different currencies, and their sums are not added together.");
    }
    if (money.missing.empty()) return;
    std::string names;
    for (const std::string& name : money.missing) names += (names.empty() ? "" : "; ") + name;
    add(Severity::caution, "No price was entered for, and no sum holds: " + names + ".");
  }

  std::vector<ShowNote> taken() {
    std::stable_sort(notes_.begin(), notes_.end(),
                     [](const ShowNote& a, const ShowNote& b) { return a.severity > b.severity; });
    return std::move(notes_);
  }

 private:
  const ShowReport& report_;
  std::vector<ShowNote> notes_;
};

}  // namespace

std::vector<ShowNote> show_notes(const std::vector<EvaluatedPart>& parts,
                                 const ShowReport& report) {
  Notes notes(report);
  notes.cards();
  notes.copying();
  notes.money();
  notes.parts(parts);
  return notes.taken();
}

std::string_view show_standing_text() {
  return "Always: no card is wiped before two verified copies exist in two places. Figures follow "
         "from the plans; the makers' published figures and a test with the equipment decide.";
}

}  // namespace widegate
