#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "planner/model/seed_test.hpp"
#include "species-rules/ripeness.hpp"
#include "species-rules/rule.hpp"

#include <optional>

namespace nightsow::planner {

/// Under this share alive a packet is fading: sow all of it (common practice, no source).
inline constexpr double fading_share = 0.6;

/// The share of sound seed when freshly harvested: a Ki of 1.645 probits.
inline constexpr double fresh_share_alive = 0.95;

/// Under this share alive there is no hurry any more (common practice, no source).
inline constexpr double nothing_left_share = 0.02;

/// A germination test that could be used.
struct SeedTest {
  UsableTest test;
  double fit = 0.0;                     ///< share of living seed that the test suited
  double ripe_by_age = 1.0;             ///< share ripe on its day, by age and store
  double needs_no_ripening = 0.0;       ///< how much of that it contradicts, 0..1
  species_rules::ShareRange alive_then; ///< what it says, on its day
};

/// What has become of the seed in a packet by a day, from its age, its store, its rule and its
/// germination test. Shares are of seed that was 95 % sound when harvested.
struct SeedState {
  std::optional<double> age_years; ///< to the middle of the harvest range; empty: not known
  bool store_known = true;         ///< false: half is taken as kept warm, half in a fridge
  std::optional<SeedTest> test;

  double alive = fresh_share_alive;
  /// Four in five cases lie between, half-life, day of harvest and store each as likely as known.
  double alive_low = fresh_share_alive;
  double alive_high = fresh_share_alive;
  double alive_next_year = fresh_share_alive;

  /// Share of it that has had the warm dry storage it needs, or by its test needs none; 1 where
  /// its age is not known.
  species_rules::ShareRange ripe_share{1.0, 1.0, 1.0};
  bool ripe = true;            ///< half of it has
  std::optional<Date> ripe_on; ///< when half will have, kept as planned; empty: never so
  std::optional<Date>
      ripe_on_shelf; ///< when it would, moved to a warm dry shelf today; empty: ripe

  /// Share that is alive and ripe. Where the store is not known this is less than the product of
  /// the two: what ripened has aged.
  double alive_and_ripe = fresh_share_alive;

  /// Of living, ripe seed that does not wait another year: the share that comes up.
  double germination = 0.0;

  [[nodiscard]] bool alive_known() const { return age_years || test; }

  /// Not what is dead already: there is nothing left to hurry for.
  [[nodiscard]] bool fading() const {
    return alive_known() && alive <= fading_share && alive >= nothing_left_share;
  }

  /// Share of today's living seed that dies within the coming year, kept as it is now; 0 where so
  /// little lives that nothing is left to lose.
  [[nodiscard]] double lost_by_waiting() const {
    return alive >= nothing_left_share ? 1.0 - alive_next_year / alive : 0.0;
  }
};

/// The state on a day, stages of the store up to then counted: of a day to come it is the state
/// that the stages written lead to.
[[nodiscard]] SeedState seed_state(const Packet& packet,
                                   const species_rules::Rule& rule,
                                   Date today);

/// What a germination test says on its day, as known by another; takes long, since all shares
/// beforehand are weighed. The harvest is known no later than `day`. Requires: test usable by then.
[[nodiscard]] TestReading reading_of_test(const Packet& packet,
                                          const species_rules::Rule& rule,
                                          const UsableTest& test,
                                          Date day);

/// What a germination test makes of the shares reckoned without it, as factors.
struct ToldByTest {
  double alive = 1.0;
  double germination = 1.0;
  double needs_no_ripening = 0.0; ///< no factor: as SeedTest has it
};

/// Those of seed_state on a day, from its reading: quick. Requires: the same.
[[nodiscard]] ToldByTest told_by_test(const Packet& packet,
                                      const species_rules::Rule& rule,
                                      const UsableTest& test,
                                      const TestReading& reading,
                                      Date day);

} // namespace nightsow::planner
