#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// One sowing as it may be given away: what was sown and what came, without names and dates.
struct SharedSowing {
  std::string taxon; ///< accepted name
  int seeds = 0;
  int came = 0;
  int season = 1;                         ///< of the garden's seasons with sowings, counted from 1
  std::optional<double> age_years;        ///< to a half
  std::string shelter;                    ///< of the bench, a word of garden.json
  bool trial = false;                     ///< an arm of a trial
  std::vector<std::pair<int, int>> looks; ///< days after first water, seedlings come by then
};

/// What the rule in use said of a taxon.
struct SharedRule {
  std::string taxon;
  std::optional<double> night_limit_c;
  std::optional<double> germination_share;
};

/// How a garden's nights run, to whole degrees.
struct SharedClimate {
  int warmest_nights_c = 0; ///< the smooth year's top and bottom
  int coldest_nights_c = 0;
  int warmest_days_c = 0;
};

/// What a grower gives to others: counts, rules and a coarse climate; no place, no name, no date.
struct SharedCounts {
  std::optional<SharedClimate> climate;
  std::vector<SharedSowing> sowings;
  std::vector<SharedRule> rules;
};

/// As a file: JSON, one sowing a line.
[[nodiscard]] std::string shared_counts_text(const SharedCounts& counts);

/// Reads such a file. Throws InputError with file, line and column where something is not as it
/// should be; names it does not know are refused, too.
[[nodiscard]] SharedCounts read_shared_counts(std::string_view text, std::string_view where);

} // namespace nightsow::planner
