#include "planner/model/pots.hpp"

#include "planner/model/quantities.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace nightsow::planner {

namespace {

constexpr std::string_view standard_depth = "standard";

const PotSize* pot_named(std::span<const PotSize> pots, std::string_view depth) {
  const auto found = std::find_if(
      pots.begin(), pots.end(), [depth](const PotSize& pot) { return pot.depth == depth; });
  return found == pots.end() ? nullptr : &*found;
}

// Width at a height above the base: straight walls.
double width_cm(const PotSize& pot, double high_cm) {
  return pot.base_cm + (pot.top_cm - pot.base_cm) * high_cm / pot.deep_cm;
}

double filled_cm(const PotSize& pot) {
  return std::max(0.0, pot.deep_cm - under_rim_cm);
}

} // namespace

std::span<const PotSize> usual_pots() {
  static const std::array<PotSize, 4> pots{{
      {"shallow", rule_pot_across_cm, 6.5, 6.0},
      {std::string{standard_depth}, rule_pot_across_cm, 6.0, 8.0},
      {"deep", rule_pot_across_cm, 6.0, 11.0},
      {"very_deep", rule_pot_across_cm, 5.5, 15.0},
  }};
  return pots;
}

PotSize pot_for(const Garden& garden, std::string_view depth) {
  const std::string_view known = pot_named(usual_pots(), depth) != nullptr ? depth : standard_depth;
  const PotSize* own = pot_named(garden.pot_sizes, known);
  return own != nullptr ? *own : *pot_named(usual_pots(), known);
}

double filled_litres(const PotSize& pot) {
  const double high_cm = filled_cm(pot);
  return frustum_litres(width_cm(pot, high_cm), pot.base_cm, high_cm);
}

double cover_litres(const PotSize& pot, double cover_mm) {
  const double high_cm = filled_cm(pot);
  const double cover_cm = std::min(cover_mm / 10.0, high_cm);
  return frustum_litres(width_cm(pot, high_cm), width_cm(pot, high_cm - cover_cm), cover_cm);
}

int seeds_in_pot(const PotSize& pot, int seeds_in_rule_pot) {
  const double wider = pot.top_cm / rule_pot_across_cm;
  return std::max(1, static_cast<int>(std::lround(seeds_in_rule_pot * wider * wider)));
}

} // namespace nightsow::planner
