#pragma once

#include "climate/base/date.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// What a packet's line was made from; see plan_marks.hpp.
struct PacketMarks {
  std::string packet;
  std::string row;
  std::string rule; ///< empty: no rule is known
  double seeds_sown = 0.0;
};

struct PlanMarks {
  std::string garden; ///< benches, mats and days
  std::vector<PacketMarks> packets;
};

/// What happened to a packet since the plan was last saved, the weightiest first.
enum class ChangeKind {
  comes_in, ///< it was not now, and is a sowing of this season
  goes_out, ///< the reverse
  verdict,  ///< another verdict
  added,    ///< it was not in that plan
  sown,     ///< some or all of it has been sown since, and no date of the rest is another
  gone,     ///< it is no longer among the packets, and was not sown
  moved,    ///< other dates or another route
};

[[nodiscard]] std::string_view name_of(ChangeKind kind);

/// What may be behind a change.
enum class ChangeCause {
  seeds_sown,     ///< of this packet
  packet_changed, ///< its row in packets.csv
  rule_changed,
  garden_changed, ///< benches, mats, free days
  readings,       ///< nights read since
  days_passed,    ///< nothing else
};

[[nodiscard]] std::string_view name_of(ChangeCause cause);

/// A packet's line, then or now.
struct LineThen {
  std::string verdict; ///< as in JSON; empty: not now
  std::string route;   ///< may be empty
  std::optional<Date> water;
  std::optional<Date> no_later_than;
};

struct PlanChange {
  ChangeKind kind = ChangeKind::moved;
  std::string packet;
  std::string taxon;
  std::optional<LineThen> before; ///< empty: it was not in the plan
  std::optional<LineThen> after;  ///< empty: it no longer is
  std::optional<int> moved_days;  ///< of the planned first water, later is positive
  std::optional<int> latest_moved_days;
  std::vector<ChangeCause> causes;
};

/// A plan beside the last one saved of its season.
struct SinceSaved {
  Date saved_on{};
  int nights_read = 0;             ///< since, by the end of the readings
  std::vector<PlanChange> changes; ///< the weightiest first
  int unchanged = 0;
};

} // namespace nightsow::planner
