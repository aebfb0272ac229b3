#pragma once

#include "climate/base/date.hpp"
#include "planner/garden/packet.hpp"
#include "species-rules/viability.hpp"

#include <span>
#include <vector>

namespace nightsow::planner {

/// Days in which a store ripened seed.
struct RipeningStay {
  double store_c = 0.0;
  double weighted_days = 0.0; ///< times what the humidity leaves of ripening
};

/// What a store has done to seed so far.
struct Kept {
  double room_years = 0.0; ///< years in a dry room at 20 °C that age such seed as much
  std::vector<RipeningStay> stays;

  /// Warm dry degree-days towards ripeness, above a base temperature.
  [[nodiscard]] double ripened_c_d(double base_c) const;
};

/// Warm and dry before the fridge, where seed was bought and nothing else is known of it (common
/// practice, no source).
inline constexpr Days unknown_warm_days{60};

/// The ways in which a packet may have been kept since its harvest, equally likely; every stage in
/// them is known. One where the packet tells: the shelf of a dry room for seed of one's own with
/// nothing written. Two where it does not, for bought seed or a stage "unknown": warm all along, or
/// in the fridge after two months.
[[nodiscard]] std::vector<std::vector<StoreStage>> store_histories(const Packet& packet,
                                                                   Date harvested);

/// Whether the packet tells how it was kept.
[[nodiscard]] bool store_known(const Packet& packet);

/// What these stages do to such seed from one day to another. The first reaches back as far as is
/// asked, the last goes on. Requires: stages not empty and all known. Nothing when `until` is
/// before `from`.
[[nodiscard]] Kept kept(std::span<const StoreStage> stages,
                        Date from,
                        Date until,
                        species_rules::SeedStorage storage);

} // namespace nightsow::planner
