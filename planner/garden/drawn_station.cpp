#include "planner/garden/drawn_station.hpp"

#include "climate/drawn_years.hpp"

namespace nightsow::planner {

bool knows_normals_only(const Garden& garden) {
  return garden.readings.empty() && garden.monthly_normals.has_value();
}

climate::DailySeries drawn_station(const Garden& garden, Date today) {
  constexpr int drawn_days = 30 * 365;
  constexpr int missing_days = 14;
  constexpr int end_before_today = 400;
  const Date first = today - Days{end_before_today + drawn_days + missing_days};
  const MonthlyNormals& normals = *garden.monthly_normals;
  climate::DailySeries series =
      climate::drawn_years(normals.night_c, normals.day_c, first, drawn_days + missing_days);
  for (int i = 0; i < missing_days; ++i) {
    const std::size_t index = series.size() - 1 - static_cast<std::size_t>(i);
    series.set_night(index, climate::missing_c);
    series.set_day(index, climate::missing_c);
  }
  return series;
}

} // namespace nightsow::planner
