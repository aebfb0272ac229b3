#pragma once

#include "species-rules/ripeness.hpp"
#include "species-rules/seed_parameters.hpp"

#include <span>

namespace nightsow::species_rules {

// What a germination test tells of a packet. The number that came up is binomial: each seed comes
// up when it is alive, when it is one that would come up with all as it should be, and when the
// test was fit for it. The first two are not known exactly and are beta distributed before the
// test; where all living seed comes up it is the beta prior plus k of n.

/// A test as counted. 0 <= sprouted <= of, of >= 1.
struct TestCount {
  int sprouted = 0;
  int of = 0;
};

/// What is believed of the seed, before or after a test.
struct SeedBelief {
  ShareRange alive;
  /// Of living, ripe seed that is not deferred: the share that comes up when all is right.
  ShareRange germination;
};

/// A share of which nothing is known.
inline constexpr ShareRange any_share{0.5, 0.1, 0.9};

/// Days for which a test is watched (common practice, no source).
inline constexpr double test_days = 60.0;

/// Share of living, ripe seed for which a test at a steady temperature is right: released by it,
/// and up within `test_days`. 0..1.
[[nodiscard]] double test_fit(const SeedParameters& seed, double at_c);

/// The belief after a test. `fits` are the shares of living seed that the test suited, equally
/// likely; what came up shows that it was not less fit than that. A test that suited little leaves
/// the belief nearly as it was, and one that suited nothing, exactly. Requires: fits not empty,
/// each 0..1.
[[nodiscard]] SeedBelief after_test(const SeedBelief& before,
                                    const TestCount& count,
                                    std::span<const double> fits);

/// Before any test: the chance that seed is riper than its rule takes it for, since its strain
/// needs less or it lay warmer than told (common practice, no source).
inline constexpr double riper_beforehand = 0.1;

/// A test that suited less of the ripe seed, and brought less up, says nothing of ripeness (common
/// practice, no source).
inline constexpr double suits_enough = 0.5;

/// How much of the seed taken for unripe a test shows to be ripe, 0..1: what it adds to what is
/// expected beforehand, as a part of what could be added. Beforehand the seed is as ripe as told,
/// or with that small chance riper, up to all of it, each share alike. 0 where the count is no
/// likelier of riper seed, and where the test suited few: then its warmth may have been less wrong
/// than its rule says. `fits` are those of ripe seed; `ripe_share` of it was taken to be ripe on
/// the day of the test. Requires: as `after_test`; ripe_share 0..1.
[[nodiscard]] double needs_no_ripening(const SeedBelief& before,
                                       const TestCount& count,
                                       std::span<const double> fits,
                                       double ripe_share);

/// The germination that a rule tells is of fresh seed, of which 95 % are alive; this is what it
/// makes of living seed.
[[nodiscard]] ShareRange germination_of_living(const Estimate& germination_share);

} // namespace nightsow::species_rules
