#pragma once

#include "climate/daily_series.hpp"
#include "planner/garden/garden.hpp"

namespace nightsow::planner {

/// Whether the garden has monthly normals and no readings at all.
[[nodiscard]] bool knows_normals_only(const Garden& garden);

/// Thirty years drawn from the normals (see drawn_years.hpp), which stand in for the readings of
/// past seasons. They end over a year before today, with two weeks of missing days, so that no
/// drawn night is ever counted as one of the season that is planned. Requires:
/// knows_normals_only.
[[nodiscard]] climate::DailySeries drawn_station(const Garden& garden, Date today);

} // namespace nightsow::planner
