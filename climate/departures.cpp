#include "climate/departures.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace nightsow::climate {

namespace {

DepartureRow row_of(Date first, std::span<const float> values_c, const SmoothCurve& curve) {
  std::vector<float> departures_k(values_c.size());
  const std::vector<double> smooth_c = curve.values_c(first, static_cast<int>(values_c.size()));
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    departures_k[i] = static_cast<float>(static_cast<double>(values_c[i]) - smooth_c[i]);
  }
  return {first, std::move(departures_k)};
}

} // namespace

float DepartureRow::at(Date day) const {
  const int index = days_between(first_, day);
  return index >= 0 && index < static_cast<int>(departures_k_.size())
             ? departures_k_[static_cast<std::size_t>(index)]
             : missing_c;
}

std::vector<float> DepartureRow::from(Date from, int count) const {
  std::vector<float> row(static_cast<std::size_t>(count), missing_c);
  const int begin = days_between(first_, from);
  const int there = std::max(begin, 0);
  const int end = std::min(begin + count, static_cast<int>(departures_k_.size()));
  if (there < end) {
    std::copy(
        departures_k_.begin() + there, departures_k_.begin() + end, row.begin() + (there - begin));
  }
  return row;
}

double DepartureRow::mean_of(Date last, int count) const {
  const int size = static_cast<int>(departures_k_.size());
  const int end = days_between(first_, last);
  const int begin = std::max(end - count + 1, 0);
  double sum = 0.0;
  int there = 0;
  for (int i = std::min(end, size - 1); i >= begin; --i) {
    const float departure_k = departures_k_[static_cast<std::size_t>(i)];
    const bool known = !std::isnan(departure_k);
    sum += known ? static_cast<double>(departure_k) : 0.0;
    there += known ? 1 : 0;
  }
  return 2 * there >= count ? sum / there : static_cast<double>(missing_c);
}

Departures departures(const DailySeries& series, const SmoothYear& smooth) {
  Departures result;
  if (series.empty()) {
    return result;
  }
  result.night = row_of(series.first(), series.night_c(), smooth.night);
  if (smooth.day) {
    result.day = row_of(series.first(), series.day_c(), *smooth.day);
  }
  return result;
}

} // namespace nightsow::climate
