#include "climate/monthly_normals.hpp"

#include <Eigen/LU>

#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr int common_year = 2001;
constexpr int days_of_common_year = 365;
constexpr Eigen::Index coefficients = 1 + 2 * harmonics_of_normals;

// Of the middle of the day, 1 = 1 January.
double angle_of(int day_of_common_year) {
  return 2.0 * std::numbers::pi * (day_of_common_year - 0.5) / days_of_common_year;
}

// Constant, then cosine and sine of each harmonic, the first of which is k = 1.
constexpr Eigen::Index cosine_at(int k) {
  return Eigen::Index{2} * k - 1;
}

constexpr Eigen::Index sine_at(int k) {
  return Eigen::Index{2} * k;
}

Eigen::VectorXd waves_at(double angle) {
  Eigen::VectorXd waves(coefficients);
  waves(0) = 1.0;
  for (int k = 1; k <= harmonics_of_normals; ++k) {
    waves(cosine_at(k)) = std::cos(k * angle);
    waves(sine_at(k)) = std::sin(k * angle);
  }
  return waves;
}

Eigen::MatrixXd month_means_of_waves() {
  Eigen::MatrixXd means = Eigen::MatrixXd::Zero(months_of_normals, coefficients);
  Eigen::VectorXd days = Eigen::VectorXd::Zero(months_of_normals);
  for (int day = 1; day <= days_of_common_year; ++day) {
    const Date date = make_date(common_year, 1, 1).value() + Days{day - 1};
    const auto month =
        static_cast<Eigen::Index>(static_cast<unsigned>(date::year_month_day{date}.month())) - 1;
    means.row(month) += waves_at(angle_of(day)).transpose();
    days(month) += 1.0;
  }
  for (Eigen::Index month = 0; month < months_of_normals; ++month) {
    means.row(month) /= days(month);
  }
  return means;
}

} // namespace

NormalCourse::NormalCourse(std::span<const double> monthly_mean_c) {
  constexpr Eigen::Index unknowns = coefficients + months_of_normals;
  const Eigen::MatrixXd means = month_means_of_waves();
  Eigen::MatrixXd system = Eigen::MatrixXd::Zero(unknowns, unknowns);
  for (int k = 1; k <= harmonics_of_normals; ++k) {
    const double roughness = std::pow(k, 4);
    system(cosine_at(k), cosine_at(k)) = roughness;
    system(sine_at(k), sine_at(k)) = roughness;
  }
  system.topRightCorner(coefficients, months_of_normals) = means.transpose();
  system.bottomLeftCorner(months_of_normals, coefficients) = means;
  Eigen::VectorXd target = Eigen::VectorXd::Zero(unknowns);
  for (int month = 0; month < months_of_normals; ++month) {
    target(coefficients + month) = monthly_mean_c[static_cast<std::size_t>(month)];
  }
  const Eigen::VectorXd solution = system.fullPivLu().solve(target);
  constant_c_ = solution(0);
  for (int k = 1; k <= harmonics_of_normals; ++k) {
    cosine_c_.at(static_cast<std::size_t>(k - 1)) = solution(cosine_at(k));
    sine_c_.at(static_cast<std::size_t>(k - 1)) = solution(sine_at(k));
  }
}

double NormalCourse::value_c(Date day) const {
  const double angle = angle_of(day_of_year(in_year(recurring_day(day), common_year)));
  double value = constant_c_;
  for (std::size_t k = 0; k < cosine_c_.size(); ++k) {
    const double turn = static_cast<double>(k + 1) * angle;
    value += cosine_c_.at(k) * std::cos(turn) + sine_c_.at(k) * std::sin(turn);
  }
  return value;
}

} // namespace nightsow::climate
