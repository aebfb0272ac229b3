#pragma once

#include "species-rules/wet_losses.hpp"

#include <vector>

namespace nightsow::planner {

/// How a kind is sown and kept, as far as it decides what lives.
struct PotCare {
  double seed_depth_mm = 0.0;
  bool grit = true;
  bool bag_until_up = false;
  species_rules::MixHygiene mix = species_rules::MixHygiene::clean_mineral;
  double watering_point_mm = 2.0; ///< watered at the end of the day on which so much has gone
  double kept_through_rest = 0.85;
};

/// What the packet brings on the day of first water, shares 0..1.
struct SeedShares {
  double alive = 1.0; ///< of the seeds sown; the rest is dead, or never comes up
  double ripe = 1.0;  ///< of those
};

/// What becomes of the seeds sown, shares of 1; they and the plants sum to 1.
struct Losses {
  double dead = 0.0; ///< before sowing
  double not_ripe = 0.0;
  double nights_too_warm = 0.0; ///< sound, waiting for cool nights when the season ended
  double deferred = 0.0;
  double lost_wet = 0.0;
  double dried = 0.0;
  double heat = 0.0;
  double frost = 0.0;
  double too_late = 0.0; ///< not up before the first rest, or too small for it
  double rest = 0.0;     ///< of evergreens and annuals none
};

struct Establishment {
  Losses losses;
  double seedlings = 0.0; ///< up before the first rest; of evergreens before the season's end
  double plants = 0.0;    ///< alive after it; evergreens at the season's end, annuals in flower
  std::vector<double> up; ///< a day of the course, share of the seeds that came up on it
};

/// Where the seeds sown are at the end of one day, shares of 1: those here, and `up` to that day,
/// sum to 1. Seed that will dry before it is up, or as it comes up, counts as to come until then.
struct SeedsOnDay {
  double dead = 0.0; ///< before sowing
  double not_ripe = 0.0;
  double nights_too_warm = 0.0; ///< sound, not yet released
  double to_come = 0.0;         ///< released, sound, not yet up
  double deferred = 0.0;
  double too_late = 0.0; ///< released, sound, and not to be up before the first rest
  double heat = 0.0;
  double lost_wet = 0.0;
  double dried = 0.0;
  double up_so_far = 0.0;
  std::vector<double> up; ///< a day of the whole course, as in Establishment
};

} // namespace nightsow::planner
