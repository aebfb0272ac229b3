#include "climate/screen.hpp"

#include "climate/screen_checks.hpp"

#include <array>
#include <span>
#include <string>
#include <utility>

namespace nightsow::climate {

namespace {

// The coldest and hottest air measured at the ground on Earth (WMO World Weather and Climate
// Extremes Archive): Vostok 1983-07-21 and Furnace Creek 1913-07-10.
constexpr double coldest_on_earth_c = -89.2;
constexpr double hottest_on_earth_c = 56.7;

// Not a judgement but binary rounding: 56.7 as a float is a little over 56.7.
constexpr double rounding_c = 0.005;

bool impossible(float value_c) {
  const auto value = static_cast<double>(value_c);
  return value < coldest_on_earth_c - rounding_c || value > hottest_on_earth_c + rounding_c;
}

enum class Element { night, day };

/// The series being screened, and what was found so far.
class Screening {
public:
  explicit Screening(MergedReadings merged)
      : merged_(std::move(merged)), findings_(std::move(merged_.findings)) {}

  [[nodiscard]] const DailySeries& series() const { return merged_.series; }

  [[nodiscard]] std::span<const float> values(Element element) const {
    return element == Element::night ? series().night_c() : series().day_c();
  }

  void drop(FindingKind kind, Element element, std::size_t index, float other_c) {
    tell(kind, Verdict::ignored, element, index, other_c);
    remove(element, index);
  }

  void drop(FindingKind kind, Element element, const std::vector<Doubt>& doubts) {
    for (const Doubt& doubt : doubts) {
      drop(kind, element, doubt.index, doubt.other_c);
    }
  }

  void drop_both(FindingKind kind, std::size_t index) {
    tell(kind, Verdict::ignored, Element::night, index, series().day_c()[index]);
    remove(Element::night, index);
    remove(Element::day, index);
  }

  void judge(const Streak& streak, Element element) {
    const bool stuck = streak.values >= stuck_streak;
    tell(FindingKind::streak,
         stuck ? Verdict::ignored : Verdict::used,
         element,
         streak.last,
         missing_c);
    findings_.back().days = static_cast<int>(streak.last - streak.first) + 1;
    for (std::size_t i = streak.first; stuck && i <= streak.last; ++i) {
      remove(element, i);
    }
  }

  ScreenedReadings result() && { return {std::move(merged_.series), std::move(findings_)}; }

private:
  void tell(FindingKind kind, Verdict verdict, Element element, std::size_t index, float other_c) {
    const ReadingPlace& place =
        element == Element::night ? merged_.night_place[index] : merged_.day_place[index];
    findings_.push_back({kind,
                         verdict,
                         series().date_of(index),
                         place.file < merged_.files.size() ? merged_.files[place.file] : "",
                         place.line,
                         static_cast<double>(values(element)[index]),
                         static_cast<double>(other_c)});
  }

  void remove(Element element, std::size_t index) {
    if (element == Element::night) {
      merged_.series.set_night(index, missing_c);
    } else {
      merged_.series.set_day(index, missing_c);
    }
  }

  MergedReadings merged_;
  std::vector<Finding> findings_;
};

constexpr std::array both_elements{Element::night, Element::day};

void drop_impossible(Screening& screening) {
  for (std::size_t i = 0; i < screening.series().size(); ++i) {
    for (const Element element : both_elements) {
      if (impossible(screening.values(element)[i])) {
        screening.drop(FindingKind::impossible, element, i, missing_c);
      }
    }
  }
}

void judge_by_rows(Screening& screening) {
  const DailySeries& series = screening.series();
  for (const std::size_t index : both_naught(series.night_c(), series.day_c())) {
    screening.drop_both(FindingKind::naught, index);
  }
  for (const Element element : both_elements) {
    for (const Streak& streak : streaks(screening.values(element))) {
      screening.judge(streak, element);
    }
  }
}

void drop_strangers(Screening& screening) {
  const CalendarDays calendar =
      calendar_days(screening.series().first(), screening.series().size());
  for (const Element element : both_elements) {
    screening.drop(FindingKind::gap, element, beyond_gap(screening.values(element), calendar));
  }
  for (const Element element : both_elements) {
    screening.drop(FindingKind::outlier, element, outliers(screening.values(element), calendar));
  }
  for (const Element element : both_elements) {
    screening.drop(FindingKind::spike, element, spikes(screening.values(element)));
  }
}

void drop_torn_apart(Screening& screening) {
  const DailySeries& series = screening.series();
  const std::vector<Doubt> days = days_too_far(series.night_c(), series.day_c());
  const std::vector<Doubt> nights = nights_too_far(series.night_c(), series.day_c());
  screening.drop(FindingKind::lagged_range, Element::night, nights);
  screening.drop(FindingKind::lagged_range, Element::day, days);
}

void drop_night_above_day(Screening& screening) {
  for (std::size_t i = 0; i < screening.series().size(); ++i) {
    if (screening.series().night_c()[i] > screening.series().day_c()[i]) {
      screening.drop_both(FindingKind::night_above_day, i);
    }
  }
}

} // namespace

ScreenedReadings screen(MergedReadings merged) {
  Screening screening{std::move(merged)};
  drop_impossible(screening);
  judge_by_rows(screening);
  drop_strangers(screening);
  drop_torn_apart(screening);
  drop_night_above_day(screening);
  return std::move(screening).result();
}

} // namespace nightsow::climate
