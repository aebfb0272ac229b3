#pragma once

#include "climate/smooth_year.hpp"

#include <span>

namespace nightsow::climate {

// A record of few years has their weather in its smooth year. Where monthly normals are known, too,
// the usual year is sought between the two.

/// Monthly normals tell as much of the usual year as so many years of readings. The curve of n
/// years misses it by about 1.2 K / sqrt(n), the normals of a climate table, of other years and
/// perhaps of a place near by, by about 0.7 K (both common practice, no source; open records show
/// the like, see tests/reference/climate/short_records_test.cpp). Weighed by their squares the
/// record's share is n / (n + (1.2 / 0.7)^2), which is n / (n + 2.9).
inline constexpr double years_normals_are_worth = 3.0;

/// Years of values behind a fitted curve, holes not counted.
[[nodiscard]] double years_of(const SmoothCurve& fitted);

/// The curve with two harmonics that is nearest to the smooth course of the normals (see
/// NormalCourse); nothing in it of how single nights stray. Requires: twelve finite means in °C,
/// January first.
[[nodiscard]] SmoothCurve curve_of_normals(std::span<const double> monthly_mean_c);

/// The present usual curve: level and season are the weighted mean of the two, the record with
/// `years` / (`years` + years_normals_are_worth); all else is as fitted. A curve with a trend comes
/// from a record long enough to stand alone, and is returned as it is.
[[nodiscard]] SmoothCurve leaned(const SmoothCurve& fitted,
                                 const SmoothCurve& normals,
                                 double years);

/// The same of nights and days, each with its own years (see years_of). A record with too few
/// maxima has the days of the normals. Requires: normals.day.
[[nodiscard]] SmoothYear leaned(const SmoothYear& fitted, const SmoothYear& normals);

/// Level and season of `curve` and of what `to` has more than `from`. All else is as in `curve`.
[[nodiscard]] SmoothCurve moved(const SmoothCurve& curve,
                                const SmoothCurve& from,
                                const SmoothCurve& to);

} // namespace nightsow::climate
