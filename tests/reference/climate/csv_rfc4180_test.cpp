// RFC 4180 (October 2005), section 2: the examples of its rules.
#include "climate/base/csv.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace nightsow {
namespace {

using Records = std::vector<std::vector<std::string>>;

Records records(std::string_view text) {
  Records all;
  CsvReader reader{text, ',', "rfc4180.csv"};
  while (reader.next()) {
    all.emplace_back(reader.fields().begin(), reader.fields().end());
  }
  return all;
}

const Records two_rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};

TEST(CsvRfc4180, Rule1EachRecordIsALine) {
  EXPECT_EQ(records("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), two_rows);
}

TEST(CsvRfc4180, Rule2TheLastLineBreakIsOptional) {
  EXPECT_EQ(records("aaa,bbb,ccc\r\nzzz,yyy,xxx"), two_rows);
}

TEST(CsvRfc4180, Rule3AHeaderIsARecordLikeAnyOther) {
  EXPECT_EQ(records("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").size(),
            3U);
}

TEST(CsvRfc4180, Rule4SpacesArePartOfAField) {
  EXPECT_EQ(records("aaa , bbb,ccc"), (Records{{"aaa ", " bbb", "ccc"}}));
}

TEST(CsvRfc4180, Rule5FieldsMayBeQuoted) {
  EXPECT_EQ(records("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"), two_rows);
}

TEST(CsvRfc4180, Rule6QuotesEncloseLineBreaks) {
  EXPECT_EQ(records("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            (Records{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(CsvRfc4180, Rule7AQuoteInsideIsDoubled) {
  EXPECT_EQ(records(R"("aaa","b""bb","ccc")"), (Records{{"aaa", R"(b"bb)", "ccc"}}));
}

} // namespace
} // namespace nightsow
