#include "climate/normals.hpp"

#include "climate/base/quantile.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace nightsow::climate {

namespace {

// The values within half a band of the recurring day, over all years.
std::vector<double> values_about(Date first, std::span<const float> values_c, date::month_day day) {
  const int size = static_cast<int>(values_c.size());
  const int half = band_days / 2;
  std::vector<double> found;
  for (int year = year_of(first) - 1; year <= year_of(first + Days{size}) + 1; ++year) {
    const int centre = days_between(first, in_year(day, year));
    for (int i = std::max(0, centre - half); i <= std::min(size - 1, centre + half); ++i) {
      const float value = values_c[static_cast<std::size_t>(i)];
      if (!std::isnan(value)) {
        found.push_back(static_cast<double>(value));
      }
    }
  }
  return found;
}

// Sums of powers of departures; they are small, so that their cubes lose nothing.
struct Moments {
  double count = 0.0;
  double sum = 0.0;
  double squares = 0.0;
  double cubes = 0.0;

  void add(double departure_k) {
    count += 1.0;
    sum += departure_k;
    squares += departure_k * departure_k;
    cubes += departure_k * departure_k * departure_k;
  }
};

DepartureShape shape_of(const Moments& moments) {
  DepartureShape shape;
  shape.values = static_cast<std::size_t>(moments.count);
  if (shape.values < least_values_for_a_band) {
    return shape;
  }
  const double n = moments.count;
  const double mean = moments.sum / n;
  const double variance = moments.squares / n - mean * mean;
  const double third =
      moments.cubes / n - 3.0 * mean * moments.squares / n + 2.0 * mean * mean * mean;
  shape.mean_k = mean;
  shape.sd_k = std::sqrt(std::max(0.0, variance) * n / (n - 1.0));
  shape.skewness = variance > 0.0 ? third / std::pow(variance, 1.5) : 0.0;
  return shape;
}

} // namespace

std::optional<PercentileBand> percentile_band(Date first,
                                              std::span<const float> values_c,
                                              date::month_day centre) {
  const std::vector<double> values = values_about(first, values_c, centre);
  if (values.size() < least_values_for_a_band) {
    return std::nullopt;
  }
  return PercentileBand{quantile_type8(values, 0.1),
                        quantile_type8(values, 0.5),
                        quantile_type8(values, 0.9),
                        values.size()};
}

SiteQuarter site_quarter(Date day, date::month_day hottest) {
  constexpr double half_a_quarter = 0.125;
  constexpr int reference_year = 2000;
  const double since =
      years_since_2000(day) - years_since_2000(in_year(hottest, reference_year)) + half_a_quarter;
  const double year = std::floor(since);
  const int quarter = static_cast<int>((since - year) * quarters_a_year);
  return {static_cast<int>(year), std::min(quarter, quarters_a_year - 1)};
}

std::array<DepartureShape, quarters_a_year> departure_shapes(Date first,
                                                             std::span<const float> values_c,
                                                             const SmoothCurve& curve,
                                                             date::month_day hottest) {
  std::array<Moments, quarters_a_year> moments{};
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    const Date day = first + Days{static_cast<int>(i)};
    if (!std::isnan(values_c[i])) {
      const int quarter = site_quarter(day, hottest).quarter;
      moments.at(static_cast<std::size_t>(quarter))
          .add(static_cast<double>(values_c[i]) - curve.value_c(day));
    }
  }
  std::array<DepartureShape, quarters_a_year> shapes{};
  for (std::size_t quarter = 0; quarter < shapes.size(); ++quarter) {
    shapes.at(quarter) = shape_of(moments.at(quarter));
  }
  return shapes;
}

} // namespace nightsow::climate
