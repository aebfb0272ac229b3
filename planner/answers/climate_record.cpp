#include "climate/completeness.hpp"
#include "planner/answers/climate_detail.hpp"
#include "planner/answers/figures.hpp"
#include "planner/garden/weekday.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

namespace nightsow::planner {

namespace {

std::string kind_name(climate::SuspicionKind kind) {
  using enum climate::SuspicionKind;
  switch (kind) {
  case fahrenheit_as_celsius:
    return "fahrenheit_as_celsius";
  case tenths_as_celsius:
    return "tenths_as_celsius";
  case a_tenth_of_celsius:
    return "a_tenth_of_celsius";
  case swapped:
    return "swapped";
  case days_a_day_late:
    return "days_a_day_late";
  case whole_fahrenheit:
    return "whole_fahrenheit";
  case whole_celsius:
    return "whole_celsius";
  case uneven_hundredths:
    return "uneven_hundredths";
  case computed:
    return "computed";
  }
  return "";
}

// From Saturday on, so that a weekend stands together.
std::vector<std::string> weekday_names(std::vector<int> weekdays) {
  constexpr std::array<int, 7> from_saturday{6, 0, 1, 2, 3, 4, 5};
  std::vector<std::string> list;
  for (const int day : from_saturday) {
    if (std::find(weekdays.begin(), weekdays.end(), day) != weekdays.end()) {
      list.emplace_back(weekday_word(date::weekday{static_cast<unsigned>(day)}));
    }
  }
  return list;
}

std::vector<std::string> month_numbers(const std::vector<int>& months) {
  std::vector<std::string> list;
  list.reserve(months.size());
  for (const int month : months) {
    list.push_back(std::to_string(month + 1));
  }
  return list;
}

LopsidedLine lopsided_line(const climate::Lopsided& lopsided, std::vector<std::string> on) {
  return {std::move(on), rounded_share(lopsided.share), rounded_share(lopsided.usual)};
}

CompletenessLine completeness_line(std::string element,
                                   Date first,
                                   std::span<const float> values_c) {
  const climate::Completeness found = climate::completeness(first, values_c);
  CompletenessLine line;
  line.element = std::move(element);
  line.complete =
      found.days > 0 ? rounded_share(1.0 - static_cast<double>(found.missing) / found.days) : 0.0;
  line.months = found.months;
  line.months_lost = found.months_lost;
  for (const climate::Hole& hole : found.long_holes) {
    line.long_holes.push_back({hole.first, hole.last, hole.days()});
  }
  if (const auto week = climate::lopsided_week(found)) {
    line.weekdays = lopsided_line(*week, weekday_names(week->of));
  }
  if (const auto year = climate::lopsided_year(found)) {
    line.months_of_year = lopsided_line(*year, month_numbers(year->of));
  }
  return line;
}

} // namespace

std::vector<SuspicionLine> suspicion_lines(const std::vector<climate::Suspicion>& suspicions) {
  std::vector<SuspicionLine> lines;
  lines.reserve(suspicions.size());
  for (const climate::Suspicion& suspicion : suspicions) {
    lines.push_back({kind_name(suspicion.kind),
                     rounded_share(suspicion.share),
                     std::string(climate::words_for(suspicion.kind))});
  }
  return lines;
}

RecordDetail record_detail(const LoadedGarden& garden) {
  RecordDetail detail;
  detail.suspicions = suspicion_lines(garden.suspicions);
  const climate::DailySeries& station = garden.station;
  detail.completeness.push_back(completeness_line("nights", station.first(), station.night_c()));
  detail.completeness.push_back(completeness_line("days", station.first(), station.day_c()));
  return detail;
}

} // namespace nightsow::planner
