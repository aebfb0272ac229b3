#pragma once

#include <optional>
#include <span>

namespace nightsow::species_rules {

// Seed waits for its own night limit, normally distributed about the rule's. Once released it stays
// released. The form is the project's own model; its spread of 2.5 K is common practice, no source.

/// The limit of a kind of seed, and how single seeds stray from it.
struct ReleaseLimit {
  double limit_c = 0.0;
  double spread_k = 0.0;          ///< one standard deviation; 0: all seeds alike
  double indifferent_share = 0.0; ///< released by water alone
};

/// Share released, 0..1, when the N-th coolest of the last M wet nights has been this cool at its
/// coolest. Without spread it is the plain rule "N of M at or under the limit" (equal counts as
/// cool, and so does what is five thousandths over it).
[[nodiscard]] double released_by_cool(double coolest_c, const ReleaseLimit& limit);

/// The same turned round, for kinds that wait for warm nights: the N-th warmest of the last M.
[[nodiscard]] double released_by_warmth(double warmest_c, const ReleaseLimit& limit);

/// Which of `so_far` wet nights decides while fewer than `of` have passed: the ceil(N n / M)-th
/// coolest (or warmest) of n, counted from 1; from the third night on, before that none. With `of`
/// nights or more it is N. Requires: 1 <= nights <= of.
[[nodiscard]] std::optional<int> deciding_night(int nights, int of, int so_far);

} // namespace nightsow::species_rules
