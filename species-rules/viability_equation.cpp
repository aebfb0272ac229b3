#include "species-rules/viability_equation.hpp"

#include "species-rules/normal.hpp"

#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double bliss_shift = 5.0;
constexpr double part_of_a_seed = 0.25;

double log_sigma_of(const KeepingGoal& goal) {
  return std::log10(goal.days / (probit(goal.initial_share) - probit(goal.final_share)));
}

} // namespace

double probit(double share) {
  return normal_quantile(share);
}

double probit_plus_five(double share) {
  return probit(share) + bliss_shift;
}

double share_with_probit(int alive, int of) {
  const double share = static_cast<double>(alive) / of;
  if (alive == 0) {
    return part_of_a_seed / of;
  }
  return alive == of ? 1.0 - part_of_a_seed / of : share;
}

double days_per_probit(const ViabilityConstants& constants,
                       double moisture_wet_pct,
                       double store_c) {
  const double exponent = constants.ke - constants.cw * std::log10(moisture_wet_pct) -
                          constants.ch * store_c - constants.cq * store_c * store_c;
  return std::pow(10.0, exponent);
}

double share_alive_after(double days, double initial_share, double days_per_probit) {
  return normal_share(probit(initial_share) - days / days_per_probit);
}

double days_until_share(double final_share, double initial_share, double days_per_probit) {
  return days_per_probit * (probit(initial_share) - probit(final_share));
}

double half_viability_days(double initial_share, double days_per_probit) {
  return days_until_share(0.5, initial_share, days_per_probit);
}

double moisture_for_goal_wet_pct(const ViabilityConstants& constants,
                                 const KeepingGoal& goal,
                                 double store_c) {
  const double exponent = (constants.ke - constants.ch * store_c -
                           constants.cq * store_c * store_c - log_sigma_of(goal)) /
                          constants.cw;
  return std::pow(10.0, exponent);
}

std::optional<double> store_for_goal_c(const ViabilityConstants& constants,
                                       const KeepingGoal& goal,
                                       double moisture_wet_pct) {
  const double rest =
      constants.cw * std::log10(moisture_wet_pct) - constants.ke + log_sigma_of(goal);
  const double under_root = constants.ch * constants.ch - 4.0 * constants.cq * rest;
  if (under_root < 0.0) {
    return std::nullopt;
  }
  return (-constants.ch + std::sqrt(under_root)) / (2.0 * constants.cq);
}

double ke_from_one_temperature(double k, double store_c) {
  return k + universal_ch * store_c + universal_cq * store_c * store_c;
}

} // namespace nightsow::species_rules
