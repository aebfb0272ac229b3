#include "climate/readers/check_text.hpp"

#include "climate/base/problem.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace nightsow::climate {
namespace {

Problem refused(std::string_view text) {
  try {
    check_text(text, "file.csv");
  } catch (const InputError& error) {
    return error.problem();
  }
  ADD_FAILURE() << "accepted";
  return {};
}

TEST(CheckText, AnOrdinaryTextPasses) {
  EXPECT_NO_THROW(check_text("date,tmin_c\n2024-03-31,5\n", "file.csv"));
  EXPECT_NO_THROW(check_text("Temperatur (\xB0"
                             "C)\n",
                             "file.csv"));
}

TEST(CheckText, ANulByteIsRefusedWhereItStands) {
  const Problem problem = refused(std::string_view("a\r\nbc\0d", 7));
  EXPECT_EQ(problem.line, 2U);
  EXPECT_EQ(problem.column, 3U);
}

TEST(CheckText, ANulByteAtTheStartOfALineIsInThatLine) {
  const Problem problem = refused(std::string_view("a\n\0", 3));
  EXPECT_EQ(problem.line, 2U);
  EXPECT_EQ(problem.column, 1U);
}

TEST(CheckText, ALineOfAMebibytePassesAndALongerOneIsRefused) {
  const std::size_t mebibyte = std::size_t{1} << 20U;
  EXPECT_NO_THROW(check_text(std::string(mebibyte, 'x'), "file.csv"));
  EXPECT_EQ(refused("a\n" + std::string(mebibyte + 1, 'x')).line, 2U);
}

TEST(CheckText, BlankFilesAreEmpty) {
  for (const char* text : {"", "\n\r\n", "  \n\t"}) {
    EXPECT_EQ(refused(text).found, "the file is empty");
  }
}

TEST(CheckText, FilesThatAreNoTextAreNamed) {
  EXPECT_NE(refused("PK\x03\x04...").found.find("zip"), std::string::npos);
  EXPECT_NE(refused("\x1F\x8B...").found.find("gzip"), std::string::npos);
  EXPECT_NE(refused("\xFF\xFE"
                    "d")
                .found.find("UTF-16"),
            std::string::npos);
  EXPECT_NE(refused("<!DOCTYPE html>").found.find("web page"), std::string::npos);
}

TEST(CheckText, WhatIsPrintableStaysAsItIs) {
  EXPECT_EQ(printable("Min Temp (\xC2\xB0"
                      "C)"),
            "Min Temp (\xC2\xB0"
            "C)");
}

TEST(CheckText, BytesThatAreNoUtf8ArePrintedAsQuestionMarks) {
  for (const char* text : {"\xB0", "\xFF", "\xC3", "\xE2\x82", "\xC0\xAF", "\xED\xA0\x80"}) {
    EXPECT_EQ(printable(text).find_first_not_of('?'), std::string::npos) << text;
  }
}

TEST(CheckText, ControlCharactersArePrintedAsBlanks) {
  EXPECT_EQ(printable("a\x1B[31m\tb"), "a [31m b");
}

TEST(CheckText, LongPiecesAreCut) {
  EXPECT_EQ(printable("abcdefgh", 5), "abcde...");
  EXPECT_EQ(printable("abcde", 5), "abcde");
}

} // namespace
} // namespace nightsow::climate
