#pragma once

#include "species-rules/catalogue.hpp"
#include "species-rules/seed_parameters.hpp"

#include <string_view>
#include <vector>

namespace nightsow::species_rules {

// A rule's numbers are not known exactly, and what is wrong of one kind is wrong of its relatives,
// too. So each number is drawn many times within its range, and kinds of one family, or genus, are
// drawn alike: draw 5 of one Moraea and draw 5 of another belong together. Otherwise a plan of
// sixty packets would look falsely sure.

/// What a number's error shares with the other kinds of its family, with those of its genus, and
/// what is its own; they add up to 1. Common practice, no source. A value of the species' own, or
/// the grower's, shares the family's error all the same.
inline constexpr double family_weight = 0.4;
inline constexpr double genus_weight = 0.3;
inline constexpr double species_weight = 0.3;

inline constexpr int usual_draws = 64;

/// Standard normal figures, one a draw, for one number of one kind: exactly stratified (the
/// quantiles of (i + 0.5) / draws, each once) in an order that follows from the names alone. The
/// correlation of two kinds is that of the weights they share, and of two keys none, both as near
/// as so many draws allow. Requires: draws >= 1.
[[nodiscard]] std::vector<double> drawn_z(const RuleFor& kind, std::string_view key, int draws);

/// A number at so many standard deviations: `value` at 0, `low` at -1.2816 and `high` at 1.2816, a
/// tenth of cases beyond each; straight between and beyond, or so in logarithms where the whole
/// range is positive and `in_logarithms`.
[[nodiscard]] double drawn_value(const Estimate& estimate, double z, bool in_logarithms);

/// The rule's numbers drawn so many times, kept within the bounds of their fields and in the orders
/// that seed_parameters keeps. No random numbers: the same kind gives the same, always.
[[nodiscard]] std::vector<SeedParameters> drawn_parameters(const RuleFor& kind,
                                                           int draws = usual_draws);

} // namespace nightsow::species_rules
