#pragma once

namespace nightsow::species_rules {

/// Share of a standard normal distribution at or under z.
[[nodiscard]] double normal_share(double z);

/// The z at or under which the share lies: inverse of normal_share. 0 < share < 1.
/// Wichura (1988), algorithm AS 241, to about 1e-15 relative.
[[nodiscard]] double normal_quantile(double share);

} // namespace nightsow::species_rules
