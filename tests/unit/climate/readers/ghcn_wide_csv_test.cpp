#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

const std::string archive = R"("STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME",)"
                            R"("PRCP","PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES",)"
                            "\"TMIN\",\"TMIN_ATTRIBUTES\"\n";
const std::string order_form = "\"STATION\",\"NAME\",\"DATE\",\"PRCP\",\"TMAX\",\"TMIN\"\n";

std::string archive_row(std::string_view date, std::string_view values) {
  return R"("XX000000001",")" + std::string(date) +
         R"(","-33.5","19.25","310.0","THE HILL, XX",,,)" + std::string(values) + "\n";
}

std::string ordered_row(std::string_view values) {
  return R"("XX000000001","THE HILL, XX","2024-01-31","0.00",)" + std::string(values) + "\n";
}

TEST(GhcnWideCsv, ReadsTenthsPaddedInTheirQuotes) {
  const Readings readings =
      read(archive + archive_row("2024-03-31", R"("  182",",,S","  -51","H,,S")"));
  EXPECT_EQ(readings.format, "GHCN-Daily CSV, a day a row");
  EXPECT_EQ(rows_of(readings), "2024-03-31 -5.1/18.2");
  EXPECT_EQ(readings.unit, "tenths of °C");
}

TEST(GhcnWideCsv, KnowsItsStationAndPlace) {
  const StationFacts station =
      read(archive + archive_row("2024-03-31", R"("  182",",,S","  -51","H,,S")")).station;
  EXPECT_EQ(station.id, "XX000000001");
  EXPECT_EQ(station.name, "THE HILL, XX");
  EXPECT_EQ(station.latitude, -33.5);
  EXPECT_EQ(station.elevation_m, 310.0);
}

TEST(GhcnWideCsv, EmptyFieldsAreMissing) {
  EXPECT_EQ(rows_of(read(archive + archive_row("2024-03-30", R"("  182",",,S",,)") +
                         archive_row("2024-03-31", R"(,,"   51",",,S")"))),
            "2024-03-30 -/18.2; 2024-03-31 5.1/-");
}

TEST(GhcnWideCsv, AFlaggedValueIsAFindingAndNotUsed) {
  const Readings readings =
      read(archive + archive_row("2024-03-31", R"("  182",",I,S","   51",",,S,2400")"));
  EXPECT_EQ(rows_of(readings), "2024-03-31 5.1/-");
  ASSERT_EQ(readings.findings.size(), 1U);
  EXPECT_EQ(readings.findings[0].kind, FindingKind::flagged);
  EXPECT_NEAR(readings.findings[0].value_c, 18.2, 1e-5);
  EXPECT_EQ(readings.findings[0].line, 2U);
}

TEST(GhcnWideCsv, WholeNumbersOfTheOrderFormAreFahrenheit) {
  const Readings readings = read(order_form + ordered_row(R"("50","41")"));
  EXPECT_EQ(rows_of(readings), "2024-01-31 5/10");
  EXPECT_EQ(readings.unit, "°F");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].severity, Severity::note);
}

TEST(GhcnWideCsv, DecimalsOfTheOrderFormAreCelsius) {
  const Readings readings = read(order_form + ordered_row(R"("18.2","5.0")"));
  EXPECT_EQ(rows_of(readings), "2024-01-31 5/18.2");
  EXPECT_EQ(readings.unit, "°C");
}

TEST(GhcnWideCsv, AFaultyDateIsListedWithItsPlace) {
  const Readings readings = read(archive + archive_row("2024-03-32", R"("  182",",,S",,)") +
                                 archive_row("2024-03-31", R"("  182",",,S",,)"));
  EXPECT_EQ(rows_of(readings), "2024-03-31 -/18.2");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0].line, 2U);
  EXPECT_EQ(readings.problems[0].column, 15U);
}

TEST(GhcnWideCsv, SeveralStationsAreRefusedAndListed) {
  std::string other = ordered_row(R"("50","41")");
  other.replace(other.find("XX000000001"), 11, "XX000000002");
  EXPECT_TRUE(says(refusal(order_form + ordered_row(R"("50","41")") + other).found,
                   "XX000000001, XX000000002"));
}

TEST(GhcnWideCsv, WithoutItsHeaderItIsRefusedWithTheReason) {
  const Problem problem = refusal(archive_row("2024-03-31", R"("  182",",,S","  -51","H,,S")"));
  EXPECT_TRUE(says(problem.found, "without its header line"));
}

} // namespace
} // namespace nightsow::climate
