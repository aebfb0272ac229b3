#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "species-rules/rule.hpp"

#include <optional>

namespace nightsow::planner {

/// Under this share alive a packet is fading: sow all of it (common practice, no source).
inline constexpr double fading_share = 0.6;

/// The share of sound seed when freshly harvested: a Ki of 1.645 probits.
inline constexpr double fresh_share_alive = 0.95;

/// Under this share alive there is no hurry any more (common practice, no source).
inline constexpr double nothing_left_share = 0.02;

/// What has become of the seed in a packet by a day, from its age, its store and its rule. Shares
/// are of seed that was 95 % sound when harvested.
struct SeedState {
  std::optional<double> age_years; ///< to the middle of the harvest range; empty: not known
  double alive = fresh_share_alive;
  double alive_low = fresh_share_alive;  ///< short half-life, early harvest
  double alive_high = fresh_share_alive; ///< long half-life, late harvest
  double alive_next_year = fresh_share_alive;
  bool ripe = true;            ///< half of the seed has had the warm dry storage it needs
  std::optional<Date> ripe_on; ///< when it will have, kept as it is now; empty: never so
  std::optional<Date>
      ripe_on_shelf; ///< when it would, moved to a warm dry shelf today; empty: ripe

  [[nodiscard]] bool fading() const { return age_years && alive <= fading_share; }

  /// Share of today's living seed that dies within the coming year, kept as it is now; 0 where so
  /// little lives that nothing is left to lose.
  [[nodiscard]] double lost_by_waiting() const {
    return alive >= nothing_left_share ? 1.0 - alive_next_year / alive : 0.0;
  }
};

[[nodiscard]] SeedState seed_state(const Packet& packet,
                                   const species_rules::Rule& rule,
                                   Date today);

} // namespace nightsow::planner
