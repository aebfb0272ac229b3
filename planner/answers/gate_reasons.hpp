#pragma once

#include "planner/answers/nights_answer.hpp"
#include "planner/answers/plan_answer.hpp"
#include "planner/answers/reason.hpp"
#include "planner/model/bench_climate.hpp"
#include "planner/model/cool_season.hpp"
#include "planner/model/readings_guard.hpp"

#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// Of the possible seasons: from this share on the place counts as never cool enough.
inline constexpr double never_share = 0.9;

/// Whether first water may be given today, with what speaks against it (or leaves it unknown). The
/// plan and `nights` both ask here, so that they cannot differ.
struct GateVerdict {
  Open open = Open::unknown;
  std::vector<Reason> reasons;
};

[[nodiscard]] GateVerdict gate_verdict(const BenchClimate& climate,
                                       const BenchSeason& season,
                                       const GateOutlook& gate,
                                       const ReadingsGuard& guard,
                                       Date today);

/// A question that is open is a packet to water; one that is not waits.
[[nodiscard]] Verdict verdict_of(Open open);

/// Stale readings leave every verdict that is due by now unknown; suspect ones only a "yes".
void apply_guard(const ReadingsGuard& guard, bool due, GateVerdict& verdict);

/// The last days were too hot to wet seed, whatever the nights; empty when they were not.
[[nodiscard]] std::optional<Reason> hot_days_reason(const BenchClimate& climate,
                                                    std::optional<Celsius> day_limit);

/// Nights of the last week froze on average; empty when they did not, or are missing.
[[nodiscard]] std::optional<Reason> freezing_reason(const BenchClimate& climate);

/// What the nights of the season say: binding, so far, stirring before holding, never.
[[nodiscard]] std::vector<Reason> gate_reasons(const GateOutlook& gate,
                                               const climate::Season& season,
                                               const std::string& bench);

[[nodiscard]] Reason never_cool_reason(Celsius limit, int never, int seasons);
[[nodiscard]] Reason start_without_gate_reason(const climate::Season& season,
                                               std::optional<Celsius> day_limit);

[[nodiscard]] bool has_reason(const std::vector<Reason>& reasons, ReasonCode code);

} // namespace nightsow::planner
