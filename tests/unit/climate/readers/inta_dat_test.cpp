#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

TEST(IntaDat, FieldsTouchEachOther) {
  const Readings readings = read("9 0072024 331 18.5  5.0   .009999-99.9-99.9-9.9-99\r\n"
                                 "9 0072024 4 1-12.5-13.5   .009999-99.9-99.9-9.9-99\r\n"
                                 "9 0072024 4 2-99.9  7.0   .009999-99.9-99.9-9.9-99\r\n"
                                 "9 0072024 4 3-99.9-99.9   .009999-99.9-99.9-9.9-99\r\n");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/18.5; 2024-04-01 -13.5/-12.5; 2024-04-02 7/-");
  EXPECT_EQ(readings.format, "INTA .DAT");
  EXPECT_EQ(readings.station.id, "9 007");
}

TEST(IntaDat, ADamagedLineIsAFault) {
  const Readings readings = read("9 0072024 331 18.5  5.0   .009999\n"
                                 "9 0072024 332 18.5  5.0   .009999\n"
                                 "9 0072024 4 1 19.5  6.0   .009999\n");
  EXPECT_EQ(readings.rows.size(), 2U);
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(readings.problems.at(0).line, 2U);
}

} // namespace
} // namespace nightsow::climate
