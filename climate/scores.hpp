#pragma once

#include <span>

namespace nightsow::climate {

/// How good stated chances were once the answer is known. Units are those of the values: dates are
/// scored as days counted from some fixed day.

/// Fair continuous ranked probability score of an ensemble against what came: the mean distance of
/// the members from it, less half their mean distance from each other over pairs of different
/// members, so that few and many members can be compared. Smaller is better; it can fall below 0.
/// One member: its distance. No member: NaN. Members need not be sorted.
/// Source: Ferro (2014), Fair scores for ensemble forecasts, QJRMS 140 (from memory).
[[nodiscard]] double fair_crps(std::span<const double> members, double observed);

/// The same score of a normal forecast; `deviation` > 0.
/// Source: Gneiting et al. (2005), Monthly Weather Review 133, equation 5 (from memory).
[[nodiscard]] double normal_crps(double mean, double deviation, double observed);

/// Where among the members the observed value came, 0 to 1: the mean of the share of members under
/// it and the share not above it. Over many reliable outlooks every value comes equally often.
/// No member: NaN.
[[nodiscard]] double middle_rank(std::span<const double> members, double observed);

/// Square of what the stated chance missed by; `chance` in 0 to 1. Its mean over many forecasts is
/// the Brier score.
[[nodiscard]] double brier_score(double chance, bool happened);

} // namespace nightsow::climate
