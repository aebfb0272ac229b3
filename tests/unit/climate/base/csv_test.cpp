#include "climate/base/csv.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace nightsow {
namespace {

using Records = std::vector<std::vector<std::string>>;

Records records(std::string_view text, char separator = ',') {
  Records all;
  CsvReader reader{text, separator, "table.csv"};
  while (reader.next()) {
    all.emplace_back(reader.fields().begin(), reader.fields().end());
  }
  return all;
}

std::vector<std::size_t> line_numbers(std::string_view text) {
  std::vector<std::size_t> lines;
  CsvReader reader{text, ',', "table.csv"};
  while (reader.next()) {
    lines.push_back(reader.line());
  }
  return lines;
}

TEST(Csv, ARecordEndsWithAnyLineEndOrTheText) {
  const Records wanted{{"a", "b"}, {"c", "d"}};
  for (const char* text :
       {"a,b\r\nc,d\r\n", "a,b\nc,d\n", "a,b\rc,d\r", "a,b\r\nc,d", "a,b\nc,d\r"}) {
    EXPECT_EQ(records(text), wanted) << text;
  }
}

TEST(Csv, AnEmptyTextHasNoRecord) {
  EXPECT_EQ(records(""), Records{});
  EXPECT_EQ(records("\xEF\xBB\xBF"), Records{});
  EXPECT_EQ(records("\n\r\n"), Records{});
}

TEST(Csv, EmptyFieldsStayFields) {
  EXPECT_EQ(records(",\n"), (Records{{"", ""}}));
  EXPECT_EQ(records("a,,b,"), (Records{{"a", "", "b", ""}}));
  EXPECT_EQ(records(R"("","")"), (Records{{"", ""}}));
}

TEST(Csv, BlanksArePartOfAField) {
  EXPECT_EQ(records(" a , b\t"), (Records{{" a ", " b\t"}}));
  EXPECT_EQ(records(R"(" a ")"), (Records{{" a "}}));
}

TEST(Csv, QuotesKeepSeparatorsInOneField) {
  EXPECT_EQ(records(R"("Kyoto, JA",1)"), (Records{{"Kyoto, JA", "1"}}));
}

TEST(Csv, ADoubledQuoteIsOneQuote) {
  EXPECT_EQ(records("\"5\"\" pot\",\"\"\"\"\n"), (Records{{R"(5" pot)", R"(")"}}));
}

TEST(Csv, ManyUndoubledFieldsOfOneRecordStayValid) {
  EXPECT_EQ(records(R"("""a","""b","""c","""d","""e")"),
            (Records{{R"("a)", R"("b)", R"("c)", R"("d)", R"("e)"}}));
}

TEST(Csv, LineBreaksInQuotesBelongToTheField) {
  EXPECT_EQ(records("\"b\r\nbb\",c\r\nd,e"), (Records{{"b\r\nbb", "c"}, {"d", "e"}}));
}

TEST(Csv, AQuoteInsideAPlainFieldIsAnOrdinaryCharacter) {
  EXPECT_EQ(records(R"(5" pot,b)"), (Records{{R"(5" pot)", "b"}}));
}

TEST(Csv, TheByteOrderMarkIsPassedOver) {
  EXPECT_EQ(records("\xEF\xBB\xBF\"a\",b"), (Records{{"a", "b"}}));
}

TEST(Csv, SemicolonsAndTabsSeparateWhenAsked) {
  EXPECT_EQ(records("a;1,5", ';'), (Records{{"a", "1,5"}}));
  EXPECT_EQ(records("a\t1,5", '\t'), (Records{{"a", "1,5"}}));
}

TEST(Csv, LineNumbersCountBlankLines) {
  EXPECT_EQ(line_numbers("\n\na,b\n\nc,d\n"), (std::vector<std::size_t>{3, 5}));
  EXPECT_EQ(line_numbers("a\r\n\r\nb"), (std::vector<std::size_t>{1, 3}));
}

TEST(Csv, LineNumbersCountBreaksInsideQuotes) {
  EXPECT_EQ(line_numbers("\"a\nb\nc\",d\ne"), (std::vector<std::size_t>{1, 4}));
  EXPECT_EQ(line_numbers("\"a\r\nb\"\r\ne"), (std::vector<std::size_t>{1, 3}));
}

TEST(Csv, ColumnsAreCountedFromOneInBytes) {
  CsvReader reader{"\xEF\xBB\xBFtag,\"x\",2\n", ',', "table.csv"};
  ASSERT_TRUE(reader.next());
  EXPECT_EQ(reader.column(0), 1U);
  EXPECT_EQ(reader.column(1), 5U);
  EXPECT_EQ(reader.column(2), 9U);
}

TEST(Csv, AnOpenQuoteIsRefusedWhereItStands) {
  CsvReader reader{"a,b\nc,\"d\n", ',', "table.csv"};
  ASSERT_TRUE(reader.next());
  try {
    static_cast<void>(reader.next());
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.problem().where, "table.csv");
    EXPECT_EQ(error.problem().line, 2U);
    EXPECT_EQ(error.problem().column, 3U);
  }
}

TEST(Csv, ALineOfAMebibyteIsReadAndALongerOneRefused) {
  const std::size_t mebibyte = std::size_t{1} << 20U;
  EXPECT_EQ(records(std::string(mebibyte, 'x')).size(), 1U);
  EXPECT_THROW(records(std::string(mebibyte + 1, 'x')), InputError);
}

TEST(Csv, TrimmingTakesBlanksFromBothEndsOnly) {
  EXPECT_EQ(trimmed("  a b\t"), "a b");
  EXPECT_EQ(trimmed(" \t "), "");
}

TEST(Csv, AFieldIsQuotedOnlyWhenItMustBe) {
  EXPECT_EQ(csv_field("plain text"), "plain text");
  EXPECT_EQ(csv_field("Kyoto, JA"), R"("Kyoto, JA")");
  EXPECT_EQ(csv_field("Kyoto, JA", ';'), "Kyoto, JA");
  EXPECT_EQ(csv_field(R"(5" pot)"), R"("5"" pot")");
  EXPECT_EQ(csv_field("two\nlines"), "\"two\nlines\"");
}

TEST(Csv, WhatIsWrittenIsReadBack) {
  for (const char* text : {"a", "a,b", R"(")", "a\r\nb", " a ", R"("")", ""}) {
    EXPECT_EQ(records(csv_field(text) + ",end"), (Records{{text, "end"}})) << text;
  }
}

} // namespace
} // namespace nightsow
