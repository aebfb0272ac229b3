#include "planner/model/hazards.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

constexpr double most_hazard = 30.0;
// Up to these the first terms of the series are exact, and much quicker.
constexpr double small_loss = 0.01;
constexpr double small_hazard = 0.02;

} // namespace

double hazard_of(double loss) {
  if (loss < small_loss) {
    double sum = 1.0 / 8.0;
    for (const double term : {7.0, 6.0, 5.0, 4.0, 3.0, 2.0, 1.0}) {
      sum = 1.0 / term + loss * sum;
    }
    return loss * sum;
  }
  return loss >= 1.0 ? most_hazard : std::min(most_hazard, -std::log1p(-loss));
}

double loss_of(double hazard) {
  if (hazard >= small_hazard) {
    return -std::expm1(-hazard);
  }
  double sum = 1.0;
  for (const double term : {7.0, 6.0, 5.0, 4.0, 3.0, 2.0}) {
    sum = 1.0 - hazard * (1.0 / term) * sum;
  }
  return hazard * sum;
}

std::vector<double> running_sums(const std::vector<double>& days) {
  std::vector<double> sums(days.size());
  std::partial_sum(days.begin(), days.end(), sums.begin());
  return sums;
}

Survival::Survival(std::vector<double> sums) {
  constexpr double most_exponent = 600.0; // the smallest double is near exp(-708)
  if (!sums.empty() && sums.back() > most_exponent) {
    sums_ = std::move(sums);
    return;
  }
  left_.reserve(sums.size() + 1);
  left_.push_back(1.0);
  for (const double sum : sums) {
    left_.push_back(std::exp(-sum));
  }
}

} // namespace nightsow::planner
