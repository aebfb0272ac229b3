#include "climate/readers/plain_rows.hpp"

#include "climate/readers/daily_table.hpp"
#include "climate/readers/read_readings.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace nightsow::climate {
namespace {

constexpr PlainLayout layout{',', 3, 0, 1, 2};

PlainRun run(std::string_view text, std::vector<Reading>& rows) {
  return read_plain_rows(text, layout, 2, rows);
}

TEST(PlainRows, AreReadWithTheirLines) {
  std::vector<Reading> rows;
  const std::string_view text = "2024-02-28,1.5,-2\r\n2024-02-29,,12.25\n2024-03-01,-0.1,7";
  EXPECT_EQ(run(text, rows).bytes, text.size());
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(format_iso_date(rows[1].date), "2024-02-29");
  EXPECT_FLOAT_EQ(rows[0].night_c, 1.5F);
  EXPECT_FLOAT_EQ(rows[0].day_c, -2.0F);
  EXPECT_TRUE(std::isnan(rows[1].night_c));
  EXPECT_FLOAT_EQ(rows[1].day_c, 12.25F);
  EXPECT_FLOAT_EQ(rows[2].night_c, -0.1F);
  EXPECT_EQ(rows[2].line, 4U);
}

TEST(PlainRows, EndBeforeTheFirstRowThatIsNot) {
  const std::string plain = "2024-02-28,1.5,7.5\n";
  for (const std::string_view other : {
           "\"2024-02-29\",1,2\n",   // quoted
           "2024-02-29,\"1,5\",2\n", // quoted decimal comma
           "2023-02-29,1,2\n",       // no day of the calendar
           "2024-02-29T00:00,1,2\n", // a time
           "2024/02/29,1,2\n",       // another form of date
           "2024-02-29,1\n",         // too few fields
           "2024-02-29,1,2,3\n",     // too many
           "2024-02-29,1,NA\n",      // a word
           "2024-02-29,1,-\n",       // a missing mark
           "2024-02-29,1, 2\n",      // a blank
           "2024-02-29,1.23456,2\n", // long figures
           "2024-02-29,1234567,2\n", //
           "2024-02-29,1e1,2\n",     // an exponent
           "2024-02-29,1..5,2\n",    // no figure
           "# a remark\n",           //
           "\n",                     //
           "2024-02-29,1,2\rx\n",    // a lone carriage return
       }) {
    std::vector<Reading> rows;
    const PlainRun found = run(plain + std::string(other) + plain, rows);
    EXPECT_EQ(found.rows, 1U) << other;
    EXPECT_EQ(found.bytes, plain.size()) << other;
    EXPECT_EQ(rows.size(), 1U) << other;
  }
}

TEST(PlainRows, LeaveOtherColumnsAlone) {
  std::vector<Reading> rows;
  const PlainLayout wide{';', 4, 1, std::nullopt, 3};
  EXPECT_EQ(read_plain_rows("any, thing;2024-02-28;x;7.5\n", wide, 2, rows).rows, 1U);
  ASSERT_EQ(rows.size(), 1U);
  EXPECT_TRUE(std::isnan(rows[0].night_c));
  EXPECT_FLOAT_EQ(rows[0].day_c, 7.5F);
}

// The same table twice: once plain, once with every date in quotes, so that it is read by fields.
TEST(PlainRows, GiveWhatReadingFieldByFieldGives) {
  std::string plain = "date,tmin,tmax\n";
  std::string quoted = plain;
  const Date first = *make_date(2019, 12, 1);
  for (int day = 0; day < 500; ++day) {
    const std::string date = format_iso_date(first + Days{day});
    const std::string tenths = std::to_string(day * 37 % 101 - 50);
    const std::string values =
        day % 50 == 7 ? ",NA," : "," + tenths + ".3,2" + std::to_string(day % 9) + ".05";
    plain += date + values + "\n";
    quoted += '"' + date + '"' + values + "\n";
  }
  const Readings fast = read_readings(plain, "a.csv");
  const Readings slow = read_readings(quoted, "a.csv");
  EXPECT_EQ(fast.rows_read, slow.rows_read);
  ASSERT_EQ(fast.rows.size(), slow.rows.size());
  for (std::size_t i = 0; i < fast.rows.size(); ++i) {
    EXPECT_EQ(fast.rows[i].date, slow.rows[i].date);
    EXPECT_EQ(fast.rows[i].line, slow.rows[i].line);
    EXPECT_TRUE(fast.rows[i].night_c == slow.rows[i].night_c ||
                (std::isnan(fast.rows[i].night_c) && std::isnan(slow.rows[i].night_c)));
    EXPECT_EQ(fast.rows[i].day_c, slow.rows[i].day_c);
  }
}

} // namespace
} // namespace nightsow::climate
