#include "climate/readers/row_reader.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

// The fields of every row, parted by '|', rows by ';', each row with its line.
std::string rows(std::string_view text, std::size_t first_line, char separator) {
  const Opening opening = opening_of(text);
  RowReader reader{opening, first_line, separator, "file"};
  std::string all;
  while (reader.next()) {
    all += std::to_string(reader.line());
    for (const std::string_view field : reader.fields()) {
      all += '|' + std::string(field);
    }
    all += ';';
  }
  return all;
}

TEST(RowReader, RunsOfBlanksAndTabsPartFields) {
  EXPECT_EQ(rows("  a \t b\n\n c\tdd  \r\n", 1, runs_of_blanks), "1|a|b;3|c|dd;");
}

TEST(RowReader, BeginsOnALineAndCountsFromTheTop) {
  EXPECT_EQ(rows("title\n\nx y\n1 2\n", 3, runs_of_blanks), "3|x|y;4|1|2;");
  EXPECT_EQ(rows("title\n\nx,y\n1,\"2,3\"\n", 3, ','), "3|x|y;4|1|2,3;");
}

TEST(RowReader, AByteOrderMarkIsPassedOver) {
  EXPECT_EQ(rows("\xEF\xBB\xBFx y\n", 1, runs_of_blanks), "1|x|y;");
  EXPECT_EQ(rows("\xEF\xBB\xBFx,y\n", 1, ','), "1|x|y;");
}

TEST(RowReader, KnowsTheColumnInWhichAFieldBegins) {
  const Opening opening = opening_of("  ab   c\n");
  RowReader reader{opening, 1, runs_of_blanks, "file"};
  ASSERT_TRUE(reader.next());
  EXPECT_EQ(reader.column(0), 3U);
  EXPECT_EQ(reader.column(1), 8U);
}

} // namespace
} // namespace nightsow::climate
