#include "climate/completeness.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::climate {

namespace {

constexpr int most_missing_of_a_month = 10;
constexpr int most_missing_in_a_row = 4;
constexpr int months_a_year = 12;

std::vector<Hole> holes_of(Date first, std::span<const float> values_c) {
  std::vector<Hole> holes;
  std::size_t length = 0;
  for (std::size_t i = 0; i <= values_c.size(); ++i) {
    if (i < values_c.size() && std::isnan(values_c[i])) {
      ++length;
    } else if (length > 0) {
      const Date last = first + Days{static_cast<int>(i) - 1};
      holes.push_back({last - Days{static_cast<int>(length) - 1}, last});
      length = 0;
    }
  }
  return holes;
}

void count_months(Date first, std::span<const float> values_c, Completeness& result) {
  const date::year_month_day start{first};
  date::year_month month = start.year() / start.month();
  if (start.day() != date::day{1}) {
    month += date::months{1};
  }
  for (;; month += date::months{1}) {
    const Date begins{month / 1};
    const Date ends{(month + date::months{1}) / 1};
    const auto from = static_cast<std::size_t>(days_between(first, begins));
    const auto upto = static_cast<std::size_t>(days_between(first, ends));
    if (upto > values_c.size()) {
      return;
    }
    ++result.months;
    result.months_lost += month_is_lost(values_c.subspan(from, upto - from)) ? 1 : 0;
  }
}

void count_day(Date day, bool missing, Completeness& result) {
  const unsigned weekday = date::weekday{day}.c_encoding();
  const auto month = static_cast<unsigned>(date::year_month_day{day}.month());
  for (MissingShare* kind : {&result.by_weekday.at(weekday), &result.by_month.at(month - 1)}) {
    ++kind->days;
    kind->missing += missing ? 1 : 0;
  }
}

// Days outside the long holes.
void count_kinds_of_days(Date first, std::span<const float> values_c, Completeness& result) {
  auto hole = result.long_holes.begin();
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    const Date day = first + Days{static_cast<int>(i)};
    while (hole != result.long_holes.end() && hole->last < day) {
      ++hole;
    }
    if (hole == result.long_holes.end() || day < hole->first) {
      count_day(day, std::isnan(values_c[i]), result);
    }
  }
}

bool is_clearly_worse(double share, double usual) {
  constexpr double clearly_more = 0.05;
  constexpr double times_more = 1.5;
  return share >= usual + clearly_more && share >= times_more * usual;
}

void add(MissingShare& sum, const MissingShare& part) {
  sum.days += part.days;
  sum.missing += part.missing;
}

// The members of `worse` against all others.
Lopsided against_others(std::span<const MissingShare> kinds, std::vector<int> worse) {
  MissingShare of;
  MissingShare others;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    const bool is_worse = std::find(worse.begin(), worse.end(), static_cast<int>(i)) != worse.end();
    add(is_worse ? of : others, kinds[i]);
  }
  return {std::move(worse), of.share(), others.share()};
}

} // namespace

bool month_is_lost(std::span<const float> month_c) {
  int missing = 0;
  int in_a_row = 0;
  int longest = 0;
  for (const float value : month_c) {
    in_a_row = std::isnan(value) ? in_a_row + 1 : 0;
    missing += in_a_row > 0 ? 1 : 0;
    longest = std::max(longest, in_a_row);
  }
  return missing > most_missing_of_a_month || longest > most_missing_in_a_row;
}

Completeness completeness(Date first, std::span<const float> values_c) {
  Completeness result;
  result.days = static_cast<int>(values_c.size());
  for (const Hole& hole : holes_of(first, values_c)) {
    result.missing += hole.days();
    if (hole.days() >= long_hole_days) {
      result.long_holes.push_back(hole);
    }
  }
  count_months(first, values_c, result);
  count_kinds_of_days(first, values_c, result);
  return result;
}

std::optional<Lopsided> lopsided_week(const Completeness& element) {
  std::vector<int> worse;
  const MissingShare& best =
      *std::min_element(element.by_weekday.begin(),
                        element.by_weekday.end(),
                        [](const auto& a, const auto& b) { return a.share() < b.share(); });
  for (int day = 0; day < static_cast<int>(element.by_weekday.size()); ++day) {
    if (is_clearly_worse(element.by_weekday.at(static_cast<std::size_t>(day)).share(),
                         best.share())) {
      worse.push_back(day);
    }
  }
  // Where most of the week is worse, it is one good day that stands out, and no weekend.
  constexpr std::size_t most_worse_days = 3;
  if (worse.empty() || worse.size() > most_worse_days) {
    return std::nullopt;
  }
  return against_others(element.by_weekday, std::move(worse));
}

std::optional<Lopsided> lopsided_year(const Completeness& element) {
  std::optional<Lopsided> worst;
  for (int month = 0; month < months_a_year; ++month) {
    std::vector<int> season{month, (month + 1) % months_a_year, (month + 2) % months_a_year};
    const Lopsided found = against_others(element.by_month, std::move(season));
    if (is_clearly_worse(found.share, found.usual) && (!worst || found.share > worst->share)) {
      worst = found;
    }
  }
  return worst;
}

} // namespace nightsow::climate
