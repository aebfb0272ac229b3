#include "planner/answers/figures.hpp"

#include <cmath>

namespace nightsow::planner {

namespace {

// Adding zero turns -0 into 0.
double rounded(double value, double parts) {
  return std::round(value * parts) / parts + 0.0;
}

} // namespace

double rounded_tenth(double value) {
  return rounded(value, 10.0);
}

double rounded_share(double share) {
  return rounded(share, 1000.0);
}

Spread to_spread(const climate::DateSpread& spread) {
  return {spread.p10, spread.p50, spread.p90, rounded_share(spread.never)};
}

} // namespace nightsow::planner
