#include "planner/model/seed_state.hpp"

#include "planner/model/nights_for_rule.hpp"
#include "species-rules/viability.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

constexpr double days_a_year = 365.25;
constexpr double longest_ripening_days = 3650.0;
constexpr double ripening_base_c = 5.0; // no after-ripening at or under this
// A family always gives a half-life; this stands for a rule made by hand without one.
constexpr double usual_half_life_years = 3.0;

// Years at room temperature that have aged the seed as much as its own store did, and its warm dry
// degree-days.
struct Stored {
  double room_years = 0.0;
  double ripening_c_d = 0.0;
  double last_c = species_rules::room_c;
};

Stored stored_since(const Packet& packet, Date harvested, Date today) {
  Stored stored;
  Date from = harvested;
  const auto keep = [&](Date until, double store_c) {
    const int days = std::max(0, days_between(from, until));
    stored.room_years += days / days_a_year * species_rules::ageing_factor(store_c);
    stored.ripening_c_d += days * std::max(0.0, store_c - ripening_base_c);
    from = std::max(from, until);
    stored.last_c = store_c;
  };
  for (const StoreStage& stage : packet.stored) {
    const Date until = stage.until.value_or(today);
    keep(std::min(today, until), stage.store_c);
    if (until >= today) {
      return stored; // later stages have not begun
    }
  }
  if (from < today) {
    keep(today, stored.last_c);
  }
  return stored;
}

void judge_ripeness(SeedState& state, const Stored& stored, double needed_c_d, Date today) {
  const double missing = needed_c_d - stored.ripening_c_d;
  state.ripe = missing <= 0.0;
  if (state.ripe) {
    return;
  }
  const auto days_at = [&](double store_c) {
    return std::ceil(missing / (store_c - ripening_base_c));
  };
  state.ripe_on_shelf = today + Days{static_cast<int>(days_at(species_rules::room_c))};
  // In a store hardly warmer than the base it takes longer than any seed lives: as good as never.
  if (stored.last_c > ripening_base_c && days_at(stored.last_c) <= longest_ripening_days) {
    state.ripe_on = today + Days{static_cast<int>(days_at(stored.last_c))};
  }
}

} // namespace

SeedState seed_state(const Packet& packet, const species_rules::Rule& rule, Date today) {
  SeedState state;
  if (!packet.harvested) {
    return state;
  }
  const auto known_by = [&](Date day) { return std::min(day, today); };
  const Date middle = known_by(packet.harvested->middle());
  const Stored stored = stored_since(packet, middle, today);
  const std::optional<species_rules::Estimate>& half_life = rule.seed.half_life_years;
  const double years = value_or(half_life, usual_half_life_years);
  const double shortest = half_life ? half_life->low : 0.5 * years;
  const double longest = half_life ? half_life->high : 2.0 * years;

  state.age_years = days_between(middle, today) / days_a_year;
  state.alive = species_rules::share_alive(years, stored.room_years);
  state.alive_next_year = species_rules::share_alive(
      years, stored.room_years + species_rules::ageing_factor(stored.last_c));
  state.alive_low = species_rules::share_alive(
      shortest, stored_since(packet, known_by(packet.harvested->first), today).room_years);
  state.alive_high = species_rules::share_alive(
      longest, stored_since(packet, known_by(packet.harvested->last), today).room_years);
  judge_ripeness(state, stored, value_or(rule.seed.after_ripening_c_d, 0.0), today);
  return state;
}

} // namespace nightsow::planner
