#pragma once

#include <optional>
#include <vector>

namespace nightsow::planner {

/// Seeds that waited through one look and how many of them came by it, with what may explain it.
struct HazardRow {
  double waiting = 0.0;
  double came = 0.0;            ///< 0..waiting
  std::vector<double> explains; ///< one value a coefficient; a 1 for the constant
};

enum class HazardLink { complementary_log_log, logit };

/// What is believed of a coefficient before the record is seen: Normal(mean, deviation); a
/// coefficient without one is free.
struct CoefficientPrior {
  double mean = 0.0;
  double deviation = 1.0; ///< > 0
};

struct HazardFit {
  std::vector<double> coefficients;
  std::vector<double> errors; ///< standard errors; with priors, posterior deviations
  std::vector<std::vector<double>> covariance;
  double deviance = 0.0;       ///< -2 log likelihood of single seeds, priors left out
  double group_deviance = 0.0; ///< the same less that of a model which fits each row
};

/// Discrete-time hazard: of those that wait, a share h comes by the next look, and
/// ln(-ln(1 - h)), or ln(h / (1 - h)), is the sum of coefficients times explains. By Newton's
/// method on log likelihood plus log priors, with halved steps. Empty where it does not settle: all
/// or none came, the explaining values say the same twice, and no prior holds them. Requires: rows
/// of as many values as there are priors; deviation > 0.
[[nodiscard]] std::optional<HazardFit> fit_hazard(
    const std::vector<HazardRow>& rows,
    const std::vector<std::optional<CoefficientPrior>>& priors,
    HazardLink link = HazardLink::complementary_log_log);

/// The share that comes, for a sum of coefficients times explains.
[[nodiscard]] double hazard_share(double sum, HazardLink link = HazardLink::complementary_log_log);

} // namespace nightsow::planner
