#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "planner/model/establishment.hpp"
#include "planner/model/seed_state.hpp"
#include "planner/model/store_history.hpp"
#include "species-rules/rule.hpp"
#include "species-rules/seed_parameters.hpp"

#include <map>
#include <utility>
#include <vector>

namespace nightsow::planner {

/// What a packet brings on a day of first water, should its seed be as drawn: the shares of
/// seed_state, reckoned quickly for many draws and days. What a germination test tells is weighed
/// against the whole rule, which no single draw has any more; so it is asked once a month, and
/// moves all draws alike. A test with its day is read once, whatever the day asked for.
class PacketShares {
public:
  /// Requires: the rule outlives this. Days before `today` count as today.
  PacketShares(Packet packet, const species_rules::Rule& rule, Date today);

  [[nodiscard]] SeedShares on(Date day, const species_rules::SeedParameters& drawn);

private:
  /// One for each way it may have been kept; empty: its age is not known.
  [[nodiscard]] const std::vector<Kept>& kept_by(Date day);
  [[nodiscard]] const ToldByTest& told_by_test(Date day);

  Packet packet_;
  const species_rules::Rule* rule_;
  Date today_{};
  std::map<Date, std::vector<Kept>> kept_;
  /// By its day, and the last day of harvest as known then.
  std::map<std::pair<Date, Date>, TestReading> readings_;
  std::map<int, ToldByTest> told_; ///< by months from today: it changes slowly
};

} // namespace nightsow::planner
