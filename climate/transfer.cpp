#include "climate/transfer.hpp"

#include "climate/base/quantile.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <vector>

namespace nightsow::climate {

namespace {

constexpr double huber_k = 1.345;         // 95 % as good as least squares on normal residuals
constexpr double mad_to_sd = 0.6745;      // of the normal distribution
constexpr double least_scale_k = 1e-9;    // exact pairs
constexpr double change_that_ends = 1e-9; // K
constexpr int most_rounds = 200;
constexpr double steepest = 1.5; // no air beside a pot swings half as much again as the station's
constexpr double most_in_sun = 0.2;

struct Pairs {
  std::vector<double> x;
  std::vector<double> y;
};

double spread_of(const std::vector<double>& residuals) {
  std::vector<double> sizes(residuals.size());
  std::transform(
      residuals.begin(), residuals.end(), sizes.begin(), [](double r) { return std::abs(r); });
  return quantile_type7(std::move(sizes), 0.5) / mad_to_sd;
}

// One round of weighted least squares, the line kept about its fixed centre.
RobustLine weighted_line(std::span<const double> x,
                         std::span<const double> y,
                         const std::vector<double>& weights,
                         const RobustLine& before,
                         SlopeOf slope) {
  double sum_w = 0.0;
  double sum_x = 0.0;
  double sum_y = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    sum_w += weights[i];
    sum_x += weights[i] * (x[i] - before.centre);
    sum_y += weights[i] * y[i];
  }
  const double mean_x = sum_x / sum_w;
  const double mean_y = sum_y / sum_w;
  double sum_xx = 0.0;
  double sum_xy = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    const double dx = x[i] - before.centre - mean_x;
    sum_xx += weights[i] * dx * dx;
    sum_xy += weights[i] * dx * (y[i] - mean_y);
  }
  RobustLine line = before;
  line.slope = slope == SlopeOf::fitted && sum_xx > 0.0 ? sum_xy / sum_xx : 1.0;
  line.level = mean_y - line.slope * mean_x;
  return line;
}

SlopeOf slope_for(const Pairs& pairs) {
  const double range = quantile_type7(pairs.x, 0.9) - quantile_type7(pairs.x, 0.1);
  const bool shown = pairs.x.size() >= static_cast<std::size_t>(least_pairs_for_slope) &&
                     range >= least_range_for_slope_k;
  return shown ? SlopeOf::fitted : SlopeOf::one;
}

std::optional<RobustLine> line_through(const Pairs& pairs) {
  if (pairs.x.size() < static_cast<std::size_t>(least_pairs)) {
    return std::nullopt;
  }
  RobustLine line = robust_line(pairs.x, pairs.y, slope_for(pairs));
  if (line.slope < 0.0 || line.slope > steepest) {
    line = robust_line(pairs.x, pairs.y, SlopeOf::one);
  }
  return line;
}

} // namespace

RobustLine robust_line(std::span<const double> x, std::span<const double> y, SlopeOf slope) {
  assert(x.size() == y.size() && x.size() >= 2);
  RobustLine line;
  line.pairs = static_cast<int>(x.size());
  line.centre = std::accumulate(x.begin(), x.end(), 0.0) / static_cast<double>(x.size());
  std::vector<double> weights(x.size(), 1.0);
  std::vector<double> residuals(x.size());
  line = weighted_line(x, y, weights, line, slope);
  for (int round = 0; round < most_rounds; ++round) {
    for (std::size_t i = 0; i < x.size(); ++i) {
      residuals[i] = y[i] - line.at(x[i]);
    }
    line.spread = spread_of(residuals);
    const double bend = huber_k * std::max(line.spread, least_scale_k);
    std::transform(residuals.begin(), residuals.end(), weights.begin(), [&](double r) {
      return std::abs(r) <= bend ? 1.0 : bend / std::abs(r);
    });
    const RobustLine next = weighted_line(x, y, weights, line, slope);
    const double change =
        std::max(std::abs(next.level - line.level), std::abs(next.slope - line.slope));
    line = next;
    if (change < change_that_ends) {
      break;
    }
  }
  return line;
}

bool in_the_sun(double logger_day_c, double station_day_c) {
  return logger_day_c > station_day_c + most_day_rise_k;
}

Transfer fit_transfer(const DailySeries& station, const DailySeries& logger) {
  Transfer transfer;
  Pairs nights;
  Pairs days;
  for (std::size_t i = 0; i < logger.size(); ++i) {
    const std::optional<std::size_t> there = station.index_of(logger.date_of(i));
    if (!there) {
      continue;
    }
    const auto night = static_cast<double>(logger.night_c()[i]);
    const auto outside_night = static_cast<double>(station.night_c()[*there]);
    if (station.night_mark()[*there] == Mark::observed && !std::isnan(night - outside_night)) {
      nights.x.push_back(outside_night);
      nights.y.push_back(night);
    }
    const auto day = static_cast<double>(logger.day_c()[i]);
    const auto outside_day = static_cast<double>(station.day_c()[*there]);
    if (in_the_sun(day, outside_day)) {
      ++transfer.days_in_sun;
    } else if (!std::isnan(day - outside_day)) {
      days.x.push_back(outside_day);
      days.y.push_back(day);
    }
  }
  transfer.paired_nights = static_cast<int>(nights.x.size());
  transfer.paired_days = static_cast<int>(days.x.size());
  transfer.night = line_through(nights);
  // What is left of a logger in the sun are its dull days, which say nothing of the others.
  const bool sunny =
      transfer.days_in_sun > most_in_sun * (transfer.days_in_sun + transfer.paired_days);
  transfer.day = sunny ? std::nullopt : line_through(days);
  return transfer;
}

} // namespace nightsow::climate
