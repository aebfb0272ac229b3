#include "climate/readers/line_reader.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {
namespace {

std::vector<std::string> lines(std::string_view text) {
  std::vector<std::string> all;
  LineReader reader{text};
  while (reader.next()) {
    all.emplace_back(reader.line());
  }
  return all;
}

TEST(LineReader, EveryKindOfLineEndParts) {
  const std::vector<std::string> wanted{"a", "b", "c"};
  for (const char* text :
       {"a\nb\nc", "a\r\nb\r\nc\r\n", "a\rb\rc\r", "a\nb\rc\r\n", "a\r\nb\nc\n"}) {
    EXPECT_EQ(lines(text), wanted) << text;
  }
}

TEST(LineReader, BlankLinesAreLines) {
  EXPECT_EQ(lines("a\n\n\r\n\rb"), (std::vector<std::string>{"a", "", "", "", "b"}));
}

TEST(LineReader, NumbersFollowTheFile) {
  LineReader reader{"\n\nc\n"};
  while (reader.next() && reader.line().empty()) {
  }
  EXPECT_EQ(reader.line(), "c");
  EXPECT_EQ(reader.number(), 3U);
}

TEST(LineReader, TheByteOrderMarkIsNoPartOfTheFirstLine) {
  EXPECT_EQ(lines("\xEF\xBB\xBF"
                  "a\nb"),
            (std::vector<std::string>{"a", "b"}));
}

TEST(LineReader, NothingHasNoLines) {
  EXPECT_TRUE(lines("").empty());
  EXPECT_TRUE(lines("\xEF\xBB\xBF").empty());
}

TEST(LineReader, AnOpeningHoldsTheFirstHundredLines) {
  std::string text;
  for (int i = 1; i <= 120; ++i) {
    text += std::to_string(i) + '\n';
  }
  const Opening opening = opening_of(text);
  ASSERT_EQ(opening.lines.size(), 100U);
  EXPECT_EQ(opening.lines.back(), "100");
  EXPECT_EQ(opening.text.size(), text.size());
}

} // namespace
} // namespace nightsow::climate
