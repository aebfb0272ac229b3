#include "climate/lean_on_normals.hpp"

#include "climate/monthly_normals.hpp"

#include <cmath>

namespace nightsow::climate {

namespace {

// Level and season are linear in their coefficients: curves add up coefficient by coefficient.
void add(const SmoothCurve& other, double weight, SmoothCurve& curve) {
  curve.constant_c += weight * other.constant_c;
  for (std::size_t k = 0; k < curve.cosine_c.size(); ++k) {
    curve.cosine_c.at(k) += weight * other.cosine_c.at(k);
    curve.sine_c.at(k) += weight * other.sine_c.at(k);
  }
}

} // namespace

double years_of(const SmoothCurve& fitted) {
  return static_cast<double>(fitted.count) / days_a_year;
}

SmoothCurve curve_of_normals(std::span<const double> monthly_mean_c) {
  // Four years hold a leap day, so that no part of the year counts more than another.
  constexpr int four_years = 4 * 365 + 1;
  const Date first = make_date(2001, 1, 1).value();
  const NormalCourse course{monthly_mean_c};
  TimedValues points;
  for (int i = 0; i < four_years; ++i) {
    points.years.push_back(years_since_2000(first + Days{i}));
    points.values.push_back(course.value_c(first + Days{i}));
  }
  return fit_curve(points, false);
}

SmoothCurve leaned(const SmoothCurve& fitted, const SmoothCurve& normals, double years) {
  if (fitted.trend_fitted) {
    return fitted;
  }
  const double share_of_normals = years_normals_are_worth / (years + years_normals_are_worth);
  SmoothCurve result = fitted;
  add(fitted, -share_of_normals, result);
  add(normals, share_of_normals, result);
  return result;
}

SmoothYear leaned(const SmoothYear& fitted, const SmoothYear& normals) {
  return {leaned(fitted.night, normals.night, years_of(fitted.night)),
          fitted.day ? leaned(*fitted.day, *normals.day, years_of(*fitted.day)) : normals.day};
}

SmoothCurve moved(const SmoothCurve& curve, const SmoothCurve& from, const SmoothCurve& to) {
  SmoothCurve result = curve;
  add(from, -1.0, result);
  add(to, 1.0, result);
  return result;
}

} // namespace nightsow::climate
