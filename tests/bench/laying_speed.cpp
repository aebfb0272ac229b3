#include "planner/model/assign.hpp"

#include <chrono>
#include <cstdio>
#include <vector>

// 200 sowings on 30 free days under 20 pots a day, two benches and a mat: invented values that fall
// by a share a week from a best day on. Prints seconds, value, bound and gap.
namespace {

using nightsow::planner::DayChoice;
using nightsow::planner::Laid;
using nightsow::planner::LayingLimits;
using nightsow::planner::SowingToLay;

constexpr int sowings_count = 200;
constexpr int free_days = 30;

SowingToLay sowing_number(int number) {
  SowingToLay sowing;
  sowing.pots = 1 + number * 7 % 5;
  sowing.bench = number % 2;
  if (number % 10 == 0) {
    sowing.mat = 0;
  }
  const int best = number * 11 % free_days;
  const double plants = 2.0 + number * 13 % 17;
  const double lost_a_week = 0.01 + 0.02 * (number % 8);
  for (int weekend = 0; weekend < free_days; ++weekend) {
    const int late = weekend > best ? weekend - best : 0;
    double value = plants;
    for (int week = 0; week < late; ++week) {
      value *= 1.0 - lost_a_week;
    }
    const int day = 7 * weekend;
    sowing.choices.push_back({day, value, day, day + 27});
  }
  return sowing;
}

} // namespace

int main() {
  std::vector<SowingToLay> sowings;
  for (int number = 0; number < sowings_count; ++number) {
    sowings.push_back(sowing_number(number));
  }
  const LayingLimits limits{20, {350, 350}, {24}};
  const auto start = std::chrono::steady_clock::now();
  const Laid laid = lay(sowings, limits);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  std::printf("laying %d sowings on %d days: %.2f s, value %.1f, bound %.1f, gap %.4f\n",
              sowings_count,
              free_days,
              took.count(),
              laid.value,
              laid.bound,
              laid.gap);
  return 0;
}
