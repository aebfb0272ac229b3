#include "planner/answers/account_basis.hpp"

#include "planner/model/nights_for_rule.hpp"
#include "planner/model/packet_shares.hpp"
#include "planner/model/pot_care.hpp"
#include "species-rules/drawn_parameters.hpp"

#include <cmath>

namespace nightsow::planner {

namespace {

constexpr int draws_for_rest = 15;

} // namespace

std::vector<SeedsOnDay> cases_of(const AccountBasis& basis, const DrawnRule& drawn) {
  const std::vector<species_rules::SeedParameters> seeds =
      species_rules::drawn_parameters(drawn.rule, drawn.draws);
  const std::vector<PotSeason> seasons =
      seasons_until(basis.weather, basis.weather.first + Days{basis.looked});
  const Date first_water = basis.weather.first + Days{seasons.front().water};
  PacketShares packet{basis.packet, drawn.rule.rule, basis.sowing.on};
  std::vector<SeedShares> shares;
  shares.reserve(seeds.size());
  for (const species_rules::SeedParameters& seed : seeds) {
    shares.push_back(packet.on(first_water, seed));
  }
  return cases_of_pot(seasons, seeds, shares, pot_care(drawn.rule.rule, basis.sowing.cover));
}

SowingSituation situation_of(const AccountBasis& basis,
                             const species_rules::RuleFor& rule,
                             Date today) {
  const std::vector<species_rules::SeedParameters> seeds =
      species_rules::drawn_parameters(rule, draws_for_rest);
  SowingSituation situation;
  situation.today = days_between(basis.weather.first, today);
  situation.cool_seasons_kept = static_cast<int>(
      std::lround(value_or(rule.rule.seedling.keep_seasons, SowingSituation{}.cool_seasons_kept)));
  for (const PotSeason& season : basis.weather.seasons) {
    situation.rest_begins = day_of_pot(basis.weather, season, rest_of_pot(season, seeds));
    situation.cool_seasons_had += situation.rest_begins <= situation.today ? 1 : 0;
  }
  return situation;
}

} // namespace nightsow::planner
