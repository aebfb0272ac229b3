#include "climate/persistence.hpp"

#include <array>
#include <cmath>
#include <span>

namespace nightsow::climate {

namespace {

struct Knot {
  double days_ahead = 0.0;
  MemoryWeights weights;
};

// Last night, last day, mean of 30, mean of 90.
constexpr std::array night_knots{
    Knot{1.0, {.40, .35, .08, .06}},
    Knot{2.0, {.09, .24, .14, .10}},
    Knot{3.0, {.04, .15, .14, .15}},
    Knot{5.5, {.01, .05, .12, .24}},
    Knot{11.0, {.00, .02, .08, .22}},
    Knot{21.0, {.00, .01, .06, .20}},
    Knot{37.0, {.00, .00, .02, .18}},
    Knot{75.0, {.00, .00, .00, .10}},
    Knot{memory_days, {.00, .00, .00, .00}},
};

constexpr std::array day_knots{
    Knot{1.0, {-.12, .65, .08, .10}},
    Knot{2.0, {-.08, .33, .21, .10}},
    Knot{3.0, {-.05, .18, .30, .10}},
    Knot{5.5, {-.01, .08, .25, .10}},
    Knot{11.0, {.00, .04, .20, .10}},
    Knot{21.0, {.00, .02, .12, .10}},
    Knot{37.0, {.00, .00, .08, .10}},
    Knot{75.0, {.00, .00, .00, .08}},
    Knot{memory_days, {.00, .00, .00, .00}},
};

MemoryWeights between(const Knot& before, const Knot& after, double days_ahead) {
  const double share = (days_ahead - before.days_ahead) / (after.days_ahead - before.days_ahead);
  const MemoryWeights& a = before.weights;
  const MemoryWeights& b = after.weights;
  return {std::lerp(a.last_night, b.last_night, share),
          std::lerp(a.last_day, b.last_day, share),
          std::lerp(a.mean_30, b.mean_30, share),
          std::lerp(a.mean_90, b.mean_90, share)};
}

MemoryWeights weights_at(std::span<const Knot> knots, int days_ahead) {
  const auto ahead = static_cast<double>(days_ahead);
  for (std::size_t i = 1; i < knots.size(); ++i) {
    if (ahead <= knots[i].days_ahead) {
      return between(knots[i - 1], knots[i], ahead);
    }
  }
  return {};
}

double known_difference(double first, double second) {
  return std::isnan(first - second) ? 0.0 : first - second;
}

} // namespace

MemoryWeights night_memory(int days_ahead) {
  return weights_at(night_knots, days_ahead);
}

MemoryWeights day_memory(int days_ahead) {
  return weights_at(day_knots, days_ahead);
}

LastDays last_days(const Departures& departures, Date last_night, Date last_day) {
  return {static_cast<double>(departures.night.at(last_night)),
          static_cast<double>(departures.day.at(last_day)),
          departures.night.mean_of(last_night, 30),
          departures.night.mean_of(last_night, 90),
          departures.day.mean_of(last_day, 30),
          departures.day.mean_of(last_day, 90)};
}

LastDays difference(const LastDays& first, const LastDays& second) {
  return {known_difference(first.last_night, second.last_night),
          known_difference(first.last_day, second.last_day),
          known_difference(first.night_mean_30, second.night_mean_30),
          known_difference(first.night_mean_90, second.night_mean_90),
          known_difference(first.day_mean_30, second.day_mean_30),
          known_difference(first.day_mean_90, second.day_mean_90)};
}

double remembered_night_k(const LastDays& difference, const MemoryWeights& weights) {
  return weights.last_night * difference.last_night + weights.last_day * difference.last_day +
         weights.mean_30 * difference.night_mean_30 + weights.mean_90 * difference.night_mean_90;
}

double remembered_day_k(const LastDays& difference, const MemoryWeights& weights) {
  return weights.last_night * difference.last_night + weights.last_day * difference.last_day +
         weights.mean_30 * difference.day_mean_30 + weights.mean_90 * difference.day_mean_90;
}

} // namespace nightsow::climate
