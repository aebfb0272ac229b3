#include "planner/statistics/grid_posterior.hpp"

#include <algorithm>

namespace nightsow::planner {

std::vector<double> log_posterior(const std::vector<double>& prior,
                                  const std::vector<std::vector<double>>& likelihoods,
                                  std::optional<std::size_t> without) {
  std::vector<double> logs = prior;
  for (std::size_t i = 0; i < likelihoods.size(); ++i) {
    for (std::size_t value = 0; i != without && value < logs.size(); ++value) {
      logs[value] += likelihoods[i][value];
    }
  }
  return logs;
}

std::size_t likeliest(const std::vector<double>& logs) {
  return static_cast<std::size_t>(std::max_element(logs.begin(), logs.end()) - logs.begin());
}

double left_out_gain(const std::vector<double>& prior,
                     const std::vector<std::vector<double>>& likelihoods,
                     std::size_t reference) {
  double better = 0.0;
  for (std::size_t i = 0; i < likelihoods.size(); ++i) {
    better +=
        likelihoods[i][likeliest(log_posterior(prior, likelihoods, i))] - likelihoods[i][reference];
  }
  return better;
}

} // namespace nightsow::planner
