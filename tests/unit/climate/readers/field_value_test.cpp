#include "climate/readers/field_value.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace nightsow::climate {
namespace {

struct Case {
  const char* text;
  double value;
};

TEST(FieldValue, ReadsDecimalsWithPointOrComma) {
  for (const Case& test : {Case{"5", 5},
                           Case{"-0.5", -0.5},
                           Case{"+3.25", 3.25},
                           Case{"12,75", 12.75},
                           Case{"007", 7},
                           Case{"  152", 152},
                           Case{"\t-6 ", -6},
                           Case{".5", 0.5},
                           Case{"5.", 5},
                           Case{"-0", 0},
                           Case{"1e1", 10},
                           Case{"2,5E-1", 0.25},
                           Case{"2.61111111111111", 2.61111111111111},
                           Case{"0.12345678901234567890", 0.12345678901234567890}}) {
    const auto value = read_decimal(test.text);
    ASSERT_TRUE(value) << test.text;
    EXPECT_DOUBLE_EQ(*value, test.value) << test.text;
  }
}

TEST(FieldValue, ReadsNothingElseAsANumber) {
  for (const char* text : {"",
                           " ",
                           "-",
                           ".",
                           ",",
                           "abc",
                           "5 C",
                           "5C",
                           "1,234.5",
                           "1.2.3",
                           "--5",
                           "+-5",
                           "5e",
                           "e5",
                           "inf",
                           "-inf",
                           "nan",
                           "0x10",
                           "5-",
                           "<5",
                           "\xE2\x88\x92"
                           "5"}) {
    EXPECT_FALSE(read_decimal(text)) << text;
  }
}

TEST(FieldValue, ReadsWholeNumbersOnly) {
  EXPECT_EQ(read_whole(" -9999"), -9999);
  EXPECT_EQ(read_whole("08"), 8);
  for (const char* text : {"", "1.0", "1 2", "x", "99999999999"}) {
    EXPECT_FALSE(read_whole(text)) << text;
  }
}

TEST(FieldValue, KnowsTheWordsForNoValue) {
  for (const char* text :
       {"", "  ", "-", "NA", "na", "N/A", "NaN", "nan", "null", "NULL", "None"}) {
    EXPECT_TRUE(is_missing_word(text)) << text;
    ASSERT_TRUE(read_temperature(text)) << text;
    EXPECT_TRUE(std::isnan(*read_temperature(text))) << text;
  }
}

TEST(FieldValue, AWordThatOnlyBeginsLikeThatIsNoMissingMark) {
  for (const char* text : {"N", "nanny", "nulls", "--", "no"}) {
    EXPECT_FALSE(is_missing_word(text)) << text;
    EXPECT_FALSE(read_temperature(text)) << text;
  }
}

TEST(FieldValue, AMissingCodeIsStillANumberHere) {
  EXPECT_EQ(read_temperature("-9999"), -9999.0F);
}

} // namespace
} // namespace nightsow::climate
