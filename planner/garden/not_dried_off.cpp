#include "planner/garden/not_dried_off.hpp"

#include "species-rules/seed_parameters.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

bool alive_at_last(const Records& records, EntryId sowing) {
  const auto last = std::find_if(records.counts.rbegin(),
                                 records.counts.rend(),
                                 [&](const auto& count) { return count.sowing == sowing; });
  return last != records.counts.rend() && last->seen > 0;
}

bool any_up(const Records& records, EntryId sowing) {
  return std::any_of(records.counts.begin(), records.counts.end(), [&](const auto& count) {
    return count.sowing == sowing && count.seen > 0;
  });
}

} // namespace

std::vector<NotDriedOff> not_dried_off(const Records& records,
                                       const species_rules::Catalogue& catalogue,
                                       Date on) {
  using species_rules::FirstRestWay;
  std::vector<NotDriedOff> sowings;
  for (const RecordedSowing& sowing : records.sowings) {
    const species_rules::Lookup lookup = catalogue.rule_for(sowing.taxon);
    if (!lookup.found) {
      continue;
    }
    const FirstRestWay way = first_rest_of(lookup.found->rule);
    const bool first = days_between(sowing.on, on) <= first_rest_within_days;
    if (way == FirstRestWay::dies && alive_at_last(records, sowing.id)) {
      sowings.push_back({sowing.id,
                         "is an annual by its rule, and was alive when it was last counted: it has "
                         "no rest, and dries once it has set seed"});
    } else if (way == FirstRestWay::none) {
      sowings.push_back({sowing.id,
                         "is evergreen by its rule: it is watered through its resting season, and "
                         "a dry rest kills it"});
    } else if (way == FirstRestWay::barely_moist && first) {
      sowings.push_back(
          {sowing.id, "is kept barely moist in its first rest by its rule, and not dried off"});
    } else if (first && !any_up(records, sowing.id) &&
               storage_of(lookup.found->rule) == species_rules::SeedStorage::recalcitrant) {
      sowings.push_back({sowing.id, "has seed that dies dry, and none of it is up"});
    }
  }
  return sowings;
}

} // namespace nightsow::planner
