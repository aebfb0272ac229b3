#pragma once

#include "climate/base/date.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// So many it let expect: on average, and in 8 of 10 cases.
struct SavedRange {
  double mean = 0.0;
  double p10 = 0.0;
  double p90 = 0.0;
};

/// What a saved plan says of one packet.
struct SavedLine {
  std::string packet;
  std::string taxon;
  bool sown_this_season = true; ///< it stood among the sowings; false: not now
  std::string verdict;          ///< as in JSON; empty where it is not now
  std::string route;
  std::optional<Date> sow_on{}; ///< put into its pots, dry
  std::optional<Date> water;    ///< planned first water; where it is not now: when it would be
  std::optional<Date> not_before;
  std::optional<Date> no_later_than;
  std::string bench; ///< it was planned for; empty where it is not now, or the file does not say
  // What it promised, of so many seeds; empty: nothing.
  std::optional<double> seeds{};
  std::optional<SavedRange> seedlings{};
  std::optional<SavedRange> plants{}; ///< alive after the first rest
  // What it was planned from, see answers/plan_marks.hpp; empty: the file does not say.
  std::string row_mark;
  std::string rule_mark;
  double seeds_sown = 0.0; ///< of the packet by then
};

/// A plan as `plan --save` wrote it.
struct SavedPlan {
  int season = 0;
  int saves = 0; ///< how often a plan of this season has been saved
  Date on{};     ///< its today
  std::optional<Date> readings_to;
  std::string garden_mark;
  std::vector<SavedLine> lines;
};

/// Reads plans/<season>.json: what is compared, and no more. Throws InputError, with line and
/// column, on a newer schema and on anything that is no saved plan.
[[nodiscard]] SavedPlan read_saved_plan(std::string_view text, std::string_view where);

/// The name of the file in the garden's folder: "plans/2026.json".
[[nodiscard]] std::filesystem::path saved_plan_file(int season);

} // namespace nightsow::planner
