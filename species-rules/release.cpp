#include "species-rules/release.hpp"

#include "species-rules/normal.hpp"

namespace nightsow::species_rules {

namespace {

constexpr double equal_within_k = 0.005;
constexpr int first_deciding_night = 3;

double released(double kelvin_past_limit, const ReleaseLimit& limit) {
  const double waiting = 1.0 - limit.indifferent_share;
  const double share = limit.spread_k > 0.0 ? normal_share(kelvin_past_limit / limit.spread_k)
                       : kelvin_past_limit >= -equal_within_k ? 1.0
                                                              : 0.0;
  return limit.indifferent_share + waiting * share;
}

} // namespace

double released_by_cool(double coolest_c, const ReleaseLimit& limit) {
  return released(limit.limit_c - coolest_c, limit);
}

double released_by_warmth(double warmest_c, const ReleaseLimit& limit) {
  return released(warmest_c - limit.limit_c, limit);
}

std::optional<int> deciding_night(int nights, int of, int so_far) {
  if (so_far >= of) {
    return nights;
  }
  if (so_far < first_deciding_night) {
    return std::nullopt;
  }
  return (nights * so_far + of - 1) / of;
}

} // namespace nightsow::species_rules
