#include "planner/model/coolest_window.hpp"

#include "climate/base/celsius.hpp"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace nightsow::planner {

BestWindow best_window(
    std::span<const double> nights_c, int needed, int of, double limit_c, NightsWanted wanted) {
  // Warm nights are cool ones below zero's other side.
  const double sign = wanted == NightsWanted::warm ? -1.0 : 1.0;
  BestWindow best;
  const auto size = static_cast<std::size_t>(of);
  for (std::size_t end = 1; end <= nights_c.size(); ++end) {
    std::vector<double> window;
    for (std::size_t i = end > size ? end - size : 0; i < end; ++i) {
      window.push_back(sign * nights_c[i]);
    }
    const auto met =
        static_cast<int>(std::count_if(window.begin(), window.end(), [&](double night_c) {
          return at_or_under(night_c, sign * limit_c);
        }));
    best.met = std::max(best.met, met);
    if (window.size() < size) {
      continue;
    }
    if (!best.day && met >= needed) {
      best.day = static_cast<int>(end) - 1;
    }
    const auto nth = window.begin() + (needed - 1);
    std::nth_element(window.begin(), nth, window.end());
    if (!best.deciding_c || *nth < sign * *best.deciding_c) {
      best.deciding_c = sign * *nth;
    }
  }
  return best;
}

} // namespace nightsow::planner
