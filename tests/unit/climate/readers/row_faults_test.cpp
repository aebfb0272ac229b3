#include "climate/readers/row_faults.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

std::string refused(const OneStation& station) {
  try {
    station.refuse_several("file.csv");
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

TEST(RowFaults, AreWarningsWithTheirPlace) {
  Readings readings;
  readings.file = "file.csv";
  report_fault(readings, 3, 5, "'x'", "a number", "correct it");
  ASSERT_EQ(readings.problems.size(), 1U);
  EXPECT_EQ(readings.problems[0],
            (Problem{Severity::warning, "file.csv", 3, 5, "'x'", "a number", "correct it"}));
}

TEST(RowFaults, TheListEndsAfterAThousand) {
  Readings readings;
  for (std::size_t line = 1; line <= 1500; ++line) {
    report_fault(readings, line, 1, "x", "y", "");
  }
  EXPECT_EQ(readings.problems.size(), 1000U);
}

TEST(OneStation, OneIdIsAccepted) {
  OneStation station;
  station.meet("AA");
  station.meet(" AA ");
  station.meet("");
  EXPECT_EQ(refused(station), "");
  EXPECT_EQ(station.id(), "AA");
}

TEST(OneStation, SeveralIdsAreListed) {
  OneStation station;
  for (const char* id : {"BB", "AA", "BB", "CC"}) {
    station.meet(id);
  }
  EXPECT_NE(refused(station).find("BB, AA, CC"), std::string::npos);
}

TEST(OneStation, TheOneAskedForIsReadAndNoOther) {
  OneStation station{"BB"};
  EXPECT_FALSE(station.meet("AA"));
  EXPECT_TRUE(station.meet("BB"));
  EXPECT_TRUE(station.meet(" "));
  EXPECT_FALSE(station.meet("CC", "a name"));
  EXPECT_EQ(refused(station), "");
  EXPECT_EQ(station.id(), "BB");
}

TEST(OneStation, OneThatIsNotThereIsRefusedWithTheList) {
  OneStation station{"ZZ"};
  station.meet("AA", "a name");
  EXPECT_NE(refused(station).find("AA (a name)"), std::string::npos);
}

TEST(OneStation, ManyIdsEndTheSearch) {
  OneStation station;
  for (int i = 0; i < 50; ++i) {
    station.meet("S" + std::to_string(i));
  }
  EXPECT_TRUE(station.hopeless());
  EXPECT_NE(refused(station).find("perhaps more"), std::string::npos);
}

} // namespace
} // namespace nightsow::climate
