#pragma once

#include "climate/base/date.hpp"

#include <array>
#include <span>
#include <vector>

namespace nightsow::climate {

inline constexpr int months_of_normals = 12;

/// Harmonics of the year that may take part. Six could only just hold twelve means; with twelve
/// there is room to choose the smoothest course.
inline constexpr int harmonics_of_normals = 12;

/// A smooth course of the year of which each month's mean is exactly the given one. The mean of a
/// month is that of its days in a year of 365; 29 February is as 1 March.
class NormalCourse {
public:
  /// Requires: twelve finite means in °C, January first. Among all sums of a constant and
  /// `harmonics_of_normals` harmonics with these means it is the one with the least mean squared
  /// second derivative: the coefficients a_k, b_k minimise sum k^4 (a_k^2 + b_k^2) under twelve
  /// linear conditions, solved through their Lagrange system. (Epstein 1991, On obtaining daily
  /// climatological values from monthly means, J. Climate 4:365-368, has the harmonics, from
  /// memory; the choice of the smoothest is our own derivation.)
  explicit NormalCourse(std::span<const double> monthly_mean_c);

  [[nodiscard]] double value_c(Date day) const;

private:
  double constant_c_ = 0.0;
  std::array<double, harmonics_of_normals> cosine_c_{};
  std::array<double, harmonics_of_normals> sine_c_{};
};

} // namespace nightsow::climate
