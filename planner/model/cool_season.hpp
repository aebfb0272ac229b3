#pragma once

#include "climate/night_words.hpp"
#include "climate/outlook.hpp"
#include "climate/past_seasons.hpp"
#include "planner/model/bench_climate.hpp"

#include <optional>

namespace nightsow::planner {

/// What the nights of one season say for one night limit on one bench.
struct GateOutlook {
  climate::NightLimit limit;
  climate::Binding binding;
  climate::OutlookWords words;
  climate::NightCount last_7; ///< of the limit's own window (7 as a rule), on or after H only
  climate::NightCount last_14;
  bool opened = false;   ///< `holds` has been reached, certainly
  bool cool_now = false; ///< and 10 of the last 14 nights are cool today, too
  bool doubtful = false; ///< had the missing nights been cool, it would be open today
  /// When nights will hold again, where they did and have turned warm since.
  std::optional<climate::DateSpread> again;
};

[[nodiscard]] GateOutlook gate_outlook(const BenchClimate& climate,
                                       const BenchSeason& season,
                                       const climate::NightLimit& limit);

/// First water where nights do not decide.
struct MildOutlook {
  climate::DateSpread days;        ///< the limb has begun and days are mild enough, over members
  bool mild_now = false;           ///< both are so on the last day of the readings
  bool day_limit_left_out = false; ///< too few maxima of late to tell; they are taken as mild
};

/// The middle, over the members, of the coldest night that is still to come in the season; nights
/// near frost count warmer under a fleece, by the figures of seed_level.hpp. Empty when no night is
/// to come.
[[nodiscard]] std::optional<double> usual_coldest_night_c(const climate::Outlook& outlook,
                                                          bool fleece);

[[nodiscard]] MildOutlook mild_outlook(const BenchSeason& season, std::optional<Celsius> day_limit);

/// When days that are too hot now (see too_hot) will be so no longer: over members, from the first
/// day to come on.
[[nodiscard]] climate::DateSpread mild_again(const BenchSeason& season, Celsius day_limit);

} // namespace nightsow::planner
