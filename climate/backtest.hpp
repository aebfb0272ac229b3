#pragma once

#include "climate/bench.hpp"
#include "climate/phases.hpp"

#include <array>
#include <optional>
#include <vector>

namespace nightsow::climate {

/// How good the outlook would have been in past years at one place. For each season with enough
/// seasons before it, a smooth year is fitted to what came before its hottest night, and an outlook
/// is made from the readings up to an issue day; what it said is scored against what came. Of the
/// whole record only the phases and the screening are known beforehand. Gates are single night
/// limits, 5 of 7 nights, without a day limit; seasons in which nights never come down to one are
/// left out on every side.
inline constexpr std::array backtest_gates_c{8.0, 10.0, 12.0, 14.0, 16.0};
/// Days before the median of past dates on which an outlook is issued.
inline constexpr std::array backtest_leads{45, 30, 15, 7};
inline constexpr int backtest_least_seasons = 20; ///< before the one that is tested
inline constexpr int backtest_most_seasons = 40;  ///< the latest of them count

enum class NightEvent { stirs, holds };

/// The scores of one lead over all gates and seasons tried. Continuous ranked probability scores
/// are fair ones, in days; see scores.hpp.
struct LeadScores {
  int lead_days = 0;
  int cases = 0;
  double crps_outlook = 0.0;
  double crps_past = 0.0;     ///< of the dates of all past seasons
  double crps_possible = 0.0; ///< of those past dates that had not gone by on the issue day
  double coverage_80 = 0.0;   ///< share of dates within the 10 and 90 % quantiles (type 7, ends in)
  std::array<double, 10> pit{}; ///< share of dates in each tenth of the members (PIT)
  /// Of the outlook, had a forecast been at hand; empty when none was asked for.
  std::optional<double> crps_forecast;
};

/// Of the chance that nights turn warm again within 28 days of the event, told on the day of the
/// event.
struct RelapseScores {
  int cases = 0;
  double brier = 0.0;
  double brier_climate = 0.0; ///< of the share of past seasons that did
  double share = 0.0;         ///< of the tested seasons that did
};

struct EventScores {
  NightEvent event = NightEvent::stirs;
  std::vector<LeadScores> leads; ///< in the order of backtest_leads; some may have no case
  RelapseScores relapse;
};

struct Backtest {
  int seasons = 0;                 ///< tested
  std::vector<double> gates_c;     ///< tried at least once
  std::vector<EventScores> events; ///< stirs, holds
};

/// `series` is screened, its holes open. `holds` is tried only where the gate binds in the seasons
/// before. With `forecast_days` above 0 each outlook is also made with a stand-in for a forecast of
/// so many days: what came, plus an error that grows about as forecast_error_k does and persists as
/// weather does (the departures of a past season, another for each tested one). Fewer than
/// `backtest_least_seasons` + 1 seasons: no cases.
[[nodiscard]] Backtest backtest(const DailySeries& series,
                                const Phases& phases,
                                int forecast_days = 0);

} // namespace nightsow::climate
