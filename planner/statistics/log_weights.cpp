#include "planner/statistics/log_weights.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

std::vector<double> shares_of_logs(std::vector<double> logs) {
  const double top = *std::max_element(logs.begin(), logs.end());
  double sum = 0.0;
  for (double& value : logs) {
    value = std::exp(value - top);
    sum += value;
  }
  for (double& value : logs) {
    value /= sum;
  }
  return logs;
}

} // namespace nightsow::planner
