#include "planner/statistics/shares.hpp"

#include "species-rules/normal.hpp"

#include <boost/math/special_functions/beta.hpp>

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

double two_sided_z(double confidence) {
  return species_rules::normal_quantile(0.5 + 0.5 * confidence);
}

} // namespace

double beta_quantile(double a, double b, double part) {
  return boost::math::ibeta_inv(a, b, part);
}

double shrunk_share(const Count& count, double confidence) {
  const double z = two_sided_z(confidence);
  return (count.came + 0.5 * z * z) / (count.sown + z * z);
}

Interval wilson(const Count& count, double confidence) {
  if (count.sown == 0) {
    return {};
  }
  const double n = count.sown;
  const double share = count.came / n;
  const double z = two_sided_z(confidence);
  const double half =
      z * std::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n)) / (1.0 + z * z / n);
  const double middle = shrunk_share(count, confidence);
  return {count.came == 0 ? 0.0 : middle - half, count.came == count.sown ? 1.0 : middle + half};
}

Interval jeffreys(const Count& count, double confidence) {
  const double beyond = 0.5 * (1.0 - confidence);
  const double a = count.came + 0.5;
  const double b = count.sown - count.came + 0.5;
  return {count.came == 0 ? 0.0 : beta_quantile(a, b, beyond),
          count.came == count.sown ? 1.0 : beta_quantile(a, b, 1.0 - beyond)};
}

Interval clopper_pearson(const Count& count, double confidence) {
  const double beyond = 0.5 * (1.0 - confidence);
  const double k = count.came;
  const double failed = count.sown - count.came;
  return {count.came == 0 ? 0.0 : beta_quantile(k, failed + 1.0, beyond),
          count.came == count.sown ? 1.0 : beta_quantile(k + 1.0, failed, 1.0 - beyond)};
}

double share_deviation(double share, int seeds) {
  return std::sqrt(share * (1.0 - share) / seeds);
}

double tolerated_range(double share, int tests, int seeds_a_test) {
  const double studentized = tests == 2 ? 3.170 : 3.984;
  return std::min(1.0, studentized * share_deviation(share, seeds_a_test));
}

} // namespace nightsow::planner
