#pragma once

#include "species-rules/explain.hpp"
#include "species-rules/rule.hpp"

#include <span>
#include <string_view>

namespace nightsow::planner {

/// The kinds for which a field decides anything.
enum class Concerns { all, cool_starters, hot_starters, without_fleshy_seed };

/// A field of the rules that decides what becomes of a sowing: how much, and how to learn it.
struct DecidingField {
  std::string_view key;  ///< as in rule files
  std::string_view name; ///< "the night limit"
  int weight = 1;        ///< 1: little hangs on it; 5: the sowing does
  /// A range so wide says nothing: a difference, or high over low where `by_ratio`. Not used for
  /// words.
  double as_good_as_unknown = 1.0;
  bool by_ratio = false;
  Concerns concerns = Concerns::all;
  std::string_view why;   ///< the reason of the weight
  std::string_view trial; ///< what would settle it; {low} and {high} stand for the range's ends
};

/// Heaviest first. Weights follow what moved the number of plants most when the model was run
/// (season and ripeness before seed age, those before the bench), by judgement within that.
[[nodiscard]] std::span<const DecidingField> deciding_fields();

/// Null for a field that decides little, or nothing for kinds of that start.
[[nodiscard]] const DecidingField* deciding_field(std::string_view key, species_rules::Start start);

/// From this weight on a field counts where rules are listed by the ground of what decides.
inline constexpr int deciding_weight = 3;

/// 0.1 (a published experiment: it was one lot of seed) to 1 (from memory): how little a value's
/// ground holds.
[[nodiscard]] double weakness(species_rules::Evidence evidence);

/// 0..1: how much of what is possible a value's range leaves open; words count as a half.
[[nodiscard]] double openness(const DecidingField& field,
                              const species_rules::ExplainedValue& value);

/// How much would be gained by knowing better: weight times weakness times (1/4 + 3/4 openness),
/// so 0 to 5. Weak ground under a narrow range still counts: the range may be a guess too.
[[nodiscard]] double gap_score(const DecidingField& field,
                               const species_rules::ExplainedValue& value);

} // namespace nightsow::planner
