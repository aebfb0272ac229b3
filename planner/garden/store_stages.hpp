#pragma once

#include "planner/garden/packet.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace nightsow::planner {

/// Where seed was kept, as growers write it: "fridge", or stages with the last day of each but the
/// last: "shelf 22C to 2026-03-01; fridge". shelf and indoors are 20 °C, fridge 5, freezer -18
/// where no temperature is written; any other word needs one. "unknown" is a stage of which nothing
/// is known.
///
/// The air may be named beside the place: "desiccated" (or "silica gel"), "dry" or "sealed" (as dry
/// as a room), "damp", "humid", "moist" or "barely moist"; or as a number: "shelf 60 % RH". Nothing
/// written: as dry as a room. Empty when the text is none of that; the caller knows the place and
/// complains.
[[nodiscard]] std::optional<std::vector<StoreStage>> parse_store_stages(std::string_view cell);

} // namespace nightsow::planner
