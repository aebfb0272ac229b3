#pragma once

#include "climate/night_words.hpp"
#include "planner/answers/nights_answer.hpp"
#include "planner/model/bench_climate.hpp"

#include <optional>

namespace nightsow::planner {

/// The last 30 nights up to today, as they were read or reckoned for the bench; holes are open.
[[nodiscard]] RecentNights recent_nights(const climate::BenchAir& bench, Date today);

/// What the forecast says of the days after the last reading; empty where there is none.
[[nodiscard]] std::optional<ForecastNights> forecast_nights(const climate::BenchAir& bench,
                                                            const climate::NightLimit& limit);

/// Share of the possible seasons with a warm week within four weeks after `today`. Empty when today
/// does not lie in the season.
[[nodiscard]] std::optional<double> relapse_after(const climate::Outlook& outlook,
                                                  const climate::NightLimit& limit,
                                                  Date today);

} // namespace nightsow::planner
