#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/records.hpp"

#include <string_view>

namespace nightsow::support {

/// A day written as YYYY-MM-DD.
[[nodiscard]] inline Date on(std::string_view iso) {
  return parse_iso_date(iso).value();
}

/// 25 seeds of a packet of 40, on 2 March 2026.
[[nodiscard]] inline planner::RecordedSowing invented_sowing() {
  planner::RecordedSowing sowing;
  sowing.packet_id = "a1";
  sowing.taxon = "Albuca spiralis";
  sowing.on = on("2026-03-02");
  sowing.seeds = 25;
  sowing.packet.id = "a1";
  sowing.packet.taxon = "Albuca spiralis";
  sowing.packet.seeds = {40, 40, {}};
  return sowing;
}

[[nodiscard]] inline planner::SeedlingCount invented_count(planner::EntryId sowing,
                                                           std::string_view day,
                                                           int seen) {
  planner::SeedlingCount count;
  count.sowing = sowing;
  count.on = on(day);
  count.seen = seen;
  return count;
}

} // namespace nightsow::support
