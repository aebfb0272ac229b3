#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "species-rules/germination_evidence.hpp"
#include "species-rules/rule.hpp"

#include <optional>

namespace nightsow::planner {

/// A germination test of a packet, as far as it can be used on a day.
struct UsableTest {
  Date on{};
  bool day_written = false; ///< if not, it is taken as of today
  species_rules::TestCount count;
  std::optional<double> at_c;
};

/// Under this share of living seed that a test suited, it says little (common practice, no source).
inline constexpr double little_fit = 0.5;

/// Empty where there is none, or it was made after today or before the first day of harvest.
[[nodiscard]] std::optional<UsableTest> usable_test(const Packet& packet, Date today);

/// What the test makes of the belief, and the share of living seed that it suited.
struct TestReading {
  species_rules::SeedBelief after;
  double fit = 0.0;
  double ripe_by_age = 1.0;       ///< share taken to be ripe on its day beforehand
  double needs_no_ripening = 0.0; ///< as species_rules::needs_no_ripening
};

/// Unripe and deferring seed does not come up, however alive; nor does it at a temperature that its
/// rule does not like. A test whose temperature is not written may have suited all of the rest, or
/// no more than half (common practice, no source). Where more came up than unripe seed brings, the
/// seed is taken for riper than `ripe_share`, its share by age and store on the day of the test.
[[nodiscard]] TestReading read_test(const UsableTest& test,
                                    const species_rules::Rule& rule,
                                    const species_rules::SeedBelief& before,
                                    double ripe_share);

} // namespace nightsow::planner
