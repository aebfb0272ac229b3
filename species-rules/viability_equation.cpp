#include "species-rules/viability_equation.hpp"

#include "species-rules/normal.hpp"

#include <cmath>

namespace nightsow::species_rules {

double time_per_probit(const ViabilityConstants& constants,
                       double moisture_wet_pct,
                       double store_c) {
  const double exponent = constants.ke - constants.cw * std::log10(moisture_wet_pct) -
                          constants.ch * store_c - constants.cq * store_c * store_c;
  return std::pow(10.0, exponent);
}

double share_alive_after(double time, double initial_probit, double time_per_probit) {
  return normal_share(initial_probit - time / time_per_probit);
}

} // namespace nightsow::species_rules
