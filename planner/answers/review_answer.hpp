#pragma once

#include "planner/answers/heads.hpp"
#include "planner/answers/spread.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

// One season's sowings against what was promised of them.

struct DeathsLine {
  std::string of; ///< damping_off, gnats, snails, heat, dry, frost, other, unknown
  int seedlings = 0;
  int sowings = 0;
};

/// What the saved plan said, or a plan would have said on the day of sowing of first water as it
/// was given.
struct Promised {
  NumberSpread seedlings;
  /// Alive after the first rest; evergreens at the height of the next hot season, annuals in
  /// flower.
  NumberSpread plants;
};

struct ReviewLine {
  std::int64_t sowing = 0; ///< its number in the journal
  std::string packet;
  std::string taxon; ///< as written
  std::string accepted;
  std::string bench;
  std::string trial;
  std::string arm;
  Date on{};
  std::optional<Date> first_water;
  int seeds = 0;
  std::optional<Promised> promised;
  std::optional<Date> promised_on; ///< by the plan saved that day; empty: reckoned anew
  std::optional<int> came;         ///< in its season; null: never counted
  int dead = 0;
  std::optional<int> back; ///< alive after the first rest; null: not counted then
  bool annual = false;     ///< none is alive then, so that none is asked for
  bool evergreen = false;  ///< it has no rest, so that no count after it is asked for
  int firm = 0;            ///< of seeds pressed
  int soft = 0;
  std::optional<Date> closed_on; ///< the grower closed it
  std::string closed_why;        ///< thrown_out, emptied, given_away, moved_on, other; empty: open
  /// dry, not_counted, too_early, closed_early, nothing, fewer, as_promised, more; counted where
  /// nothing was promised
  std::string outcome;
  /// Why fewer or nothing came, as far as known: seed_was_dead, seed_is_sound, watered_early;
  /// empty: not known
  std::string why;
  std::optional<int> days_early; ///< first water before nights held; of cool starters
};

/// A pot of an earlier season.
struct CarriedLine {
  std::int64_t sowing = 0;
  std::string taxon;
  Date on{};
  int seeds = 0;
  int came_before = 0; ///< up to the beginning of this season
  int came_now = 0;
};

/// How often the plan's own ranges held what came.
struct RangesHeld {
  int told = 0; ///< sowings looked at to the end, or plants counted after the rest
  int within = 0;
  int below = 0; ///< fewer came than the range says
  int above = 0;
  int least_likely = 0; ///< held ranges of so many that are no surprise, were they right
  double promised = 0.0;
  int came = 0;
};

struct Lesson {
  /// deaths, seed_was_dead, keep_the_pot, press_them, promised_too_much, promised_too_little,
  /// trial_settled, trial_open, never_counted, count_after_rest, lost_in_rest, watered_early
  std::string kind;
  std::string of;    ///< what died of, taxa, the trial
  std::string other; ///< of trials: the better arm
  int count = 0;     ///< seedlings or seeds in all; days for a sowing, on average
  int sowings = 0;
  int more_seeds = 0;  ///< of trial_open: an arm, to settle it
  double weight = 0.0; ///< plants that it cost, roughly: what lessons are ordered by
};

struct ReviewAnswer {
  GardenHead garden;
  Date today{};
  int season = 0;
  std::vector<int> seasons;  ///< that have sowings
  bool rest_is_over = false; ///< what rested has woken by today, or will not
  std::vector<ReviewLine> lines;
  std::vector<CarriedLine> carried;
  std::vector<DeathsLine> deaths;
  int seeds = 0;
  int came = 0;
  int dead = 0;
  std::optional<int> back; ///< null: no sowing was counted after its rest
  int judged = 0;          ///< sowings that were
  RangesHeld seedlings_held;
  RangesHeld plants_held;
  std::vector<Lesson> lessons; ///< the three that matter most
  int unknown = 0;             ///< sowings of taxa that no rule knows
};

} // namespace nightsow::planner
