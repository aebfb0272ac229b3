#include "planner/statistics/germination_indices.hpp"

#include <cmath>
#include <cstddef>
#include <numeric>

namespace nightsow::planner {

namespace {

double day_of(std::size_t i) {
  return static_cast<double>(i) + 1.0;
}

void add_spread(GerminationTimes& times, std::span<const int> new_a_day) {
  double squares = 0.0;
  for (std::size_t i = 0; i < new_a_day.size(); ++i) {
    const double from_mean = day_of(i) - times.mean_days;
    squares += new_a_day[i] * from_mean * from_mean;
    if (new_a_day[i] > 0) {
      const double part = static_cast<double>(new_a_day[i]) / times.came;
      times.entropy_bits -= part * std::log2(part);
    }
  }
  times.variance = times.came > 1 ? squares / (times.came - 1) : 0.0;
  times.mean_error = std::sqrt(times.variance / times.came);
  times.rate_a_day = 1.0 / times.mean_days;
  times.rate_variance = times.variance / std::pow(times.mean_days, 4.0);
  times.uniformity = squares > 0.0 ? times.came / squares : 0.0;
}

} // namespace

std::optional<GerminationTimes> germination_times(std::span<const int> new_a_day) {
  GerminationTimes times;
  double sum_of_days = 0.0;
  for (std::size_t i = 0; i < new_a_day.size(); ++i) {
    const int came = new_a_day[i];
    if (came <= 0) {
      continue;
    }
    const auto day = static_cast<int>(i) + 1;
    times.first_day = times.came == 0 ? day : times.first_day;
    times.last_day = day;
    if (came > times.peak) {
      times.peak = came;
      times.peak_day = day;
    }
    times.came += came;
    sum_of_days += static_cast<double>(came) * day;
  }
  if (times.came == 0) {
    return std::nullopt;
  }
  times.mean_days = sum_of_days / times.came;
  add_spread(times, new_a_day);
  return times;
}

std::optional<double> half_came_days(std::span<const int> new_a_day, MiddleSeed middle) {
  const int all = std::accumulate(new_a_day.begin(), new_a_day.end(), 0);
  if (all == 0) {
    return std::nullopt;
  }
  const double wanted = middle == MiddleSeed::coolbear ? 0.5 * (all + 1.0) : 0.5 * all;
  int before = 0;
  std::size_t i = 0;
  while (before + new_a_day[i] < wanted) {
    before += new_a_day[i];
    ++i;
  }
  // Where the first seeds already pass the middle, nothing is known of before.
  return before == 0 ? day_of(i) : day_of(i) - 1.0 + (wanted - before) / new_a_day[i];
}

double germination_speed(std::span<const int> new_a_day) {
  double sum = 0.0;
  for (std::size_t i = 0; i < new_a_day.size(); ++i) {
    sum += new_a_day[i] / day_of(i);
  }
  return sum;
}

double accumulated_speed(std::span<const int> new_a_day) {
  double sum = 0.0;
  int so_far = 0;
  for (std::size_t i = 0; i < new_a_day.size(); ++i) {
    so_far += new_a_day[i];
    sum += so_far / day_of(i);
  }
  return sum;
}

double cumulative_sum(std::span<const int> new_a_day) {
  return emergence_index(new_a_day) + std::accumulate(new_a_day.begin(), new_a_day.end(), 0);
}

double emergence_index(std::span<const int> new_a_day) {
  double sum = 0.0;
  for (std::size_t i = 0; i < new_a_day.size(); ++i) {
    sum += static_cast<double>(new_a_day[i]) * (static_cast<double>(new_a_day.size()) - day_of(i));
  }
  return sum;
}

double hill_days(const HillCurve& curve, double part) {
  return curve.half_days * std::pow(part / (1.0 - part), 1.0 / curve.steep);
}

std::optional<double> hill_days_to(const HillCurve& curve, double height) {
  const double part = (height - curve.start) / curve.rise;
  if (part <= 0.0) {
    return 0.0;
  }
  return part >= 1.0 ? std::nullopt : std::optional{hill_days(curve, part)};
}

} // namespace nightsow::planner
