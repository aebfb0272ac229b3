#pragma once

#include "planner/answers/plan_answer.hpp"
#include "planner/answers/presence.hpp"

#include <vector>

namespace nightsow::planner {

/// A tray waits for all of its packets, so their dates must lie within so many days: the best time
/// for first water is flat for five to seven weeks (common practice, no source).
inline constexpr int near_days = 28;

/// What nights allow to be watered now waits no longer for packets that are sown later.
inline constexpr int near_days_now = 7;

/// Night limits within such a step share a tray, and wait for the lowest of them.
inline constexpr int limit_step_k = 3;

/// The plan's sowings as trays. Every sowing with a day to be sown on and one for first water is in
/// one, no other is. Each of them is watered on or after the day on which its last packet is sown,
/// and within the window of each of its packets, unless the grower is away all that time. The order
/// of the sowings changes nothing, and a packet that shares no tray with a group does not change
/// its id: that is made of what its packets share and of the first of them by name.
[[nodiscard]] std::vector<Lot> lots_of(const std::vector<Sowing>& sowings,
                                       const Presence& presence);

/// Tells each sowing the tray that it stands in.
void tell_trays(const std::vector<Lot>& lots, std::vector<Sowing>& sowings);

/// What the names of a bench's groups of one start begin with: "cold-frame-cool".
[[nodiscard]] std::string bench_and_start(const Lot& lot);

/// The sowings that are in no tray, by packet.
[[nodiscard]] std::vector<LotPacket> without_day(const std::vector<Sowing>& sowings, Date today);

} // namespace nightsow::planner
