#include "planner/garden/packet.hpp"

namespace nightsow::planner {

std::optional<double> SeedCount::middle() const {
  if (!low || !high) {
    return std::nullopt;
  }
  return (*low + *high) / 2.0;
}

} // namespace nightsow::planner
