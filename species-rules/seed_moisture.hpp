#pragma once

namespace nightsow::species_rules {

// What the air of a store does to the moisture of seed. Moisture in per cent, of fresh weight (wet)
// or of dry weight (dry); relative humidity and oil as shares, 0..1.

/// Moisture of seed in balance with the air, dry basis: Cromarty, Ellis & Roberts (1982), 1 - RH =
/// exp(-[M (1.1 + t/90) / (1 - oil)]^2 / 440). For 10-70 % humidity at 0-40 °C (starchy seed) or
/// 15-25 °C (oily). Requires: 0 <= humidity < 1, 0 <= oil_share < 1.
[[nodiscard]] double balanced_moisture_dry_pct(double humidity, double store_c, double oil_share);

[[nodiscard]] double wet_from_dry_pct(double moisture_dry_pct);

/// Requires: moisture_wet_pct < 100.
[[nodiscard]] double dry_from_wet_pct(double moisture_wet_pct);

/// The air of a dry room, in which half-lives are told.
inline constexpr double room_humidity = 0.45;

/// Over fresh silica gel, or desiccated. Drier seed keeps no longer.
inline constexpr double desiccated_humidity = 0.15;

/// A damp place. In damper air than this the equation does not hold.
inline constexpr double damp_humidity = 0.85;

/// Moisture, wet basis, of seed stored in air of this humidity, taken up at 20 °C; humidity counts
/// as 15 to 85 %. Oil counts as a fifth of the seed (common practice, no source): its part in the
/// quotient of two moistures is small.
[[nodiscard]] double stored_moisture_wet_pct(double humidity);

} // namespace nightsow::species_rules
