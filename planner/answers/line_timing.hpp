#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/saved_plan.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/readings_guard.hpp"
#include "planner/model/seed_state.hpp"
#include "species-rules/catalogue.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// All that decides when one packet gets its first water.
struct LineInput {
  const LoadedGarden& garden;
  const Packet& packet;
  const species_rules::RuleFor& rule;
  const SeedState& seed;
  const ReadingsGuard& guard;
  std::string bench;
  const SavedLine* saved = nullptr; ///< of the season planned; null: none is to be kept to
  bool off_mat = false;             ///< planned as though the garden had no mat
};

/// When, and why then.
struct LineTiming {
  Verdict verdict = Verdict::wait;
  std::optional<GateAnswer> gate;
  FirstWater water;
  std::optional<Date> opens; ///< since when the season allows it, or will; may lie behind
  std::vector<Reason> reasons;
  std::vector<Reason> risks;
  std::optional<Reason> missed; ///< why this season comes to nothing for it
  bool never = false;           ///< this place does not bring what the seed waits for
};

/// The timing of a packet in a season; `season` is empty where the place has no phases.
[[nodiscard]] LineTiming line_timing(const LineInput& input,
                                     BenchSeasons& seasons,
                                     const std::optional<climate::Season>& season);

/// The last day of first water lies behind.
[[nodiscard]] Reason window_passed(Date no_later_than);

/// What ends the time to grow, as reasons name it: the first rest of kinds that rest, the height of
/// the next hot season of evergreens, the end of annuals.
[[nodiscard]] NamedValue growth_end_value(species_rules::FirstRestWay way, Date ends);

/// Moves what is expected before `first` to it: a day on which nights held weeks ago is no day to
/// water on.
void keep_from(Date first, Spread& expected);

// The same by the rule's start.
[[nodiscard]] LineTiming cool_timing(const LineInput& input,
                                     BenchSeasons& seasons,
                                     const std::optional<climate::Season>& season);
[[nodiscard]] LineTiming mild_timing(const LineInput& input,
                                     BenchSeasons& seasons,
                                     const std::optional<climate::Season>& season);
[[nodiscard]] LineTiming hot_timing(const LineInput& input,
                                    BenchSeasons& seasons,
                                    const std::optional<climate::Season>& season);

} // namespace nightsow::planner
