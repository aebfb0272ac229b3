#include "planner/answers/amounts.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/count_range.hpp"
#include "planner/model/mix.hpp"
#include "planner/model/nights_for_rule.hpp"
#include "planner/model/pots.hpp"
#include "planner/model/seeds_to_sow.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace nightsow::planner {

namespace {

using ItemKind = ShoppingItem::Kind;

// So sure a grower shall be of the plants wanted before seed is kept back (common practice, no
// source).
constexpr double sure_enough = 0.9;

// More seeds for each plant wanted are nothing to tell, unless the packet holds them (common
// practice, no source).
constexpr int most_seeds_a_plant = 50;
// A packet that gives what is wanted less often cannot give it.
constexpr double hardly_ever = 0.05;
// Where fewer of its seeds live, no figure is told.
constexpr double least_share_told = 1e-4;

const Packet* packet_named(const LoadedGarden& garden, const std::string& id) {
  const auto found = std::find_if(garden.packets.begin(),
                                  garden.packets.end(),
                                  [&](const Packet& packet) { return packet.id == id; });
  return found == garden.packets.end() ? nullptr : &*found;
}

Wish wish_for(int wanted, int seeds, const std::vector<double>& shares) {
  const auto needed = [&](double chance) {
    const std::optional<int> number = seeds_to_sow(wanted, chance, shares, pots_differ);
    const bool told = number && *number <= std::max(seeds, most_seeds_a_plant * wanted);
    return told ? number : std::nullopt;
  };
  Wish wish;
  wish.plants = wanted;
  wish.seeds_8_in_10 = needed(0.8);
  wish.seeds_9_in_10 = needed(sure_enough);
  wish.seeds_19_in_20 = needed(0.95);
  wish.chance = rounded_share(chance_of_at_least(wanted, seeds, shares, pots_differ));
  return wish;
}

Reason out_of_reach(const Wish& wish) {
  Reason reason{ReasonCode::wish_out_of_reach,
                {{"wanted", wish.plants}, {"share", Share{wish.chance}}}};
  if (wish.seeds_9_in_10) {
    reason.values.push_back({"needed", *wish.seeds_9_in_10});
  }
  return reason;
}

// More seeds would hardly help: what helps is another way.
Reason not_this_way(const Wish& wish, int seeds, const std::vector<double>& shares) {
  const double share =
      std::accumulate(shares.begin(), shares.end(), 0.0) / static_cast<double>(shares.size());
  Reason reason{ReasonCode::wish_not_this_way, {{"wanted", wish.plants}, {"seeds", seeds}}};
  if (share >= least_share_told) {
    reason.values.push_back({"one_in", static_cast<int>(std::lround(1.0 / share))});
  }
  return reason;
}

void add_seeds(const Packet& packet, Sowing& line) {
  if (!line.seeds) {
    return;
  }
  const int seeds = static_cast<int>(std::lround(*line.seeds)) - line.keep_back.value_or(0);
  line.how.seeds_to_sow = seeds;
  if (!packet.wanted_plants || !line.expected || line.expected->plant_shares.empty()) {
    return;
  }
  line.wish = wish_for(*packet.wanted_plants, seeds, line.expected->plant_shares);
  const std::optional<int> enough = line.wish->seeds_9_in_10;
  if (enough && *enough <= seeds) {
    line.how.seeds_to_sow = *enough;
  } else if (!line.wish->seeds_8_in_10 && line.wish->chance < hardly_ever) {
    line.risks.push_back(not_this_way(*line.wish, seeds, line.expected->plant_shares));
  } else {
    line.risks.push_back(out_of_reach(*line.wish));
  }
}

void add_pots(const Garden& garden, How& how) {
  if (!how.seeds_per_pot) {
    return;
  }
  how.seeds_per_pot = seeds_in_pot(pot_for(garden, how.pot_depth.value_or("")), *how.seeds_per_pot);
  if (how.seeds_to_sow) {
    how.pots = (*how.seeds_to_sow + *how.seeds_per_pot - 1) / *how.seeds_per_pot;
  }
}

/// Litres of ready mix by recipe, of cover by its word, pots by depth class.
struct Needs {
  std::map<std::string, std::pair<MixRecipe, double>> mixes; ///< by what they are made of
  std::map<std::string, double> covers;
  std::map<std::string, std::pair<PotSize, int>> pots;
  int labels = 0;
};

std::string key_of(const MixRecipe& mix) {
  std::string key = mix.name + '\n' + std::to_string(mix.mineral_share.value_or(0.0));
  for (const auto* side : {&mix.mineral, &mix.organic}) {
    for (const MixPart& part : *side) {
      key += '\n' + part.name + '=' + std::to_string(part.parts);
    }
  }
  return key;
}

void add_needs(const Garden& garden,
               const species_rules::RuleFor& rule,
               const How& how,
               Needs& needs) {
  const int count = *how.pots;
  const PotSize pot = pot_for(garden, how.pot_depth.value_or(""));
  auto& [size, pots] = needs.pots[pot.depth];
  size = pot;
  pots += count;
  needs.labels += count;
  double cover = 0.0;
  if (how.cover && *how.cover != "none") {
    cover = count * cover_litres(pot, value_or(rule.rule.sowing.cover_mm, 0.0));
    needs.covers[*how.cover] += cover;
  }
  const auto& share = rule.rule.sowing.mix_mineral_share;
  MixRecipe mix = mix_for(
      garden, {rule.accepted, rule.family}, share ? std::optional{share->value} : std::nullopt);
  auto& [recipe, litres] = needs.mixes[key_of(mix)];
  recipe = std::move(mix);
  litres += count * filled_litres(pot) - cover;
}

double litres_up(double litres) {
  constexpr double slip = 1e-9;
  return std::ceil(10.0 * litres - slip) / 10.0;
}

std::vector<ShoppingItem> items_of(const Needs& needs, double shrink) {
  std::vector<ShoppingItem> items;
  for (const auto& [depth, pots] : needs.pots) {
    const PotSize& size = pots.first;
    items.push_back({ItemKind::pots,
                     depth,
                     "",
                     static_cast<double>(pots.second),
                     "pieces",
                     PotAcross{size.top_cm, size.base_cm, size.deep_cm}});
  }
  // Mixes that differ only in their share of mineral parts are one list to buy.
  std::map<std::pair<std::string, std::string>, double> parts;
  for (const auto& [key, mix] : needs.mixes) {
    for (const PartLitres& part : parts_of(mix.first, mix.second, shrink)) {
      parts[{mix.first.name, part.name}] += part.litres;
    }
  }
  for (const auto& [names, litres] : parts) {
    items.push_back({ItemKind::mix, names.second, names.first, litres_up(litres), "l", {}});
  }
  for (const auto& [cover, litres] : needs.covers) {
    if (litres > 0.0) {
      items.push_back({ItemKind::cover, cover, "", litres_up(litres), "l", {}});
    }
  }
  if (needs.labels > 0) {
    items.push_back(
        {ItemKind::labels, "label", "", static_cast<double>(needs.labels), "pieces", {}});
  }
  return items;
}

} // namespace

void add_amounts(const LoadedGarden& garden, std::vector<Sowing>& sowings) {
  for (Sowing& line : sowings) {
    if (const Packet* packet = packet_named(garden, line.packet)) {
      add_seeds(*packet, line);
      add_pots(garden.garden, line.how);
    }
  }
}

Shopping shopping_for(const LoadedGarden& garden, const std::vector<Sowing>& sowings) {
  Shopping shopping;
  shopping.shrink = garden.garden.mix_shrink.value_or(usual_shrink);
  Needs needs;
  for (const Sowing& line : sowings) {
    const species_rules::Lookup lookup = garden.catalogue->rule_for(line.taxon);
    if (!line.how.pots || !lookup.found) {
      shopping.not_counted.push_back(line.packet);
      continue;
    }
    add_needs(garden.garden, *lookup.found, line.how, needs);
  }
  shopping.items = items_of(needs, shopping.shrink);
  return shopping;
}

} // namespace nightsow::planner
