#pragma once

#include <compare>

namespace nightsow {

/// A difference of temperatures in kelvin. Differences add; see Celsius for points.
class CelsiusDelta {
public:
  constexpr CelsiusDelta() = default;

  constexpr explicit CelsiusDelta(double kelvin) : kelvin_(kelvin) {}

  [[nodiscard]] constexpr double kelvin() const { return kelvin_; }

  constexpr auto operator<=>(const CelsiusDelta&) const = default;

private:
  double kelvin_ = 0.0;
};

/// A temperature, a point on the Celsius scale. Two of them cannot be added; their difference is a
/// CelsiusDelta.
class Celsius {
public:
  constexpr Celsius() = default;

  constexpr explicit Celsius(double degrees) : degrees_(degrees) {}

  [[nodiscard]] constexpr double degrees() const { return degrees_; }

  constexpr auto operator<=>(const Celsius&) const = default;

private:
  double degrees_ = 0.0;
};

constexpr CelsiusDelta operator+(CelsiusDelta a, CelsiusDelta b) {
  return CelsiusDelta{a.kelvin() + b.kelvin()};
}

constexpr CelsiusDelta operator-(CelsiusDelta a, CelsiusDelta b) {
  return CelsiusDelta{a.kelvin() - b.kelvin()};
}

constexpr Celsius operator+(Celsius point, CelsiusDelta rise) {
  return Celsius{point.degrees() + rise.kelvin()};
}

constexpr Celsius operator-(Celsius point, CelsiusDelta fall) {
  return Celsius{point.degrees() - fall.kelvin()};
}

constexpr CelsiusDelta operator-(Celsius a, Celsius b) {
  return CelsiusDelta{a.degrees() - b.degrees()};
}

/// 77 °F is 25 °C.
constexpr Celsius from_fahrenheit(double fahrenheit) {
  return Celsius{(fahrenheit - 32.0) / 1.8};
}

constexpr double to_fahrenheit(Celsius point) {
  return point.degrees() * 1.8 + 32.0;
}

constexpr double to_fahrenheit_degrees(CelsiusDelta difference) {
  return difference.kelvin() * 1.8;
}

/// The one comparison of a night with a limit: equal counts as cool. The tolerance of 0.005 K takes
/// up what is lost when tenths, whole °F or bench offsets pass through binary numbers. A missing
/// night (NaN) is never at or under.
constexpr bool at_or_under(double night_c, double limit_c) {
  return night_c <= limit_c + 0.005;
}

constexpr bool at_or_under(Celsius night, Celsius limit) {
  return at_or_under(night.degrees(), limit.degrees());
}

/// The same for what must be warm: equal counts as warm. Missing (NaN) is never at or over.
constexpr bool at_or_over(double value_c, double limit_c) {
  return value_c >= limit_c - 0.005;
}

/// Warmer than the limit: what is not at or under it, but never so when missing (NaN).
constexpr bool over(double value_c, double limit_c) {
  return value_c > limit_c + 0.005;
}

} // namespace nightsow
