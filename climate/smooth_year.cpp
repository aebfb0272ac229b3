#include "climate/smooth_year.hpp"

#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace nightsow::climate {

namespace {

constexpr int quarters = 4;
// Values that a quarter of the year needs before a curve may be drawn through it.
constexpr std::size_t least_values_a_quarter = 30;

TimedValues points_there(Date first, std::span<const float> values) {
  TimedValues points;
  points.years.reserve(values.size());
  points.values.reserve(values.size());
  const double start = years_since_2000(first);
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!std::isnan(values[i])) {
      points.years.push_back(start + static_cast<double>(i) / days_a_year);
      points.values.push_back(static_cast<double>(values[i]));
    }
  }
  return points;
}

bool covers_the_year(const TimedValues& points) {
  std::array<std::size_t, quarters> counts{};
  for (const double year : points.years) {
    const double share = year - std::floor(year);
    ++counts[std::min<std::size_t>(quarters - 1, static_cast<std::size_t>(share * quarters))];
  }
  return points.values.size() >= least_values_for_a_year &&
         std::all_of(counts.begin(), counts.end(), [](std::size_t count) {
           return count >= least_values_a_quarter;
         });
}

bool spans_a_trend(const TimedValues& points) {
  return !points.years.empty() &&
         points.years.back() - points.years.front() >= least_years_for_a_trend;
}

Eigen::MatrixXd design_matrix(const TimedValues& points, bool with_trend) {
  const auto rows = static_cast<Eigen::Index>(points.years.size());
  Eigen::MatrixXd design(rows, with_trend ? 6 : 5);
  for (Eigen::Index i = 0; i < rows; ++i) {
    const double year = points.years[static_cast<std::size_t>(i)];
    const double angle = 2.0 * std::numbers::pi * year;
    design(i, 0) = 1.0;
    design(i, 1) = std::cos(angle);
    design(i, 2) = std::sin(angle);
    design(i, 3) = std::cos(2.0 * angle);
    design(i, 4) = std::sin(2.0 * angle);
    if (with_trend) {
      design(i, 5) = year;
    }
  }
  return design;
}

// Correlation of residuals one day apart; pairs across a hole do not count.
double lag1_correlation(const TimedValues& points, const Eigen::VectorXd& residual) {
  double products = 0.0;
  double squares = 0.0;
  for (std::size_t i = 0; i + 1 < points.years.size(); ++i) {
    const bool neighbours = (points.years[i + 1] - points.years[i]) * days_a_year < 1.5;
    if (neighbours) {
      const auto at = static_cast<Eigen::Index>(i);
      products += residual(at) * residual(at + 1);
      squares += 0.5 * (residual(at) * residual(at) + residual(at + 1) * residual(at + 1));
    }
  }
  return squares > 0.0 ? std::clamp(products / squares, 0.0, 0.99) : 0.0;
}

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double spread_about_mean(const std::vector<double>& values) {
  const double mean = mean_of(values);
  double spread = 0.0;
  for (const double value : values) {
    spread += (value - mean) * (value - mean);
  }
  return spread;
}

// Mean residual of each year from the first value on that has most of its days.
TimedValues yearly_means(const TimedValues& points, const Eigen::VectorXd& residual) {
  constexpr double least_days = 0.8 * days_a_year;
  TimedValues means;
  std::size_t begin = 0;
  while (begin < points.years.size()) {
    const double year = std::floor(points.years[begin] - points.years.front());
    double sum = 0.0;
    std::size_t end = begin;
    for (;
         end < points.years.size() && std::floor(points.years[end] - points.years.front()) == year;
         ++end) {
      sum += residual(static_cast<Eigen::Index>(end));
    }
    const auto days = static_cast<double>(end - begin);
    if (days >= least_days) {
      means.years.push_back(year);
      means.values.push_back(sum / days);
    }
    begin = end;
  }
  return means;
}

// Years differ by more than the weather of single nights makes: the slope's standard error from
// yearly means, or 0 where there are too few.
double yearly_standard_error(const TimedValues& means) {
  constexpr std::size_t least_years = 8;
  if (means.years.size() < least_years) {
    return 0.0;
  }
  const double squares = spread_about_mean(means.values);
  const double variance = squares / static_cast<double>(means.years.size() - 2);
  return std::sqrt(variance / spread_about_mean(means.years));
}

// The larger of two: the ordinary one, widened as for a first-order autoregression (n values count
// as n (1 - r) / (1 + r) independent ones), and that of yearly means.
double trend_standard_error(const TimedValues& points,
                            const Eigen::VectorXd& residual,
                            double residual_sd_c,
                            double lag1) {
  const double daily = residual_sd_c / std::sqrt(spread_about_mean(points.years)) *
                       std::sqrt((1.0 + lag1) / (1.0 - lag1));
  return std::max(daily, yearly_standard_error(yearly_means(points, residual)));
}

} // namespace

