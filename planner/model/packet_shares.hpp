#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "planner/model/establishment.hpp"
#include "planner/model/store_history.hpp"
#include "species-rules/rule.hpp"
#include "species-rules/seed_parameters.hpp"

#include <map>
#include <vector>

namespace nightsow::planner {

/// What a packet brings on a day of first water, should its seed be as drawn: the shares of
/// seed_state, reckoned quickly for many draws and days. What a germination test tells is weighed
/// against the whole rule, which no single draw has any more; so it is asked once a month, and
/// moves all draws alike.
class PacketShares {
public:
  /// Requires: the rule outlives this. Days before `today` count as today.
  PacketShares(Packet packet, const species_rules::Rule& rule, Date today);

  [[nodiscard]] SeedShares on(Date day, const species_rules::SeedParameters& drawn);

private:
  /// What the germination test makes of the shares reckoned without it, as factors.
  struct Told {
    double alive = 1.0;
    double germination = 1.0;
    double needs_no_ripening = 0.0; ///< no factor: as SeedTest has it
  };

  /// One for each way it may have been kept; empty: its age is not known.
  [[nodiscard]] const std::vector<Kept>& kept_by(Date day);
  [[nodiscard]] const Told& told_by_test(Date day);

  Packet packet_;
  const species_rules::Rule* rule_;
  Date today_{};
  std::map<Date, std::vector<Kept>> kept_;
  std::map<int, Told> told_; ///< by months from today: it changes slowly
};

} // namespace nightsow::planner
