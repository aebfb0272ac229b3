#include "species-rules/wet_losses.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double fungus_lowest_c = 3.0;
constexpr double fungus_optimum_c = 28.0;
constexpr double fungus_highest_c = 38.0;
constexpr double relief_days = 10.0;
constexpr double least_relief = 0.1;

} // namespace

double waiting_loss(double mean_c, double at_20_c_per_day) {
  return std::min(1.0, at_20_c_per_day * wet_ageing(mean_c));
}

double wet_ageing(double mean_c) {
  return std::exp2((mean_c - 20.0) / 10.0);
}

double damping_off_at_best(MixHygiene hygiene) {
  return hygiene == MixHygiene::used ? 0.02 : 0.005;
}

double damping_off(double mean_c, double at_best) {
  return std::min(1.0, at_best * fungus_growth(mean_c));
}

double fungus_growth(double mean_c) {
  return cardinal_growth(mean_c, fungus_lowest_c, fungus_optimum_c, fungus_highest_c);
}

double damping_off_relief(double age_days) {
  return std::max(least_relief, std::exp(-age_days / relief_days));
}

double cardinal_growth(double c, double lowest_c, double optimum_c, double highest_c) {
  if (c <= lowest_c || c >= highest_c) {
    return 0.0;
  }
  const double above = (c - highest_c) * (c - lowest_c) * (c - lowest_c);
  const double below =
      (optimum_c - lowest_c) * ((optimum_c - lowest_c) * (c - optimum_c) -
                                (optimum_c - highest_c) * (optimum_c + lowest_c - 2.0 * c));
  return above / below;
}

double heat_half_life_hours(double seed_c) {
  return 60.0 * std::pow(10.0, -0.18 * (seed_c - 45.0));
}

double heat_dose_of_hour(double seed_c) {
  return seed_c >= heat_kill_from_c ? 1.0 / heat_half_life_hours(seed_c) : 0.0;
}

} // namespace nightsow::species_rules
