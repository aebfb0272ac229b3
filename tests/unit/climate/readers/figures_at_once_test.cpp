#include "climate/readers/figures_at_once.hpp"

#include "climate/readers/field_value.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

namespace nightsow::climate {
namespace {

std::string filled_to_eight(std::string text, char with) {
  text.resize(8, with);
  return text;
}

std::string in_five_columns(int number) {
  const std::string text = std::to_string(number);
  return std::string(5 - text.size(), ' ') + text;
}

TEST(FiguresAtOnce, ShortOnesAreWhatTheyAreDigitByDigit) {
  for (const std::string sign : {"", "-"}) {
    for (int tenths = 0; tenths < 1000; ++tenths) {
      const std::string text =
          sign + std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
      for (const char behind : {',', ';', '\n', '\r', '\t', '"', '-', '.'}) {
        const ShortFigure figure = short_figure(filled_to_eight(text, behind).data());
        EXPECT_EQ(figure.length, text.size()) << text << behind;
        EXPECT_EQ(figure.value, static_cast<float>(*read_decimal(text))) << text << behind;
        EXPECT_EQ(std::signbit(figure.value), sign == "-") << text << behind;
      }
    }
  }
}

TEST(FiguresAtOnce, OtherShapesAreNoShortOnes) {
  for (const std::string_view text : {"12,",
                                      "5,",
                                      "123.4,",
                                      "1.25,",
                                      "-1.25,",
                                      ".5,",
                                      "-.5,",
                                      "--1.5,",
                                      "- 1.5,",
                                      " 1.5,",
                                      "1 .5,",
                                      "1.,",
                                      "1. 5,",
                                      "12..5,",
                                      "1:5,",
                                      "1/.5",
                                      "+1.5,",
                                      "\x11.5,",
                                      "1.\x15,",
                                      "!1.5,",
                                      "1>.5,",
                                      "1.:,",
                                      "-,",
                                      ",,",
                                      "",
                                      "\xB1.5",
                                      "1\xAE"
                                      "5",
                                      "a.5,",
                                      "1.5678"}) {
    EXPECT_EQ(short_figure(filled_to_eight(std::string(text), ',').data()).length, 0) << text;
  }
}

TEST(FiguresAtOnce, WholeOnesOfFiveColumnsAreWhatTheyAreDigitByDigit) {
  for (int number = -9999; number <= 99999; ++number) {
    for (const std::string_view flags : {"   ", " Xa", "999"}) {
      const std::string text = in_five_columns(number) + std::string(flags);
      ASSERT_EQ(right_aligned_whole(text.data()), number) << text;
    }
  }
}

// Each of the five places in turn, for numbers of every width, holds each byte there is.
TEST(FiguresAtOnce, WholeOnesTakeNothingThatIsNotSoDigitByDigit) {
  for (const int number : {7, -7, 42, -42, 137, -137, 1370, -1370, 13700}) {
    for (std::size_t place = 0; place < 5; ++place) {
      for (int byte = 0; byte < 256; ++byte) {
        std::string text = in_five_columns(number);
        text[place] = static_cast<char>(byte);
        const auto at_once = right_aligned_whole(filled_to_eight(text, ' ').data());
        if (at_once) {
          EXPECT_EQ(at_once, read_whole(text)) << "'" << text << "'";
        }
      }
    }
  }
}

TEST(FiguresAtOnce, WholeOnesStandAtTheRight) {
  for (const std::string_view text : {"137  ",
                                      " 137 ",
                                      "     ",
                                      "    -",
                                      "1 3 7",
                                      " -  5",
                                      "--137",
                                      " - 13",
                                      "-5-13",
                                      "\t 137"}) {
    EXPECT_EQ(right_aligned_whole(filled_to_eight(std::string(text), ' ').data()), std::nullopt)
        << text;
  }
}

} // namespace
} // namespace nightsow::climate
