#include "planner/garden/plain_text.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace nightsow::planner {
namespace {

TEST(Slug, IsLowerCaseWithWordsJoined) {
  for (const auto& [text, wanted] : {
           std::pair{"Bulbine annua", "bulbine-annua"},
           std::pair{"  Oxalis  sp. 'Pofadder' ", "oxalis-sp-pofadder"},
           std::pair{"O'Brien (2019)", "obrien-2019"},
           std::pair{"× Gasteraloe", "x-gasteraloe"},
           std::pair{"Aloë", "aloë"},
           std::pair{"'- .", ""},
       }) {
    EXPECT_EQ(slug(text), wanted);
  }
}

TEST(Utf8, IsToldFromOtherBytes) {
  for (const std::string_view text :
       {"", "Bulbine", "× Gasteraloe", "\xEF\xBF\xBD", "\xF0\x9F\x8C\xB1"}) {
    EXPECT_TRUE(is_utf8(text)) << text;
  }
  for (const std::string_view text : {"\xD7 Gasteraloe",
                                      "\xC3",
                                      "\x80",
                                      "\xC0\x80",
                                      "\xE0\x80\x80",
                                      "\xED\xA0\x80",
                                      "\xF4\x90\x80\x80",
                                      "\xF0\x8F\xBF\xBF",
                                      "\xF5\x80\x80\x80",
                                      "\xE2\x82"}) {
    EXPECT_FALSE(is_utf8(text));
  }
}

TEST(Windows1252, BecomesUtf8) {
  EXPECT_EQ(utf8_from_windows_1252("\xD7 Gasteraloe"), "× Gasteraloe");
  EXPECT_EQ(utf8_from_windows_1252("30\x96"
                                   "60 \x92 \x80 15\xB0"
                                   "C"),
            "30–60 ’ € 15°C");
}

} // namespace
} // namespace nightsow::planner