double years_since_2000(Date day) {
  constexpr Date origin{date::year{2000} / date::January / 1};
  return static_cast<double>((day - origin).count()) / days_a_year;
}

double SmoothCurve::season_c(Date day) const {
  const double angle = 2.0 * std::numbers::pi * years_since_2000(day);
  return constant_c + cosine_c[0] * std::cos(angle) + sine_c[0] * std::sin(angle) +
         cosine_c[1] * std::cos(2.0 * angle) + sine_c[1] * std::sin(2.0 * angle);
}

double SmoothCurve::shrunk_trend_c_per_year() const {
  if (!trend_fitted) {
    return 0.0;
  }
  const double square = trend_c_per_year * trend_c_per_year;
  const double doubt = trend_standard_error * trend_standard_error;
  return square > 0.0 ? trend_c_per_year * square / (square + doubt) : 0.0;
}

double SmoothCurve::carried_trend_c_per_year() const {
  return trend_carried * shrunk_trend_c_per_year();
}

double SmoothCurve::value_c(Date day) const {
  return season_c(day) + carried_trend_c_per_year() * (years_since_2000(day) - centre_year);
}

std::vector<double> SmoothCurve::values_c(Date first, int days) const {
  // Sines are asked for the first day of each block and for the days of one block: those of a sum
  // follow from both, and two cycles a year from one.
  constexpr std::size_t block_days = 128;
  const auto angle_of = [](double years) { return 2.0 * std::numbers::pi * years; };
  const auto size = static_cast<std::size_t>(std::max(days, 0));
  std::array<double, block_days> cosines{};
  std::array<double, block_days> sines{};
  for (std::size_t i = 0; i < std::min(block_days, size); ++i) {
    cosines[i] = std::cos(angle_of(static_cast<double>(i) / days_a_year));
    sines[i] = std::sin(angle_of(static_cast<double>(i) / days_a_year));
  }
  const double trend = carried_trend_c_per_year();
  const double start = years_since_2000(first);
  std::vector<double> values(size);
  for (std::size_t block = 0; block < size; block += block_days) {
    const double block_year = start + static_cast<double>(block) / days_a_year;
    const double block_cosine = std::cos(angle_of(block_year));
    const double block_sine = std::sin(angle_of(block_year));
    const double block_level = constant_c + trend * (block_year - centre_year);
    const std::size_t in_block = std::min(block_days, size - block);
    for (std::size_t i = 0; i < in_block; ++i) {
      const double cosine = block_cosine * cosines[i] - block_sine * sines[i];
      const double sine = block_sine * cosines[i] + block_cosine * sines[i];
      values[block + i] = block_level + trend / days_a_year * static_cast<double>(i) +
                          cosine_c[0] * cosine + sine_c[0] * sine +
                          cosine_c[1] * (2.0 * cosine * cosine - 1.0) +
                          sine_c[1] * 2.0 * sine * cosine;
    }
  }
  return values;
}

SmoothCurve fit_curve(const TimedValues& points, bool with_trend) {
  const Eigen::MatrixXd design = design_matrix(points, with_trend);
  const Eigen::Map<const Eigen::VectorXd> target(points.values.data(), design.rows());
  const Eigen::VectorXd solution = design.colPivHouseholderQr().solve(target);
  const Eigen::VectorXd residual = target - design * solution;

  SmoothCurve curve;
  curve.count = points.values.size();
  curve.centre_year = mean_of(points.years);
  curve.constant_c = solution(0);
  curve.cosine_c = {solution(1), solution(3)};
  curve.sine_c = {solution(2), solution(4)};
  curve.residual_sd_c =
      std::sqrt(residual.squaredNorm() / static_cast<double>(design.rows() - design.cols()));
  curve.residual_lag1 = lag1_correlation(points, residual);
  curve.trend_fitted = with_trend;
  if (with_trend) {
    curve.trend_c_per_year = solution(5);
    curve.constant_c += curve.trend_c_per_year * curve.centre_year;
    curve.trend_standard_error =
        trend_standard_error(points, residual, curve.residual_sd_c, curve.residual_lag1);
  }
  return curve;
}

bool spans_a_trend(Date first, std::span<const float> values) {
  return spans_a_trend(points_there(first, values));
}

std::optional<SmoothCurve> fit_smooth_curve(Date first, std::span<const float> values) {
  const TimedValues points = points_there(first, values);
  if (!covers_the_year(points)) {
    return std::nullopt;
  }
  return fit_curve(points, spans_a_trend(points));
}

std::optional<SmoothYear> fit_smooth_year(const DailySeries& series) {
  std::optional<SmoothCurve> night = fit_smooth_curve(series.first(), series.night_c());
  if (!night) {
    return std::nullopt;
  }
  return SmoothYear{*night, fit_smooth_curve(series.first(), series.day_c())};
}

} // namespace nightsow::climate
