#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

struct Case {
  const char* text;
  const char* named;
};

TEST(UnreadFormat, IsNamedAndNotMisread) {
  for (const Case& test :
       {Case{"Notes for Daily Minimum\nProduct code: IDCJAC0011 reference: 1\n", "a note"},
        Case{"STAID,STANAME      ,CN,      LAT\n", "list of stations"},
        Case{"station_id, name, longitude, latitude\n", "list of stations"}}) {
    const Problem problem = refusal(test.text);
    EXPECT_TRUE(says(problem.found, test.named)) << problem.found;
    EXPECT_FALSE(problem.remedy.empty()) << test.named;
  }
}

TEST(UnreadFormat, ADailyTableMayNameItsColumnsLikeOne) {
  EXPECT_EQ(rows_of(read("DATE,MIN TEMP (C),MAX TEMP (C)\n2024-03-31,5,18\n")), "2024-03-31 5/18");
}

TEST(UnknownFormat, ShowsTheFirstLinesAsTheyWereUnderstood) {
  const Problem problem = refusal("Date,Temp,Rain\n2024-03-31,5,0\n2024-04-01,6,2\n");
  EXPECT_TRUE(says(problem.found,
                   "line 1: Date (the date) | Temp (a temperature, neither minima nor maxima) | "
                   "Rain (not understood); line 2: 2024-03-31 | 5 | 0"))
      << problem.found;
  EXPECT_EQ(problem.where, "file.csv");
}

TEST(UnknownFormat, SaysWhatIsMissing) {
  EXPECT_TRUE(says(refusal("Date,Temp\n2024-03-31,5\n").found,
                   "neither a daily minimum nor a daily maximum"));
  EXPECT_TRUE(
      says(refusal("date,rain\n2024-03-31,5\n").found, "no column of daily minima or maxima"));
  EXPECT_TRUE(says(refusal("tmin,tmax\n5,18\n").found, "no column of dates"));
  EXPECT_TRUE(says(refusal("dear diary\n").found,
                   "no line names a column of dates and one of daily minima"));
}

TEST(UnknownFormat, PrintsOnlyWhatATerminalCanShow) {
  const Problem problem = refusal("\xE9\x1B[31m,x\n");
  EXPECT_FALSE(says(problem.found, "\x1B"));
  EXPECT_FALSE(says(problem.found, "\xE9"));
}

} // namespace
} // namespace nightsow::climate
