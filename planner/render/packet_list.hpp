#pragma once

#include "planner/answers/packet_list_answer.hpp"
#include "planner/render/text_style.hpp"

#include <string>

namespace nightsow::planner {

/// The packets as a table, one line each.
[[nodiscard]] std::string packet_list_text(const PacketListAnswer& answer, const TextStyle& style);

[[nodiscard]] std::string to_json(const PacketListAnswer& answer);

} // namespace nightsow::planner
