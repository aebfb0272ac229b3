#include "planner/model/seed_test.hpp"

#include "species-rules/ripeness.hpp"
#include "species-rules/seed_parameters.hpp"

#include <numeric>
#include <vector>

namespace nightsow::planner {

std::optional<UsableTest> usable_test(const Packet& packet, Date today) {
  if (!packet.tested) {
    return std::nullopt;
  }
  const GerminationTest& test = *packet.tested;
  const Date on = test.on.value_or(today);
  if (on > today || (packet.harvested && on < packet.harvested->first)) {
    return std::nullopt;
  }
  return UsableTest{on, test.on.has_value(), {test.sprouted, test.of}, test.at_c};
}

TestReading read_test(const UsableTest& test,
                      const species_rules::Rule& rule,
                      const species_rules::SeedBelief& before,
                      double ripe_share) {
  const species_rules::SeedParameters seed = species_rules::seed_parameters(rule);
  std::vector<double> fits{0.5, 0.75, 1.0};
  if (test.at_c) {
    fits = {species_rules::test_fit(seed, *test.at_c)};
  }
  for (double& fit : fits) {
    fit = species_rules::share_for_this_season(fit, 1.0, seed.deferral_share);
  }
  const double ripe_anyway = species_rules::needs_no_ripening(before, test.count, fits, ripe_share);
  for (double& fit : fits) {
    fit *= species_rules::ripe_or_needs_none(ripe_share, ripe_anyway);
  }
  const double mean =
      std::accumulate(fits.begin(), fits.end(), 0.0) / static_cast<double>(fits.size());
  return {species_rules::after_test(before, test.count, fits), mean, ripe_share, ripe_anyway};
}

} // namespace nightsow::planner
