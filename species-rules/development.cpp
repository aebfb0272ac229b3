#include "species-rules/development.hpp"

#include "species-rules/normal.hpp"

#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double middle_swing_k = 6.0;
constexpr double swing_steepness_k = 1.5;

double without_swing(Swing need) {
  switch (need) {
  case Swing::needed:
    return 0.1;
  case Swing::helpful:
    return 0.6;
  case Swing::indifferent:
    break;
  }
  return 0.85;
}

} // namespace

double swing_factor(double swing_k, Swing need) {
  return swing_factor_of(swing_felt(swing_k), need);
}

double swing_felt(double swing_k) {
  return 1.0 / (1.0 + std::exp(-(swing_k - middle_swing_k) / swing_steepness_k));
}

double swing_factor_of(double felt, Swing need) {
  const double least = without_swing(need);
  return least + (1.0 - least) * felt;
}

double emerged_share(double passed_c_d, double thermal_time_c_d, double spread) {
  if (passed_c_d <= 0.0) {
    return 0.0;
  }
  if (spread <= 0.0) {
    return passed_c_d >= thermal_time_c_d ? 1.0 : 0.0;
  }
  return normal_share(std::log(passed_c_d / thermal_time_c_d) / spread);
}

double emergence_time_c_d(double share, double thermal_time_c_d, double spread) {
  return thermal_time_c_d * std::exp(spread * normal_quantile(share));
}

} // namespace nightsow::species_rules
