#pragma once

#include "planner/garden/packet.hpp"
#include "planner/garden/seed_age.hpp"

#include <string_view>
#include <vector>

namespace nightsow::planner {

// What is said of seed behind an option, in the words of packets.csv. Every function throws
// UsageError, naming the option, when the text is something else.

[[nodiscard]] SeedAge typed_age(std::string_view option, std::string_view text);
[[nodiscard]] std::vector<StoreStage> typed_store(std::string_view option, std::string_view text);
[[nodiscard]] GerminationTest typed_test(std::string_view option, std::string_view text);

} // namespace nightsow::planner
