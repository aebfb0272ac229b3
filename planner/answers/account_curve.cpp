#include "planner/answers/account_curve.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/count_range.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace nightsow::planner {

namespace {

constexpr int week_days = 7;
constexpr int four_weeks = 28;
constexpr int half_a_year = 183;

double up_by(const SeedsOnDay& seeds, int day) {
  const auto to = std::clamp<std::ptrdiff_t>(day + 1, 0, std::ssize(seeds.up));
  return std::clamp(std::accumulate(seeds.up.begin(), seeds.up.begin() + to, 0.0), 0.0, 1.0);
}

} // namespace

NumberSpread expected_up(std::span<const SeedsOnDay> cases, const SowingRecord& record, int day) {
  std::vector<double> shares;
  shares.reserve(cases.size());
  for (const SeedsOnDay& seeds : cases) {
    shares.push_back(up_by(seeds, day));
  }
  const CountRange range =
      count_range(record.seeds, shares, pots_differ / std::max(1, record.pots));
  return {
      rounded_tenth(range.mean), static_cast<double>(range.p10), static_cast<double>(range.p90)};
}

std::vector<CurvePoint> account_curve(const AccountBasis& basis,
                                      std::span<const SeedsOnDay> cases,
                                      int water,
                                      int to) {
  const int last = static_cast<int>(cases.front().up.size()) - 1;
  const int end = std::min(to, last);
  const int step = to - water > half_a_year ? four_weeks : week_days;
  std::vector<CurvePoint> curve;
  auto look = basis.record.looks.begin();
  for (int day = water + step; day - step < end; day += step) {
    const int on = std::min(day, last);
    CurvePoint point;
    point.on = basis.weather.first + Days{on};
    point.expected = expected_up(cases, basis.record, on);
    for (; look != basis.record.looks.end() && look->day <= on; ++look) {
      point.counted = look->seen;
    }
    curve.push_back(point);
  }
  return curve;
}

} // namespace nightsow::planner
