#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <map>

namespace nightsow::climate {
namespace {

// One line of an invented station: `values` gives the seven characters of some days, the others
// are missing.
std::string month(const std::string& head, const std::map<int, std::string>& values) {
  std::string line = "9999001" + head;
  for (int day = 1; day <= 31; ++day) {
    const auto found = values.find(day);
    line += found == values.end() ? "-99999M" : found->second;
  }
  return line + "\r\n";
}

TEST(CanadaDly, ElementsStandOnLinesOfTheirOwn) {
  const Readings readings = read(
      month("202403001", {{1, "000185 "}, {31, "000190 "}}) + month("202403002", {{1, "-00022 "}}) +
      month("202403003", {{1, "000081 "}}) + month("202403010", {{1, "000000T"}}));
  EXPECT_EQ(rows_of(readings), "2024-03-01 -/18.5; 2024-03-31 -/19; 2024-03-01 -2.2/-");
  EXPECT_EQ(readings.format, "Environment Canada .DLY");
  EXPECT_EQ(readings.station.id, "9999001");
}

TEST(CanadaDly, EstimatesAreUsedAndCounted) {
  const Readings readings = read(month("202403002", {{5, "000050E"}, {6, "000060 "}}));
  EXPECT_EQ(rows_of(readings), "2024-03-05 5/-; 2024-03-06 6/-");
  EXPECT_TRUE(says(readings.problems.at(0).found, "1 of the values are estimated (E)"));
}

TEST(CanadaDly, AValueOnADayThatIsNoneIsAFault) {
  const Readings readings = read(month("202402002", {{29, "000050 "}, {30, "000060 "}}));
  EXPECT_EQ(rows_of(readings), "2024-02-29 5/-");
  EXPECT_EQ(readings.rows_faulty, 1U);
}

} // namespace
} // namespace nightsow::climate
