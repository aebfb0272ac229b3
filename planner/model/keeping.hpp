#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// A way to keep a packet dry from today until its first water.
struct Keeping {
  enum class Way { as_it_is, warm, cool, warm_then_cool };

  Way way = Way::as_it_is;
  std::optional<Date> warm_until; ///< of warm_then_cool alone
};

/// The stages of a store up to today, the last one cut there; what is written for later falls away.
/// Where nothing is written: a room, which is known or not.
[[nodiscard]] std::vector<StoreStage> stages_until(const std::vector<StoreStage>& stages,
                                                   Date today,
                                                   bool known_when_empty);

/// The fridge that stands for "cool and dry", °C.
inline constexpr double keeping_cool_c = 5.0;

/// The packet as it will have been kept: its store up to today as written, and from then on so.
/// Stages written for later fall away unless it stays as it is.
[[nodiscard]] Packet kept_so(const Packet& packet, const Keeping& keeping, Date today);

/// The day until which warmth, with the fridge after it, leaves most seed alive and ripe on a day
/// to come; empty where the fridge from today on leaves as much.
/// `alive_and_ripe` tells the share of a packet on that day. Days are tried every ten, counted from
/// the harvest and not from today, so that the answer does not wander with today.
template <class AliveAndRipe>
[[nodiscard]] std::optional<Date> best_warm_until(const Packet& packet,
                                                  Date today,
                                                  Date needed,
                                                  AliveAndRipe alive_and_ripe) {
  constexpr Days step{10};
  std::optional<Date> best;
  double most = alive_and_ripe(kept_so(packet, {Keeping::Way::cool, {}}, today));
  const Date counted_from = packet.harvested ? packet.harvested->first : Date{};
  const Days since{days_between(counted_from, today) % step.count()};
  for (Date until = today + step - since; until < needed; until += step) {
    const double share =
        alive_and_ripe(kept_so(packet, {Keeping::Way::warm_then_cool, until}, today));
    if (share > most) {
      most = share;
      best = until;
    }
  }
  return best;
}

} // namespace nightsow::planner
