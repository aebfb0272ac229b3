#include "climate/base/celsius.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <type_traits>

namespace nightsow {
namespace {

template <class A, class B>
concept CanBeAdded = requires(A a, B b) {
  a + b;
};

template <class A, class B>
concept CanBeSubtracted = requires(A a, B b) {
  a - b;
};

static_assert(!CanBeAdded<Celsius, Celsius>, "two points on the scale have no sum");
static_assert(!CanBeAdded<CelsiusDelta, Celsius>, "a rise is added to a point, not a point to it");
static_assert(!CanBeSubtracted<CelsiusDelta, Celsius>);
static_assert(!CanBeAdded<Celsius, double>, "a bare number is neither point nor difference");
static_assert(!std::is_convertible_v<double, Celsius>);
static_assert(!std::is_convertible_v<double, CelsiusDelta>);
static_assert(!std::is_convertible_v<Celsius, CelsiusDelta>);
static_assert(!std::is_convertible_v<CelsiusDelta, Celsius>);
static_assert(std::is_same_v<decltype(Celsius{} - Celsius{}), CelsiusDelta>);
static_assert(std::is_same_v<decltype(Celsius{} + CelsiusDelta{}), Celsius>);
static_assert(std::is_same_v<decltype(Celsius{} - CelsiusDelta{}), Celsius>);

TEST(Celsius, ARiseMovesAPoint) {
  EXPECT_EQ(Celsius{12.0} + CelsiusDelta{3.5}, Celsius{15.5});
  EXPECT_EQ(Celsius{12.0} - CelsiusDelta{3.5}, Celsius{8.5});
}

TEST(Celsius, TwoPointsDifferByADifference) {
  EXPECT_EQ(Celsius{20.0} - Celsius{-5.0}, CelsiusDelta{25.0});
}

TEST(Celsius, DifferencesAddAndSubtract) {
  EXPECT_EQ(CelsiusDelta{1.5} + CelsiusDelta{2.0}, CelsiusDelta{3.5});
  EXPECT_EQ(CelsiusDelta{1.5} - CelsiusDelta{2.0}, CelsiusDelta{-0.5});
}

TEST(Celsius, FahrenheitPointsMoveByTheirZero) {
  EXPECT_DOUBLE_EQ(from_fahrenheit(77.0).degrees(), 25.0);
  EXPECT_DOUBLE_EQ(from_fahrenheit(32.0).degrees(), 0.0);
  EXPECT_DOUBLE_EQ(to_fahrenheit(Celsius{-40.0}), -40.0);
}

TEST(Celsius, FahrenheitDifferencesOnlyScale) {
  EXPECT_DOUBLE_EQ(to_fahrenheit_degrees(CelsiusDelta{5.0}), 9.0);
}

TEST(Celsius, ANightEqualToTheLimitIsCool) {
  EXPECT_TRUE(at_or_under(Celsius{13.0}, Celsius{13.0}));
  EXPECT_TRUE(at_or_under(13.0, 13.0));
}

TEST(Celsius, EveryTenthReadAsFloatIsAtItsOwnLimit) {
  for (int tenths = -300; tenths <= 600; ++tenths) {
    const double limit = tenths / 10.0;
    EXPECT_TRUE(at_or_under(static_cast<double>(static_cast<float>(limit)), limit)) << limit;
  }
}

TEST(Celsius, EveryWholeFahrenheitIsAtItsOwnLimit) {
  for (int fahrenheit = -40; fahrenheit <= 120; ++fahrenheit) {
    const Celsius limit = from_fahrenheit(fahrenheit);
    const auto as_float = static_cast<float>(limit.degrees());
    EXPECT_TRUE(at_or_under(static_cast<double>(as_float), limit.degrees())) << fahrenheit;
  }
}

TEST(Celsius, AHundredthAboveTheLimitIsWarm) {
  EXPECT_FALSE(at_or_under(13.01, 13.0));
  EXPECT_FALSE(at_or_under(13.1, 13.0));
}

TEST(Celsius, AMissingNightIsNeverCool) {
  EXPECT_FALSE(at_or_under(std::numeric_limits<double>::quiet_NaN(), 13.0));
}

} // namespace
} // namespace nightsow
