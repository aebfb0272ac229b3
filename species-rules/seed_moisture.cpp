#include "species-rules/seed_moisture.hpp"

#include "species-rules/viability.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::species_rules {

namespace {

constexpr double usual_oil_share = 0.2;

} // namespace

double balanced_moisture_dry_pct(double humidity, double store_c, double oil_share) {
  return std::sqrt(-440.0 * std::log(1.0 - humidity)) * (1.0 - oil_share) / (1.1 + store_c / 90.0);
}

double wet_from_dry_pct(double moisture_dry_pct) {
  return 100.0 * moisture_dry_pct / (100.0 + moisture_dry_pct);
}

double dry_from_wet_pct(double moisture_wet_pct) {
  return 100.0 * moisture_wet_pct / (100.0 - moisture_wet_pct);
}

double stored_moisture_wet_pct(double humidity) {
  const double counted = std::clamp(humidity, desiccated_humidity, damp_humidity);
  return wet_from_dry_pct(balanced_moisture_dry_pct(counted, room_c, usual_oil_share));
}

} // namespace nightsow::species_rules
