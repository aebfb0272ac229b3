#pragma once

#include "planner/garden/garden.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Mineral share of a mix where neither garden nor rule says (common practice, no source).
inline constexpr double usual_mineral_share = 0.7;

/// Fine parts fill the gaps of coarse ones, so that a mix is less than the sum of its parts by so
/// much. It has to be measured; this is a guess on the safe side (common practice, no source).
inline constexpr double usual_shrink = 0.1;

/// Names by which a packet's kind may stand in a recipe's list.
struct KindNames {
  std::string_view accepted; ///< "Monsonia vanderietiae"
  std::string_view family;
};

/// The mix for a kind, nothing left out. Its share of mineral parts is that of the recipe that
/// names its species, genus or family (the nearest first), else what the garden writes, else what
/// the rule says, else the usual one. Its parts are the recipe's, else the garden's, else the usual
/// ones: pumice, coarse sand and fine grit over sieved compost (common practice, no source).
[[nodiscard]] MixRecipe mix_for(const Garden& garden,
                                const KindNames& kind,
                                std::optional<double> rule_mineral_share);

struct PartLitres {
  std::string name;
  double litres = 0.0;
};

/// What to measure out, loose, for so many litres of the ready mix: litres / (1 - shrink), split by
/// share and parts. A part on both sides is told once. Parts of no volume are left out.
/// Requires: the recipe is complete; litres >= 0; 0 <= shrink < 1.
[[nodiscard]] std::vector<PartLitres> parts_of(const MixRecipe& mix, double litres, double shrink);

} // namespace nightsow::planner
